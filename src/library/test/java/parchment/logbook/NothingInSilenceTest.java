package parchment.logbook;

import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.lang.reflect.RecordComponent;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Random;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import parchment.logbook.contents.LogbookContents;
import parchment.logbook.written.Problem;
import parchment.sheet.Header;

/**
 * Every cell that is filled in is in the logbook, among its extras, or named by a problem: of its row and column, of its row, of its column,
 * or of its file. Held on tables of random faults, each from its seed: a cell that is blanked leaves another logbook or other problems behind,
 * or its row, column or file was left out with a word.
 */
class NothingInSilenceTest {
    @TempDir
    Path temporary;

    /** The columns that each table may have: the heading, and what stands in it. */
    private static final Map<String, List<String>> TABLES = new LinkedHashMap<>();

    static {
        TABLES.put(
                "batches.csv",
                List.of(
                        "batch=#",
                        "roasted at=2025-03-04T09:15",
                        "lot=kela",
                        "machine=drum",
                        "operator=Ana",
                        "recipe=light",
                        "purpose=filter",
                        "green mass [kg]=5.5",
                        "roasted mass [kg]=4.7",
                        "charge temperature [°C]=201",
                        "room temperature [°C]=21.5",
                        "room humidity [%]=44",
                        "room pressure [hPa]=1013",
                        "warm-up [min]=33",
                        "planned drop temperature [°C]=206",
                        "planned by=chance",
                        "yellowing [min:s]=4:51",
                        "first crack start [min:s]=8:11",
                        "drop [min:s]=9:19",
                        "cooling end [min:s]=13:17",
                        "ground colour [meter]=61.5",
                        "quakers [1/100 g]=3",
                        "tipping=a few tips",
                        "chaff [g]=35.5",
                        "weather=windy",
                        "note=first of the day"));
        TABLES.put(
                "lots.csv",
                List.of(
                        "lot=#",
                        "origin=the hills",
                        "process=washed",
                        "variety=old",
                        "harvested on=2024-11-20",
                        "arrived on=2025-02-10",
                        "storage=jute",
                        "moisture [%]=11.2",
                        "density [g/L]=711",
                        "note=sweet",
                        "importer=Dock"));
        TABLES.put(
                "lot-checks.csv",
                List.of(
                        "lot=#",
                        "measured on=2025-06-01",
                        "moisture [%]=10.9",
                        "water activity=0.55",
                        "density [g/L]=709",
                        "by=Cleo"));
        TABLES.put("blends.csv", List.of("blend=#", "lot=kela", "share [%]=61", "blended=before roasting", "by=Cleo"));
        TABLES.put(
                "machines.csv",
                List.of(
                        "machine=#",
                        "capacity [kg]=7.5",
                        "smallest batch [kg]=2.5",
                        "largest batch [kg]=6.5",
                        "heat source=gas",
                        "highest air temperature [°C]=301",
                        "least airflow [%]=19",
                        "probe place=front plate",
                        "probe diameter [mm]=3.5",
                        "maker=own"));
        TABLES.put(
                "upkeep.csv",
                List.of(
                        "machine=#",
                        "done on=2025-02-27",
                        "what=fan replaced",
                        "kind=fan",
                        "note=new blades",
                        "cost=121"));
        TABLES.put(
                "cuppings.csv",
                List.of(
                        "cupping=spring",
                        "tasted on=2025-03-08",
                        "cupper=Ana",
                        "batch=#",
                        "blind code=K7",
                        "cup=2",
                        "serving position=3",
                        "sweetness=7.25",
                        "body=6.75",
                        "note=plum",
                        "water from=well"));
        TABLES.put("sessions.csv", List.of("cupping=#", "blind=yes", "scored before discussion=no", "grind=coarse"));
        TABLES.put(
                "curves/1.csv",
                List.of(
                        "time [s]=%",
                        "bean temperature [°C]=~",
                        "air temperature [°C]=~",
                        "gas [%]=~",
                        "airflow [%]=~",
                        "exhaust [°C]=~"));
    }

    private record Cell(String file, int line, String heading, int column, String written) {
        @Override
        public String toString() {
            return file + ", line " + line + ", column " + (column + 1) + " '" + heading + "': '" + written + "'";
        }
    }

    private static final List<String> BAD_CELLS =
            List.of("many", "1e155", "-1e300", "12..5", "9:19:00", "3/4/24", "-7", "99999999", "x".repeat(251), "?");

    /** Makes a table of four to nine rows with some faults, and remembers every filled-in cell. */
    private static String table(String file, List<String> columns, Random random, List<Cell> cells) {
        List<String> headings = new ArrayList<>();
        List<String> values = new ArrayList<>();
        for (String column : columns) {
            String[] parts = column.split("=", 2);
            headings.add(heading(parts[0], random));
            values.add(parts[1]);
        }
        if (random.nextInt(4) == 0) {
            int twice = random.nextInt(headings.size());
            headings.add(headings.get(twice));
            values.add("again");
        }
        if (random.nextInt(4) == 0) {
            headings.add(random.nextBoolean() ? "" : "h".repeat(251));
            values.add("77");
        }
        StringBuilder text = new StringBuilder(String.join(",", headings)).append('\n');
        int rows = 4 + random.nextInt(6);
        for (int i = 0; i < rows; i++) {
            List<String> row = new ArrayList<>();
            int number = random.nextInt(8) == 0 ? 1 : i + 1;
            for (String value : values) {
                String written = value.replace("#", String.valueOf(number))
                        .replace("%", String.valueOf(2 * number))
                        .replace("~", String.valueOf(150 + number + random.nextInt(100) / 100.0));
                row.add(
                        random.nextInt(25) == 0
                                ? BAD_CELLS.get(random.nextInt(BAD_CELLS.size()))
                                : random.nextInt(25) == 0 ? "" : written);
            }
            if (random.nextInt(12) == 0) {
                row.add("one too many");
            } else if (random.nextInt(12) == 0) {
                row.remove(row.size() - 1);
            }
            for (int c = 0; c < row.size(); c++) {
                if (!row.get(c).isEmpty()) {
                    cells.add(new Cell(file, i + 2, c < headings.size() ? headings.get(c) : "", c, row.get(c)));
                }
            }
            text.append(String.join(",", row)).append('\n');
        }
        return text.toString();
    }

    private static String heading(String heading, Random random) {
        return switch (random.nextInt(30)) {
            case 0 -> heading.substring(0, 1) + heading.substring(Math.min(2, heading.length() - 1)); // A letter lost.
            case 1 -> "";
            case 2 -> heading.replaceAll(" \\[.*", "");
            case 3 -> heading.replace('[', '(').replace(']', ')');
            case 4 -> heading.toUpperCase(Locale.ROOT);
            case 5 -> heading.replaceAll("\\[.*]", "[furlong]");
            default -> heading;
        };
    }

    @ParameterizedTest
    @ValueSource(ints = {0, 1, 2, 3})
    void everyFilledInCellIsReadKeptOrNamed(int part) throws IOException {
        int looked = 0;
        for (int seed = 10 * part; seed < 10 * part + 10; seed++) {
            Random random = new Random(1000 + seed);
            List<Cell> cells = new ArrayList<>();
            Map<String, String> texts = new LinkedHashMap<>();
            WrittenFolder folder = new WrittenFolder(temporary.resolve("s" + seed));
            for (Map.Entry<String, List<String>> entry : TABLES.entrySet()) {
                texts.put(entry.getKey(), table(entry.getKey(), entry.getValue(), random, cells));
                folder.withText(entry.getKey(), texts.get(entry.getKey()));
            }
            Logbook logbook = folder.open();
            String held = held(logbook);
            for (int i = 0; i < CELLS_OF_EACH; i++) {
                Cell cell = cells.get(random.nextInt(cells.size()));
                if (isNamed(cell, logbook.problems().list())) {
                    continue;
                }
                folder.withText(cell.file(), without(cell, texts.get(cell.file())));
                assertNotEquals(
                        held,
                        held(folder.open()),
                        () -> cell + " leaves no trace, and no problem names it:\n"
                                + logbook.problems().text());
                folder.withText(cell.file(), texts.get(cell.file()));
                looked++;
            }
        }
        assertTrue(looked > 10 * CELLS_OF_EACH / 3, looked + " cells");
    }

    private static final int CELLS_OF_EACH = 8;

    private static String without(Cell cell, String text) {
        List<String> lines = new ArrayList<>(List.of(text.split("\n", -1)));
        String[] row = lines.get(cell.line() - 1).split(",", -1);
        row[cell.column()] = "";
        lines.set(cell.line() - 1, String.join(",", row));
        return String.join("\n", lines);
    }

    /** Whether a problem says of the cell's file, row or column that it was left out. */
    private static boolean isNamed(Cell cell, List<Problem> problems) {
        return problems.stream().filter(p -> p.file().equals(cell.file())).anyMatch(p -> {
            boolean ofItsRow = p.line() == cell.line()
                    && (p.done().contains("row skipped") || p.done().contains("row set aside"));
            // Of a curve the rows that are alike are told once, with their number and the first.
            boolean ofRows = p.line() <= cell.line()
                    && cell.file().startsWith("curves/")
                    && (p.done().equals("skipped")
                            || p.done().equals("rows skipped")
                            || p.done().equals("the first of each kept")
                            || p.done().contains("left out until the clock had caught up")
                            || p.done().contains("the longest stretch kept"));
            boolean ofItsColumn =
                    (p.column().equals(Header.parse(cell.heading()).written())
                                    || p.column().equals("column " + (cell.column() + 1)))
                            && (p.done().contains("left out") || p.done().equals("the first one read"));
            boolean temperatures = p.done().equals("the temperatures of this file left out")
                    && cell.heading().toLowerCase(Locale.ROOT).contains("temperature");
            return p.done().equals("file left out") || ofItsRow || ofRows || ofItsColumn || temperatures;
        });
    }

    /** Everything that the logbook holds, in its own words, by file. */
    private static String held(Logbook logbook) {
        StringBuilder all = new StringBuilder();
        LogbookContents contents = logbook.contents();
        for (Batch batch : logbook.batches()) {
            all.append(batch.name()).append('|').append(batch.roastedAt()).append('|');
            for (Batch.Label label : Batch.Label.values()) {
                all.append(batch.label(label)).append('|');
            }
            all.append(batch.conditions())
                    .append(batch.plan())
                    .append(batch.looks())
                    .append(batch.extras());
            for (MarkKind mark : MarkKind.values()) {
                batch.writtenMark(mark)
                        .ifPresent(
                                time -> all.append('|').append(time.seconds()).append('|'));
            }
            for (Quantity quantity : Quantity.values()) {
                batch.curve(quantity).ifPresent(curve -> {
                    for (int i = 0; i < curve.size(); i++) {
                        all.append('|')
                                .append(curve.secondsAt(i))
                                .append('|')
                                .append(curve.valueAt(i))
                                .append('|');
                    }
                });
            }
            batch.otherCurves().values().forEach(curve -> {
                for (int i = 0; i < curve.size(); i++) {
                    all.append('|')
                            .append(curve.secondsAt(i))
                            .append('|')
                            .append(curve.valueAt(i))
                            .append('|');
                }
            });
        }
        List.of(
                        logbook.lots(),
                        contents.lotChecks(),
                        contents.blends(),
                        logbook.machines(),
                        logbook.upkeep(),
                        logbook.cups(),
                        contents.cuppings())
                .forEach(list -> list.forEach(one -> all.append(components(one))));
        // What is wrong with a cell names it, too.
        all.append(logbook.problems().list());
        return all.toString();
    }

    /** Every component of a record: what it prints of itself is a sentence. */
    private static String components(Object one) {
        StringBuilder all = new StringBuilder();
        for (RecordComponent component : one.getClass().getRecordComponents()) {
            try {
                all.append(component.getName())
                        .append('=')
                        .append(component.getAccessor().invoke(one))
                        .append('|');
            } catch (ReflectiveOperationException e) {
                throw new IllegalStateException(e);
            }
        }
        return all.toString();
    }
}
