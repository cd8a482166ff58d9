package parchment.sheet;

import java.nio.file.Path;
import java.util.List;

/**
 * Holds one sheet of a file as rows of text, before anybody knows what it means: a CSV file has one, a workbook has one for each tab.
 *
 * <p>Rows are as wide as they are written; a cell that is not there is no cell at the end of a row and "" inside it. Cells of a workbook are
 * written as a person reads them without a loss: numbers with a decimal point, dates as 2031-06-01, dates with times as 2031-06-01 08:00:00, times
 * as h:mm:ss, what a formula was worked out to.
 *
 * @param file the file
 * @param tab the tab's name in a workbook; "" in a text file
 * @param delimiter the sign between the columns of a text file; a comma for a workbook
 * @param decimal which signs can be a decimal sign in it
 * @param rows the rows, blank ones too, so that row 0 is line 1
 */
public record Sheet(Path file, String tab, char delimiter, Numbers.Decimal decimal, List<List<String>> rows) {
    /** Keeps the rows from being changed. */
    public Sheet {
        rows = rows.stream().map(List::copyOf).toList();
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
