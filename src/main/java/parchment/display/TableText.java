package parchment.display;

import java.util.ArrayList;
import java.util.List;

/** Writes a table as text: columns aligned by blanks, wide words shortened. */
final class TableText {
    /** Widest cell of words; a longer one ends in "…" so that one note does not push the numbers off the page. */
    private static final int WIDEST_CELL = 40;

    private static final String GAP = "  ";

    private TableText() {}

    static String of(Table table) {
        StringBuilder text = new StringBuilder(line(table.title())).append('\n');
        int rows = Math.min(table.rowsShown(), table.rowCount());
        List<List<String>> cells = new ArrayList<>();
        for (int c = 0; c < table.columns().size(); c++) {
            cells.add(columnCells(table, c, rows));
        }
        for (int r = 0; r <= rows && !cells.isEmpty(); r++) {
            StringBuilder row = new StringBuilder();
            for (int c = 0; c < cells.size(); c++) {
                String cell = cells.get(c).get(r);
                String blanks = " ".repeat(width(cells.get(c)) - length(cell));
                boolean right = table.columns().get(c).setting() == Column.Setting.NUMBER;
                row.append(c == 0 ? "" : GAP).append(right ? blanks + cell : cell + blanks);
            }
            text.append(row.toString().stripTrailing()).append('\n');
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

    private static List<String> columnCells(Table table, int column, int rows) {
        List<String> cells = new ArrayList<>();
        cells.add(line(table.columns().get(column).fullHeading()));
        for (int r = 0; r < rows; r++) {
            String cell = line(table.cell(r, column));
            cells.add(
                    length(cell) <= WIDEST_CELL
                            ? cell
                            : cell.substring(0, cell.offsetByCodePoints(0, WIDEST_CELL - 1)) + "…");
        }
        return cells;
    }

    private static int width(List<String> cells) {
        return cells.stream().mapToInt(TableText::length).max().orElse(0);
    }

    private static int length(String cell) {
        return cell.codePointCount(0, cell.length());
    }

    private static String line(String text) {
        return text.replaceAll("[\\p{Cntrl}\\s]+", " ").strip();
    }
}
