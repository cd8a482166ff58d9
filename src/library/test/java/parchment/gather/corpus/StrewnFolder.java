package parchment.gather.corpus;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Locale;
import java.util.Random;

/**
 * Writes folders of random lists of batches, lots and work, as text and as workbooks, with odd cells strewn into them, and knows every cell. Numbers
 * and words stand once in a folder, so that each can be found again. Invented; headings and faults are common practice, no source.
 */
final class StrewnFolder {
    /**
     * Is a cell that was written.
     *
     * @param file the file's name
     * @param row its row among the table's rows, from 0
     * @param line the line of the file
     * @param heading what stands above it
     */
    record Cell(String file, String text, int row, int line, String heading) {}

    private record Column(String heading, Filling filling) {}

    private enum Filling {
        NUMBER,
        CODE,
        WORD,
        WORDS,
        DAY,
        DATE_AND_TIME,
        TIME_OF_DAY,
        MARK,
        MASS,
        LESS_MASS,
        TEMPERATURE,
        SHARE,
        ANY
    }

    private static final List<Column> BATCHES = List.of(
            new Column("Date", Filling.DAY),
            new Column("Roasted at", Filling.DATE_AND_TIME),
            new Column("Start", Filling.TIME_OF_DAY),
            new Column("Coffee", Filling.WORD),
            new Column("Green kg", Filling.MASS),
            new Column("Roasted kg", Filling.LESS_MASS),
            new Column("First crack", Filling.MARK),
            new Column("Drop", Filling.MARK),
            new Column("Charge temp C", Filling.TEMPERATURE),
            new Column("Operator", Filling.WORD),
            new Column("Machine", Filling.WORD),
            new Column("Notes", Filling.WORDS),
            new Column("Weather", Filling.WORD),
            new Column("Sacks", Filling.NUMBER),
            new Column("Room humidity", Filling.SHARE),
            new Column("Remark 2", Filling.ANY),
            new Column("", Filling.ANY));

    private static final List<Column> LOTS = List.of(
            new Column("Origin", Filling.WORD),
            new Column("Process", Filling.WORD),
            new Column("Variety", Filling.WORD),
            new Column("Moisture %", Filling.SHARE),
            new Column("Density g/L", Filling.NUMBER),
            new Column("Arrived", Filling.DAY),
            new Column("Height", Filling.NUMBER),
            new Column("Importer", Filling.WORD),
            new Column("Notes", Filling.WORDS),
            new Column("", Filling.ANY));

    private static final List<Column> WORK = List.of(
            new Column("What was done", Filling.WORDS),
            new Column("Machine", Filling.WORD),
            new Column("Who", Filling.WORD),
            new Column("Hours", Filling.NUMBER),
            new Column("Notes", Filling.WORDS));

    private static final List<String> NAMES = List.of("Batch", "Batch #", "Roast No.", "No.", "Name", "ID");
    private static final List<String> ODD_FIRST = List.of("Max", "Min", "N", "Media", "Total", "Average", "SD");

    private final Random random;
    private final List<Cell> cells = new ArrayList<>();
    private final List<String> before = new ArrayList<>();
    private int words;
    private int numbers;

    private StrewnFolder(long seed) {
        random = new Random(seed);
    }

    /** Writes a folder and returns its cells that are not blank. */
    static List<Cell> write(Path folder, long seed) throws IOException {
        StrewnFolder strewn = new StrewnFolder(seed);
        Files.createDirectories(folder);
        strewn.list(folder, "roasts", columns(strewn.pick(NAMES), Filling.CODE, BATCHES, strewn.random, 4));
        if (strewn.random.nextInt(3) == 0) {
            strewn.list(folder, "coffees", columns("Lot", Filling.WORD, LOTS, strewn.random, 3));
        }
        if (strewn.random.nextInt(3) == 0) {
            strewn.list(folder, "machine", columns("Date", Filling.DAY, WORK, strewn.random, 2));
        }
        if (strewn.random.nextInt(3) == 0) {
            strewn.list(folder, "more roasts", columns(strewn.pick(NAMES), Filling.CODE, BATCHES, strewn.random, 3));
        }
        return List.copyOf(strewn.cells);
    }

    private static List<Column> columns(String first, Filling filling, List<Column> all, Random random, int fewest) {
        List<Column> some = new ArrayList<>(all);
        Collections.shuffle(some, random);
        List<Column> columns = new ArrayList<>();
        columns.add(new Column(first, filling));
        columns.addAll(some.subList(0, fewest + random.nextInt(some.size() - fewest)));
        if (random.nextInt(5) == 0) {
            Collections.swap(columns, 0, random.nextInt(columns.size()));
        }
        return columns;
    }

    private void list(Path folder, String name, List<Column> columns) throws IOException {
        boolean workbook = random.nextInt(3) == 0;
        char sign = ",;\t".charAt(random.nextInt(3));
        String file = name + (workbook ? ".xlsx" : sign == '\t' ? ".tsv" : ".csv");
        List<List<String>> rows = new ArrayList<>();
        if (random.nextInt(4) == 0) {
            rows.add(List.of("Our " + name + " of a year"));
        }
        int shape = random.nextInt(8);
        if (shape < 2) {
            beside(file, 2 + shape, columns, rows);
        } else {
            below(file, columns, rows);
        }
        if (shape == 2) {
            rows.add(List.of());
            below(file, columns, rows);
        }
        if (shape == 3) {
            rows.add(List.of());
            below(file, columns(pick(NAMES), Filling.CODE, BATCHES, random, 3), rows);
        }
        if (workbook) {
            Grid grid = new Grid("Sheet");
            rows.forEach(row -> grid.row(row.stream().map(StrewnFolder::typed).toArray()));
            Spreadsheets.write(folder.resolve(file), grid);
        } else {
            Files.writeString(folder.resolve(file), text(rows, sign));
        }
    }

    /** Writes tables with the same headings side by side, a blank column between them. */
    private void beside(String file, int tables, List<Column> columns, List<List<String>> rows) {
        int from = rows.size();
        for (int t = 0; t < tables; t++) {
            List<List<String>> table = new ArrayList<>(rows.subList(0, from));
            below(file, columns, table);
            int width = t * (columns.size() + 2);
            for (int r = from; r < table.size(); r++) {
                List<String> row = new ArrayList<>(r < rows.size() ? rows.get(r) : List.of());
                while (row.size() < width) {
                    row.add("");
                }
                row.addAll(table.get(r));
                if (r < rows.size()) {
                    rows.set(r, row);
                } else {
                    rows.add(row);
                }
            }
        }
    }

    private void below(String file, List<Column> columns, List<List<String>> rows) {
        rows.add(columns.stream().map(Column::heading).toList());
        int count = 3 + random.nextInt(12);
        LocalDate day = LocalDate.of(2031, 1 + random.nextInt(12), 1 + random.nextInt(20));
        int minute = 420;
        for (int r = 0; r < count; r++) {
            boolean nextDay = random.nextInt(3) == 0;
            day = nextDay ? day.plusDays(1 + random.nextInt(3)) : day;
            minute = nextDay ? 420 + random.nextInt(60) : minute + 11 + random.nextInt(30);
            double mass = 5 + numbers * 0.01;
            List<String> row = new ArrayList<>();
            for (Column column : columns) {
                row.add(random.nextInt(12) == 0 ? "" : fill(column.filling(), r, day, minute % 1440, mass));
            }
            if (random.nextInt(30) == 0 && !before.isEmpty()) {
                row.set(0, pick(before));
            }
            strew(row);
            before.add(row.get(0));
            keep(file, row, r, rows.size() + 1, columns);
            rows.add(row);
            if (random.nextInt(25) == 0) {
                rows.add(columns.stream().map(Column::heading).toList());
            }
            if (random.nextInt(30) == 0) {
                rows.add(List.of());
            }
        }
    }

    /** A workbook holds numbers and days as such, if a person typed them so. */
    private static Object typed(String cell) {
        if (cell.matches("-?\\d+(\\.\\d+)?")) {
            return Double.valueOf(cell);
        }
        return cell.matches("\\d{4}-(0\\d|1[0-2])-([0-2]\\d)") ? LocalDate.parse(cell) : cell;
    }

    private void keep(String file, List<String> row, int place, int line, List<Column> columns) {
        for (int c = 0; c < row.size(); c++) {
            if (!row.get(c).isEmpty()) {
                String heading = c < columns.size() ? columns.get(c).heading() : "";
                cells.add(new Cell(file, row.get(c), place, line, heading));
            }
        }
    }

    private String fill(Filling filling, int row, LocalDate day, int minute, double mass) {
        numbers++;
        String number = String.format(Locale.ROOT, "%.2f", mass);
        return switch (filling) {
            case NUMBER -> Integer.toString(1100 + numbers);
            case CODE -> "R" + (301 + numbers);
            case WORD -> word();
            case WORDS -> word() + " and " + word();
            case DAY -> day.toString();
            case DATE_AND_TIME -> day + String.format(Locale.ROOT, " %02d:%02d", minute / 60, minute % 60);
            case TIME_OF_DAY -> String.format(Locale.ROOT, "%02d:%02d", minute / 60, minute % 60);
            case MARK -> String.format(Locale.ROOT, "%d:%02d", 8 + row % 4, numbers % 60);
            case MASS -> number;
            case LESS_MASS -> String.format(Locale.ROOT, "%.2f", 0.85 * mass);
            case TEMPERATURE -> String.format(Locale.ROOT, "%.1f", 180 + numbers * 0.1);
            case SHARE -> String.format(Locale.ROOT, "%.2f", 10 + numbers * 0.01);
            case ANY -> random.nextBoolean() ? word() : Integer.toString(2100 + numbers);
        };
    }

    /** Puts odd things into a row: a word, a number far off, a date that is none, a word for a total in front, one cell too many. */
    private void strew(List<String> row) {
        int place = random.nextInt(row.size());
        switch (random.nextInt(14)) {
            case 0 -> row.set(place, "odd" + word());
            case 1 -> row.set(place, Integer.toString(710_000 + numbers));
            case 2 -> row.set(place, "2031-14-" + (40 + words++ % 50));
            case 3 -> row.set(place, 27 + words % 60 + ":9" + words++ % 10);
            case 4 -> row.set(0, pick(ODD_FIRST));
            case 5 -> row.add("more" + word());
            case 6 -> row.set(place, "-" + (3 + numbers) + "." + (1 + numbers % 9));
            default -> {
                // Most rows are as they should be.
            }
        }
    }

    private String word() {
        words++;
        StringBuilder word = new StringBuilder();
        for (int rest = words + 700; rest > 0; rest /= 20) {
            word.append("bcdfghjklmnprstvwxzq".charAt(rest % 20)).append("aeiou".charAt(rest % 5));
        }
        return word.toString();
    }

    private <T> T pick(List<T> all) {
        return all.get(random.nextInt(all.size()));
    }

    private static String text(List<List<String>> rows, char sign) {
        StringBuilder text = new StringBuilder();
        for (List<String> row : rows) {
            text.append(String.join(String.valueOf(sign), row)).append('\n');
        }
        return text.toString();
    }
}
