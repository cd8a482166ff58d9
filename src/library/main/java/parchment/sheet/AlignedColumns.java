package parchment.sheet;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.regex.Pattern;

/**
 * Takes a text apart whose columns are lined up with blanks, as one typed in a plain editor is. Two blanks or more end a cell, and a column ends where
 * nearly no line has a letter. A text is no table of this kind where another sign stands in half its lines, where lines without cells are many, where the cells do not
 * stand under each other, or where no column holds values: notes stay notes.
 */
final class AlignedColumns {
    /** The fewest lines with cells that can be said to line up. */
    private static final int FEWEST_LINES = 5;

    private static final int MOST_LINES_LOOKED_AT = 2000;

    /** Titles above and below may be a quarter of a short table. */
    private static final double NEARLY_ALL = 0.75;

    /** One line in this many may reach into the gap between two columns. */
    private static final int LINES_FOR_ONE_ASTRAY = 50;

    private static final Pattern RULE = Pattern.compile("(?=.*[-=_+*~\u2500-\u257f]{3})[\\s\\-=_+*~\u2500-\u257f]++");

    /** A tab, semicolon or bar anywhere, or a comma that is no decimal: one with a blank, a letter or an end beside it. */
    private static final Pattern OTHER_SIGN = Pattern.compile("[\t;|]|(?<!\\d),|,(?!\\d)");

    private static final Pattern VALUE = Pattern.compile("[+-]?\\d[\\d.,:/T-]*\\s?[\\p{L}%°]{0,4}");

    /** Holds the places of a line on which a cell stands: from the first letter to before the end. */
    private record Span(int from, int to) {
        int shared(Span other) {
            return Math.min(to, other.to) - Math.max(from, other.from);
        }
    }

    private final List<Span> columns;
    private final List<List<String>> rows = new ArrayList<>();
    private final List<Integer> lines = new ArrayList<>();

    private AlignedColumns(List<Span> columns) {
        this.columns = columns;
    }

    /** Returns the rows of a text that is lined up so; empty where it is not. */
    static Optional<AlignedColumns> of(String text) {
        List<String> all = text.lines().toList();
        List<String> written = all.stream()
                .filter(line -> !line.isBlank() && !RULE.matcher(line).matches())
                .limit(MOST_LINES_LOOKED_AT)
                .toList();
        List<String> several =
                written.stream().filter(line -> cells(line).size() > 1).toList();
        long signed =
                several.stream().filter(line -> OTHER_SIGN.matcher(line).find()).count();
        boolean bounded = all.size() <= SheetBounds.MOST_ROWS
                && all.stream().allMatch(line -> line.length() <= SheetBounds.LONGEST_CELL);
        if (!bounded
                || several.size() < FEWEST_LINES
                || several.size() < NEARLY_ALL * written.size()
                || 2 * signed >= several.size()) {
            return Optional.empty();
        }
        AlignedColumns aligned = new AlignedColumns(columns(several));
        if (aligned.columns.size() < 2 || aligned.columns.size() > SheetBounds.MOST_COLUMNS) {
            return Optional.empty();
        }
        aligned.read(all);
        return aligned.isTable(several.size()) ? Optional.of(aligned) : Optional.empty();
    }

    private static List<Span> cells(String line) {
        List<Span> cells = new ArrayList<>();
        int from = -1;
        int end = 0;
        for (int i = 0; i < line.length(); i++) {
            if (Character.isWhitespace(line.charAt(i))) {
                continue;
            }
            if (from >= 0 && i - end > 1) {
                cells.add(new Span(from, end));
                from = -1;
            }
            from = from < 0 ? i : from;
            end = i + 1;
        }
        if (from >= 0) {
            cells.add(new Span(from, end));
        }
        return cells;
    }

    private static List<Span> columns(List<String> several) {
        int width = several.stream().mapToInt(String::length).max().orElse(0);
        int[] covered = new int[width + 1];
        for (String line : several) {
            for (Span cell : cells(line)) {
                for (int i = cell.from(); i < cell.to(); i++) {
                    covered[i]++;
                }
            }
        }
        List<Span> columns = new ArrayList<>();
        int astray = several.size() / LINES_FOR_ONE_ASTRAY;
        int from = -1;
        for (int i = 0; i <= width; i++) {
            boolean letters = covered[i] > astray;
            if (letters && from < 0) {
                from = i;
            } else if (!letters && from >= 0) {
                columns.add(new Span(from, i));
                from = -1;
            }
        }
        return columns;
    }

    private void read(List<String> all) {
        for (int i = 0; i < all.size(); i++) {
            String line = all.get(i);
            if (!RULE.matcher(line).matches()) {
                rows.add(row(line));
                lines.add(i + 1);
            }
        }
    }

    private List<String> row(String line) {
        List<Span> cells = cells(line);
        if (cells.size() < 2 && (cells.isEmpty() || under(cells.get(0)) > 1)) {
            return line.isBlank() ? List.of() : List.of(CsvText.cell(line.strip()));
        }
        List<String> row = new ArrayList<>();
        for (Span cell : cells) {
            int column = column(cell);
            while (row.size() <= column) {
                row.add("");
            }
            String before = row.get(column);
            String found = CsvText.cell(line.substring(cell.from(), cell.to()));
            row.set(column, before.isEmpty() ? found : before + " " + found);
        }
        return row;
    }

    private long under(Span cell) {
        return columns.stream().filter(column -> column.shared(cell) > 0).count();
    }

    /** Returns the column most of a cell stands in, or the nearest. */
    private int column(Span cell) {
        int best = 0;
        for (int i = 1; i < columns.size(); i++) {
            best = columns.get(i).shared(cell) > columns.get(best).shared(cell) ? i : best;
        }
        return best;
    }

    /** Nearly all lines fill most of the columns, and in one of these stand values. */
    private boolean isTable(int several) {
        long full = rows.stream()
                .filter(row -> 2 * row.stream().filter(cell -> !cell.isEmpty()).count() > columns.size())
                .count();
        boolean values = false;
        for (int i = 0; i < columns.size(); i++) {
            int column = i;
            values |= rows.stream()
                            .filter(row -> row.size() > column
                                    && VALUE.matcher(row.get(column)).matches())
                            .count()
                    > several / 2;
        }
        return values && full >= NEARLY_ALL * several;
    }

    List<List<String>> rows() {
        return rows;
    }

    /** Returns the line on which each row stands. */
    List<Integer> lines() {
        return lines;
    }
}
