package parchment.notebook;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import parchment.kernel.page.CellPage;
import parchment.kernel.page.Shown;
import parchment.kernel.words.CellError;
import parchment.logbook.contents.Cautions;

/** A notebook that ran, as Markdown. That docs/tour.md is what the tour says on the demo logbook is held by test_release_with_java.py, which runs it. */
class MarkdownPageTest {
    private static final Path DOCS = Path.of("..", "docs").toAbsolutePath().normalize();
    private static final Path TOUR = DOCS.resolveSibling("notebooks").resolve("tour.ipynb");
    private static final String PICTURE =
            "<svg viewBox=\"0 0 9 9\" aria-label=\"Sweetness\" style=\"color:inherit;background:none;max-width:100%\">"
                    + "<desc>Sweetness of 3 batches. Across: 1.5 to 2.</desc><svg><path d=\"M1 1\"/></svg></svg>";

    private static String html(String html) {
        return MarkdownOutput.of(html, new MarkdownOutput.Wall() {
            private int hung;

            @Override
            public String hang(String svg) {
                return "(picture " + ++hung + ", " + svg.length() + " signs)";
            }

            @Override
            public String under() {
                return "(under it)";
            }
        });
    }

    @Test
    void paragraphsHeadingsAndNotesKeepTheirKind() {
        assertEquals(
                "**Title**\n\nOne **bold** line with `a code` in it.\n\n> Watch the drum.\n\nWords without a paragraph.\n\n- one\n- two\n\n```\na  b\n```",
                html(
                        "<section class=\"x\"><h3>Title</h3>\n<p style=\"a\">One <b>bold</b>\nline<br> with <code>a code</code> in it.</p>"
                                + "<p role=\"note\">Watch the drum.</p>Words without a paragraph.<ul><li>one</li><li>two</li></ul><pre>a  b\n</pre></section>"));
    }

    @Test
    void whatIsASignInMarkdownIsShownAsItIs() {
        assertEquals(
                "a \\* b \\_ c \\[°C\\] \\<b\\> \\| \\# \\$5 \\&amp; \\`x\\`",
                html("<p>a * b _ c [°C] &lt;b&gt; | # $5 &amp;amp; `x`</p>"));
    }

    @Test
    void scriptsStylesAndButtonsAreLeftOut() {
        assertEquals(
                "kept",
                html("<div><style>p{color:red}</style><script>if (a < b && c) {}</script><button>sort</button>"
                        + "<input type=\"text\"><p>kept</p></div>"));
    }

    @Test
    void aPictureOfDotsIsSaidInWords() {
        assertEquals(
                "*Picture: Drops \\*, 1 series (the notebook shows the picture)*",
                html("<img alt=\"Picture: Drops *, 1 series\" src=\"data:image/png;base64,AQI=\">"));
        assertEquals("kept", html("<p>kept</p><img src=\"data:image/png;base64,AQI=\">"));
    }

    @Test
    void wordsThatAreAttributesElsewhereAreLeftAsTheyStandInAText() {
        assertTrue(html("<p>To see each lot, open \"More\" below; a box may be checked / selected > once.</p>")
                .contains("To see each lot, open \"More\" below; a box may be checked / selected"));
        assertTrue(html("<p title=\"may be open now\">One <input type='checkbox' checked> <b hidden>two</b></p>")
                .contains("One"));
    }

    @Test
    void aFoldedPartStaysFoldedByItsTitle() {
        assertEquals(
                "*Folded away in the notebook: How this was worked out*",
                html("<details open><summary>How this was worked out</summary><p>Methods.</p></details>"));
        assertEquals("", html("<details><summary>220 more rows</summary><table><tr><td>x</td></tr></table></details>"));
    }

    private static String table(int rows) {
        return "<table><caption>Marks</caption><thead><tr><th scope=\"col\">mark</th><th class=\"number\">± <span>[s]</span></th></tr>"
                + "</thead><tbody>"
                + IntStream.rangeClosed(1, rows)
                        .mapToObj(i -> "<tr><th>drop</th><td class=\"number\">" + i + "</td></tr>")
                        .collect(Collectors.joining("\n"))
                + "</tbody></table>";
    }

    @Test
    void aTableShowsAllOfSixteenRowsAndEightOfSeventeen() {
        assertEquals("**Marks**\n\n| mark | ± \\[s\\] |\n| --- | ---: |\n| drop | 1 |\n| drop | 2 |", html(table(2)));
        String sixteen = html(table(16));
        assertTrue(sixteen.endsWith("| drop | 16 |"), sixteen);
        String seventeen = html(table(17));
        assertTrue(
                seventeen.endsWith("| drop | 8 |\n\n*The first 8 rows; the notebook shows all of them.*"), seventeen);
    }

    @Test
    void aPictureIsTakenOutWholeWithThePicturesInsideIt() {
        assertEquals(
                "before\n\n(picture 1, " + PICTURE.length()
                        + " signs)\n\n(under it)\n\nafter\n\n(picture 2, 11 signs)\n\n(under it)",
                html("<p>before</p><figure>" + PICTURE + "</figure><p>after</p><svg></svg>"));
    }

    @Test
    void ofAPictureWithALayoutForNarrowPagesTheWideOneIsTaken() {
        assertEquals(
                "before\n\n(picture 1, 24 signs)\n\n(under it)\n\nafter",
                html(
                        "<p>before</p><svg class=\"wide\"></svg><svg role=\"img\" class=\"narrow\"><svg></svg></svg><p>after</p>"));
    }

    @Test
    void aPictureInAFileStandsAloneDarkOnWhiteAndSaysWhatItShows() {
        String alone = InlinePictures.alone(PICTURE);
        assertTrue(alone.startsWith("<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"0 0 9 9\""), alone);
        assertTrue(
                alone.contains(
                        "style=\"color:#1a1a1a;background:#fff;max-width:100%\"><rect width=\"100%\" height=\"100%\" fill=\"#fff\"/>"),
                alone);
        assertEquals("Sweetness of 3 batches. Across: 1.5 to 2.", InlinePictures.words(PICTURE));
        assertEquals("Only a label", InlinePictures.words("<svg aria-label=\"Only a label\"></svg>"));
        String sentence = "Line of the probe; ".repeat(30).strip();
        String words = InlinePictures.words("<svg><desc>" + sentence + "</desc></svg>");
        assertTrue(words.endsWith("Line of the probe.") && words.length() <= 241, words);
    }

    private static String described(String words) {
        return InlinePictures.words("<svg><desc>" + words + "</desc></svg>");
    }

    @Test
    void wordsOfAPictureAreCutAtTheLastEndOfASentenceBeforeTwoHundredAndFortySigns() {
        String whole = "First; " + "x".repeat(233);
        assertEquals(240, whole.length());
        assertEquals(whole, described(whole));
        assertEquals("First.", described(whole + "y"));
        String ends = "x".repeat(232) + "; last";
        assertEquals("First; " + "x".repeat(232) + ".", described("First; " + ends));
        assertEquals("First.", described("First; x" + ends));
        // One sentence alone is never cut inside.
        String one = "x".repeat(300) + "; last";
        assertEquals("x".repeat(300) + ".", described(one));
        assertEquals("x".repeat(300), described("x".repeat(300)));
    }

    @Test
    void htmlThatIsNotWellFormedIsRefused() {
        assertThrows(IllegalArgumentException.class, () -> html("<p>one<p>two"));
    }

    private static Shown shown(String text, String html) {
        Map<String, String> forms = new LinkedHashMap<>();
        forms.put(Shown.TEXT, text);
        if (!html.isEmpty()) {
            forms.put(Shown.HTML, html);
        }
        return new Shown(forms);
    }

    private static Notebook notebook(List<String> markdown, List<CellOutput> outputs) {
        String cells = markdown.stream()
                .map(words -> "{\"cell_type\":\"markdown\",\"source\":\"" + words + "\"}")
                .collect(Collectors.joining(","));
        Notebook read = Notebook.parse(
                "{\"nbformat\":4,\"cells\":[" + cells + ",{\"cell_type\":\"code\",\"source\":\"ask()\"}]}", "made");
        List<Cell> ran = new ArrayList<>(read.cells());
        ran.set(ran.size() - 1, ran.get(ran.size() - 1).ran(1, outputs));
        return read.withCells(ran);
    }

    private static MarkdownPage page(Notebook notebook, Path folder) {
        return MarkdownPage.of(notebook, folder.resolve("notebooks/my tour.ipynb"), folder.resolve("docs"));
    }

    @Test
    void thePageOfAnInventedMachineSaysSoFirstUnderEachPictureAndLast(@TempDir Path folder) {
        MarkdownPage page = page(
                notebook(
                        List.of(
                                "# A tour\\n\\nSee [the explorer](explorer.ipynb), [a heading](#a) and [a site](https://example.org)."),
                        List.of(
                                new CellOutput.Display(
                                        shown(Cautions.INVENTED_PAGE, "<p>" + Cautions.INVENTED_PAGE + "</p>")),
                                new CellOutput.Result(shown("a picture", "<div>" + PICTURE + "</div>")))),
                folder);
        String rest = Cautions.INVENTED_PAGE.substring(Cautions.INVENTED_MACHINE.length());
        assertEquals(
                "# A tour\n\n> **Invented machine: do not roast.**" + rest
                        + "\n\n*The notebook [my tour.ipynb](../notebooks/my%20tour.ipynb) as it ran. Long tables are cut, and what is folded"
                        + " away in the notebook stays folded.*\n\nSee [the explorer](../notebooks/explorer.ipynb), [a heading](#a) and"
                        + " [a site](https://example.org).\n\n```java\nask()\n```\n\n![Sweetness of 3 batches. Across: 1.5 to"
                        + " 2.](pictures/my%20tour/1.svg)\n\n*Invented machine: do not roast.*\n\n> Invented machine: do not roast."
                        + rest
                        + "\n\n*" + MarkdownPage.SIGN + "; what is to be changed is changed in the notebook.*\n",
                page.text());
        assertEquals(1, page.pictures().size());
    }

    @Test
    void aPageOfSomebodysOwnLogbookSaysNothingOfInventedMachines(@TempDir Path folder) {
        String text = page(
                        notebook(
                                List.of("No title"),
                                List.of(
                                        new CellOutput.Printed(CellPage.Stream.STDOUT, "printed ```\n```\nso\n"),
                                        new CellOutput.Result(shown("only text", "")),
                                        new CellOutput.Result(shown("text of broken", "<p>one<p>" + PICTURE)),
                                        new CellOutput.Failed(new CellError("Slip", "said", List.of("It failed."))))),
                        folder)
                .text();
        assertFalse(text.contains("Invented"), text);
        assertTrue(text.startsWith("*The notebook [my tour.ipynb]"), text);
        assertTrue(
                text.contains(
                        "````text\nprinted ```\n```\nso\n````\n\n```text\nonly text\n```\n\n```text\ntext of broken\n```\n\n```text\nIt failed."),
                text);
        assertFalse(text.contains("!["), text);
    }

    @Test
    void aPageIsWrittenOverAnEarlierOneAndOverNothingElse(@TempDir Path folder) throws IOException {
        Notebook two = notebook(
                List.of("# T"), List.of(new CellOutput.Result(shown("two", "<div>" + PICTURE + PICTURE + "</div>"))));
        Notebook one =
                notebook(List.of("# T"), List.of(new CellOutput.Result(shown("one", "<div>" + PICTURE + "</div>"))));
        Path file = page(two, folder).write();
        Path pictures = file.resolveSibling("pictures").resolve("my tour");
        assertEquals(folder.resolve("docs/my tour.md").toAbsolutePath(), file);
        Files.writeString(pictures.resolve("of my own.svg"), "<svg/>");
        assertTrue(Files.exists(pictures.resolve("2.svg")));
        page(one, folder).write();
        try (Stream<Path> files = Files.list(pictures)) {
            assertEquals(
                    List.of("1.svg", "of my own.svg"),
                    files.map(each -> each.getFileName().toString()).sorted().toList());
        }
        Files.writeString(file, "# My own words");
        IOException refused =
                assertThrows(IOException.class, () -> page(one, folder).write());
        assertTrue(refused.getMessage().contains("is no page that 'run --markdown' wrote"), refused.getMessage());
        assertEquals("# My own words", Files.readString(file));
    }

    /** Quick to tell, before anything runs: the words and the code of the published tour are those of the notebook. */
    @Test
    void thePublishedTourHasTheCellsOfTheNotebook() throws IOException {
        String published = Files.readString(DOCS.resolve("tour.md"));
        String cells = MarkdownPage.of(Notebook.read(TOUR), TOUR, DOCS).text();
        int at = 0;
        for (String line : cells.lines().filter(line -> !line.isBlank()).toList()) {
            int found = published.indexOf(line + "\n", at);
            assertTrue(
                    found >= 0,
                    "docs/tour.md is older than the notebook, which says: " + line
                            + "\nRun: ./parchment run --markdown docs");
            at = found + line.length();
        }
        Pattern code = Pattern.compile("(?m)^```java$");
        assertEquals(
                code.matcher(cells).results().count(),
                code.matcher(published).results().count());
        assertTrue(published.contains("> **" + Cautions.INVENTED_MACHINE + "**"), "the caution comes first");
    }

    @Test
    void thePublishedTourIsSmallAndShowsEveryOutputAsAPageDoes() throws IOException {
        String published = Files.readString(DOCS.resolve("tour.md"));
        long all = published.length();
        for (String name : Pattern.compile("\\]\\((pictures/tour/[0-9]+\\.svg)\\)")
                .matcher(published)
                .results()
                .map(found -> found.group(1))
                .toList()) {
            long size = Files.size(DOCS.resolve(name));
            assertTrue(size < 250_000, name + ": " + size + " bytes");
            all += size;
        }
        assertTrue(all < 1_000_000, all + " bytes");
        assertFalse(published.contains("```text"), "an output could only be shown as text");
        try (Stream<Path> pictures = Files.list(DOCS.resolve("pictures").resolve("tour"))) {
            for (Path picture : pictures.toList()) {
                assertTrue(published.contains("pictures/tour/" + picture.getFileName()), picture + " is not used");
            }
        }
    }
}
