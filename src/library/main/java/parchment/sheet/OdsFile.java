package parchment.sheet;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import javax.xml.stream.XMLStreamConstants;
import javax.xml.stream.XMLStreamException;
import javax.xml.stream.XMLStreamReader;

/**
 * Reads the sheets of an .ods file. Formulas are never worked out: what the file holds as their value is read.
 *
 * @see <a href="https://docs.oasis-open.org/office/OpenDocument/v1.3/">OpenDocument 1.3 part 3, 9.1 tables</a> (number of the clause from memory)
 */
final class OdsFile {
    private static final String CONTENT = "content.xml";
    private static final String MANIFEST = "META-INF/manifest.xml";

    private OdsFile() {}

    static List<Sheet> read(Path file, Unpacked parts, Told told) throws IOException {
        try {
            if (parts.has(MANIFEST) && isLocked(PlainXml.open(parts.part(MANIFEST)))) {
                throw locked();
            }
            parts.check(CONTENT);
            return sheets(file, PlainXml.open(parts.part(CONTENT)), told);
        } catch (XMLStreamException | RuntimeException e) {
            throw PlainXml.damaged(CONTENT, e);
        }
    }

    static NoTableException locked() {
        return new NoTableException(
                "a workbook locked with a password; open it in a spreadsheet and save it without the password");
    }

    private static boolean isLocked(XMLStreamReader in) throws XMLStreamException {
        while (in.hasNext()) {
            if (in.next() == XMLStreamConstants.START_ELEMENT
                    && in.getLocalName().equals("encryption-data")) {
                return true;
            }
        }
        return false;
    }

    private static List<Sheet> sheets(Path file, XMLStreamReader in, Told told) throws IOException, XMLStreamException {
        List<Sheet> sheets = new ArrayList<>();
        SheetCells.CellBudget budget = new SheetCells.CellBudget();
        Set<String> hidden = new HashSet<>();
        String style = "";
        boolean spreadsheet = false;
        while (in.hasNext()) {
            if (in.next() != XMLStreamConstants.START_ELEMENT) {
                continue;
            }
            switch (in.getLocalName()) {
                case "style" -> style = PlainXml.attribute(in, "name", "");
                case "table-properties" -> {
                    if ("false".equals(PlainXml.attribute(in, "display"))) {
                        hidden.add(style);
                    }
                }
                case "spreadsheet" -> spreadsheet = true;
                case "table" -> {
                    if (sheets.size() == SheetBounds.MOST_TABS) {
                        told.sentence(
                                "The file has more than " + SheetBounds.MOST_TABS + " tabs; those after are left out.");
                        return sheets;
                    }
                    String tab = PlainXml.attribute(in, "name", "");
                    if (hidden.contains(PlainXml.attribute(in, "style-name", ""))) {
                        told.sentence("Sheet " + Words.quote(tab) + " is hidden; it is read all the same.");
                    }
                    sheets.add(Sheet.ofTab(file, tab, new OdsTable(in, tab, told, budget).rows()));
                }
                default -> {
                    // Nothing else holds cells.
                }
            }
        }
        if (!spreadsheet) {
            throw new NoTableException("a document but no workbook; save its table as .ods, .xlsx or CSV");
        }
        return sheets;
    }
}
