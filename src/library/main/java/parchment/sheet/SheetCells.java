package parchment.sheet;

import java.util.ArrayList;
import java.util.List;

/** Collects the cells of one sheet in the order of their rows and keeps within the bounds; what lies beyond is told. */
final class SheetCells {
    private final String tab;
    private final Told told;
    private final CellBudget budget;
    private final List<List<String>> rows = new ArrayList<>();

    /** Counts the cells of all sheets of a file. */
    static final class CellBudget {
        private final int most = SheetBounds.mostCells(SheetBounds.memory());
        private int left = most;
        private int repeated = SheetBounds.MOST_REPEATED_CELLS;

        boolean take() {
            return left-- > 0;
        }

        int most() {
            return most;
        }

        /** Returns whether a cell that is stated once may stand once more. */
        boolean repeat() {
            return repeated-- > 0;
        }
    }

    SheetCells(String tab, Told told, CellBudget budget) {
        this.tab = tab;
        this.told = told;
        this.budget = budget;
    }

    /** Puts a text into a cell; a blank one is left out. Returns whether more may follow. */
    boolean put(int row, int column, String text) {
        if (text.isEmpty()) {
            return true;
        }
        if (row >= SheetBounds.MOST_ROWS) {
            told.sentence(where() + "has more than " + SheetBounds.MOST_ROWS + " rows; those after are left out.");
            return false;
        }
        if (column >= SheetBounds.MOST_COLUMNS) {
            told.sentence(
                    where() + "has more than " + SheetBounds.MOST_COLUMNS + " columns; those after are left out.");
            return true;
        }
        if (!budget.take()) {
            told.sentence("The file has more than " + budget.most() + " cells; those after " + where().strip() + ", "
                    + Told.place(row, column) + ", are left out.");
            return false;
        }
        while (rows.size() <= row) {
            rows.add(List.of());
        }
        List<String> cells = rows.get(row);
        if (!(cells instanceof ArrayList)) {
            cells = new ArrayList<>();
            rows.set(row, cells);
        }
        while (cells.size() <= column) {
            cells.add("");
        }
        cells.set(column, bounded(text, row, column));
        return true;
    }

    private String bounded(String text, int row, int column) {
        if (text.length() <= SheetBounds.LONGEST_CELL) {
            return text;
        }
        told.count("Cells with more than " + SheetBounds.LONGEST_CELL + " letters, cut there", place(row, column));
        int end = SheetBounds.LONGEST_CELL;
        return text.substring(0, Character.isHighSurrogate(text.charAt(end - 1)) ? end - 1 : end);
    }

    /** Repeats the text of a merged stretch over its columns, unless it is a title: then nothing else stands in its row. */
    void merge(int row, int first, int last) {
        if (row >= rows.size() || first >= rows.get(row).size()) {
            return;
        }
        List<String> cells = rows.get(row);
        String text = cells.get(first);
        boolean alone = true;
        for (int i = 0; i < cells.size(); i++) {
            alone &= i >= first && i <= last || cells.get(i).isBlank();
        }
        for (int i = first + 1; !alone && !text.isEmpty() && i <= last; i++) {
            put(row, i, text);
        }
    }

    /** Returns a cell's place with the tab's name. */
    String place(int row, int column) {
        return Told.place(row, column) + " of sheet " + Words.quote(tab);
    }

    private String where() {
        return tab.isEmpty() ? "The file " : "Sheet " + Words.quote(tab) + " ";
    }

    List<List<String>> rows() {
        return rows;
    }
}
