package parchment.gather;

import java.util.List;
import parchment.sheet.Sheet;

/**
 * Gives the rest of the room a table as if it stood alone in its sheet: what stands above it, its headings, and its rows, each as wide as
 * the headings.
 *
 * @param sheet where it stands
 * @param above the cells of each row above the headings that is not blank
 * @param headings the columns' names; "#1", "#2" … where none stands
 * @param rows the rows of values
 * @param lines the line of each row in the sheet, counted from 1
 * @param leftOut what was left out and why, a sentence each: totals, repeated headings, rows of another width
 */
record FoundTable(
        Sheet sheet,
        List<List<String>> above,
        List<String> headings,
        List<List<String>> rows,
        List<Integer> lines,
        List<String> leftOut) {
    FoundTable {
        above = above.stream().map(List::copyOf).toList();
        headings = List.copyOf(headings);
        rows = rows.stream().map(List::copyOf).toList();
        lines = List.copyOf(lines);
        leftOut = List.copyOf(leftOut);
    }

    /**
     * Finds the tables of a sheet: below titles and lines of settings, under headings of one to three rows with units, side by side or one
     * under the other, with their headings down the side turned; without totals, repeated headings and remarks, which are told.
     */
    static List<FoundTable> in(Sheet sheet) {
        return TableFinder.in(sheet);
    }

    /** Returns the values of one column. */
    List<String> column(int place) {
        return rows.stream().map(row -> row.get(place)).toList();
    }
}
