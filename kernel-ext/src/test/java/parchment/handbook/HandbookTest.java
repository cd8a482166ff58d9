package parchment.handbook;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.MatchResult;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Looks at the pages of the handbook as they are made: of the book itself, and of a book by somebody who means harm. */
class HandbookTest {
    private static final Path HOME = Path.of("..").toAbsolutePath().normalize();
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

    private static Map<String, String> pages;

    @BeforeAll
    static void make() throws IOException {
        pages = Handbook.of(HOME).pages();
    }

    private record Tag(String name, Map<String, String> attributes) {}

    private static List<Tag> tags(String html) {
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

    private static List<String> all(String html, String tag, String attribute) {
        return tags(html).stream()
                .filter(each -> each.name().equals(tag))
                .map(each -> each.attributes().get(attribute))
                .filter(value -> value != null)
                .toList();
    }

    private static List<String> names(String html) {
        return tags(html).stream()
                .map(each -> each.attributes().get("id"))
                .filter(id -> id != null)
                .toList();
    }

    private static String body(String html) {
        return html.substring(html.indexOf("<main"), html.indexOf("</main>"));
    }

    /** Returns the links of a book that lead nowhere in it. */
    private static List<String> broken(Map<String, String> book) {
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

    @Test
    void everyLinkLeadsToAPageAndAHeadingOfTheBook() {
        assertEquals(List.of(), broken(pages));
        long links = pages.values().stream()
                .mapToLong(html -> all(body(html), "a", "href").size())
                .sum();
        assertTrue(links > 100, links + " links");
    }

    @Test
    void noNameComesTwiceOnAPage() {
        pages.forEach((file, html) -> assertEquals(names(html).size(), new HashSet<>(names(html)).size(), file));
    }

    @Test
    void everyPageIsInTheContentsOnceAndEveryMarkdownFileOfTheFolderIsAPage() throws IOException {
        String contents = pages.get("index.html");
        List<String> listed = all(body(contents), "a", "href");
        List<String> expected = pages.keySet().stream()
                .filter(file -> !file.equals("index.html"))
                .toList();
        assertEquals(expected, listed, "in the order of the contents");
        Set<String> files = new TreeSet<>();
        Path docs = HOME.resolve("docs");
        try (Stream<Path> walk = Files.walk(docs)) {
            walk.filter(file -> file.toString().endsWith(".md"))
                    .map(file -> docs.relativize(file).toString().replace('\\', '/'))
                    .forEach(name ->
                            files.add(name.equals("README.md") ? "index.html" : name.replaceFirst("md$", "html")));
        }
        files.addAll(Set.of("project/readme.html", "project/developers.html"));
        assertEquals(files, new TreeSet<>(pages.keySet()));
    }

    @Test
    void theWayOnLeadsThroughEveryPage() {
        List<String> way = new ArrayList<>(List.of("index.html"));
        Pattern next = Pattern.compile("Next: <a href=\"([^\"]+)\"");
        while (true) {
            String here = way.get(way.size() - 1);
            var found = next.matcher(pages.get(here));
            if (!found.find()) {
                break;
            }
            way.add(Path.of(here)
                    .resolveSibling(found.group(1))
                    .normalize()
                    .toString()
                    .replace('\\', '/'));
        }
        assertEquals(List.copyOf(pages.keySet()), way);
    }

    @Test
    void aPageOtherThanTheContentsListsTheChaptersAndItsOwnSections() {
        String page = pages.get("marks-and-phases.html");
        String list = page.substring(page.indexOf("<nav class=\"list\""));
        assertTrue(list.contains("<a href=\"#top\" aria-current=\"page\">Marks and phases</a>"), list);
        assertTrue(list.contains("<a href=\"#cleaning\">Cleaning</a>"), list);
        assertTrue(list.contains("<a href=\"one-clock.html\">One clock for many batches</a>"), list);
        assertTrue(
                Pattern.compile("<a href=\"index.html#measured\">Measured \\(\\d\\d pages\\)</a>")
                        .matcher(list)
                        .find(),
                list);
        assertFalse(list.contains("measurements/"), "a long part opens on its own pages only");
        assertTrue(pages.get("measurements/drift.html").contains("<a href=\"../measurements/marks.html\">"));
        assertFalse(pages.get("index.html").contains("<nav class=\"list\""));
    }

    @Test
    void everyPictureLiesInsideAndHasWords() {
        int pictures = 0;
        for (Map.Entry<String, String> page : pages.entrySet()) {
            for (Tag tag : tags(page.getValue())) {
                if (tag.name().equals("img")) {
                    pictures++;
                    assertTrue(tag.attributes().get("src").matches("data:image/(svg\\+xml|png);base64,[\\w+/=]+"));
                    assertTrue(tag.attributes().get("alt").split(" ").length >= 6, page.getKey() + ": " + tag);
                }
            }
        }
        assertEquals(picturesWritten(), pictures);
    }

    private static int picturesWritten() {
        try (Stream<Path> files = Files.list(HOME.resolve("docs").resolve("pictures"))) {
            return (int) files.count();
        } catch (IOException e) {
            throw new java.io.UncheckedIOException(e);
        }
    }

    @Test
    void nothingIsLoadedOrRun() {
        pages.forEach((file, html) -> assertLoadsNothing(html, file));
    }

    private static void assertLoadsNothing(String html, String file) {
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

    @Test
    void javaHasItsColoursAndOtherCodeHasNone() {
        assertTrue(pages.get("project/readme.html").contains("<span class=\"keyword\">var</span> logbook"));
        String shell = pages.get("install.html");
        assertTrue(shell.contains("<pre class=\"code\" tabindex=\"0\"><code>"));
    }

    private static Path write(Path folder, String name, String text) throws IOException {
        Path file = folder.resolve(name);
        Files.createDirectories(file.getParent());
        return Files.writeString(file, text);
    }

    @Test
    void whatIsNotInTheBookStaysAsItsWords(@TempDir Path temporary) throws IOException {
        Path home = temporary.resolve("hóme of pages");
        write(home, "LICENSE", "words");
        write(home, "src/Some.java", "class Some {}");
        write(temporary, "secret.md", "# Secret\n\ndo not show");
        write(temporary, "secret.svg", "<svg/>");
        write(home, "docs/other.md", "# Other\n\n## Heading\n\n[unlisted](unlisted.md)");
        write(home, "docs/unlisted.md", "# Unlisted\n");
        write(
                home,
                "docs/deep/folder/page.md",
                "# Deep\n\n[up](../../other.md#heading) [folder](..) [home](../../README.md)");
        write(home, "docs/README.md", """
                # Book

                ## Part

                [other](other.md), [other again](other.md#heading), [secret](../../secret.md), [deep](deep/folder/page.md),
                [licence](../LICENSE) [source](../src/Some.java) [none](none.md)
                [lost heading](other.md#lost) [lost here](#lost) [here](#part) [out](https://example.org/a?b=1&c=2)
                [absolute](/etc/hosts) [file](file:///etc/hosts)

                ![a picture that is not in the project](../../secret.svg)
                """);
        Map<String, String> book = Handbook.of(home).pages();
        assertEquals(List.of("index.html", "other.html", "deep/folder/page.html"), List.copyOf(book.keySet()));
        assertEquals(List.of(), broken(book));
        String contents = body(book.get("index.html"));
        assertEquals(
                List.of(
                        "other.html",
                        "other.html#heading",
                        "deep/folder/page.html",
                        "other.html",
                        "#part",
                        "https://example.org/a?b=1&amp;c=2"),
                all(contents, "a", "href"));
        for (String words : List.of("secret", "licence", "source", "none", "lost here", "absolute", "file")) {
            assertTrue(
                    Pattern.compile("[ \\n>]" + words + "[ ,\\n<]")
                            .matcher(contents)
                            .find(),
                    words + ": " + contents);
        }
        assertTrue(book.get("other.html").contains("<p>unlisted</p>"), "no page of the contents, so no link");
        assertTrue(contents.contains("<em>a picture that is not in the project</em>"), contents);
        assertFalse(String.join("", book.values()).contains("do not show"));
        assertEquals(
                List.of("../../other.html#heading", "../../index.html", "../../index.html"),
                all(body(book.get("deep/folder/page.html")), "a", "href"));
    }

    @Test
    void markupInAPageIsShownAsItIsWritten(@TempDir Path home) throws IOException {
        String script = "<script>alert(1)</script>";
        String image = "\"><img src=x onerror=alert(1)>";
        write(home, "docs/README.md", "# " + script + "\n\n## " + image + "\n\n[" + script + image + "](bad.md)\n");
        write(
                home,
                "docs/bad.md",
                String.join(
                        "\n\n",
                        "# " + script + " @WORDS@ @LIST@",
                        "## " + image,
                        script,
                        "in a line " + script + " and " + image,
                        "[words](javascript:alert(1)) [more](data:text/html,x) [x](JaVaScRiPt:alert(1)) <javascript:alert(1)>",
                        "[titled](other.md \"" + "x' onmouseover='alert(1)" + "\")",
                        "![" + script + "](https://example.org/x.png) ![" + image.replace("\"", "\\\"") + "](bad.svg)",
                        "```java\nvar s = \"" + script + "\"; // " + image + "\n```",
                        "```\" onclick=\"alert(1)\n" + script + "\n```",
                        "| " + script + " | b |\n| --- | --- |\n| " + image + " | <iframe src=x> |",
                        "<iframe src=\"https://example.org\"></iframe>",
                        "<style>body{display:none}</style>"));
        write(home, "docs/bad.svg", "<svg xmlns=\"http://www.w3.org/2000/svg\">" + script + "</svg>");
        Map<String, String> book = Handbook.of(home).pages();
        assertEquals(2, book.size());
        assertEquals(List.of(), broken(book));
        book.forEach((file, html) -> {
            assertLoadsNothing(html, file);
            assertEquals(
                    List.of(),
                    all(html, "a", "href").stream()
                            .filter(address -> address.matches("(?i)(javascript|data):.*"))
                            .toList());
            all(html, "img", "src").forEach(address -> assertTrue(address.startsWith("data:image/"), address));
            assertTrue(html.contains("&lt;script&gt;alert(1)&lt;/script&gt;"), html);
        });
        assertTrue(book.get("bad.html").contains("@WORDS@ @LIST@</h1>"), "a page's words are not taken for the form's");
        assertTrue(
                book.get("bad.html").contains("@WORDS@ @LIST@ - Parchment handbook</title>"),
                "a page's words are not taken for the form's");
    }

    @Test
    void saysThatThePagesAreNotThere(@TempDir Path empty) {
        var failure = assertThrows(IllegalArgumentException.class, () -> Handbook.of(empty));
        assertTrue(failure.getMessage().contains("there is no file " + empty.resolve("docs")), failure.getMessage());
    }

    @Test
    void writesEachPageAndLeavesWhatElseIsThere(@TempDir Path temporary) throws IOException {
        Path folder = temporary.resolve("new").resolve("bóok");
        Path note = write(folder, "note.txt", "mine");
        Handbook handbook = Handbook.of(HOME);
        Path contents = handbook.writeTo(folder);
        assertEquals(folder.resolve("index.html"), contents);
        for (Map.Entry<String, String> page : handbook.pages().entrySet()) {
            assertEquals(page.getValue(), Files.readString(folder.resolve(page.getKey())));
        }
        assertEquals("mine", Files.readString(note));
        assertEquals("The handbook, " + handbook.pages().size() + " pages", handbook.toString());
    }

    @Test
    void figuresAreThoseOfTheFolderByteForByte() throws IOException {
        String picture = java.util.Base64.getEncoder()
                .encodeToString(Files.readAllBytes(HOME.resolve("docs/pictures/calendar.svg")));
        assertTrue(pages.get("drift.html").contains(picture));
        List<String> framed = Pattern.compile("<figure class=\"picture\" tabindex=\"0\"><img ")
                .matcher(pages.get("drift.html"))
                .results()
                .map(MatchResult::group)
                .toList();
        assertEquals(1, framed.size());
    }
}
