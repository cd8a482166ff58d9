package parchment.sheet;

import java.time.Duration;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.time.format.DateTimeParseException;
import java.util.List;
import javax.xml.stream.XMLStreamConstants;
import javax.xml.stream.XMLStreamException;
import javax.xml.stream.XMLStreamReader;

/**
 * Reads one sheet of an .ods file. Rows and cells may be stated once and repeated: blank ones, with which every file is filled up, take no room.
 *
 * @see <a href="https://docs.oasis-open.org/office/OpenDocument/v1.3/">OpenDocument 1.3 part 3, 9.1 tables and 19.385 office:value and after</a>
 *     (numbers of clauses from memory)
 */
final class OdsTable {
    private final XMLStreamReader in;
    private final String tab;
    private final Told told;
    private final SheetCells.CellBudget budget;
    private final SheetCells cells;
    private final SheetMargins margins = new SheetMargins();
    private int row;
    private int columns;
    private boolean more = true;

    OdsTable(XMLStreamReader in, String tab, Told told, SheetCells.CellBudget budget) {
        this.in = in;
        this.tab = tab;
        this.told = told;
        this.budget = budget;
        cells = new SheetCells(tab, told, budget);
    }

    /** Reads to the end of the table that was just begun. */
    List<List<String>> rows() throws XMLStreamException {
        for (int depth = 1; depth > 0; ) {
            int event = in.next();
            if (event == XMLStreamConstants.END_ELEMENT) {
                depth--;
            } else if (event == XMLStreamConstants.START_ELEMENT) {
                switch (in.getLocalName()) {
                    case "table-column" -> {
                        column();
                        depth++;
                    }
                    case "table-row" -> row();
                    case "shapes", "forms", "tracked-changes" -> PlainXlsxSheet.skip(in);
                    default -> depth++;
                }
            }
        }
        margins.apply(cells, tab, told);
        return cells.rows();
    }

    private static boolean isHidden(XMLStreamReader in) {
        String visible = PlainXml.attribute(in, "visibility", "visible");
        return visible.equals("collapse") || visible.equals("filter");
    }

    private void column() {
        int repeated = PlainXml.count(in, "number-columns-repeated");
        if (isHidden(in)) {
            margins.hideColumns(columns, columns + repeated - 1);
        }
        columns = Math.min(columns + repeated, 1 << 21);
    }

    private void row() throws XMLStreamException {
        int repeated = PlainXml.count(in, "number-rows-repeated");
        boolean hidden = isHidden(in);
        int column = 0;
        boolean any = false;
        for (int depth = 1; depth > 0; ) {
            int event = in.next();
            if (event == XMLStreamConstants.END_ELEMENT) {
                depth--;
            } else if (event == XMLStreamConstants.START_ELEMENT) {
                boolean covered = in.getLocalName().equals("covered-table-cell");
                if (!covered && !in.getLocalName().equals("table-cell")) {
                    depth++;
                    continue;
                }
                int times = PlainXml.count(in, "number-columns-repeated");
                int spanned = PlainXml.count(in, "number-columns-spanned");
                String text = text(column);
                if (!covered && !text.isEmpty()) {
                    any = true;
                    put(column, times, repeated, text);
                    margins.merge(row, column, column + spanned - 1);
                }
                column = Math.min(column + times, 1 << 21);
            }
        }
        for (int i = 0; hidden && any && i < Math.min(repeated, SheetBounds.MOST_ROWS); i++) {
            margins.hideRow(row + i);
        }
        row = Math.min(row + repeated, 1 << 21);
    }

    private void put(int column, int times, int repeated, String text) {
        for (int r = row; more && r < row + repeated; r++) {
            for (int c = column; more && c < column + times; c++) {
                if ((r > row || c > column) && !budget.repeat()) {
                    told.sentence("Sheet " + Words.quote(tab) + " states cells once and repeats them more than "
                            + SheetBounds.MOST_REPEATED_CELLS + " times; from " + Told.place(r, c)
                            + " on repeated ones are left out.");
                    return;
                }
                more = cells.put(r, c, text);
                if (c >= SheetBounds.MOST_COLUMNS) {
                    break;
                }
            }
        }
    }

    /** Reads a cell to its end. */
    private String text(int column) throws XMLStreamException {
        String type = PlainXml.attribute(in, "value-type", "");
        boolean error = false;
        // Some programs state the type twice: once as the standard has it, and once that it is an error.
        for (int i = 0; i < in.getAttributeCount(); i++) {
            error |= in.getAttributeLocalName(i).equals("value-type")
                    && in.getAttributeValue(i).equals("error");
        }
        boolean formula = PlainXml.attribute(in, "formula") != null;
        String stored = PlainXml.attribute(in, "value", "");
        String date = PlainXml.attribute(in, "date-value", "");
        String time = PlainXml.attribute(in, "time-value", "");
        String truth = PlainXml.attribute(in, "boolean-value", "");
        String string = PlainXml.attribute(in, "string-value");
        String shown = OdsText.of(in);
        if (error || formula && (shown.matches("#[A-Z/0-9]+[!?]?") || shown.matches("Err:\\d+"))) {
            told.count(
                    "Cells that hold an error such as #DIV/0!, read as blank",
                    cells.place(Math.min(row, SheetBounds.MOST_ROWS), column));
            return "";
        }
        if (type.equals("percentage")) {
            told.count(
                    "Cells shown as a percentage, read as the number that is stored (15 % is 0.15)",
                    cells.place(row, column));
        }
        String text = switch (type) {
            case "float", "percentage", "currency" -> CellFormat.NUMBER.text(stored, CellFormat.DayZero.IN_1900);
            case "date" -> date(date);
            case "time" -> time(time);
            case "boolean" -> truth;
            default -> string == null ? shown : string;
        };
        if (formula && text.isEmpty() && type.isEmpty()) {
            told.count(
                    "Cells with a formula whose value the file does not hold, read as blank (open it in a spreadsheet and save it anew)",
                    cells.place(row, column));
        }
        return text;
    }

    private static String date(String stored) {
        try {
            return stored.indexOf('T') < 0
                    ? LocalDate.parse(stored).toString()
                    : CellFormat.written(LocalDateTime.parse(stored), false);
        } catch (DateTimeParseException e) {
            return stored;
        }
    }

    private static String time(String stored) {
        try {
            return CellFormat.clock(Duration.parse(stored).plusNanos(500_000).toMillis());
        } catch (DateTimeParseException | ArithmeticException e) {
            return stored;
        }
    }
}
