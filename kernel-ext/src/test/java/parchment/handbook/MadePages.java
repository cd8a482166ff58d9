package parchment.handbook;

import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.regex.Pattern;
import java.util.stream.Collectors;

/** Reads made pages as a browser would: their tags, and where their links lead. */
final class MadePages {
    private static final Pattern TAG = Pattern.compile("<([a-z][a-z0-9]*)((?:\\s+[a-z-]+=\"[^\"]*\")*)\\s*/?>");
    private static final Pattern ATTRIBUTE = Pattern.compile("([a-z-]+)=\"([^\"]*)\"");
    /** All that a page may be made of; nothing here can load or run anything but a picture, which must lie inside. */
    private static final Set<String> TAGS = Set.of(
            "html",
            "head",
            "meta",
            "title",
            "style",
            "body",
            "nav",
            "main",
            "div",
            "span",
            "a",
            "figure",
            "img",
            "h1",
            "h2",
            "h3",
            "h4",
            "h5",
            "h6",
            "p",
            "ul",
            "ol",
            "li",
            "strong",
            "em",
            "code",
            "pre",
            "blockquote",
            "table",
            "thead",
            "tbody",
            "tr",
            "th",
            "td",
            "br",
            "hr");

    private MadePages() {}

    record Tag(String name, Map<String, String> attributes) {}

    static List<Tag> tags(String html) {
        return TAG.matcher(html)
                .results()
                .map(found -> new Tag(
                        found.group(1),
                        ATTRIBUTE
                                .matcher(found.group(2))
                                .results()
                                .collect(Collectors.toMap(each -> each.group(1), each -> each.group(2)))))
                .toList();
    }

    static List<String> all(String html, String tag, String attribute) {
        return tags(html).stream()
                .filter(each -> each.name().equals(tag))
                .map(each -> each.attributes().get(attribute))
                .filter(value -> value != null)
                .toList();
    }

    static List<String> names(String html) {
        return tags(html).stream()
                .map(each -> each.attributes().get("id"))
                .filter(id -> id != null)
                .toList();
    }

    static String body(String html) {
        return html.substring(html.indexOf("<main"), html.indexOf("</main>"));
    }

    /** Returns the links of a book that lead nowhere in it. */
    static List<String> broken(Map<String, String> book) {
        List<String> broken = new ArrayList<>();
        book.forEach((file, html) -> {
            for (String link : all(html, "a", "href")) {
                if (link.matches("(https?|mailto):.*")) {
                    continue;
                }
                int hash = link.indexOf('#');
                String path = hash < 0 ? link : link.substring(0, hash);
                String target = path.isEmpty()
                        ? file
                        : Path.of(file)
                                .resolveSibling(path)
                                .normalize()
                                .toString()
                                .replace('\\', '/');
                if (!book.containsKey(target)) {
                    broken.add(file + ": " + link + ": no such page");
                } else if (hash >= 0 && !names(book.get(target)).contains(link.substring(hash + 1))) {
                    broken.add(file + ": " + link + ": no such heading");
                }
            }
        });
        return broken;
    }

    /** Holds a page to the tags that our pages are made of, without a script, a style of its own or an address to load from. */
    static void assertLoadsNothing(String html, String file) {
        String left = TAG.matcher(html.replaceFirst("^<!DOCTYPE html>", ""))
                .replaceAll("")
                .replaceAll("</[a-z0-9]+>", "");
        assertFalse(left.contains("<"), () -> file + ": " + left.substring(left.indexOf('<')));
        for (Tag tag : tags(html)) {
            assertTrue(TAGS.contains(tag.name()), file + ": " + tag);
            tag.attributes().keySet().forEach(name -> assertFalse(name.startsWith("on"), file + ": " + tag));
            assertFalse(tag.attributes().containsKey("style"), file + ": " + tag);
        }
        String style = html.substring(html.indexOf("<style>"), html.indexOf("</style>"));
        assertFalse(style.contains("url(") || style.contains("@import"), file);
    }
}
