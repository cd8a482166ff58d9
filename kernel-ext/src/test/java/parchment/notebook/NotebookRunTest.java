package parchment.notebook;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import java.util.Optional;
import java.util.regex.Pattern;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import parchment.kernel.cell.Evaluator;
import parchment.kernel.page.Outcome;

class NotebookRunTest {
    private static Evaluator evaluator;

    @BeforeAll
    static void open() {
        evaluator = Evaluator.open();
    }

    @AfterAll
    static void close() {
        evaluator.close();
    }

    private static final NotebookRun.Progress SILENT = new NotebookRun.Progress() {
        @Override
        public void cellBegins(int number, int of, Cell cell) {}

        @Override
        public void cellEnded(int number, int of, Duration took, Outcome outcome) {}
    };

    private static NotebookRun.Result run(Notebook notebook) {
        return NotebookRun.of(notebook, evaluator).run(SILENT);
    }

    private static Notebook small() throws IOException {
        try (InputStream in = NotebookRunTest.class.getResourceAsStream("/small.ipynb")) {
            return Notebook.parse(new String(in.readAllBytes(), StandardCharsets.UTF_8), "small");
        }
    }

    private static Notebook of(String... cells) {
        StringBuilder json = new StringBuilder("{\"nbformat\":4,\"nbformat_minor\":5,\"metadata\":{},\"cells\":[");
        for (int i = 0; i < cells.length; i++) {
            String kind = cells[i].startsWith("md:") ? "markdown" : "code";
            String source = cells[i].replaceFirst("^md:", "");
            String quoted = new com.google.gson.JsonPrimitive(source).toString();
            json.append(i == 0 ? "" : ",")
                    .append("{\"cell_type\":\"" + kind + "\",\"metadata\":{},\"outputs\":[],\"source\":" + quoted
                            + "}");
        }
        return Notebook.parse(json + "]}", "made here");
    }

    @Test
    void runsEveryCellAndKeepsItsOutputs() throws IOException {
        NotebookRun.Result result = run(small());
        assertEquals(Optional.empty(), result.error());
        String page = HtmlPage.of(result.notebook(), "small");
        assertTrue(page.contains(">42<"), page);
        assertTrue(page.contains("<circle"), page);
    }

    private static int times(String words, String text) {
        return text.split(Pattern.quote(words), -1).length - 1;
    }

    @Test
    void keepsAFormThatIsJsonAsJson(@TempDir Path folder) throws IOException {
        Path file = folder.resolve("forms.ipynb");
        run(of("Display.as(\"application/json\", \"[{\\\"a\\\": [1, 2]}]\")"))
                .notebook()
                .write(file);
        assertTrue(Files.readString(file).replaceAll("\\s", "").contains("\"application/json\":[{\"a\":[1,2]}]"));
        CellOutput read = Notebook.read(file).cells().get(0).outputs().get(0);
        assertEquals(
                "[{\"a\":[1,2]}]", ((CellOutput.Result) read).shown().forms().get("application/json"));
    }

    @Test
    void aPageShowsTheFormsThatABrowserKnows() {
        String page = HtmlPage.of(
                run(of(
                                "Display.as(\"image/gif\", \"R0lGOD==\")",
                                "Display.as(\"text/markdown\", \"*leaning* <b>\")",
                                "Display.as(\"text/latex\", \"$x < y$\")",
                                "new java.awt.image.BufferedImage(3, 2, 1)"))
                        .notebook(),
                "forms");
        assertTrue(page.contains("<img alt=\"A picture (image/gif)\" src=\"data:image/gif;base64,R0lGOD==\">"), page);
        assertTrue(page.contains("<em>leaning</em> &lt;b&gt;"), page);
        assertTrue(page.contains("tabindex=\"0\">$x &lt; y$</pre>"), page);
        assertEquals(1, times("<img alt=\"A picture of 3 by 2 dots\"", page));
    }

    @Test
    void aLaterCellChangesWhatAnEarlierOneHasShownUnderAName() {
        Notebook ran = run(of(
                        "Display.show(\"count\", \"one\"); Display.show(\"other\", \"left alone\"); System.out.println(\"printed\");",
                        "Display.update(\"count\", \"two\"); Display.show(\"count\", \"three\"); Display.update(\"count\", \"four\");",
                        "Display.clear(); Display.update(\"count\", Display.as(\"text/html\", \"<b>five</b>\"));"))
                .notebook();
        List<List<String>> shown = ran.cells().stream()
                .map(cell -> cell.outputs().stream()
                        .map(output -> output instanceof CellOutput.Display display
                                ? display.shown().forms().values().toString()
                                : ((CellOutput.Printed) output).text())
                        .toList())
                .toList();
        String five = "[five, <b>five</b>]";
        assertEquals(List.of(List.of(five, "[left alone]", "printed\n"), List.of(five), List.of()), shown);
        assertTrue(HtmlPage.of(ran, "n").contains("<div class=\"output\"><b>five</b></div>"));
    }

    @Test
    void aPageOfAnInventedLogbookSaysSoOnceHoweverOftenItIsOpened() throws IOException {
        String demo = Path.of("..", "datasets", "hillside").toString().replace("\\", "/");
        String open = "Logbook.open(\"" + demo + "\")";
        NotebookRun.Result result =
                run(of("var mine = " + open + ";", "mine.batches().size()", open + ".ofLot(\"Moth Field\")", open));
        assertEquals(Optional.empty(), result.error());
        String page = HtmlPage.of(result.notebook(), "demo");
        assertEquals(1, times("Invented machine: do not roast.", page), page);
        Cell first = result.notebook().cells().get(0);
        CellOutput.Display note = (CellOutput.Display) first.outputs().get(0);
        assertTrue(note.shown().text().startsWith("Invented machine: do not roast. "), note.toString());
        assertTrue(note.shown().forms().get("text/html").contains("Invented machine: do not roast. "), note.toString());
    }

    @Test
    void aPageOfALogbookOfTheReadersOwnSaysNothingOfTheKind(@TempDir Path folder) throws IOException {
        Files.writeString(
                folder.resolve("batches.csv"), "batch,roasted at\n1,2031-01-06T09:00\n", StandardCharsets.UTF_8);
        String open = "Logbook.open(\"" + folder.toString().replace("\\", "/") + "\")";
        String page = HtmlPage.of(run(of(open)).notebook(), "mine");
        assertEquals(0, times("do not roast", page), page);
    }

    @Test
    void halvesOfCharactersStopNeitherThePageNorTheNotebook(@TempDir Path folder) throws IOException {
        NotebookRun.Result result = run(of("md:half \uD800 a heading \uFFFF", "\"half \\uDC00 a value \\uFFFE\""));
        assertEquals(Optional.empty(), result.error());
        Path notebook = folder.resolve("half.ipynb");
        result.notebook().write(notebook);
        assertTrue(Files.readString(notebook).contains("half \uFFFD a value"), Files.readString(notebook));
        Path page = Files.writeString(folder.resolve("half.html"), HtmlPage.of(result.notebook(), "half"));
        String html = Files.readString(page);
        assertTrue(html.contains("half \uFFFD a heading \uFFFD"), html);
        assertTrue(html.contains("half \uFFFD a value \uFFFD"), html);
    }

    @Test
    void escapesWhatNotebooksAndTheirDataBring() throws IOException {
        String page = HtmlPage.of(run(small()).notebook(), "small");
        assertFalse(page.contains("<script"), page);
        assertTrue(page.contains("&lt;script&gt;alert(1)&lt;/script&gt;"), page);
    }

    @Test
    void loadsNothingFromTheNetwork() {
        String page = HtmlPage.of(
                of(
                        "md:# T\n\n![a chart](https://example.org/x.png) and [a link](https://example.org) <img src=https://example.org/y.png>"),
                "t");
        assertFalse(page.contains("<img"), page);
        assertFalse(page.matches("(?s).*(<[^>]*\\bsrc=|@import|url\\()\\s*[\"']?https?:.*"), page);
        assertTrue(page.contains("a chart"), page);
        assertTrue(page.contains("href=\"https://example.org\""), page);
    }

    @Test
    void hasATitleAndALanguage() {
        String page = HtmlPage.of(of("md:# Which *drop*?"), "file");
        assertTrue(page.contains("<title>Which drop?</title>"), page);
        assertTrue(page.contains("<html lang=\"en\">"), page);
        assertTrue(HtmlPage.of(of("1"), "file").contains("<title>file</title>"));
    }

    @Test
    void stopsAtTheCellThatFailsAndSaysWhich() {
        NotebookRun.Result result = run(of("int a = 1;", "md:words", "1 / 0", "a"));
        assertEquals(Optional.of(2), result.failedCell());
        assertTrue(result.error().orElseThrow().text().contains("/ by zero"));
        assertEquals(1, result.notebook().cells().get(2).outputs().size());
        assertEquals(0, result.notebook().cells().get(3).outputs().size());
        assertTrue(HtmlPage.of(result.notebook(), "t").contains("ArithmeticException: / by zero"));
    }

    @Test
    void goesOnAfterACellThatIsMeantToFail() {
        String json = """
                {"nbformat":4,"nbformat_minor":5,"metadata":{},"cells":[
                {"cell_type":"code","metadata":{"tags":["raises-exception"]},"outputs":[],"source":["1 / 0"]},
                {"cell_type":"code","metadata":{},"outputs":[],"source":["2 + 2"]}]}""";
        NotebookRun.Result result = run(Notebook.parse(json, "t"));
        assertEquals(Optional.empty(), result.error());
        assertEquals(1, result.notebook().cells().get(1).outputs().size());
    }

    @Test
    void writesANotebookThatReadsBackTheSame(@TempDir Path folder) throws IOException {
        Notebook ran = run(small()).notebook();
        Path file = folder.resolve("übung 1.ipynb");
        ran.write(file);
        Notebook back = Notebook.read(file);
        assertEquals(HtmlPage.of(ran, "t"), HtmlPage.of(back, "t"));
    }

    @Test
    void saysWhatIsNotANotebook() {
        assertTrue(assertThrows(IllegalArgumentException.class, () -> Notebook.parse("not json {", "x.ipynb"))
                .getMessage()
                .contains("x.ipynb is not a notebook"));
        assertTrue(assertThrows(
                        IllegalArgumentException.class,
                        () -> Notebook.parse("{\"cells\":[],\"nbformat\":3}", "x.ipynb"))
                .getMessage()
                .contains("format 3"));
    }

    @Test
    void coloursCodeWithoutChangingIt() {
        String code = "// <b> \"x\"\nint a = 0x1F; String s = \"if\"; char c = '\\''; /* end";
        String html = CodeColours.html(code);
        String plain = html.replaceAll("<[^>]*>", "");
        assertEquals(parchment.display.Html.escape(code), plain);
        assertTrue(html.contains("<span class=\"keyword\">int</span>"), html);
        assertTrue(html.contains("<span class=\"text\">&quot;if&quot;</span>"), html);
    }

    @Test
    void coloursTextsOfAnyLength() {
        for (String text : List.of("x".repeat(300_000), "\\n".repeat(100_000), "\\n x ".repeat(300))) {
            String html = CodeColours.html("var s = \"" + text + "\";");
            assertEquals("var s = &quot;" + text + "&quot;;", html.replaceAll("<[^>]*>", ""));
        }
    }

    @Test
    void saysUnderTheCellAndAtTheFootOfThePageHowOftenTheScoresWereAsked() throws IOException {
        String ask = "Evidence.of(hillside.scored(\"sweetness\"), dropTemperature(), hillside)";
        String open = "var hillside = Logbook.open(\"../datasets/hillside\")";
        try (Evaluator own = Evaluator.open()) {
            Notebook ran = NotebookRun.of(of(open + ";", ask, "1 + 1", ask), own)
                    .run(SILENT)
                    .notebook();
            assertEquals(1, ran.cells().get(2).outputs().size(), "a cell that asks nothing says nothing");
            List<CellOutput> outputs = ran.cells().get(1).outputs();
            assertEquals(2, outputs.size());
            String result = ((CellOutput.Result) outputs.get(0)).shown().forms().toString();
            assertFalse(result.contains("in this session"), "the result's own text stays as it is");
            String foot = ((CellOutput.Display) outputs.get(1)).shown().text();
            assertTrue(foot.startsWith("The first question put to the scores of "), foot);
            String again = ((CellOutput.Display) ran.cells().get(3).outputs().get(1))
                    .shown()
                    .text();
            assertTrue(
                    again.startsWith("Asked before, so not counted again: one question has been put to the scores of "),
                    again);
            assertEquals(1, own.questionsAsked().size());
            String page = HtmlPage.of(ran, "t", own.questionsAsked());
            assertTrue(
                    page.contains("<footer class=\"foot\">\n<p>One question was put to the scores of "),
                    page.substring(page.length() - 600));
        }
    }

    @Test
    void aPageThatAskedNothingHasNoFoot() {
        assertFalse(HtmlPage.of(of("1"), "t", evaluator.questionsAsked()).contains("<footer"));
    }
}
