package parchment.jars;

import java.io.IOException;
import java.io.StringReader;
import java.util.ArrayList;
import java.util.List;
import javax.xml.XMLConstants;
import javax.xml.parsers.DocumentBuilder;
import javax.xml.parsers.DocumentBuilderFactory;
import javax.xml.parsers.ParserConfigurationException;
import org.w3c.dom.Element;
import org.w3c.dom.Node;
import org.w3c.dom.NodeList;
import org.xml.sax.InputSource;
import org.xml.sax.SAXException;
import org.xml.sax.helpers.DefaultHandler;

/** Reads small XML texts that somebody else wrote: nothing outside the text is fetched for it, and names count without a name space. */
final class Xml {
    private Xml() {}

    static Element parse(String text) throws SAXException, ParserConfigurationException, IOException {
        DocumentBuilderFactory factory = DocumentBuilderFactory.newDefaultInstance(); // Whatever jars a reader added.
        factory.setFeature(XMLConstants.FEATURE_SECURE_PROCESSING, true);
        factory.setFeature("http://apache.org/xml/features/disallow-doctype-decl", true);
        factory.setExpandEntityReferences(false);
        DocumentBuilder builder = factory.newDocumentBuilder();
        builder.setErrorHandler(new DefaultHandler()); // The default one prints by itself.
        return builder.parse(new InputSource(new StringReader(text))).getDocumentElement();
    }

    /** Returns the elements directly in the element that have the name, or all of them if it is "*". */
    static List<Element> children(Element element, String name) {
        List<Element> children = new ArrayList<>();
        NodeList nodes = element.getChildNodes();
        for (int i = 0; i < nodes.getLength(); i++) {
            Node node = nodes.item(i);
            if (node instanceof Element child
                    && (name.equals("*") || name(child).equals(name))) {
                children.add(child);
            }
        }
        return children;
    }

    static List<Element> children(Element element, String group, String name) {
        return children(element, group).stream()
                .flatMap(each -> children(each, name).stream())
                .toList();
    }

    /** Returns the text of the first element of that name directly in the element; empty if there is none. */
    static String text(Element element, String name) {
        return children(element, name).stream()
                .findFirst()
                .map(child -> child.getTextContent().strip())
                .orElse("");
    }

    static String name(Element element) {
        return element.getTagName().replaceFirst("^.*:", "");
    }
}
