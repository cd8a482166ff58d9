package parchment.gather;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;
import parchment.gather.ScoreSheet.Confidence;

/**
 * Holds that a score sheet is read by what its values do where its words are in no list, and that a word alone decides nothing against them; invented
 * languages, batches and cuppers. The thresholds are common practice, no source.
 */
class UnknownWordsTest {
    private static final List<String> BATCHES = List.of("101", "102", "103", "104");

    private static Optional<ScoreSheet> read(String file, String... lines) {
        return ScoreSheets.of(MadeTables.named(file, "", List.of(), lines), ScoreClues.of(BATCHES));
    }

    private static List<String> cups(String... lines) {
        return MadeTables.words(read("vorp.csv", lines).orElseThrow().cups());
    }

    private static String all(ScoreSheet sheet) {
        return sheet.told() + " " + sheet.open();
    }

    static Stream<Arguments> sheets() {
        return Stream.of(
                Arguments.of(
                        "who scored stands once beside each batch",
                        List.of(
                                "brap|Klum|Vost|Tirr",
                                "101|Ana|7|6.5",
                                "101|Teo|6|6.5",
                                "102|Ana|7.25|6",
                                "102|Teo|7|7"),
                        "Ana batch 101 {vost=7.0, tirr=6.5}"),
                Arguments.of(
                        "small names stand once beside each batch",
                        List.of(
                                "brap|klum|vost|tirr",
                                "101|ana|7|6.5",
                                "101|teo|6|6.5",
                                "102|ana|7.25|6",
                                "102|teo|7|7"),
                        "ana batch 101 {vost=7.0, tirr=6.5}"),
                Arguments.of(
                        "attributes in rows under who scored",
                        List.of(
                                "brap|klum|Ana|Teo",
                                "101|vost|7|6.5",
                                "101|tirr|6|6.5",
                                "102|vost|7.25|6",
                                "102|tirr|7|7"),
                        "Ana batch 101 {vost=7.0, tirr=6.0}"),
                Arguments.of(
                        "attributes and who scored in rows",
                        List.of(
                                "brap|klum|forp|zim",
                                "101|Ana|vost|7",
                                "101|Ana|tirr|6.5",
                                "101|Teo|vost|6",
                                "101|Teo|tirr|7.5",
                                "102|Ana|vost|7",
                                "102|Ana|tirr|6",
                                "102|Teo|vost|8",
                                "102|Teo|tirr|7.25"),
                        "Ana batch 101 {vost=7.0, tirr=6.5}"),
                Arguments.of(
                        "two words in each heading",
                        List.of("brap|Ana vost|Ana tirr|Teo vost|Teo tirr", "101|7|6.5|6|7.5", "102|7|6|8|7.25"),
                        "Ana batch 101 {vost=7.0, tirr=6.5}"),
                Arguments.of(
                        "Dutch",
                        List.of("brand|datum|proever|zoet|zuur|opmerking", "101|2031-06-04|Ana|7|6.5|pruim"),
                        "2031-06-04 Ana batch 101 {zoet=7.0, zuur=6.5} 'pruim'"));
    }

    @ParameterizedTest(name = "{0}")
    @MethodSource("sheets")
    void readsSheetsOfUnknownWords(String what, List<String> lines, String cup) {
        List<String> cups = cups(lines.toArray(String[]::new));
        assertTrue(cups.contains(cup), cups.toString());
    }

    @Test
    void saysWhichWordsWereTakenForAttributes() {
        assertTrue(
                read("vorp.csv", "Batch|Cupper|Acidity|Zorn", "101|Ana|7|6", "102|Ana|6|7")
                        .orElseThrow()
                        .told()
                        .contains(
                                "This is no word that is known, and is taken for an attribute: 'Zorn'. The numbers under it lie on the scale of the sheet, one for each cup."));
        assertFalse(
                all(read("vorp.csv", "Batch|Cupper|Acidity|Body", "101|Ana|7|6").orElseThrow())
                        .contains("is known"));
    }

    @Test
    void asksWhereNamesStandInRowsAndInHeadings() {
        ScoreSheet sheet = read(
                        "vorp.csv",
                        "Brap|Klum|Wren|Teo",
                        "101|Vost|7|6.5",
                        "101|Tirr|6|6.5",
                        "102|Vost|7.25|6",
                        "102|Tirr|7|7")
                .orElseThrow();
        assertTrue(
                sheet.open()
                        .contains(
                                "Are 'Vost', 'Tirr' those who scored, and 'Wren', 'Teo' attributes, or the other way round?"),
                sheet.open().toString());
    }

    @Test
    void takesHalfOfTheNumbersOnTheScaleOfTheOthersForAnAttributeAndNotLess() {
        String[] half = {"Batch|Cupper|Acidity|Zorn", "101|Ana|7|7", "102|Ana|6|93", "103|Ana|7|8", "104|Ana|6|94"};
        assertTrue(cups(half).toString().contains("zorn=7.0"), cups(half).toString());
        String[] less = {"Batch|Cupper|Acidity|Zorn", "101|Ana|7|7", "102|Ana|6|93", "103|Ana|7|92", "104|Ana|6|94"};
        assertEquals("Ana batch 101 {acidity=7.0} 'Zorn: 7'", cups(less).get(0));
    }

    /** Nine of ten rows hold a name once beside a batch; each name stands beside half of the batches. */
    @Test
    void takesNamesForWhoScoredWhereTheyStandOnceBesideABatch() {
        List<String> lines = new ArrayList<>(List.of("Brap|Klum|Vost|Tirr"));
        for (String batch : BATCHES) {
            for (String name : List.of("Ana", "Teo", "Oda")) {
                lines.add(batch + "|" + name + "|7|6.5");
            }
        }
        assertTrue(cups(lines.toArray(String[]::new)).get(0).startsWith("Ana batch"));
        // One name twice beside one batch: 11 of 12 stand once. Two: 10 of 12, fewer than nine of ten.
        lines.set(2, "101|Ana|7|6.5");
        assertTrue(cups(lines.toArray(String[]::new)).get(0).startsWith("Ana batch"));
        lines.set(5, "102|Ana|7|6.5");
        assertTrue(cups(lines.toArray(String[]::new)).get(0).startsWith("Tirr batch"));
    }

    @Test
    void takesNoWordThatGoesWithItsBatchForWhoScored() {
        List<String> cups = cups(
                "Batch|Lorp|Acidity|Body",
                "101|Hill|7|6",
                "101|Hill|7|8",
                "102|Quay|6|6",
                "102|Quay|7|7",
                "103|Hill|6|6");
        assertFalse(cups.toString().contains("Hill batch 102"), cups.toString());
        List<String> lots = cups("Batch|Cupper|Lorp|Acidity|Body", "101|Ana|Hill|7|6", "102|Ana|Quay|6|6");
        assertEquals("Ana batch 101 {acidity=7.0, body=6.0} 'Lorp: Hill'", lots.get(0));
    }

    /** Six scores on quarters, some between whole numbers, lie there by no chance; whole numbers and fewer need ties. */
    @Test
    void takesSixNumbersOnQuartersForScoresAndNotFive() {
        String[] six = {"Brap|vost|tirr", "101|7.25|6", "102|5|8.5", "103|9|4.75"};
        assertEquals(Confidence.DOUBTFUL, read("vorp.csv", six).orElseThrow().confidence());
        assertTrue(read("vorp.csv", six)
                .orElseThrow()
                .open()
                .contains("Are 'vost', 'tirr' attributes, and their numbers scores?"));
        String[] whole = {"Brap|vost|tirr", "101|7|6", "102|5|8", "103|9|4"};
        assertTrue(read("vorp.csv", whole).isEmpty());
        String[] tenths = {"Brap|vost|tirr", "101|7.25|6", "102|5|8.5", "103|9|4.7"};
        assertTrue(read("vorp.csv", tenths).isEmpty());
        assertEquals(
                Confidence.LIKELY,
                read("cupping.csv", whole).orElseThrow().confidence(),
                "a file that is called a cupping needs no ties");
    }

    @Test
    void takesNoOneColumnUnderAnUnknownWordForScores() {
        assertTrue(read("vorp.csv", "Brap|vost", "101|7.25", "102|5", "103|9", "104|7", "101|7", "102|8.5")
                .isEmpty());
    }

    static Stream<Arguments> words() {
        return Stream.of(
                Arguments.of(
                        "a maker in English",
                        List.of("Brand|Code|Cupper|Acidity", "Hillside|K7|Ana|7"),
                        "Ana code K7 {acidity=7.0} 'Brand: Hillside'"),
                Arguments.of(
                        "a maker in English before the batch",
                        List.of("Brand|Roast|Cupper|Acidity", "Hillside|101|Ana|7"),
                        "Ana batch 101 {acidity=7.0} 'Brand: Hillside'"),
                Arguments.of(
                        "batches that are known, in any language",
                        List.of("Brand|Cupper|Acidity", "101|Ana|7"),
                        "Ana batch 101 {acidity=7.0}"),
                Arguments.of(
                        "a roast in Dutch",
                        List.of("Brand|Proever|Zuur", "zomer 3|Ana|7"),
                        "Ana batch zomer 3 {zuur=7.0}"),
                Arguments.of(
                        "a roast in Danish",
                        List.of("Brand|Smager|Syrlighed|Aroma", "sommer 3|Ana|7|6"),
                        "Ana batch sommer 3 {syrlighed=7.0, aroma=6.0}"),
                Arguments.of(
                        "a day in Italian",
                        List.of("Data|Tostatura|Assaggiatore|Dolcezza", "2031-06-04|101|Ana|7"),
                        "2031-06-04 Ana batch 101 {dolcezza=7.0}"),
                Arguments.of(
                        "no day in English",
                        List.of("Data|Batch|Cupper|Sweetness", "ok|101|Ana|7"),
                        "Ana batch 101 {sweetness=7.0} 'Data: ok'"),
                Arguments.of(
                        "the batches that are known and not what is called so",
                        List.of("Batch|Vorp|Cupper|Acidity", "spring|101|Ana|7", "spring|102|Ana|6"),
                        "Ana batch 101 {acidity=7.0} 'Batch: spring'"));
    }

    @ParameterizedTest(name = "{0}")
    @MethodSource("words")
    void weighsAWordByTheLanguageAndTheValues(String what, List<String> lines, String cup) {
        assertEquals(cup, cups(lines.toArray(String[]::new)).get(0));
    }

    @Test
    void takesTheLastLettersAndFigureOfATabForNoPerson() {
        String[] lines = {"Batch|Acidity|Body", "101|7|6"};
        ScoreSheet tab = ScoreSheets.of(
                        MadeTables.named("vorp.xlsx", "Blad1", List.of(), lines), ScoreClues.of(BATCHES))
                .orElseThrow();
        assertEquals("", tab.cups().get(0).cupper());
        ScoreSheet person = ScoreSheets.of(
                        MadeTables.named("vorp.xlsx", "Wren", List.of(), lines), ScoreClues.of(BATCHES))
                .orElseThrow();
        assertEquals("Wren", person.cups().get(0).cupper());
    }

    @Test
    void takesAWordThatIsAFilesWholeNameForACupperOnlyWhereTwoFilesOfOneFormAreCalledByNames() {
        String[] lines = {"Batch|Acidity|Body", "101|7|6"};
        FoundTable one = MadeTables.named("oda.csv", "", List.of(), lines);
        FoundTable other = MadeTables.named("teo.csv", "", List.of(), lines);
        FoundTable form = MadeTables.named("teo.csv", "", List.of(), "Batch|Body", "101|7");
        ScoreClues clues = ScoreClues.of(BATCHES);
        assertEquals(List.of("Oda", "Teo"), List.copyOf(ScoreForms.cuppers(List.of(one, other), clues)));
        assertEquals(List.of(), List.copyOf(ScoreForms.cuppers(List.of(one, form), clues)));
        assertEquals("", ScoreSheets.of(one, clues).orElseThrow().cups().get(0).cupper());
        assertEquals(
                "oda",
                ScoreSheets.of(one, clues.withCuppers(List.of("Oda")))
                        .orElseThrow()
                        .cups()
                        .get(0)
                        .cupper());
    }

    @Test
    void readsSignsBesideAScore() {
        List<String> read = Stream.of("8?", "7,5", "7 (fruity)", "8+", "7 -", "(7)", "7-8", "?", "n/a")
                .map(ScoreCell::of)
                .map(cell -> cell.kind() + " " + cell.score() + " " + cell.words())
                .toList();
        assertEquals(
                List.of(
                        "SCORE 8.0 ?",
                        "SCORE 7.5 ",
                        "SCORE 7.0 (fruity)",
                        "SCORE 8.0 +",
                        "SCORE 7.0 -",
                        "WORDS NaN (7)",
                        "WORDS NaN 7-8",
                        "MISSING NaN ",
                        "MISSING NaN "),
                read);
    }

    /** Nine of ten totals must be the sum, within 0.05; common practice, no source. */
    @Test
    void leavesOutATotalWhereNineOfTenAreTheSum() {
        assertTrue(total(1).contains("'total' is only the sum of the others in 10 cups"), total(1));
        assertFalse(total(2).contains("only the sum"), total(2));
    }

    private static String total(int slips) {
        List<String> lines = new ArrayList<>(List.of("Batch|Cupper|Acidity|Body|Total"));
        IntStream.range(0, 10)
                .forEach(i -> lines.add(
                        (101 + i) + "|Ana|" + (5 + i % 4) + "|7|" + (12 + i % 4 + (i < slips ? 3 * i + 2 : 0))));
        return read("s.csv", lines.toArray(String[]::new)).orElseThrow().told().toString();
    }

    @Test
    void leavesOutMeansOverCuppersWhoseRowsNameNoDay() {
        ScoreSheet sheet = read(
                        "catas.csv",
                        "Tueste|Fecha cata|Catador|dulzor|acidez",
                        "101|2031-06-04|Ana|7|6",
                        "101|2031-06-04|Teo|8|6.5",
                        "101||Promedio|7.5|6.25",
                        "102|2031-06-05|Ana|6|6",
                        "102|2031-06-05|Teo|5|7",
                        "102||Promedio|5.5|7.5")
                .orElseThrow();
        assertEquals(4, sheet.cups().size());
        assertTrue(sheet.told().contains("2 means over cuppers left out: their scores stand beside."), all(sheet));
        assertTrue(
                sheet.told()
                        .contains(
                                "Line 7: the mean 7.5 of 'acidez' is not that of the scores beside it (6.5); it is left out, the scores are kept."),
                all(sheet));
    }

    @Test
    void goesOnWithTheBatchAboveInOneBlankCellWhereTheAttributeIsAnother() {
        List<String> cups = cups(
                "Batch|Attribute|Ana|Teo",
                "101|Acidity|7|6",
                "101|Body|6|6",
                "102|Acidity|5|6",
                "|Body|8|5",
                "103|Acidity|6|7",
                "103|Body|6|7");
        assertTrue(cups.contains("Ana batch 102 {acidity=5.0, body=8.0}"), cups.toString());
        ScoreSheet again = read(
                        "s.csv",
                        "Batch|Attribute|Ana|Teo",
                        "101|Acidity|7|6",
                        "101|Body|6|6",
                        "102|Acidity|5|6",
                        "|Acidity|8|5",
                        "103|Acidity|6|7",
                        "103|Body|6|7")
                .orElseThrow();
        assertTrue(
                again.open().contains("Which batch is each cup of? Line 5 names no batch, code or lot."),
                again.open().toString());
    }

    @Test
    void countsRowsOfOneNameAsCupsAndAsks() {
        ScoreSheet sheet = read("s.csv", "Batch|Acidity|Body", "101|7|6", "101|8|6", "101|7|6", "102|5|6")
                .orElseThrow();
        assertEquals(
                List.of(
                        "nobody batch 101 cup 1 {acidity=7.0, body=6.0}",
                        "nobody batch 101 cup 2 {acidity=8.0, body=6.0}",
                        "nobody batch 101 cup 3 {acidity=7.0, body=6.0}",
                        "nobody batch 102 {acidity=5.0, body=6.0}"),
                MadeTables.words(sheet.cups()));
        assertTrue(
                sheet.told()
                        .containsAll(List.of(
                                "Nothing tells these rows of one batch apart, and they are read as cups 1, 2 and so on: '101', lines 2, 3, 4.",
                                "The lines 2, 4 of '101' hold the same scores: if one was pasted twice, take it out.")),
                sheet.told().toString());
        assertTrue(
                sheet.open()
                        .contains(
                                "Are rows of one batch that name nobody several cups, or one cup of several cuppers? Until a column says who scored, they are cups of one panel."),
                sheet.open().toString());
        ScoreSheet named = read("s.csv", "Batch|Cupper|Acidity|Body", "101|Ana|7|6", "101|Teo|8|6", "101|Ana|6|6")
                .orElseThrow();
        assertEquals(
                List.of(
                        "Ana batch 101 cup 1 {acidity=7.0, body=6.0}",
                        "Ana batch 101 cup 2 {acidity=6.0, body=6.0}",
                        "Teo batch 101 {acidity=8.0, body=6.0}"),
                MadeTables.words(named.cups()));
        assertFalse(named.open().toString().contains("several cups"));
        assertEquals(
                Arrays.asList(1, 2),
                read("s.csv", "Batch|Cup|Acidity|Body", "101|1|7|6", "101|2|8|6").orElseThrow().cups().stream()
                        .map(TastedCup::cup)
                        .toList());
    }
}
