package parchment.sheet;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.math.BigDecimal;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.Iterator;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import javax.xml.stream.XMLStreamConstants;
import javax.xml.stream.XMLStreamException;
import javax.xml.stream.XMLStreamReader;
import org.dhatim.fastexcel.reader.Cell;
import org.dhatim.fastexcel.reader.CellType;
import org.dhatim.fastexcel.reader.ReadableWorkbook;
import org.dhatim.fastexcel.reader.ReadingOptions;
import org.dhatim.fastexcel.reader.Row;
import org.dhatim.fastexcel.reader.SheetVisibility;
import parchment.sheet.CellFormat.DayZero;

/** Reads the sheets of an .xlsx or .xlsm file. Formulas are never worked out: what the file holds as their value is read. */
final class XlsxFile {
    private static final String SHEETS = "xl/worksheets/";
    private static final String TEXTS = "xl/sharedStrings.xml";
    private static final String LINKS = "xl/_rels/workbook.xml.rels";

    private final Path file;
    private final Told told;
    private final SheetCells.CellBudget budget = new SheetCells.CellBudget();
    private final Map<String, SheetMargins> margins = new HashMap<>();
    private DayZero zero = DayZero.IN_1900;

    private XlsxFile(Path file, Told told) {
        this.file = file;
        this.told = told;
    }

    static List<Sheet> read(Path file, Unpacked parts, Told told) throws IOException {
        return new XlsxFile(file, told).read(parts);
    }

    private List<Sheet> read(Unpacked parts) throws IOException {
        String at = TEXTS;
        try {
            if (parts.has(TEXTS)) {
                parts.replace(TEXTS, PlainSharedTexts.of(parts.part(TEXTS)));
            }
            at = XlsxContents.FORMATS;
            XlsxReferences known = new XlsxReferences(
                    count(parts, TEXTS, "sst", "si"), count(parts, XlsxContents.FORMATS, "cellXfs", "xf"));
            for (String name : parts.names()) {
                if (name.startsWith(SHEETS)) {
                    at = name;
                    ByteArrayOutputStream plain = new ByteArrayOutputStream();
                    margins.put(name, PlainXlsxSheet.write(parts.part(name), plain, known));
                    parts.replace(name, plain.toByteArray());
                }
            }
            XlsxContents.writeAnew(parts);
            at = LINKS;
            Map<String, String> links = links(parts);
            at = "xl/workbook.xml";
            return sheets(parts, links);
        } catch (XMLStreamException | RuntimeException e) {
            // The library throws what it comes upon where a part is not as the standard has it.
            throw PlainXml.damaged(at, e);
        }
    }

    private static int count(Unpacked parts, String name, String parent, String element) throws XMLStreamException {
        return parts.names().contains(name) ? XlsxReferences.count(parts.part(name), parent, element) : 0;
    }

    private static Map<String, String> links(Unpacked parts) throws XMLStreamException {
        Map<String, String> links = new HashMap<>();
        XMLStreamReader in = PlainXml.open(parts.part(LINKS));
        while (in.hasNext()) {
            if (in.next() == XMLStreamConstants.START_ELEMENT
                    && in.getLocalName().equals("Relationship")) {
                String target = PlainXml.attribute(in, "Target", "");
                links.put(
                        PlainXml.attribute(in, "Id", ""),
                        target.startsWith("/") ? target.substring(1) : "xl/" + target);
            }
        }
        return links;
    }

    /** The library knows the year only where it is written as "true", which is one of two ways that XML has. */
    private static DayZero zero(Unpacked parts) throws XMLStreamException {
        XMLStreamReader in = PlainXml.open(parts.part("xl/workbook.xml"));
        while (in.hasNext()) {
            if (in.next() == XMLStreamConstants.START_ELEMENT
                    && in.getLocalName().equals("workbookPr")) {
                String from1904 = PlainXml.attribute(in, "date1904", "0");
                return from1904.equals("1") || from1904.equals("true") ? DayZero.IN_1904 : DayZero.IN_1900;
            }
        }
        return DayZero.IN_1900;
    }

    private List<Sheet> sheets(Unpacked parts, Map<String, String> links) throws IOException, XMLStreamException {
        List<Sheet> sheets = new ArrayList<>();
        try (ReadableWorkbook workbook = new ReadableWorkbook(parts.packedAnew(), new ReadingOptions(true, true))) {
            zero = zero(parts);
            for (org.dhatim.fastexcel.reader.Sheet tab : workbook.getSheets().toList()) {
                SheetMargins beside = margins.get(links.getOrDefault(tab.getId(), ""));
                if (beside == null) {
                    continue;
                }
                if (sheets.size() == SheetBounds.MOST_TABS) {
                    told.sentence(
                            "The file has more than " + SheetBounds.MOST_TABS + " tabs; those after are left out.");
                    break;
                }
                if (tab.getVisibility() != SheetVisibility.VISIBLE) {
                    told.sentence("Sheet " + Words.quote(tab.getName()) + " is hidden; it is read all the same.");
                }
                SheetCells cells = new SheetCells(tab.getName(), told, budget);
                try (Stream<Row> rows = tab.openStream()) {
                    read(rows.iterator(), cells);
                }
                beside.apply(cells, tab.getName(), told);
                sheets.add(Sheet.ofTab(file, tab.getName(), cells.rows()));
            }
        }
        return sheets;
    }

    private void read(Iterator<Row> rows, SheetCells cells) {
        while (rows.hasNext()) {
            Row row = rows.next();
            for (Cell cell : row) {
                if (cell != null && !cells.put(row.getRowNum() - 1, cell.getColumnIndex(), text(cell, cells))) {
                    return;
                }
            }
        }
    }

    private String text(Cell cell, SheetCells cells) {
        int row = cell.getAddress().getRow();
        int column = cell.getColumnIndex();
        Object value = cell.getValue();
        String raw = cell.getRawValue() == null ? "" : cell.getRawValue();
        if (cell.getType() == CellType.ERROR
                || raw.startsWith("#") && cell.getType() == CellType.FORMULA && isError(raw)) {
            told.count("Cells that hold an error such as #DIV/0!, read as blank", cells.place(row, column));
            return "";
        }
        if (value == null || raw.isEmpty() && !(value instanceof String)) {
            if (cell.getType() == CellType.STRING && value == null) {
                told.count("Cells whose text the file does not hold, read as blank", cells.place(row, column));
            } else if (cell.getType() == CellType.FORMULA) {
                told.count(
                        "Cells with a formula whose value the file does not hold, read as blank (open it in a spreadsheet and save it anew)",
                        cells.place(row, column));
            }
            return "";
        }
        if (value instanceof Boolean) {
            return value.toString();
        }
        if (value instanceof BigDecimal) {
            CellFormat format = CellFormat.of(cell.getDataFormatId(), cell.getDataFormatString());
            if (format == CellFormat.PERCENT) {
                told.count(
                        "Cells shown as a percentage, read as the number that is stored (15 % is 0.15)",
                        cells.place(row, column));
            }
            return format.text(raw, zero);
        }
        return value.toString();
    }

    private static boolean isError(String raw) {
        return raw.matches("#(DIV/0!|N/A|NAME\\?|NULL!|NUM!|REF!|VALUE!|GETTING_DATA|SPILL!|CALC!)");
    }
}
