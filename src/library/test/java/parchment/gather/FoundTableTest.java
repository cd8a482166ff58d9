package parchment.gather;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Assertions;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import parchment.sheet.Numbers;
import parchment.sheet.Sheet;

class FoundTableTest {
    private static final String HEAD = "Batch|Date|Green|Drop";
    private static final String ONE = "1|2031-06-01|5|11:00";
    private static final String TWO = "2|2031-06-01|5.2|11:10";
    private static final String THREE = "3|2031-06-02|4.9|11:30";

    @Test
    void titlesAndSettingsAboveAreKeptApartFromTheHeadings() {
        FoundTable table = Sheets.table(
                "Batch 101|01/06/2031 08:00||", "Roast date: 3.4.2031|||", "Machine|Drum 5 kg||", HEAD, ONE, TWO);
        assertEquals(List.of("Batch", "Date", "Green", "Drop"), table.headings());
        assertEquals(3, table.above().size());
        assertEquals(
                List.of("Batch 101", "01/06/2031 08:00", "", ""), table.above().get(0));
        assertEquals(List.of(5, 6), table.lines());
    }

    @Test
    void headingsMayStandAboveOrBelowABlankRow() {
        FoundTable table = Sheets.table("Our roasts", "", HEAD, "", ONE, "", TWO);
        assertEquals(List.of("Batch", "Date", "Green", "Drop"), table.headings());
        assertEquals(List.of(5, 7), table.lines());
        assertEquals(List.of("Our roasts", "", "", ""), table.above().get(0));
    }

    @Test
    void namesOfGroupsGoBeforeTheHeadingsBelowThem() {
        List<String> names = List.of("No.", "Coffee", "Masses green", "Masses roasted", "Times yellow", "Times crack");
        List<String> rows = List.of("1|Huila|5|4.2|4:50|8:55", "2|Guji|5|4.3|4:40|8:45");
        assertEquals(
                names,
                Sheets.table("||Masses||Times|", "No.|Coffee|green|roasted|yellow|crack", rows.get(0), rows.get(1))
                        .headings());
        assertEquals(
                names,
                Sheets.table(
                                "||Masses|Masses|Times|Times",
                                "No.|Coffee|green|roasted|yellow|crack",
                                rows.get(0),
                                rows.get(1))
                        .headings());
        assertEquals(
                names,
                Sheets.table("No.|Coffee|Masses||Times|", "||green|roasted|yellow|crack", rows.get(0), rows.get(1))
                        .headings());
    }

    @Test
    void aRowOfUnitsMayStandBelowOrAboveTheHeadings() {
        List<String> names = List.of("Batch", "Green [lb]", "Charge [°F]", "Drop [min:s]");
        assertEquals(
                names,
                Sheets.table("Batch|Green|Charge|Drop", "|(lb)|°F|min:s", "1|11|400|11:00")
                        .headings());
        assertEquals(
                names,
                Sheets.table("|(lb)|°F|min:s", "Batch|Green|Charge|Drop", "1|11|400|11:00")
                        .headings());
        assertEquals(
                List.of(2),
                Sheets.table("Batch|Green|Charge|Drop", "1|11|400|11:00").lines());
    }

    @Test
    void withoutHeadingsColumnsAreCounted() {
        FoundTable table = Sheets.table(ONE, TWO, THREE);
        assertEquals(List.of("#1", "#2", "#3", "#4"), table.headings());
        assertEquals(3, table.rows().size());
    }

    @Test
    void blankColumnsBesideAndInsideATableAreNoColumns() {
        FoundTable table =
                Sheets.table("||Batch|Date||Green|Drop", "||1|2031-06-01||5|11:00", "||2|2031-06-01||5|11:10");
        assertEquals(List.of("Batch", "Date", "Green", "Drop"), table.headings());
        assertEquals(List.of("2", "2031-06-01", "5", "11:10"), table.rows().get(1));
    }

    @Test
    void tablesSideBySideAreTwoIfTheHeadingsComeAgain() {
        List<FoundTable> tables = FoundTable.in(
                Sheets.of("Batch|Green|Drop||Batch|Green|Drop", "1|5|11:00||3|5|11:20", "2|5|11:10||4|5|11:30"));
        assertEquals(2, tables.size());
        assertEquals(List.of("3", "5", "11:20"), tables.get(1).rows().get(0));
    }

    @Test
    void tablesSideBySideAreTwoIfOneIsLongerByTwoRows() {
        String[] apart = {
            "Batch|Green|Drop||Lot|Origin",
            "1|5|11:00||Huila|Colombia",
            "2|5|11:10||Guji|Ethiopia",
            "3|5|11:00",
            "4|5|11:00"
        };
        String[] together = {
            "Batch|Green|Drop||Lot|Origin", "1|5|11:00||Huila|Colombia", "2|5|11:10||Guji|Ethiopia", "3|5|11:00"
        };
        assertEquals(2, FoundTable.in(Sheets.of(apart)).size());
        assertEquals(1, FoundTable.in(Sheets.of(together)).size());
    }

    @Test
    void tablesOneUnderTheOtherAreTwo() {
        List<FoundTable> tables = FoundTable.in(Sheets.of(
                HEAD,
                ONE,
                TWO,
                "",
                "Green coffee",
                "Lot|Origin|Moisture",
                "Huila|Colombia|11.2",
                "Guji|Ethiopia|10.9"));
        assertEquals(2, tables.size());
        assertEquals(List.of("Lot", "Origin", "Moisture"), tables.get(1).headings());
        assertEquals(List.of(7, 8), tables.get(1).lines());
        assertEquals("Green coffee", tables.get(1).above().get(0).get(0));
    }

    @Test
    void headingsThatComeAgainOnAPageAreLeftOutInWords() {
        FoundTable table = Sheets.table("Roasts|||", HEAD, ONE, TWO, "Roasts|||", HEAD, THREE);
        assertEquals(List.of(3, 4, 7), table.lines());
        assertEquals(List.of("Line 5 holds the title again.", "Line 6 holds the headings again."), table.leftOut());
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "Total",
                "Totals",
                "Sum",
                "Summe",
                "Gesamt",
                "Total:",
                "Suma",
                "Soma",
                "Somme",
                "Totale",
                "Average",
                "Mean",
                "Durchschnitt",
                "Mittelwert",
                "Promedio",
                "Media",
                "Média",
                "Moyenne",
                "Ø",
                "Sub-total",
                "Total June",
                "Min",
                "Max"
            })
    void rowsThatAreWorkedOutAreLeftOutInWords(String word) {
        FoundTable table = Sheets.table(HEAD, ONE, TWO, THREE, word + "||15|");
        assertEquals(List.of(2, 3, 4), table.lines());
        assertEquals(List.of("Line 5 is worked out of the other rows: '" + word + " 15'."), table.leftOut());
    }

    @ParameterizedTest
    @ValueSource(strings = {"Totem", "Minas", "Maxine", "Sumatra", "Mediano"})
    void aNameThatBeginsAlikeIsNoTotal(String word) {
        assertEquals(
                4,
                Sheets.table(HEAD, ONE, TWO, THREE, word + "|2031-06-03|5|11:05")
                        .rows()
                        .size());
    }

    @Test
    void sumsAndMeansWithoutAWordAreLeftOutToo() {
        // 5 + 5.2 + 4.9 = 15.1; their mean is 5.03; 11:00, 11:10 and 11:30 have the mean 11:13.
        assertEquals(
                List.of(2, 3, 4), Sheets.table(HEAD, ONE, TWO, THREE, "||15.1|").lines());
        assertEquals(
                List.of(2, 3, 4),
                Sheets.table(HEAD, ONE, TWO, THREE, "||5.03|11:13").lines());
        assertEquals(
                List.of(2, 3, 4),
                Sheets.table(HEAD, ONE, TWO, THREE, "||5.03|11:13", "||15.1|").lines());
    }

    @Test
    void numbersBesideSumAndMeanAreARow() {
        assertEquals(4, Sheets.table(HEAD, ONE, TWO, THREE, "||15.3|").rows().size());
        assertEquals(
                4, Sheets.table(HEAD, ONE, TWO, THREE, "||5.03|11:20").rows().size());
        // The same charge each time is its own mean: a batch, not a total.
        assertEquals(
                4,
                Sheets.table("Batch|Green|Drop", "1|5|11:00", "2|5|11:10", "3|5|11:30", "|5|11:20")
                        .rows()
                        .size());
    }

    @Test
    void remarksUnderATableAreLeftOutInWords() {
        FoundTable table = Sheets.table(HEAD, ONE, TWO, "June is over|||", THREE, "", "Signed, the roaster");
        assertEquals(List.of(2, 3, 5), table.lines());
        assertEquals(
                List.of("Line 4 is a remark: 'June is over'.", "Line 7 is a remark: 'Signed, the roaster'."),
                table.leftOut());
    }

    @Test
    void aBatchThatIsOnlyNamedIsARow() {
        assertEquals(3, Sheets.table(HEAD, ONE, TWO, "H103|||").rows().size());
    }

    @Test
    void rowsOfAnotherWidthAreKept() {
        FoundTable table = Sheets.table(
                "Batch|Green|Drop|Notes", "1|5|11:00", "2|5|11:10|sweet|clean", "3|5|11:20|flat|||", "4|5|11:20|ok");
        assertEquals(List.of("Batch", "Green", "Drop", "Notes"), table.headings());
        assertEquals(List.of("2", "5", "11:10", "sweet; clean"), table.rows().get(1));
        assertEquals(
                List.of("Line 3 is wider than the headings: the rest was put to the last column, 'sweet; clean'."),
                table.leftOut());
        assertEquals(4, table.rows().size());
    }

    @Test
    void manyWiderRowsAreColumnsWithoutAName() {
        FoundTable table = Sheets.table("Batch|Green|Drop", "1|5|11:00|7", "2|5|11:10|8", "3|5|11:20|7");
        assertEquals(List.of("Batch", "Green", "Drop", "#4"), table.headings());
    }

    @Test
    void headingsDownTheSideAreTurned() {
        FoundTable table = Sheets.table(
                "Our roasts||",
                "Batch|H101|H102",
                "Date|2031-06-01|2031-06-01",
                "Green kg|5|5.2",
                "First crack|8:50|8:40",
                "Drop|11:00|10:50");
        assertEquals(List.of("Batch", "Date", "Green kg", "First crack", "Drop"), table.headings());
        assertEquals(
                List.of("H102", "2031-06-01", "5.2", "8:40", "10:50"),
                table.rows().get(1));
        assertEquals(
                "The headings stand in column 1: each row here is a column of the sheet, from column 2 on.",
                table.leftOut().get(0));
        assertEquals("Our roasts", table.above().get(0).get(0));
    }

    @Test
    void aSheetOfOneBatchIsARow() {
        FoundTable table =
                Sheets.table("Batch:|H105", "Date:|2031-06-01", "Green mass:|5 kg", "First crack:|8:50", "Drop:|11:00");
        assertEquals(List.of(List.of("H105", "2031-06-01", "5 kg", "8:50", "11:00")), table.rows());
        assertEquals(List.of("Batch", "Date", "Green mass", "First crack", "Drop"), table.headings());
    }

    @Test
    void settingsAboveARecordingAreNoTableOfTheirOwn() {
        List<String> lines = new ArrayList<>(
                List.of("Batch:|H105", "Date:|2031-06-01", "Green mass:|5 kg", "", "Time|Bean", "s|°C"));
        for (int i = 0; i < 20; i++) {
            lines.add(i + "|" + (200 - i));
        }
        FoundTable table = Sheets.table(lines.toArray(String[]::new));
        assertEquals(List.of("Time [s]", "Bean [°C]"), table.headings());
        assertEquals(3, table.above().size());
        assertEquals(7, table.lines().get(0));
    }

    @Test
    void codesOrNumbersOfCupsMayHeadColumns() {
        assertEquals(
                List.of("Cupper", "427", "518", "633"),
                Sheets.table("Cupper|427|518|633", "Ana|7|8|6", "Ben|6|7|7").headings());
        assertEquals(
                List.of("Batch", "1", "2", "3"),
                Sheets.table("Batch|1|2|3", "H101|7|8|6", "H102|6|7|7").headings());
    }

    @ParameterizedTest
    @ValueSource(ints = {10, 100})
    void threeHundredThousandRowsTakeAFewSeconds(int every) {
        List<List<String>> rows = new ArrayList<>(
                List.of(List.of("Batch 101", "01/06/2031 08:00", "", ""), List.of("Time", "Bean", "Air", "Gas")));
        for (int i = 0; i < 300_000; i++) {
            rows.add(
                    i % every == 0
                            ? List.of()
                            : List.of(Integer.toString(i), Double.toString(200 + i % 50), "210", "80"));
        }
        Sheet sheet = new Sheet(java.nio.file.Path.of("long.csv"), "", ',', Numbers.Decimal.POINT, rows);
        List<FoundTable> tables = Assertions.assertTimeout(Duration.ofSeconds(4), () -> FoundTable.in(sheet));
        assertEquals(1, tables.size());
        assertEquals(300_000 - 300_000 / every, tables.get(0).rows().size());
        assertEquals(300_002, tables.get(0).lines().get(tables.get(0).lines().size() - 1));
    }

    @Test
    void nothingIsFoundWhereNothingStands() {
        assertTrue(FoundTable.in(Sheets.of("")).isEmpty());
        assertTrue(FoundTable.in(Sheets.of("A letter to the roaster", "", "With kind regards"))
                .isEmpty());
    }

    /** A log by hand has two columns and a row each half minute or minute; common practice, no source. */
    @ParameterizedTest
    @ValueSource(strings = {"0:%02d", "8:%02d", "0:00:%02d"})
    void aShortTableOfTimesAndOneValueIsNoListOfKeys(String time) {
        List<String> lines = new ArrayList<>(List.of("Time|Beans"));
        for (int i = 0; i < 20; i++) {
            lines.add(String.format(java.util.Locale.ROOT, time, 2 * i) + "|" + (90 + 5 * i));
        }
        FoundTable table = Sheets.table(lines.toArray(String[]::new));
        assertEquals(List.of("Time", "Beans"), table.headings());
        assertEquals(20, table.rows().size());
    }

    @Test
    void linesAreThoseOfTheFileWhereACellHasSeveral() {
        List<List<String>> rows = List.of(
                List.of("Batch", "Date", "Green", "Note"),
                List.of("1", "2031-06-01", "5", "two\nlines"),
                List.of("2", "2031-06-01", "5.2", ""),
                List.of("3", "2031-06-02", "4.9", ""),
                List.of("Total", "", "15.1", ""));
        Sheet sheet = new Sheet(
                java.nio.file.Path.of("list.csv"), "", ',', Numbers.Decimal.POINT, rows, List.of(1, 2, 4, 5, 6));
        FoundTable table = FoundTable.in(sheet).get(0);
        assertEquals(List.of(2, 4, 5), table.lines());
        assertEquals(List.of("Line 6 is worked out of the other rows: 'Total 15.1'."), table.leftOut());
    }
}
