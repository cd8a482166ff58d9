package parchment.sheet;

import java.util.ArrayList;
import java.util.List;

/**
 * What stands beside the cells of one sheet, so that it can be told: its hidden rows and columns, its merged stretches, and cells that
 * could not be read.
 */
final class SheetMargins {
    /**
     * Is a stretch of merged cells in the row where its text stands.
     *
     * @param row the row of its first cell, from 0
     * @param first its first column, from 0
     * @param last its last column
     */
    record Merged(int row, int first, int last) {}

    private record Odd(String what, int row, int column) {}

    private final List<String> hiddenColumns = new ArrayList<>();
    private final List<Merged> merged = new ArrayList<>();
    private final List<Odd> odd = new ArrayList<>();
    private int hiddenRows;
    private int firstHiddenRow;

    void hideColumns(int first, int last) {
        if (first < SheetBounds.MOST_COLUMNS && hiddenColumns.size() < SheetBounds.MOST_COLUMNS) {
            hiddenColumns.add(first == last ? Told.column(first) : Told.column(first) + " to " + Told.column(last));
        }
    }

    void hideRow(int row) {
        if (hiddenRows++ == 0) {
            firstHiddenRow = row + 1;
        }
    }

    void merge(int row, int first, int last) {
        if (last > first && merged.size() < SheetBounds.MOST_MERGED) {
            merged.add(new Merged(row, first, Math.min(last, SheetBounds.MOST_COLUMNS - 1)));
        }
    }

    /** Notes a cell that could not be read as it stands, and how it is read. */
    void odd(String what, int atRow, int atColumn) {
        if (odd.size() < SheetBounds.MOST_ODD_CELLS) {
            odd.add(new Odd(what, atRow, atColumn));
        }
    }

    /** Repeats merged heads over their columns and tells what is hidden. */
    void apply(SheetCells cells, String tab, Told told) {
        merged.forEach(stretch -> cells.merge(stretch.row(), stretch.first(), stretch.last()));
        odd.forEach(cell -> told.count(cell.what(), cells.place(cell.row(), cell.column())));
        String sheet = "Sheet " + Words.quote(tab);
        if (!hiddenColumns.isEmpty()) {
            told.sentence(sheet + " has hidden columns, read all the same: "
                    + String.join(", ", hiddenColumns.subList(0, Math.min(5, hiddenColumns.size())))
                    + (hiddenColumns.size() > 5 ? " and " + (hiddenColumns.size() - 5) + " more" : "") + ".");
        }
        if (hiddenRows > 0) {
            told.sentence(sheet + " has " + Words.count(hiddenRows, "hidden row", "hidden rows")
                    + ", read all the same; the first is row " + firstHiddenRow + ".");
        }
    }
}
