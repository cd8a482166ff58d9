package parchment.sheet;

import javax.xml.stream.XMLStreamConstants;
import javax.xml.stream.XMLStreamException;
import javax.xml.stream.XMLStreamReader;

/** Reads the text that a cell of an .ods file shows: a line for each paragraph, without the notes that are pinned to it. */
final class OdsText {
    private OdsText() {}

    /** Reads to the end of the cell that was just begun. */
    static String of(XMLStreamReader in) throws XMLStreamException {
        StringBuilder text = new StringBuilder();
        int paragraphs = 0;
        int inside = 0;
        for (int depth = 1; depth > 0; ) {
            switch (in.next()) {
                case XMLStreamConstants.END_ELEMENT -> {
                    depth--;
                    inside = depth < inside ? 0 : inside;
                }
                case XMLStreamConstants.CHARACTERS, XMLStreamConstants.SPACE, XMLStreamConstants.CDATA -> {
                    if (inside > 0) {
                        text.append(in.getText());
                    }
                }
                case XMLStreamConstants.START_ELEMENT -> {
                    switch (in.getLocalName()) {
                        case "annotation", "shapes", "frame", "custom-shape", "ruby-text" -> {
                            PlainXlsxSheet.skip(in);
                            continue;
                        }
                        case "p", "h" -> {
                            text.append(paragraphs++ == 0 ? "" : "\n");
                            inside = depth + 1;
                        }
                        case "s" ->
                            text.append(" ".repeat(Math.min(PlainXml.count(in, "c"), SheetBounds.LONGEST_CELL)));
                        case "tab" -> text.append('\t');
                        case "line-break" -> text.append('\n');
                        default -> {
                            // A stretch in another font, or a link: its text is read on.
                        }
                    }
                    depth++;
                }
                default -> {
                    // Remarks hold no text.
                }
            }
            if (text.length() > 4 * SheetBounds.LONGEST_CELL) {
                text.setLength(4 * SheetBounds.LONGEST_CELL);
            }
        }
        return text.toString();
    }
}
