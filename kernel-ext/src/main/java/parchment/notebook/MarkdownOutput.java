package parchment.notebook;

import java.io.IOException;
import java.io.StringReader;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.regex.MatchResult;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import javax.xml.XMLConstants;
import javax.xml.parsers.DocumentBuilderFactory;
import javax.xml.parsers.ParserConfigurationException;
import org.w3c.dom.Element;
import org.w3c.dom.Node;
import org.w3c.dom.NodeList;
import org.xml.sax.ErrorHandler;
import org.xml.sax.InputSource;
import org.xml.sax.SAXException;
import org.xml.sax.helpers.DefaultHandler;

/**
 * What a result shows as HTML, in Markdown: paragraphs, tables with their first rows, and pictures, which are named and stand elsewhere. What is
 * folded away stays folded, by its title. Scripts and styles are left out.
 */
final class MarkdownOutput {
    private static final Pattern LEFT_OUT = Pattern.compile("(?s)<(style|script)\\b.*?</\\1>");
    private static final Pattern UNCLOSED = Pattern.compile("<(br|hr|img|input|col|wbr)\\b([^>]*?)/?>");
    private static final Pattern TAG = Pattern.compile("<[a-zA-Z](?:\"[^\"]*\"|'[^']*'|[^<>\"'])*>");

    /** An attribute without a value; what stands between quotes is passed over. */
    private static final Pattern BARE =
            Pattern.compile("\"[^\"]*\"|'[^']*'| (open|hidden|disabled|checked|selected|controls)(?=[ />])");

    private static final Set<String> BLOCKS = Set.of(
            ("div section article figure figcaption header footer main nav p h1 h2 h3 h4 h5 h6 table details ul ol pre blockquote"
                            + " form dl picture")
                    .split(" "));

    /** A table longer than the first shows as many rows as the second; nobody reads two hundred on such a page. */
    private static final int LONGEST_TABLE = 16;

    private static final int ROWS = 8;

    /** The title of what a long table folds away. */
    private static final Pattern MORE_ROWS = Pattern.compile("[0-9]+ more rows?");

    /** Where the pictures go. */
    interface Wall {
        /** Puts a picture somewhere and returns the Markdown that shows it. */
        String hang(String svg);

        /** Returns what is to stand under each, in Markdown; may be empty. */
        String under();
    }

    private final List<String> pictures;
    private final Wall wall;
    private final StringBuilder out = new StringBuilder();

    private MarkdownOutput(List<String> pictures, Wall wall) {
        this.pictures = pictures;
        this.wall = wall;
    }

    /**
     * Returns a fragment as paragraphs of Markdown.
     *
     * @throws IllegalArgumentException if the fragment is not well formed
     */
    static String of(String html, Wall wall) {
        InlinePictures taken = InlinePictures.in(LEFT_OUT.matcher(html).replaceAll(""));
        MarkdownOutput output = new MarkdownOutput(taken.pictures(), wall);
        output.blocks(parsed(taken.html()));
        return output.out.toString().stripTrailing();
    }

    private static Element parsed(String html) {
        String closed = UNCLOSED.matcher(html.replace("&nbsp;", "\u00a0")).replaceAll("<$1$2/>");
        try {
            DocumentBuilderFactory factory = DocumentBuilderFactory.newInstance();
            factory.setFeature(XMLConstants.FEATURE_SECURE_PROCESSING, true);
            factory.setFeature("http://apache.org/xml/features/disallow-doctype-decl", true);
            var builder = factory.newDocumentBuilder();
            ErrorHandler quiet = new DefaultHandler();
            builder.setErrorHandler(quiet);
            String whole = "<all>" + TAG.matcher(closed).replaceAll(MarkdownOutput::withValues) + "</all>";
            return builder.parse(new InputSource(new StringReader(whole))).getDocumentElement();
        } catch (SAXException e) {
            throw new IllegalArgumentException("The output is not well formed: " + e.getMessage(), e);
        } catch (ParserConfigurationException | IOException e) {
            throw new IllegalStateException(e);
        }
    }

    private static String withValues(MatchResult tag) {
        String written = BARE.matcher(tag.group())
                .replaceAll(bare ->
                        Matcher.quoteReplacement(bare.group(1) == null ? bare.group() : " " + bare.group(1) + "=\"\""));
        return Matcher.quoteReplacement(written);
    }

    private void blocks(Element parent) {
        StringBuilder line = new StringBuilder();
        for (Node child : children(parent)) {
            if (child instanceof Element element && BLOCKS.contains(element.getTagName())) {
                paragraph(line.toString());
                line.setLength(0);
                block(element);
            } else {
                line.append(inline(child));
            }
        }
        paragraph(line.toString());
    }

    private void block(Element element) {
        switch (element.getTagName()) {
            case "p" -> paragraph((element.getAttribute("role").equals("note") ? "> " : "") + words(element));
            case "h1", "h2", "h3", "h4", "h5", "h6" -> paragraph("**" + words(element) + "**");
            case "figcaption" -> emphasized(words(element));
            case "pre" -> paragraph(MarkdownText.fenced("", element.getTextContent()));
            case "ul", "ol" ->
                paragraph(elements(element, "li").stream()
                        .map(item -> "- " + words(item))
                        .collect(Collectors.joining("\n")));
            case "details" -> folded(element);
            case "picture" -> {
                paragraph(wall.hang(picture(element)));
                paragraph(wall.under());
            }
            case "table" -> table(element);
            default -> blocks(element);
        }
    }

    private void table(Element table) {
        elements(table, "caption").forEach(caption -> paragraph("**" + words(caption) + "**"));
        List<Element> rows = elements(table, "tr");
        if (rows.isEmpty()) {
            return;
        }
        StringBuilder text = new StringBuilder();
        List<Element> head = cells(rows.get(0));
        text.append(row(head));
        text.append(head.stream()
                .map(cell -> cell.getAttribute("class").contains("number") ? "---:" : "---")
                .collect(Collectors.joining(" | ", "| ", " |\n")));
        List<Element> body = rows.subList(1, rows.size());
        int shown = body.size() > LONGEST_TABLE ? ROWS : body.size();
        body.subList(0, shown).forEach(each -> text.append(row(cells(each))));
        paragraph(text.toString().stripTrailing());
        if (shown < body.size()) {
            emphasized(String.format(Locale.ROOT, "The first %d rows; the notebook shows all of them.", shown));
        }
    }

    private void folded(Element details) {
        List<Element> titles = elements(details, "summary");
        String title = titles.isEmpty() ? "more" : words(titles.get(0));
        if (!MORE_ROWS.matcher(title).matches()) { // Of these the table before has told.
            emphasized("Folded away in the notebook: " + title);
        }
    }

    private String row(List<Element> cells) {
        return cells.stream().map(this::words).collect(Collectors.joining(" | ", "| ", " |\n"));
    }

    private static List<Element> cells(Element row) {
        return children(row).stream()
                .filter(Element.class::isInstance)
                .map(Element.class::cast)
                .toList();
    }

    private String words(Element element) {
        return children(element).stream()
                .map(this::inline)
                .collect(Collectors.joining())
                .replaceAll("\\s+", " ")
                .strip();
    }

    private String inline(Node node) {
        if (!(node instanceof Element element)) {
            return MarkdownText.escaped(node.getTextContent());
        }
        return switch (element.getTagName()) {
            case "br" -> " ";
            case "picture" -> wall.hang(picture(element));
            case "code" -> "`" + element.getTextContent().replace('`', '\'') + "`";
            case "strong", "b" -> "**" + words(element) + "**";
            case "em", "i" -> "*" + words(element) + "*";
            case "img" -> pictureInWords(element.getAttribute("alt"));
            case "button", "input", "select" -> ""; // Nothing there answers to a click.
            default -> children(element).stream().map(this::inline).collect(Collectors.joining());
        };
    }

    /** A picture of dots inside a page has no address that a site would load. */
    private static String pictureInWords(String alt) {
        return alt.isBlank() ? "" : "*" + MarkdownText.escaped(alt) + " (the notebook shows the picture)*";
    }

    private String picture(Element element) {
        return pictures.get(Integer.parseInt(element.getAttribute("number")));
    }

    private void emphasized(String words) {
        paragraph(words.isBlank() ? "" : "*" + words + "*");
    }

    private void paragraph(String text) {
        if (!text.isBlank()) {
            out.append(text.strip()).append("\n\n");
        }
    }

    private static List<Node> children(Node parent) {
        NodeList list = parent.getChildNodes();
        List<Node> children = new ArrayList<>();
        for (int i = 0; i < list.getLength(); i++) {
            children.add(list.item(i));
        }
        return children;
    }

    private static List<Element> elements(Element parent, String name) {
        NodeList list = parent.getElementsByTagName(name);
        List<Element> elements = new ArrayList<>();
        for (int i = 0; i < list.getLength(); i++) {
            elements.add((Element) list.item(i));
        }
        return elements;
    }
}
