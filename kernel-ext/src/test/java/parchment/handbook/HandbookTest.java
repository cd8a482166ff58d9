package parchment.handbook;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static parchment.handbook.MadePages.all;
import static parchment.handbook.MadePages.body;
import static parchment.handbook.MadePages.broken;
import static parchment.handbook.MadePages.names;
import static parchment.handbook.MadePages.tags;

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
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Looks at the pages of the handbook as they are made. */
class HandbookTest {
    private static final Path HOME = Path.of("..").toAbsolutePath().normalize();
    private static Map<String, String> pages;

    @BeforeAll
    static void make() throws IOException {
        pages = Handbook.of(HOME).pages();
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
            for (MadePages.Tag tag : tags(page.getValue())) {
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
        try (Stream<Path> files = Files.walk(HOME.resolve("docs").resolve("pictures"))) {
            return (int) files.filter(Files::isRegularFile).count();
        } catch (IOException e) {
            throw new java.io.UncheckedIOException(e);
        }
    }

    @Test
    void nothingIsLoadedOrRun() {
        pages.forEach((file, html) -> MadePages.assertLoadsNothing(html, file));
    }

    @Test
    void javaHasItsColoursAndOtherCodeHasNone() {
        assertTrue(pages.get("project/readme.html").contains("<span class=\"keyword\">var</span> logbook"));
        String shell = pages.get("install.html");
        assertTrue(shell.contains("<pre class=\"code\" tabindex=\"0\"><code>"));
    }

    @Test
    void saysThatThePagesAreNotThere(@TempDir Path empty) {
        var failure = assertThrows(IllegalArgumentException.class, () -> Handbook.of(empty));
        assertTrue(failure.getMessage().contains("there is no file " + empty.resolve("docs")), failure.getMessage());
    }

    @Test
    void writesEachPageAndLeavesWhatElseIsThere(@TempDir Path temporary) throws IOException {
        Path folder = temporary.resolve("new").resolve("bóok");
        Path note = Files.writeString(Files.createDirectories(folder).resolve("note.txt"), "mine");
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
        List<String> written = Pattern.compile("\\]\\((pictures/[a-z-]+\\.svg)\\)")
                .matcher(Files.readString(HOME.resolve("docs/drift.md")))
                .results()
                .map(found -> found.group(1))
                .toList();
        assertTrue(written.contains("pictures/calendar.svg"), written.toString());
        for (String file : written) {
            String picture = java.util.Base64.getEncoder()
                    .encodeToString(Files.readAllBytes(HOME.resolve("docs").resolve(file)));
            assertTrue(pages.get("drift.html").contains(picture), file);
        }
        List<String> framed = Pattern.compile("<figure class=\"picture\" tabindex=\"0\"><img ")
                .matcher(pages.get("drift.html"))
                .results()
                .map(MatchResult::group)
                .toList();
        assertEquals(written.size(), framed.size());
    }

    /** A line too long for the window goes on below and set in; a name or a number with its error in a table does not break. */
    @Test
    void cutsNoFormulaAndBreaksNoName() {
        String methods = pages.get("methods.html");
        String style = methods.substring(methods.indexOf("<style>"), methods.indexOf("</style>"));
        assertTrue(style.contains(".words pre { white-space: pre-wrap; overflow-wrap: break-word;"), style);
        assertTrue(style.contains(".words pre .line { display: block; padding-left: 2em; text-indent: -2em; }"), style);
        assertTrue(methods.contains("<span class=\"line\">q = sign(f&#39;) √|f&#39;|"), methods);
        String halo = pages.get("measurements/halo.html");
        assertTrue(halo.contains("<td class=\"whole\">90.6 ± 0.7 %</td>"), halo);
        assertTrue(style.contains("td.whole, th.whole { white-space: nowrap; }"), style);
        assertTrue(style.contains("@media (min-width: 700px) { .words td code { white-space: nowrap; } }"), style);
    }
}
