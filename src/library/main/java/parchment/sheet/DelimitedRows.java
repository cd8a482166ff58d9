package parchment.sheet;

import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * Takes a text apart into rows of cells, with the line on which each begins.
 *
 * <p>A cell may stand in quotation marks, with a doubled one for each of its own, and then hold ends of lines. A mark in the middle of a cell is a
 * letter. So is one at a cell's beginning that is not closed within {@value SheetBounds#MOST_LINES_IN_A_CELL} lines: it does not swallow the rest of
 * the file, and it is told.
 *
 * @see <a href="https://www.rfc-editor.org/rfc/rfc4180">RFC 4180, section 2</a>
 */
final class DelimitedRows {
    private final String text;
    private final char delimiter;
    private final Told told;
    private final SheetCells.CellBudget budget;
    private final int mostRows;
    private final List<List<String>> rows = new ArrayList<>();
    private final List<Integer> lines = new ArrayList<>();
    private int at;
    private int line;
    private int open;
    private boolean severalLines;

    DelimitedRows(String text, char delimiter, Told told, int mostRows) {
        this.text = text;
        this.delimiter = delimiter;
        this.told = told;
        this.mostRows = mostRows;
        budget = new SheetCells.CellBudget();
    }

    /** Reads rows from a place in the text that is a certain line of the file. */
    void read(int from, int firstLine) {
        at = from;
        line = firstLine;
        severalLines = firstLine != 1;
        while (at < text.length()) {
            if (rows.size() == mostRows) {
                told.sentence(
                        "The file has more than " + mostRows + " rows; those from line " + line + " on are left out.");
                return;
            }
            lines.add(line);
            List<String> row = row();
            if (row == null) {
                lines.remove(lines.size() - 1);
                return;
            }
            rows.add(row);
        }
    }

    private @Nullable List<String> row() {
        int first = line;
        if (isEnd(at)) {
            endOfLine();
            return List.of();
        }
        List<String> cells = new ArrayList<>();
        while (true) {
            String cell = cell();
            if (!cell.isEmpty() && !budget.take()) {
                told.sentence("The file has more than " + budget.most() + " cells; those from line " + first
                        + " on are left out.");
                return null;
            }
            if (cells.size() < SheetBounds.MOST_COLUMNS) {
                cells.add(cell);
            } else if (!cell.isEmpty()) {
                told.sentence(
                        "The file has more than " + SheetBounds.MOST_COLUMNS + " columns; those after are left out.");
            }
            if (isEnd(at)) {
                endOfLine();
                severalLines |= line != first + 1;
                return cells;
            }
            at++;
        }
    }

    private String cell() {
        int start = at;
        while (start < text.length() && text.charAt(start) == ' ') {
            start++;
        }
        if (delimiter != '"'
                && start < text.length()
                && text.charAt(start) == '"'
                && open < SheetBounds.MOST_OPEN_MARKS) {
            String quoted = quoted(start + 1);
            if (quoted != null) {
                return bounded(quoted);
            }
            open++;
            told.count("Quotation marks that are never closed, read as letters", "line " + line);
        }
        int from = at;
        while (!isEnd(at) && text.charAt(at) != delimiter) {
            at++;
        }
        return bounded(CsvText.cell(text.substring(from, at)));
    }

    /** Reads a cell to its closing mark and stands behind it; null, and does not move, if it is not closed. */
    private @Nullable String quoted(int from) {
        StringBuilder cell = new StringBuilder();
        int ends = 0;
        for (int i = from; i < text.length(); i++) {
            char c = text.charAt(i);
            if (c == '"') {
                if (i + 1 < text.length() && text.charAt(i + 1) == '"') {
                    i++;
                } else {
                    int after = i + 1;
                    while (after < text.length() && text.charAt(after) == ' ' && delimiter != ' ') {
                        after++;
                    }
                    if (isEnd(after) || text.charAt(after) == delimiter) {
                        at = after;
                        line += ends;
                        return CsvText.cell(cell.toString());
                    }
                }
            } else if (c == '\r' || c == '\n' && text.charAt(i - 1) != '\r') {
                ends++;
            }
            if (ends > SheetBounds.MOST_LINES_IN_A_CELL || cell.length() > SheetBounds.LONGEST_CELL) {
                return null;
            }
            cell.append(c);
        }
        return null;
    }

    private String bounded(String cell) {
        if (cell.length() <= SheetBounds.LONGEST_CELL) {
            return cell;
        }
        told.count("Cells with more than " + SheetBounds.LONGEST_CELL + " letters, cut there", "line " + line);
        int end = SheetBounds.LONGEST_CELL;
        return cell.substring(0, Character.isHighSurrogate(cell.charAt(end - 1)) ? end - 1 : end);
    }

    private boolean isEnd(int place) {
        return place >= text.length() || text.charAt(place) == '\n' || text.charAt(place) == '\r';
    }

    private void endOfLine() {
        if (at < text.length()) {
            boolean pair = text.charAt(at) == '\r' && at + 1 < text.length() && text.charAt(at + 1) == '\n';
            at += pair ? 2 : 1;
        }
        line++;
    }

    List<List<String>> rows() {
        return rows;
    }

    /** Returns the line on which each row begins; empty where row 0 is line 1 and so on. */
    List<Integer> lines() {
        return severalLines ? lines : List.of();
    }
}
