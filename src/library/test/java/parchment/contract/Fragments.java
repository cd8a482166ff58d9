package parchment.contract;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.StringReader;
import java.util.List;
import java.util.Locale;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.IntStream;
import javax.xml.parsers.DocumentBuilder;
import javax.xml.parsers.DocumentBuilderFactory;
import org.w3c.dom.Attr;
import org.w3c.dom.Document;
import org.w3c.dom.Element;
import org.w3c.dom.NodeList;
import org.xml.sax.InputSource;
import org.xml.sax.SAXException;
import parchment.display.Table;

/** What every piece of HTML or SVG that we show must keep to. */
public final class Fragments {
    private static final Pattern SCRIPT = Pattern.compile("(?s)<script([^>]*)>(.*?)</script>");
    /** Elements that HTML closes by itself. */
    private static final Pattern VOID = Pattern.compile("<(img|br|hr|input)\\b([^>]*?)/?>");

    /** Attributes that HTML lets stand without a value. */
    private static final Pattern BARE = Pattern.compile("(<[a-z][^<>]*?) (hidden|disabled|open|checked)(?=[ >])( ?)");

    /** A style or script that fetches. */
    private static final Pattern FETCH = Pattern.compile(
            "(?i)@import|url\\(\\s*['\"]?(?!#|data:)|\\bfetch\\(|XMLHttpRequest|WebSocket\\(|sendBeacon|importScripts");

    private static final Pattern WHITE_GROUND =
            Pattern.compile("(?i)background(-color)?\\s*:\\s*(white|#fff\\b|#ffffff)");
    /** More digits after the point than any measurement of ours has. */
    private static final Pattern TOO_MANY_DIGITS = Pattern.compile("(?<![\\w.:-])\\d+\\.\\d{7,}");

    private Fragments() {}

    /** Checks a fragment of HTML; {@code from} begins every message. */
    public static Document html(String html, String from) throws Exception {
        Matcher scripts = SCRIPT.matcher(html);
        while (scripts.find()) {
            if (scripts.group(1).contains("type=\"application/json\"")) {
                // Data, which may hold a user's words, but nothing that could end the element or begin another.
                assertFalse(scripts.group(2).contains("<"), from + ": data that could leave its element");
            } else {
                assertTrue(isOurs(scripts.group(2)), from + ": a script that is not ours: " + scripts.group());
            }
        }
        String still = SCRIPT.matcher(html).replaceAll("");
        assertFalse(still.toLowerCase(Locale.ROOT).contains("<script"), from + ": a script that does not end");
        Document page = element(
                "<div>"
                        + VOID.matcher(BARE.matcher(still).replaceAll("$1 $2=\"\"$3"))
                                .replaceAll("<$1$2/>") + "</div>",
                from);
        NodeList all = page.getElementsByTagName("*");
        for (int i = 0; i < all.getLength(); i++) {
            Element one = (Element) all.item(i);
            String style = one.getTagName().equals("style") ? one.getTextContent() : one.getAttribute("style");
            // Where a rule brings its ink too, a white ground does no harm.
            String plain = style.replaceAll("\\{[^{}]*(?<![-\\w])color\\s*:[^{}]*\\}", "{}");
            assertFalse(WHITE_GROUND.matcher(plain).find(), from + ": a ground of its own, which a dark page is not");
        }
        return page;
    }

    /** Checks an SVG document, which must say in words what it shows, and bring its own ink if it brings its own ground. */
    public static void svg(String svg, String from) throws Exception {
        assertFalse(svg.toLowerCase(Locale.ROOT).contains("<script"), from + ": an SVG with a script");
        Document picture = element(svg, from);
        Element root = picture.getDocumentElement();
        assertEquals("svg", root.getTagName(), from);
        boolean named = !root.getAttribute("aria-label").isBlank()
                || picture.getElementsByTagName("title").getLength() > 0;
        assertTrue(named, from + ": the picture has neither a title nor an aria-label");
        String style = root.getAttribute("style");
        assertTrue(
                !WHITE_GROUND.matcher(style).find() || style.matches("(.*;)?\\s*color\\s*:\\s*#.*"),
                from + ": a white ground, and the ink of a page that may be dark");
    }

    /** Checks text for numbers with more digits than a measurement has. */
    public static void digits(String text, String from) {
        Matcher found = TOO_MANY_DIGITS.matcher(text);
        assertFalse(found.find(), () -> from + ": a number with too many digits, " + found.group());
    }

    private static Document element(String xml, String from) throws Exception {
        Document page;
        try {
            DocumentBuilder builder = DocumentBuilderFactory.newInstance().newDocumentBuilder();
            builder.setErrorHandler(null);
            page = builder.parse(new InputSource(new StringReader(xml.replace("&nbsp;", "\u00a0"))));
        } catch (SAXException e) {
            throw new AssertionError(from + ": not well-formed: " + e.getMessage() + "\n" + xml, e);
        }
        NodeList all = page.getElementsByTagName("*");
        for (int i = 0; i < all.getLength(); i++) {
            check((Element) all.item(i), from);
        }
        return page;
    }

    private static void check(Element element, String from) {
        String name = element.getTagName().toLowerCase(Locale.ROOT);
        assertFalse(
                List.of("iframe", "object", "embed", "link", "base", "form", "meta")
                        .contains(name),
                from + ": an element <" + name + ">");
        for (int i = 0; i < element.getAttributes().getLength(); i++) {
            Attr attribute = (Attr) element.getAttributes().item(i);
            String key = attribute.getName().toLowerCase(Locale.ROOT);
            String value = attribute.getValue().strip();
            assertFalse(key.startsWith("on"), from + ": an attribute that runs code, " + key);
            if (List.of("src", "href", "xlink:href", "srcset", "data", "action").contains(key)) {
                assertTrue(value.startsWith("#") || value.startsWith("data:image/"), from + ": loads " + value);
            }
            if (key.equals("style")) {
                style(value, from);
            }
        }
        if (name.equals("style")) {
            style(element.getTextContent(), from);
        }
        if (name.equals("img")) {
            assertFalse(element.getAttribute("alt").isBlank(), from + ": an image without words");
        }
    }

    private static void style(String style, String from) {
        assertFalse(FETCH.matcher(style).find(), from + ": a style that loads: " + style);
    }

    /** The linked views' script is the same for all, up to the name of its page; only its beginning is compared. */
    private static boolean isOurs(String script) {
        if (script.startsWith("\n(function () {\n'use strict';\n/* uPlot 1.6.30\n")) {
            return !script.contains("alert(1)") && !FETCH.matcher(script).find();
        }
        List<Integer> rows = IntStream.range(0, 9).boxed().toList();
        String known =
                Table.titled("n").withNumber("n", "", 0, rows, n -> n).html().orElseThrow();
        return known.contains("<script>" + script + "</script>")
                && !FETCH.matcher(script).find();
    }
}
