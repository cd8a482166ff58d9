package parchment.display;

import java.util.ArrayList;
import java.util.List;

/**
 * Writes a table as text: columns aligned by blanks. A long cell of words alone is cut at the end of a word; one with a number in it goes
 * on in the line below, so that no number is ever cut.
 */
final class TableText {
    /** Widest cell of words, so that one note does not push the numbers off the page; a name or number may be wider. */
    private static final int WIDEST_CELL = 40;

    /** What is longer than this without a blank is no name or number; it goes on in the line below. */
    private static final int WIDEST_NAME = 80;

    private static final String GAP = "  ";

    private TableText() {}

    static String of(Table table) {
        StringBuilder text = new StringBuilder(line(table.title())).append('\n');
        int rows = Math.min(table.rowsShown(), table.rowCount());
        List<List<List<String>>> cells = new ArrayList<>();
        for (int c = 0; c < table.columns().size(); c++) {
            cells.add(columnCells(table, c, rows));
        }
        List<Integer> widths = cells.stream().map(TableText::width).toList();
        for (int r = 0; r <= rows && !cells.isEmpty(); r++) {
            int row = r;
            int height = cells.stream()
                    .mapToInt(column -> column.get(row).size())
                    .max()
                    .orElse(1);
            for (int l = 0; l < height; l++) {
                StringBuilder line = new StringBuilder();
                for (int c = 0; c < cells.size(); c++) {
                    List<String> lines = cells.get(c).get(r);
                    String cell = l < lines.size() ? lines.get(l) : "";
                    String blanks = " ".repeat(widths.get(c) - length(cell));
                    boolean right = table.columns().get(c).setting() == Column.Setting.NUMBER;
                    line.append(c == 0 ? "" : GAP).append(right ? blanks + cell : cell + blanks);
                }
                text.append(line.toString().stripTrailing()).append('\n');
            }
        }
        if (table.rowCount() == 0) {
            text.append("(no rows)\n");
        } else if (rows < table.rowCount()) {
            text.append("and ").append(table.rowCount() - rows).append(" more rows\n");
        }
        for (String note : table.notes()) {
            text.append(line(note)).append('\n');
        }
        return text.toString().stripTrailing();
    }

    private static List<List<String>> columnCells(Table table, int column, int rows) {
        List<List<String>> cells = new ArrayList<>();
        cells.add(List.of(line(table.columns().get(column).fullHeading())));
        for (int r = 0; r < rows; r++) {
            String cell = line(table.cell(r, column));
            boolean number = cell.codePoints().anyMatch(Character::isDigit);
            cells.add(length(cell) <= WIDEST_CELL ? List.of(cell) : number ? wrapped(cell) : List.of(cut(cell)));
        }
        return cells;
    }

    /** Returns the words up to the last that fits whole, and the sign that more followed. */
    private static String cut(String words) {
        String fits = words.substring(0, words.offsetByCodePoints(0, WIDEST_CELL - 1));
        int blank = fits.lastIndexOf(' ');
        return (blank < 0 ? fits : fits.substring(0, blank)) + "…";
    }

    private static List<String> wrapped(String cell) {
        List<String> lines = new ArrayList<>();
        StringBuilder now = new StringBuilder();
        for (String word : cell.split(" ")) {
            String rest = word;
            while (length(rest) > WIDEST_NAME) {
                int end = rest.offsetByCodePoints(0, WIDEST_NAME);
                lines.add(now.isEmpty() ? rest.substring(0, end) : now + " " + rest.substring(0, end));
                now.setLength(0);
                rest = rest.substring(end);
            }
            if (!now.isEmpty() && length(now.toString()) + 1 + length(rest) > WIDEST_CELL) {
                lines.add(now.toString());
                now.setLength(0);
            }
            now.append(now.isEmpty() ? "" : " ").append(rest);
        }
        lines.add(now.toString());
        return lines;
    }

    private static int width(List<List<String>> cells) {
        return cells.stream()
                .flatMap(List::stream)
                .mapToInt(TableText::length)
                .max()
                .orElse(0);
    }

    private static int length(String cell) {
        return cell.codePointCount(0, cell.length());
    }

    private static String line(String text) {
        return text.replaceAll("[\\p{Cntrl}\\s]+", " ").strip();
    }
}
