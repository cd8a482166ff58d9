package parchment.kernel.help;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import parchment.kernel.cell.Evaluator;
import parchment.kernel.cell.RecordingPage;
import parchment.kernel.imports.Rooms;
import parchment.kernel.page.Outcome;
import parchment.kernel.page.Shown;

/** In the cells here a stroke marks the cursor. */
class InspectionTest {
    private static Evaluator evaluator;

    @BeforeAll
    static void open() {
        evaluator = Evaluator.open();
        Path demo = Path.of("..", "datasets", "harbour").toAbsolutePath().normalize();
        run("var logbook = Logbook.open(Path.of(\"" + demo.toString().replace('\\', '/') + "\"));");
        run("/** Holds <b>two</b> numbers. */ record Pair(int first, int second) { }");
        run("/** Doubles a number. */ int twice(int number) { return 2 * number; }");
        run("var chosen = dropTemperature();");
    }

    private static void run(String cell) {
        Outcome outcome = evaluator.run(cell, new RecordingPage());
        assertTrue(outcome.fine(), () -> outcome.error().orElseThrow().text());
    }

    @AfterAll
    static void close() {
        evaluator.close();
    }

    private static Shown inspect(String marked) {
        int cursor = marked.indexOf('|');
        return evaluator.inspect(marked.substring(0, cursor) + marked.substring(cursor + 1), cursor);
    }

    private static String text(String marked) {
        Shown shown = inspect(marked);
        assertNotNull(shown, () -> "nothing found for " + marked);
        return shown.text();
    }

    @Test
    void showsTheSignatureParametersFailuresAndAnExample() {
        String text = text("Evidence.of|(\"sweetness\", dropTemperature(), logbook)");
        assertTrue(text.startsWith("Evidence Evidence.of(String attribute, Feature feature, Logbook logbook)\n"), text);
        assertTrue(text.contains("Answers what the scores of an attribute tell about a feature."), text);
        assertTrue(text.contains("attribute: a column of scores, as in \"sweetness\""), text);
        assertTrue(text.contains("IllegalArgumentException: if the logbook does not score the attribute"), text);
        assertTrue(text.contains("Example:\n    Evidence.of(\"sweetness\", dropTemperature(), logbook)"), text);
        assertFalse(text.contains("{@"), text);
        assertFalse(text.contains("java.lang"), text);
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "Evidence.of(\"sweetness\", dropTemperature(), logbook, EvidenceSettings.standard()|)",
                "Evidence.of|(\"sweetness\", dropTemperature(), logbook, EvidenceSettings.standard()",
                "Evi|dence.of(\"sweetness\", dropTemperature(), logbook, EvidenceSettings.standard())"
            })
    void findsANameInACellThatIsWholeOrNot(String cell) {
        assertTrue(text(cell).contains("Evidence"));
    }

    @Test
    void putsTheOverloadThatTheArgumentsFitFirst() {
        String settings =
                "Evidence Evidence.of(String attribute, Feature feature, Logbook logbook, EvidenceSettings settings)";
        String cell = "Evidence.of|(\"sweetness\", dropTemperature(), logbook, EvidenceSettings.standard())";
        assertTrue(text(cell).replaceAll("\\s+", " ").startsWith(settings), text(cell));
        assertTrue(text("Logbook.open|(Path.of(\"x\"))").startsWith("Logbook Logbook.open(Path folder)\n"));
        assertTrue(text("Logbook.open|(\"x\")").startsWith("Logbook Logbook.open(String folder)\n"));
    }

    @Test
    void showsTheMethodWhileItsArgumentsAreWritten() {
        assertTrue(text("Evidence.of(|").startsWith("Evidence Evidence.of("));
        assertTrue(text("Evidence.of(\"swe|").startsWith("Evidence Evidence.of("));
        assertTrue(text("for (var b : logbook.batches()) {\n    System.out.println(b.lot(|")
                .contains("Batch.lot()"));
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "dropTemp|erature()",
                "dropTemperature|",
                "var table = BatchTable.of(logbook, dropTemperature|())",
                "chosen|"
            })
    void tellsAFeaturesUnitFamilyAndHowItIsMeasured(String cell) {
        String text = text(cell);
        assertTrue(text.contains("feature: drop temperature"), text);
        assertTrue(text.contains("measured: smoothed bean-probe reading at the drop"), text);
        assertTrue(text.contains("unit: °C"), text);
        assertTrue(text.contains("family: finish"), text);
        assertTrue(text.contains("needs: a bean-temperature curve"), text);
    }

    @Test
    void givesAnExampleWithTheFeatureInIt() {
        String text = text("dropTemperature|()");
        String example = "BatchTable.of(logbook, dropTemperature())";
        assertTrue(text.contains("Example:\n    " + example), text);
        run(example);
    }

    @Test
    void showsAConstantAmongItsKind() {
        String text = text("Clock.SINCE_CHARGE|");
        assertTrue(text.startsWith("Clock.SINCE_CHARGE\n\nSeconds since the green coffee was charged."), text);
        assertTrue(text.contains("BY_BEAN_TEMPERATURE: "), text);
        assertTrue(text.contains("Example:"), text);
    }

    @Test
    void tellsWhatARecordsComponentMeans() {
        assertEquals(
                "double Interval.level()\n\nas in 0.90",
                text("Evidence.of(\"sweetness\", dropTemperature(), logbook).interval().level|()")
                        .split("\n\nExample")[0]);
        assertTrue(text("Interval|").startsWith("record Interval(double lower, double upper, double level)"));
    }

    @Test
    void tellsAVariablesTypeValueAndMeaning() {
        String text = text("logbook|");
        assertTrue(text.startsWith("Logbook logbook\n\n"), text);
        assertTrue(text.contains("240 batches"), text);
        assertTrue(
                text.contains("An opened collection of batches, lots and cuppings: where every question begins."),
                text);
        assertTrue(text("var first = logbook.batches().get(0)\nfirst|").startsWith("Batch first\n"));
    }

    @Test
    void followsTheTypesThroughTheCell() {
        String cell = "var table = BatchTable.of(logbook)\nlogbook.batches().stream().map(Batch::na|me).toList()";
        assertTrue(text(cell).startsWith("String Batch.name()"));
        assertTrue(text("logbook.batches().get(0).na|me()").startsWith("String Batch.name()"));
        String inherited = text("Evidence.of(\"sweetness\", dropTemperature(), logbook).svg|()");
        assertTrue(inherited.contains("Returns the value as an SVG document"), inherited);
    }

    @Test
    void documentsWhatTheCellsDeclare() {
        assertTrue(text("twice|(2)").startsWith("int twice(int number)\n\nDoubles a number."));
        assertTrue(text("Pair| pair = null;").startsWith("record Pair(int first, int second)\n\nHolds two numbers."));
    }

    @Test
    void knowsJavasOwnNames() {
        assertTrue(text("Math.hyp|ot(3, 4)").contains("double Math.hypot(double"));
        assertTrue(text("LocalDate|.now()").contains("LocalDate"));
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "noSuchName|",
                "logbook.noSuchName|()",
                "noSuchName.of(|)",
                "|",
                "   |   ",
                "// logbook|",
                "/* logbook| */",
                "\"dropTemperature|\"",
                "1 +| 2",
                "int x = = logbook.noSuch|",
                "}} ) noSuchName|",
                "for|",
                "\u2615|"
            })
    void findsNothingWhereThereIsNothing(String cell) {
        assertNull(inspect(cell), cell);
    }

    @Test
    void letsNothingThroughUnescaped() {
        List<DocPage.Block> blocks = Documents.ofComment(
                "Says <script>alert(1)</script> {@code <img src=x onerror=alert(2)>} &lt;i> a < b"
                        + " <a href=\"javascript:alert(3)\">here</a> <a href=\"https://example.org/?a=1&b=%22\">there</a>");
        String html = new DocPage(blocks).html();
        assertFalse(html.contains("<script"), html);
        assertFalse(html.contains("<img"), html);
        assertFalse(html.contains("javascript:"), html);
        assertFalse(html.contains("<i>"), html);
        assertTrue(html.contains("&lt;img src=x onerror=alert(2)&gt;"), html);
        assertTrue(
                html.contains("<a href=\"https://example.org/?a=1&amp;b=%22\" rel=\"noopener noreferrer\">there</a>"),
                html);
    }

    @Test
    void readsListsTablesAndCodeOfAComment() {
        String text = new DocPage(
                        Documents.ofComment(
                                "First &mdash; of {@link List#of() all}.\n<ul>\n<li>one\n<li>two {@code x < y}</ul>"
                                        + "\n<table><tr><th>a</th><th>b</th></tr><tr><td>1</td><td>2</td></tr></table>"
                                        + "\n<pre>{@code\n if (a < b) {\n     c();\n }\n}</pre>\n@return the <em>sum</em>\n@param a the first"))
                .text();
        assertEquals(
                "First — of all.\n\n  - one\n  - two x < y\n\n  a  |  b\n  1  |  2\n\n    if (a < b) {\n        c();\n    }"
                        + "\n\nParameters:\n  a: the first\n\nReturns the sum",
                text);
    }

    @Test
    void carriesTheSourceOfEveryTypeOfTheLibrary() {
        Rooms.types()
                .forEach((room, types) -> assertTrue(
                        DocSource.text("parchment." + room + "."
                                        + types.iterator().next())
                                .isPresent(),
                        room));
    }
}
