package parchment.sheet;

import java.nio.file.Path;
import java.util.List;

/**
 * One sheet of a file as rows of text, before anybody knows what it means: a CSV file has one, a workbook has one for each tab.
 *
 * <p>Rows are as wide as they are written; a cell that is not there is no cell at the end of a row and "" inside it. Cells of a workbook are
 * written as a person reads them without a loss: numbers with a decimal point, dates as 2031-06-01, dates with times as 2031-06-01 08:00:00, times
 * as h:mm:ss, what a formula was worked out to.
 *
 * <p>The text of a merged head is repeated over the columns that it stands above. A merged cell that has its row to itself is a title and stays one
 * cell, and so does one that is merged downwards.
 *
 * @param file the file
 * @param tab the tab's name in a workbook; "" in a text file
 * @param delimiter the sign between the columns of a text file; a comma for a workbook
 * @param decimal which signs can be a decimal sign in it
 * @param rows the rows, blank ones too
 * @param lines the line of the file on which each row begins, from 1; empty where row 0 is line 1, row 1 line 2 and so on
 */
public record Sheet(
        Path file, String tab, char delimiter, Numbers.Decimal decimal, List<List<String>> rows, List<Integer> lines) {
    /** Keeps the rows from being changed. */
    public Sheet {
        rows = rows.stream().map(List::copyOf).toList();
        lines = List.copyOf(lines);
        if (!lines.isEmpty() && lines.size() != rows.size()) {
            throw new IllegalArgumentException("A sheet needs a line for each of its " + rows.size()
                    + " rows, and was given " + lines.size() + ".");
        }
    }

    /** Returns a sheet whose row 0 is line 1. */
    public Sheet(Path file, String tab, char delimiter, Numbers.Decimal decimal, List<List<String>> rows) {
        this(file, tab, delimiter, decimal, rows, List.of());
    }

    /** Returns a sheet of a workbook. */
    static Sheet ofTab(Path file, String tab, List<List<String>> rows) {
        return new Sheet(file, tab, ',', Numbers.Decimal.POINT, rows);
    }

    /** Returns the line of the file on which a row begins, from 1; in a workbook the number of the row. */
    public int line(int row) {
        return lines.isEmpty() ? row + 1 : lines.get(row);
    }

    /** Returns the file's name, with the tab's if it has one, as it is told to a person. */
    public String name() {
        return tab.isEmpty() ? String.valueOf(file.getFileName()) : file.getFileName() + ", sheet " + Words.quote(tab);
    }

    /** Returns a cell without blanks around it; "" where there is none. */
    public String cell(int row, int column) {
        List<String> cells = rows.get(row);
        return column < cells.size() ? cells.get(column).strip() : "";
    }
}
