package parchment.display;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.StringReader;
import java.util.List;
import java.util.Random;
import java.util.stream.IntStream;
import javax.xml.parsers.DocumentBuilderFactory;
import org.junit.jupiter.api.Test;
import org.w3c.dom.Document;
import org.xml.sax.InputSource;
import parchment.quantity.TemperatureUnit;
import parchment.quantity.Unit;

class TableTest {
    private record Row(String batch, double celsius) {}

    private static final List<Row> ROWS =
            List.of(new Row("112", 203.25), new Row("<script>alert(1)</script>", Double.NaN), new Row("113", -0.001));

    private static Table table(TemperatureUnit unit) {
        return Table.titled("Drops")
                .withText("batch", ROWS, Row::batch)
                .withNumber("drop temperature", Unit.TEMPERATURE, unit, ROWS, Row::celsius)
                .withNote("2 of 3 batches have a drop.");
    }

    @Test
    void alignsNumbersAndNamesWhatIsMissing() {
        assertEquals("""
                Drops
                batch                      drop temperature [°C]
                112                                        203.3
                <script>alert(1)</script>                missing
                113                                          0.0
                2 of 3 batches have a drop.""", table(TemperatureUnit.CELSIUS).text());
    }

    @Test
    void followsAChangeOfUnit() {
        String text = table(TemperatureUnit.FAHRENHEIT).text();
        assertTrue(text.contains("drop temperature [°F]"), text);
        assertTrue(text.contains("397.9"), text); // 203.25 * 9 / 5 + 32 = 397.85
    }

    @Test
    void escapesWhatCameFromAFile() {
        String html = table(TemperatureUnit.CELSIUS).html().orElseThrow();
        assertFalse(html.contains("<script"), html);
        assertTrue(html.contains("&lt;script&gt;"), html);
    }

    @Test
    void isASemanticTableWithScopesAndACaption() throws Exception {
        Document page = parse(table(TemperatureUnit.CELSIUS).html().orElseThrow());
        assertEquals("Drops", page.getElementsByTagName("caption").item(0).getTextContent());
        assertEquals(5, page.getElementsByTagName("th").getLength()); // 2 headings and 3 names of rows
        for (int i = 0; i < 5; i++) {
            assertTrue(page.getElementsByTagName("th").item(i).getAttributes().getNamedItem("scope") != null);
        }
    }

    @Test
    void foldsTheRestOfALongTableAway() throws Exception {
        List<Integer> rows = IntStream.range(0, 120).boxed().toList();
        Table table = Table.titled("Many").withNumber("n", "", 0, rows, n -> n);
        assertTrue(table.text().endsWith("and 100 more rows"), table.text());
        Document page = parse(table.html().orElseThrow());
        assertEquals(
                "100 more rows", page.getElementsByTagName("summary").item(0).getTextContent());
        assertEquals(122, page.getElementsByTagName("tr").getLength()); // two headings
    }

    @Test
    void bringsItsOwnScriptOnlyWhereThereIsSomethingToSort() {
        Table eight = Table.titled("n")
                .withNumber("n", "", 0, IntStream.range(0, 8).boxed().toList(), n -> n);
        Table nine = Table.titled("n")
                .withNumber("n", "", 0, IntStream.range(0, 9).boxed().toList(), n -> n);
        assertFalse(eight.html().orElseThrow().contains("<script"));
        String html = nine.html().orElseThrow();
        assertTrue(html.contains("<script>\n(function"), html);
        assertFalse(html.matches("(?s).*(src=|href=|url\\(|@import|https?:).*"), "the table loads something");
    }

    @Test
    void carriesTheNumberItIsSortedByBesideTheOneItShows() throws Exception {
        List<Double> rows = List.of(203.25, Double.NaN, 9.96, 10.04, -1e-9);
        Table table = Table.titled("Drops").withNumber("drop", "s", 1, rows, value -> value);
        Document page = parse(table.html().orElseThrow());
        List<String> keys = IntStream.range(0, rows.size())
                .mapToObj(r ->
                        page.getElementsByTagName("td").item(r).getAttributes().getNamedItem("data-key"))
                .map(key -> key == null ? "none" : key.getNodeValue())
                .toList();
        assertEquals(List.of("203.25", "none", "9.96", "10.04", "-1.0E-9"), keys);
    }

    @Test
    void aTitleFromAFileCannotLeaveItsAttribute() throws Exception {
        String title = "\"><img src=x onerror=alert(1)>";
        Table table = Table.titled(title)
                .withNumber("n", "", 0, IntStream.range(0, 30).boxed().toList(), n -> n);
        Document page = parse(table.html().orElseThrow());
        assertEquals(
                title,
                page.getDocumentElement()
                        .getAttributes()
                        .getNamedItem("aria-label")
                        .getNodeValue());
        assertEquals(0, page.getElementsByTagName("img").getLength());
    }

    @Test
    void countsTheRowsThatAreTooManyToWrite() {
        List<Integer> rows = IntStream.range(0, 100_000).boxed().toList();
        String html =
                Table.titled("Many").withNumber("n", "", 0, rows, n -> n).html().orElseThrow();
        assertTrue(html.contains("99000 rows beyond these are not shown here."));
        assertTrue(html.length() < 100_000, html.length() + " characters");
    }

    @Test
    void explainsItsDash() {
        String text = table(TemperatureUnit.CELSIUS)
                .withDashForMissing("the batch has no drop")
                .text();
        assertTrue(text.contains("    –\n"), text);
        assertTrue(text.contains("– means: the batch has no drop."), text);
    }

    @Test
    void shortensAVeryLongCellInTextOnly() {
        Table table = Table.titled("Notes").withColumn(Column.text("note", List.of("x".repeat(70))));
        assertTrue(table.text().contains("x".repeat(39) + "…"), table.text());
        assertTrue(table.html().orElseThrow().contains("x".repeat(70)));
    }

    @Test
    void goesOnInTheLineBelowWhereANumberWouldBeCut() {
        record Look(String at, String found, double points) {}
        List<Look> looks = List.of(
                new Look("drop", "best at 204.8 °C, anything from 204.3 to 205.0 °C, as 172 batches have it", 0.81),
                new Look("mass", "nothing seen by these cuppers in this season", 0.1),
                new Look("time", "as usual", 0.02));
        Table table = Table.titled("Looks")
                .withText("at", looks, Look::at)
                .withText("found", looks, Look::found)
                .withNumber("difference", "points", 2, looks, Look::points);
        assertEquals("""
                Looks
                at    found                                     difference [points]
                drop  best at 204.8 °C, anything from 204.3 to                 0.81
                      205.0 °C, as 172 batches have it
                mass  nothing seen by these cuppers in this…                   0.10
                time  as usual                                                 0.02""", table.text());
    }

    /** Words of letters, numbers and names of batches in any order: whatever holds a digit stands whole somewhere in the text. */
    @Test
    void neverCutsANumberHoweverLongTheCell() {
        Random random = new Random(7);
        for (int round = 0; round < 500; round++) {
            List<String> words = IntStream.range(0, 1 + random.nextInt(30))
                    .mapToObj(i -> switch (random.nextInt(3)) {
                        case 0 -> "abcdefghijklmnopqrstuvwxyz".substring(random.nextInt(26));
                        case 1 -> String.format("%.4f", 1e6 * random.nextGaussian());
                        default -> "20311220-" + random.nextInt(100);
                    })
                    .toList();
            String text = Table.titled("n")
                    .withColumn(Column.text("cell", List.of(String.join(" ", words))))
                    .text();
            List<String> shown = List.of(text.split("[ \n]+"));
            for (String word : words) {
                assertTrue(!word.matches(".*\\d.*") || shown.contains(word), word + " in " + text);
            }
        }
    }

    @Test
    void aNameWithoutAnEndGoesOnBelowAndLosesNothing() {
        String name = "1".repeat(200);
        String text =
                Table.titled("n").withColumn(Column.text("cell", List.of(name))).text();
        assertTrue(text.replaceAll("\\s", "").endsWith(name), text);
        assertTrue(text.lines().allMatch(line -> line.length() <= 80), text);
    }

    /** What a browser may break is only what is marked as a sentence, and there no name with a hyphen or stroke. */
    @Test
    void keepsNamesAndNumbersOnOneLineInAPage() throws Exception {
        String note = "roasted after 20311220-01 and unlike it: 2:30/3:10 for well-known reasons, 0.81 points";
        Table table = Table.titled("n")
                .withColumn(Column.text("batch", List.of("20311220-01")))
                .withColumn(Column.text("lot", List.of("Low Orchard")))
                .withColumn(Column.text("note", List.of(note)))
                .withNumber("points", "", 2, List.of(0.81), value -> value);
        String html = table.html().orElseThrow();
        assertTrue(html.contains("border-bottom:1px solid rgba(128,128,128,.4);white-space:nowrap}"), html);
        assertTrue(html.contains(".whole{white-space:nowrap}"), html);
        Document page = parse(html);
        assertEquals("20311220-01", page.getElementsByTagName("th").item(4).getTextContent());
        assertFalse(page.getElementsByTagName("th").item(4).getAttributes().getNamedItem("class") != null);
        assertEquals("Low Orchard", page.getElementsByTagName("td").item(0).getTextContent());
        assertFalse(page.getElementsByTagName("td").item(0).getAttributes().getNamedItem("class") != null);
        org.w3c.dom.Element sentence =
                (org.w3c.dom.Element) page.getElementsByTagName("td").item(1);
        assertEquals("sentence", sentence.getAttribute("class"));
        assertEquals(note, sentence.getTextContent());
        List<String> whole = IntStream.range(
                        0, sentence.getElementsByTagName("span").getLength())
                .mapToObj(i -> sentence.getElementsByTagName("span").item(i).getTextContent())
                .toList();
        assertEquals(List.of("20311220-01", "2:30/3:10", "well-known", "0.81 points"), whole);
    }

    /** An estimate and its interval are read as one; a short heading is one name. */
    @Test
    void keepsAnEstimateAndAShortHeadingOnOneLine() {
        String html = Table.titled("n")
                .withColumn(Column.text("left out", List.of("x", "x", "x")))
                .withColumn(Column.text(
                        "change of the scores",
                        List.of(
                                "+0.23 points (-0.44 to 0.90)",
                                "-0.12 points (-0.26 to 0.02)",
                                "2 of the lots, as said above (see there)")))
                .html()
                .orElseThrow();
        assertTrue(html.contains("<th scope=\"col\" class=\"names\"><span class=\"whole\">left out</span></th>"), html);
        assertTrue(html.contains("<th scope=\"col\">change of the scores</th>"), html);
        assertTrue(html.contains("<td>+0.23 points (-0.44 to 0.90)</td>"), html);
        assertTrue(html.contains("<td>-0.12 points (-0.26 to 0.02)</td>"), html);
        assertTrue(html.contains("<td class=\"sentence\">2 of the lots, as said above (see there)</td>"), html);
    }

    /** A narrow window moves a table sideways rather than press a sentence into a column of single words; paper has no sideways. */
    @Test
    void leavesASentenceRoomAndCutsNothingOnPaper() {
        String html = table(TemperatureUnit.CELSIUS).html().orElseThrow();
        assertTrue(html.contains(".parchment-table.parchment-table{overflow-x:auto;"), html);
        assertTrue(html.contains(".sentence{min-width:10em}"), html);
        String paper = html.substring(html.indexOf("@media print{"));
        assertTrue(paper.contains(".parchment-table.parchment-table{overflow:visible}"), paper);
        assertTrue(paper.contains("@media print{.parchment-table.parchment-table table{font-size:8pt}"), paper);
        // A page that hides its buttons on paper would take the headings of a table that can be sorted with them.
        assertTrue(
                paper.contains(".parchment-table.parchment-table th button{display:inline;text-decoration:none}"),
                paper);
    }

    @Test
    void canBeReachedByTheKeyboardEvenIfShort() {
        String html = Table.titled("Two <lots>")
                .withColumn(Column.text("lot", List.of("a", "b")))
                .html()
                .orElseThrow();
        assertTrue(
                html.startsWith(
                        "<div class=\"parchment-table\" tabindex=\"0\" role=\"group\" aria-label=\"Two &lt;lots&gt;\">"),
                html);
    }

    @Test
    void saysThatItHasNoRows() {
        Table table = Table.titled("Problems").withColumn(Column.text("file", List.of()));
        assertTrue(table.text().contains("(no rows)"), table.text());
        assertTrue(table.html().orElseThrow().contains("No rows."));
    }

    @Test
    void saysWhichColumnHasAnotherNumberOfRows() {
        var failure = assertThrows(
                IllegalArgumentException.class,
                () -> table(TemperatureUnit.CELSIUS).withColumn(Column.text("lot", List.of("a"))));
        assertEquals(
                "The table 'Drops' has 3 rows, but its column 'lot' was given 1. Give each column one value per row.",
                failure.getMessage());
    }

    private static Document parse(String html) throws Exception {
        return DocumentBuilderFactory.newInstance().newDocumentBuilder().parse(new InputSource(new StringReader(html)));
    }
}
