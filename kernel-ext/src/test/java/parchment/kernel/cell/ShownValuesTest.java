package parchment.kernel.cell;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Base64;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import javax.imageio.ImageIO;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import parchment.kernel.page.Shown;
import parchment.kernel.words.CellError;

/** What values show in a cell that are no results of the library. */
class ShownValuesTest {
    private static Evaluator evaluator;
    private RecordingPage page = new RecordingPage();

    @BeforeAll
    static void open() {
        evaluator = Evaluator.open();
    }

    @AfterAll
    static void close() {
        evaluator.close();
    }

    @BeforeEach
    void turnThePage() {
        page = new RecordingPage();
    }

    private Shown shown(String code) {
        assertEquals(Optional.empty(), evaluator.run(code, page).error().map(CellError::text), code);
        return page.results.get(page.results.size() - 1);
    }

    private String errorOf(String code) {
        List<String> lines = evaluator.run(code, page).error().orElseThrow().lines();
        return lines.get(1);
    }

    @Test
    void showsATableOfTablesawAsOurs() {
        Shown table = shown("""
                tech.tablesaw.api.Table.create("Roasts",
                    tech.tablesaw.api.StringColumn.create("lot", "North <1>", ""),
                    tech.tablesaw.api.DoubleColumn.create("drop", 203.5, Double.NaN),
                    tech.tablesaw.api.IntColumn.create("cups", 3, tech.tablesaw.columns.numbers.IntColumnType.missingValueIndicator()))""");
        assertEquals("""
                Roasts, 2 rows
                lot           drop     cups
                North <1>    203.5        3
                missing    missing  missing""", table.text());
        assertTrue(table.forms().get(Shown.HTML).contains("North &lt;1&gt;"));
    }

    @Test
    void showsAColumnOfTablesawRoundedAsItWasToldToPrint() {
        String text = shown("""
                var prices = tech.tablesaw.api.DoubleColumn.create("price", 3.14159, 2.5);
                prices.setPrintFormatter(tech.tablesaw.columns.numbers.NumberColumnFormatter.fixedWithGrouping(1));
                var times = tech.tablesaw.api.DateTimeColumn.create("at", java.time.LocalDateTime.of(2026, 3, 4, 9, 5), null);
                tech.tablesaw.api.Table.create("Sales", prices, tech.tablesaw.api.DoubleColumn.create("kept", 3.14159, 2.5), times)""").text();
        assertEquals("""
                Sales, 2 rows
                price     kept  at
                  3.1  3.14159  2026-03-04 09:05
                  2.5  2.50000  missing""", text);
    }

    @Test
    void showsAChartOfXChartAsPictures() throws IOException {
        Shown chart = shown("""
                var chart = new org.knowm.xchart.XYChartBuilder().width(300).height(200).title("Drops <b>").xAxisTitle("day").build();
                chart.addSeries("north", new double[] {1, 2}, new double[] {3, 4});
                chart""");
        assertEquals("Picture: Drops <b>, 1 series, day by an unnamed axis", chart.text());
        byte[] png = Base64.getDecoder().decode(chart.forms().get("image/png"));
        assertEquals(
                600,
                Objects.requireNonNull(ImageIO.read(new ByteArrayInputStream(png)))
                        .getWidth());
    }

    @Test
    void showsRecordsOfACellAsATable() {
        assertEquals(
                "Drum, 1 row\nname  kilograms\nblue         12",
                shown("record Drum(String name, int kilograms) { }\nList.of(new Drum(\"blue\", 12))")
                        .text());
    }

    @Test
    void showsWhatACellRegisteredFromThenOn() {
        String first = shown("""
                record Bag(String lot) { }
                Display.register(Bag.class, bag -> Display.as("text/html", "<b>" + bag.lot() + "</b>"));
                new Bag("North")""").forms().get(Shown.HTML);
        assertEquals("<b>North</b>", first);
        shown("Display.register(\"Bag\", bag -> \"by its name: \" + ((Bag) bag).lot());\n0");
        assertEquals("by its name: South", shown("new Bag(\"South\")").text());
        shown("Display.show(new Bag(\"East\"));\n0");
        assertEquals("by its name: East", page.shown.get(0).text());
    }

    @Test
    void saysThatWhatACellRegisteredFailed() {
        shown("record Sack(String lot) { }\nDisplay.register(Sack.class, sack -> sack.lot().charAt(9));\n0");
        assertTrue(errorOf("new Sack(\"\")").contains("StringIndexOutOfBoundsException"));
    }

    @Test
    void showsAnErrorAsAValueInWords() {
        assertEquals(
                "An error as a value; nothing was thrown here.\nArithmeticException: / by zero\n"
                        + "A whole number was divided by 0. With a point (1.0 / x) the answer would be Infinity.\nCause: IllegalStateException: drum",
                shown(
                                "(Throwable) new ArithmeticException(\"/ by zero\").initCause(new IllegalStateException(\"drum\"))")
                        .text());
    }

    @Test
    void showsUnderANameWhatLaterCellsUpdate() {
        shown("Display.show(\"count\", 1);\n0");
        assertEquals(List.of("count: 1"), page.named);
        shown("Display.update(\"count\", List.of(2));\n0");
        assertEquals(List.of("count: 1", "count <- [2]"), page.named);
        assertEquals(
                "Nothing on this page was shown under the name 'cuont'. Did you mean 'count'? Names: count. Show it there first:"
                        + " Display.show(\"cuont\", value).",
                errorOf("Display.update(\"cuont\", 3)"));
    }

    @Test
    void whatStandsBeforeALoadedFileShowsUnderANameToo(@TempDir Path folder) throws IOException {
        Path file = Files.writeString(folder.resolve("own.jsh"), "int ownNumber = 3;");
        String code = "Display.show(\"before\", 1);\nDisplay.update(\"before\", 2);\n%load " + file + "\nownNumber";
        assertEquals("3", shown(code).text());
        assertEquals(List.of("before: 1", "before <- 2"), page.named);
    }

    @Test
    void saysThatNothingWasShownUnderAnyName() {
        NamedPlaces places = new NamedPlaces();
        assertEquals(
                "Nothing on this page was shown under the name 'a', nor under any other. Show it there first: Display.show(\"a\", value).",
                org.junit.jupiter.api.Assertions.assertThrows(IllegalArgumentException.class, () -> places.check("a"))
                        .getMessage());
        List.of("aa", "bb", "cc", "dd", "ee", "ff", "gg", "hh", "ii").forEach(places::add);
        places.check("ii");
        String far = org.junit.jupiter.api.Assertions.assertThrows(
                        IllegalArgumentException.class, () -> places.check("far away"))
                .getMessage();
        assertTrue(far.contains("'far away'. Names: aa, bb, cc, dd, ee, ff, gg, hh and 1 more. Show"), far);
    }

    @Test
    void sendsTheLibrarysHistogramAsPngToo() {
        Set<String> forms = shown("Histogram.of(\"drop [°C]\", List.of(201.5, 203.0, 203.5))")
                .forms()
                .keySet();
        assertEquals(Set.of(Shown.TEXT, Shown.HTML, "image/png"), forms);
    }

    @Test
    void shortensWhatIsLongerThanAnybodyReads() {
        String text = shown("\"x\".repeat(100_001)").text();
        assertTrue(text.endsWith("\n... and 1 characters more, not shown"), text.substring(100_000));
        assertFalse(shown("\"x\".repeat(100_000)").text().contains("not shown"));
    }
}
