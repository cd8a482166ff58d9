package parchment.sheet;

import java.io.ByteArrayOutputStream;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import javax.xml.stream.XMLOutputFactory;
import javax.xml.stream.XMLStreamConstants;
import javax.xml.stream.XMLStreamException;
import javax.xml.stream.XMLStreamReader;
import javax.xml.stream.XMLStreamWriter;
import org.jspecify.annotations.Nullable;

/**
 * Writes one sheet of an .xlsx file anew with nothing in it but rows and cells within the bounds, before the library sees it.
 *
 * <p>The library makes room for every column up to the address that a cell states, and writes a shared formula anew for each of its cells: an
 * address such as ZZZZZZ1 or one long formula would fill the memory. So every cell gets the address that was counted, and of a formula only
 * that there is one.
 *
 * @see <a href="https://ecma-international.org/publications-and-standards/standards/ecma-376/">ECMA-376 part 1, 18.3.1 worksheets</a> (number
 *     of the clause from memory)
 */
final class PlainXlsxSheet {
    private static final String MAIN = "http://schemas.openxmlformats.org/spreadsheetml/2006/main";

    private final XMLStreamReader in;
    private final XMLStreamWriter out;
    private final XlsxReferences known;
    private final SheetMargins margins = new SheetMargins();
    private int row = -1;
    private int column = -1;

    private PlainXlsxSheet(XMLStreamReader in, XMLStreamWriter out, XlsxReferences known) {
        this.in = in;
        this.out = out;
        this.known = known;
    }

    /** Writes a sheet anew and returns what stands beside its cells. */
    static SheetMargins write(InputStream sheet, ByteArrayOutputStream to, XlsxReferences known)
            throws XMLStreamException {
        XMLStreamWriter out =
                XMLOutputFactory.newDefaultFactory().createXMLStreamWriter(to, StandardCharsets.UTF_8.name());
        PlainXlsxSheet plain = new PlainXlsxSheet(PlainXml.open(sheet), out, known);
        out.writeStartDocument();
        out.writeStartElement("worksheet");
        out.writeDefaultNamespace(MAIN);
        out.writeStartElement("sheetData");
        boolean open = false;
        while (plain.in.hasNext()) {
            int event = plain.in.next();
            if (event == XMLStreamConstants.START_ELEMENT) {
                open = plain.start(plain.in.getLocalName(), open);
            }
        }
        if (open) {
            out.writeEndElement();
        }
        out.writeEndElement();
        out.writeEndElement();
        out.writeEndDocument();
        out.close();
        return plain.margins;
    }

    private boolean start(String element, boolean open) throws XMLStreamException {
        switch (element) {
            case "col" -> {
                if (isTrue(PlainXml.attribute(in, "hidden"))) {
                    margins.hideColumns(PlainXml.count(in, "min") - 1, PlainXml.count(in, "max") - 1);
                }
            }
            case "mergeCell" -> merged(PlainXml.attribute(in, "ref", ""));
            case "row" -> {
                row = PlainXml.attribute(in, "r") == null ? row + 1 : PlainXml.count(in, "r") - 1;
                column = -1;
                if (isTrue(PlainXml.attribute(in, "hidden"))) {
                    margins.hideRow(row);
                }
                if (open) {
                    out.writeEndElement();
                }
                out.writeStartElement("row");
                out.writeAttribute("r", String.valueOf(Math.min(row, SheetBounds.MOST_ROWS) + 1));
                return true;
            }
            case "c" -> cell();
            default -> {
                // Nothing else holds cells.
            }
        }
        return open;
    }

    private static boolean isTrue(@Nullable String attribute) {
        return "1".equals(attribute) || "true".equals(attribute);
    }

    private void merged(String reference) {
        int colon = reference.indexOf(':');
        int[] first = colon < 0 ? null : CellPlace.of(reference.substring(0, colon));
        int[] last = colon < 0 ? null : CellPlace.of(reference.substring(colon + 1));
        if (first != null && last != null) {
            margins.merge(first[0], first[1], last[1]);
        }
    }

    private void cell() throws XMLStreamException {
        int[] place = CellPlace.of(PlainXml.attribute(in, "r", ""));
        column = place == null ? column + 1 : place[1];
        String type = PlainXml.attribute(in, "t", "n");
        String style = PlainXml.attribute(in, "s", "");
        boolean formula = false;
        String value = null;
        StringBuilder inline = new StringBuilder();
        for (int depth = 1; depth > 0; ) {
            int event = in.next();
            if (event == XMLStreamConstants.END_ELEMENT) {
                depth--;
            } else if (event == XMLStreamConstants.START_ELEMENT) {
                switch (in.getLocalName()) {
                    case "f" -> {
                        formula = true;
                        skip(in);
                    }
                    case "v" -> value = in.getElementText();
                    case "t" -> inline.append(in.getElementText());
                    case "rPh" -> skip(in);
                    default -> depth++;
                }
            }
        }
        write(type, style, formula, value, inline.toString());
    }

    private void write(String type, String style, boolean formula, @Nullable String value, String inline)
            throws XMLStreamException {
        boolean odd = value != null && XlsxReferences.isOnlyText(type, value);
        boolean text = odd || type.equals("inlineStr") || type.equals("d");
        String written = text && value != null ? value : inline;
        if (text ? written.isEmpty() : value == null && !formula) {
            return;
        }
        if (type.equals("s") && value != null && !known.hasText(value)) {
            margins.odd("Cells whose text the file does not hold, read as blank", row, column);
            return;
        }
        boolean formatted = !style.isEmpty() && known.hasFormat(style);
        if (!style.isEmpty() && !formatted) {
            margins.odd("Cells whose format the file does not hold, read without it (a date is a number)", row, column);
        }
        out.writeStartElement("c");
        // What lies beyond the bounds is put on their border, where it is told and left out.
        out.writeAttribute(
                "r", Told.place(Math.min(row, SheetBounds.MOST_ROWS), Math.min(column, SheetBounds.MOST_COLUMNS)));
        if (formatted) {
            out.writeAttribute("s", style);
        }
        if (text) {
            out.writeAttribute("t", "inlineStr");
            out.writeStartElement("is");
            out.writeStartElement("t");
            out.writeCharacters(type.equals("d") ? written.replace('T', ' ') : written);
            out.writeEndElement();
            out.writeEndElement();
        } else {
            out.writeAttribute("t", type);
            if (formula) {
                out.writeStartElement("f");
                out.writeCharacters("1");
                out.writeEndElement();
            }
            out.writeStartElement("v");
            out.writeCharacters(value == null ? "" : value);
            out.writeEndElement();
        }
        out.writeEndElement();
    }

    /** Leaves an element and what is in it aside. */
    static void skip(XMLStreamReader in) throws XMLStreamException {
        for (int depth = 1; depth > 0; ) {
            int event = in.next();
            depth += event == XMLStreamConstants.START_ELEMENT ? 1 : event == XMLStreamConstants.END_ELEMENT ? -1 : 0;
        }
    }
}
