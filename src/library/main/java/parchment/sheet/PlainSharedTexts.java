package parchment.sheet;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import javax.xml.stream.XMLOutputFactory;
import javax.xml.stream.XMLStreamConstants;
import javax.xml.stream.XMLStreamException;
import javax.xml.stream.XMLStreamReader;
import javax.xml.stream.XMLStreamWriter;

/** Writes the texts that an .xlsx file keeps apart from its sheets anew: counted, without fonts, without the small signs that tell how to read a word. */
final class PlainSharedTexts {
    private static final String MAIN = "http://schemas.openxmlformats.org/spreadsheetml/2006/main";

    private PlainSharedTexts() {}

    static byte[] of(InputStream texts) throws IOException, XMLStreamException {
        ByteArrayOutputStream to = new ByteArrayOutputStream();
        XMLStreamWriter out =
                XMLOutputFactory.newDefaultFactory().createXMLStreamWriter(to, StandardCharsets.UTF_8.name());
        XMLStreamReader in = PlainXml.open(texts);
        out.writeStartDocument();
        out.writeStartElement("sst");
        out.writeDefaultNamespace(MAIN);
        int count = 0;
        while (in.hasNext()) {
            if (in.next() == XMLStreamConstants.START_ELEMENT
                    && in.getLocalName().equals("si")) {
                if (++count > SheetBounds.MOST_SHARED_TEXTS) {
                    throw new NoTableException("a workbook with more than " + SheetBounds.MOST_SHARED_TEXTS
                            + " different texts; save its sheets as CSV");
                }
                out.writeStartElement("si");
                out.writeStartElement("t");
                out.writeCharacters(text(in));
                out.writeEndElement();
                out.writeEndElement();
            }
        }
        out.writeEndElement();
        out.writeEndDocument();
        out.close();
        return to.toByteArray();
    }

    private static String text(XMLStreamReader in) throws XMLStreamException {
        StringBuilder text = new StringBuilder();
        for (int depth = 1; depth > 0; ) {
            int event = in.next();
            if (event == XMLStreamConstants.END_ELEMENT) {
                depth--;
            } else if (event == XMLStreamConstants.START_ELEMENT) {
                if (in.getLocalName().equals("t")) {
                    text.append(in.getElementText());
                } else if (in.getLocalName().equals("rPh")) {
                    PlainXlsxSheet.skip(in);
                } else {
                    depth++;
                }
            }
        }
        return text.toString();
    }
}
