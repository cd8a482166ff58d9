package parchment.gather;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;
import parchment.sheet.DateOrder;

/** Holds that pages of scores are read from the sheet on, with lines over parts of it and headings of two parts; invented cuppers and batches. */
class ScoreBlocksTest {
    private static final ScoreClues CLUES =
            ScoreClues.of(List.of("101", "102", "103")).withDates(DateOrder.DAY_MONTH_YEAR);

    private static List<String> cups(String... lines) {
        List<TastedCup> cups = new ArrayList<>();
        for (FoundTable table : FoundTable.in(Sheets.of(lines))) {
            cups.addAll(ScoreSheets.of(table, CLUES).orElseThrow().cups());
        }
        return MadeTables.words(cups);
    }

    private static List<String> told(String... lines) {
        List<String> told = new ArrayList<>();
        for (FoundTable table : FoundTable.in(Sheets.of(lines))) {
            told.addAll(ScoreSheets.of(table, CLUES).orElseThrow().told());
        }
        return told;
    }

    private static Arguments page(String what, List<String> lines, String... cups) {
        return Arguments.of(what, lines, Arrays.stream(cups).sorted().toList());
    }

    static Stream<Arguments> pages() {
        return Stream.of(
                page(
                        "a block a cupper, the name above it",
                        List.of(
                                "Ana",
                                "Batch|Acidity|Body",
                                "101|7|8",
                                "102|6|7",
                                "",
                                "Teo",
                                "Batch|Acidity|Body",
                                "101|5|6",
                                "102|7|7"),
                        "Ana batch 101 {acidity=7.0, body=8.0}",
                        "Ana batch 102 {acidity=6.0, body=7.0}",
                        "Teo batch 101 {acidity=5.0, body=6.0}",
                        "Teo batch 102 {acidity=7.0, body=7.0}"),
                page(
                        "the same without a blank row",
                        List.of(
                                "Ana|",
                                "Batch|Acidity|Body",
                                "101|7|8",
                                "102|6|7",
                                "Teo|",
                                "Batch|Acidity|Body",
                                "101|5|6",
                                "102|7|7"),
                        "Ana batch 101 {acidity=7.0, body=8.0}",
                        "Ana batch 102 {acidity=6.0, body=7.0}",
                        "Teo batch 101 {acidity=5.0, body=6.0}",
                        "Teo batch 102 {acidity=7.0, body=7.0}"),
                page(
                        "a block a batch, attributes down and cuppers across",
                        List.of(
                                "Batch 101|||",
                                "|Ana|Teo|Mirela",
                                "Acidity|7|6|5",
                                "Body|8|7|6",
                                "Sweetness|6|6|7",
                                "",
                                "Batch 102|||",
                                "|Ana|Teo|Mirela",
                                "Acidity|6|6|5",
                                "Body|7|7|6",
                                "Sweetness|5|6|7"),
                        "Ana batch 101 {acidity=7.0, body=8.0, sweetness=6.0}",
                        "Teo batch 101 {acidity=6.0, body=7.0, sweetness=6.0}",
                        "Mirela batch 101 {acidity=5.0, body=6.0, sweetness=7.0}",
                        "Ana batch 102 {acidity=6.0, body=7.0, sweetness=5.0}",
                        "Teo batch 102 {acidity=6.0, body=7.0, sweetness=6.0}",
                        "Mirela batch 102 {acidity=5.0, body=6.0, sweetness=7.0}"),
                page(
                        "a block a batch with its number in the corner, under one day",
                        List.of(
                                "Cupping no. 1|Wednesday 18 June 2031||",
                                "",
                                "Roast no. 101|Ana|Teo|Mirela",
                                "Acidity|7|6 1/2|5",
                                "Body|8|7|6 1/4",
                                "",
                                "Roast no. 102|Ana|Teo|Mirela",
                                "Acidity|6 1/4|6 1/2|5 1/4",
                                "Body|7 1/4|7 1/2|6 3/4",
                                "Roast no. 103|Ana|Teo|Mirela",
                                "Acidity|5|5|5",
                                "Body|6|6|7"),
                        "2031-06-18 Ana batch 101 {acidity=7.0, body=8.0}",
                        "2031-06-18 Teo batch 101 {acidity=6.5, body=7.0}",
                        "2031-06-18 Mirela batch 101 {acidity=5.0, body=6.25}",
                        "2031-06-18 Ana batch 102 {acidity=6.25, body=7.25}",
                        "2031-06-18 Teo batch 102 {acidity=6.5, body=7.5}",
                        "2031-06-18 Mirela batch 102 {acidity=5.25, body=6.75}",
                        "2031-06-18 Ana batch 103 {acidity=5.0, body=6.0}",
                        "2031-06-18 Teo batch 103 {acidity=5.0, body=6.0}",
                        "2031-06-18 Mirela batch 103 {acidity=5.0, body=7.0}"),
                page(
                        "headings of two words that come back",
                        List.of("Batch|Ana Acidity|Ana Body|Teo Acidity|Teo Body", "101|7|8|5|6", "102|6|7|7|7"),
                        "Ana batch 101 {acidity=7.0, body=8.0}",
                        "Ana batch 102 {acidity=6.0, body=7.0}",
                        "Teo batch 101 {acidity=5.0, body=6.0}",
                        "Teo batch 102 {acidity=7.0, body=7.0}"),
                page(
                        "attributes with the cupper in brackets",
                        List.of(
                                "Batch|Acidity (Ana)|Body (Ana)|Acidity (Teo)|Body (Teo)",
                                "101|7|8|5|6",
                                "102|6|7|7|7"),
                        "Ana batch 101 {acidity=7.0, body=8.0}",
                        "Ana batch 102 {acidity=6.0, body=7.0}",
                        "Teo batch 101 {acidity=5.0, body=6.0}",
                        "Teo batch 102 {acidity=7.0, body=7.0}"),
                page(
                        "on its side without headings",
                        List.of(
                                "Date|2031-06-04|2031-06-04|2031-06-04",
                                "Cupper|Ana|Teo|Ana",
                                "Batch|101|101|102",
                                "Acidity|7|6|7.5",
                                "Body|8|7.25|6"),
                        "2031-06-04 Ana batch 101 {acidity=7.0, body=8.0}",
                        "2031-06-04 Teo batch 101 {acidity=6.0, body=7.25}",
                        "2031-06-04 Ana batch 102 {acidity=7.5, body=6.0}"),
                page(
                        "days with the month's name",
                        List.of(
                                "Date|Cupper|Batch|Acidity|Body",
                                "4 June 2031|Ana|101|7|8",
                                "4. Juni 2031|Ana|102|7|8",
                                "le 4 juin 2031|Teo|101|7|8",
                                "June 4, 2031|Teo|102|7|8"),
                        "2031-06-04 Ana batch 101 {acidity=7.0, body=8.0}",
                        "2031-06-04 Ana batch 102 {acidity=7.0, body=8.0}",
                        "2031-06-04 Teo batch 101 {acidity=7.0, body=8.0}",
                        "2031-06-04 Teo batch 102 {acidity=7.0, body=8.0}"),
                page(
                        "by the day of the roast and the coffee",
                        List.of(
                                "Cupped|Name|Roasted|Coffee|Acidity|Body",
                                "04.06.2031|Ana|01.06.2031|Hill|7|8",
                                "04.06.2031|Teo|02.06.2031|Quay|6|6.5"),
                        "2031-06-04 Ana batch 2031-06-01 lot Hill {acidity=7.0, body=8.0}",
                        "2031-06-04 Teo batch 2031-06-02 lot Quay {acidity=6.0, body=6.5}"),
                page(
                        "the top of the scale in the heading",
                        List.of("Cupper|Batch|Acidity /10|Body (out of 10)", "Ana|101|7|8", "Teo|101|6|6"),
                        "Ana batch 101 {acidity=7.0, body=8.0}",
                        "Teo batch 101 {acidity=6.0, body=6.0}"));
    }

    @ParameterizedTest(name = "{0}")
    @MethodSource("pages")
    void readsEveryPage(String what, List<String> lines, List<String> cups) {
        assertEquals(cups, cups(lines.toArray(String[]::new)), what);
    }

    @Test
    void saysWhoALineAloneIsTakenFor() {
        List<String> told = told("Ana|", "Batch|Acidity|Body", "101|7|8", "102|6|7", "Teo|", "101|5|6", "102|7|7");
        assertTrue(told.contains("Line 1, 'Ana', is taken for the cupper of the rows below it."), told.toString());
        assertTrue(told.contains("Line 5, 'Teo', is taken for the cupper of the rows below it."), told.toString());
        assertTrue(told.stream().noneMatch(line -> line.contains("remark")), told.toString());
    }

    @Test
    void takesNoTitleOfTwoWordsForACupperUnlessSeveralStandOnThePage() {
        List<String> one = cups("Harbour Roastery", "Batch|Acidity|Body", "101|7|8", "102|6|7");
        assertEquals("nobody batch 101 {acidity=7.0, body=8.0}", one.get(0));
        List<String> two =
                cups("Ana Lima|", "Batch|Acidity|Body", "101|7|8", "102|6|7", "Teo Rey|", "101|5|6", "102|7|7");
        assertEquals("Ana Lima batch 101 {acidity=7.0, body=8.0}", two.get(0));
        assertEquals("Teo Rey batch 101 {acidity=5.0, body=6.0}", two.get(2));
    }

    @Test
    void keepsARemarkBesideSeveralCuppersInTheNoteOfEachAndSaysSo() {
        String[] lines = {
            "Batch|Attribute|Ana|Teo|Comment",
            "101|Acidity|7|6|plum",
            "101|Body|8|7|",
            "102|Acidity|6|6|",
            "102|Body|7|6|"
        };
        assertEquals("Ana batch 101 {acidity=7.0, body=8.0} 'plum'", cups(lines).get(0));
        assertEquals("Teo batch 101 {acidity=6.0, body=7.0} 'plum'", cups(lines).get(2));
        assertTrue(
                told(lines)
                        .contains(
                                "What stands under 'Comment' is beside the scores of several; it is kept in the note of each of them."),
                told(lines).toString());
        String[] single = {"Batch|Cupper|Acidity|Body|Comment", "101|Ana|7|8|plum", "101|Teo|6|7|"};
        assertEquals("Teo batch 101 {acidity=6.0, body=7.0}", cups(single).get(1));
        assertFalse(told(single).toString().contains("of several"), told(single).toString());
    }

    @Test
    void countsSignsForNothingInOneSentence() {
        assertTrue(told("Batch|Cupper|Acidity|Body", "101|Ana|7|-", "101|Teo|n/a|7", "102|Ana|-|6", "102|Teo|6|6")
                .contains("3 cells hold only a sign for nothing ('-', 'n/a'), read as missing."));
        assertFalse(told("Batch|Cupper|Acidity|Body", "101|Ana|7|", "101|Teo|6|7", "102|Ana|6|6")
                .toString()
                .contains("sign for nothing"));
    }

    @Test
    void leavesOutATotalOfSomeAttributesFromFiveCupsOn() {
        List<String> lines = new ArrayList<>(List.of(
                "Batch|Cupper|Acidity|Body|Aroma|Total",
                "101|Ana|7|8|5|15",
                "101|Teo|6|7|6|13",
                "102|Ana|8|8|7|16",
                "102|Teo|5|7|7|12"));
        List<String> four = told(lines.toArray(String[]::new));
        assertTrue(
                four.contains(
                        "'total' is kept as an attribute of its own: it is no sum or mean of the others that could be found."),
                four.toString());
        lines.add("103|Teo|5|6|8|11");
        List<String> five = told(lines.toArray(String[]::new));
        assertTrue(
                five.contains(
                        "'total' is only the sum of 'acidity', 'body' and is left out; it can be worked out again."),
                five.toString());
        assertEquals(
                "Ana batch 101 {acidity=7.0, body=8.0, aroma=5.0}",
                cups(lines.toArray(String[]::new)).get(0));
    }

    @Test
    void leavesOutATotalAndAMeanBesideEachOther() {
        String[] lines = {
            "Batch|Cupper|Acidity|Body|Total|Average", "101|Ana|7|8|15|7.5", "101|Teo|6|7|13|6.5", "102|Ana|8|8|16|8"
        };
        assertEquals("Ana batch 101 {acidity=7.0, body=8.0}", cups(lines).get(0));
    }

    @Test
    void readsMeansOfNoStepsAsScoresWhereNothingSpeaksAgainstIt() {
        FoundTable means = Sheets.table(
                "Date|Batch|Acidity|Body",
                "2031-06-04|101|6.63|6.56",
                "2031-06-04|102|6.44|5.81",
                "2031-06-04|103|7.63|6.69");
        assertEquals(
                ScoreSheet.Confidence.CLEAR,
                ScoreSheets.of(means, CLUES).orElseThrow().confidence());
        FoundTable weighed = Sheets.table(
                "Date|Batch|Green (kg)|Acidity|Body",
                "2031-06-04|101|5.13|6.63|6.56",
                "2031-06-04|102|5.21|6.44|5.81",
                "2031-06-04|103|5.17|7.63|6.69");
        assertEquals(
                ScoreSheet.Confidence.LIKELY,
                ScoreSheets.of(weighed, CLUES).orElseThrow().confidence());
    }
}
