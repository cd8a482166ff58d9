package parchment.sheet;

import java.io.InputStream;
import javax.xml.stream.XMLInputFactory;
import javax.xml.stream.XMLStreamConstants;
import javax.xml.stream.XMLStreamException;
import javax.xml.stream.XMLStreamReader;
import org.jspecify.annotations.Nullable;

/** Opens XML that may come from anywhere: nothing outside of it is fetched, and a document that defines words of its own is refused. */
final class PlainXml {
    private PlainXml() {}

    static XMLStreamReader open(InputStream in) throws XMLStreamException {
        XMLInputFactory factory = XMLInputFactory.newDefaultFactory();
        factory.setProperty(XMLInputFactory.SUPPORT_DTD, false);
        factory.setProperty(XMLInputFactory.IS_SUPPORTING_EXTERNAL_ENTITIES, false);
        factory.setProperty(XMLInputFactory.IS_COALESCING, true);
        factory.setXMLResolver((publicId, systemId, base, namespace) -> {
            throw new XMLStreamException("nothing outside is read");
        });
        return factory.createXMLStreamReader(in);
    }

    /**
     * Looks for definitions of words before the first element, where XML has them.
     *
     * @throws NoTableException if there are any, or it is no XML
     */
    static void check(InputStream in, String name) throws NoTableException {
        try {
            XMLStreamReader xml = open(in);
            while (xml.hasNext()) {
                int event = xml.next();
                if (event == XMLStreamConstants.DTD) {
                    throw new NoTableException("a workbook whose part " + Words.quote(name)
                            + " defines words of its own (DOCTYPE), which no spreadsheet writes; it is not opened");
                }
                if (event == XMLStreamConstants.START_ELEMENT) {
                    break;
                }
            }
            xml.close();
        } catch (XMLStreamException e) {
            throw damaged(name, e);
        }
    }

    static NoTableException damaged(String name, Exception cause) {
        return new NoTableException(
                "a workbook whose part " + Words.quote(name)
                        + " cannot be read; open it in a spreadsheet and save it anew",
                cause);
    }

    /** Returns an attribute whatever its name space; null if there is none. */
    static @Nullable String attribute(XMLStreamReader xml, String name) {
        for (int i = 0; i < xml.getAttributeCount(); i++) {
            if (xml.getAttributeLocalName(i).equals(name)) {
                return xml.getAttributeValue(i);
            }
        }
        return null;
    }

    static String attribute(XMLStreamReader xml, String name, String otherwise) {
        String value = attribute(xml, name);
        return value == null ? otherwise : value;
    }

    /** Returns a count that an attribute states, between 1 and two million; 1 if it states none. */
    static int count(XMLStreamReader xml, String name) {
        try {
            return Math.min(Math.max(Integer.parseInt(attribute(xml, name, "1")), 1), 1 << 21);
        } catch (NumberFormatException e) {
            return 1;
        }
    }
}
