package parchment.gather;

import java.util.List;
import parchment.sheet.Sheet;

/**
 * Holds a table that was found in a sheet: what stands above it, its headings, and its rows, each as wide as the headings.
 *
 * @param sheet where it stands
 * @param above the cells of each row above the headings that is not blank
 * @param headings the columns' names; "#1", "#2" … where none stands
 * @param rows the rows of values
 * @param lines the line of each row in the sheet, counted from 1
 * @param leftOut what was left out and why, a sentence each: totals, repeated headings, rows of another width
 */
record Table(
        Sheet sheet,
        List<List<String>> above,
        List<String> headings,
        List<List<String>> rows,
        List<Integer> lines,
        List<String> leftOut) {
    Table {
        above = above.stream().map(List::copyOf).toList();
        headings = List.copyOf(headings);
        rows = rows.stream().map(List::copyOf).toList();
        lines = List.copyOf(lines);
        leftOut = List.copyOf(leftOut);
    }
}
