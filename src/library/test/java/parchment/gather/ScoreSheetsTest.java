package parchment.gather;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Random;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;
import parchment.gather.ScoreSheet.Confidence;
import parchment.gather.ScoreSheet.Served;
import parchment.sheet.DateOrder;

/** Holds that a score sheet is understood in whatever layout it is kept; invented batches and cuppers. */
class ScoreSheetsTest {
    private static final ScoreClues CLUES =
            ScoreClues.of(List.of("101", "102", "103")).withDates(DateOrder.DAY_MONTH_YEAR);

    static ScoreSheet read(FoundTable table) {
        return ScoreSheets.of(table, CLUES).orElseThrow();
    }

    private static Arguments layout(String what, FoundTable table, String... cups) {
        return Arguments.of(what, table, Arrays.asList(cups));
    }

    static Stream<Arguments> layouts() {
        return Stream.of(
                layout(
                        "a cup a row",
                        MadeTables.of(
                                "Date|Cupper|Batch|Acidity|Sweetness|Comments",
                                "2031-06-04|Ana|101|7|7.5|plum",
                                "2031-06-04|Wren|102|6.5|-|"),
                        "2031-06-04 Ana batch 101 {acidity=7.0, sweetness=7.5} 'plum'",
                        "2031-06-04 Wren batch 102 {acidity=6.5}"),
                layout(
                        "a cup a row, in German",
                        MadeTables.of(
                                "Datum|Verkoster|Charge|Säure|Süße|Körper|Bemerkung",
                                "04.06.2031|Ana|101|7|7,5|k.A.|Pflaume",
                                "04.06.2031|Wren|102|6,5|7 1/2|6½|"),
                        "2031-06-04 Ana batch 101 {säure=7.0, süße=7.5} 'Pflaume'",
                        "2031-06-04 Wren batch 102 {säure=6.5, süße=7.5, körper=6.5}"),
                layout(
                        "a cupper a column, a row a batch, in Portuguese",
                        MadeTables.of("Torra|Ana|Wren|Média", "101|7|8|7,5", "102|6|7|6,5", "103|6|6|6"),
                        "Ana batch 101 {overall=7.0}",
                        "Wren batch 101 {overall=8.0}",
                        "Ana batch 102 {overall=6.0}",
                        "Wren batch 102 {overall=7.0}",
                        "Ana batch 103 {overall=6.0}",
                        "Wren batch 103 {overall=6.0}"),
                layout(
                        "a cupper a column, a row a cup and attribute, in Spanish",
                        MadeTables.of(
                                "Tueste|Atributo|Ana|Wren",
                                "101|Dulzor|7|8",
                                "|Acidez|6|6",
                                "102|Dulzor|5|7",
                                "|Acidez|6|5"),
                        "Ana batch 101 {dulzor=7.0, acidez=6.0}",
                        "Wren batch 101 {dulzor=8.0, acidez=6.0}",
                        "Ana batch 102 {dulzor=5.0, acidez=6.0}",
                        "Wren batch 102 {dulzor=7.0, acidez=5.0}"),
                layout(
                        "attributes over cuppers",
                        MadeTables.of(
                                "Batch|sweetness / Ana|sweetness / Wren|body / Ana|body / Wren",
                                "101|7|8|6|7",
                                "102|6|6|5|6"),
                        "Ana batch 101 {sweetness=7.0, body=6.0}",
                        "Wren batch 101 {sweetness=8.0, body=7.0}",
                        "Ana batch 102 {sweetness=6.0, body=5.0}",
                        "Wren batch 102 {sweetness=6.0, body=6.0}"),
                layout(
                        "cuppers over attributes, in Italian, as a row above",
                        MadeTables.named(
                                "s.csv",
                                "",
                                List.of("|Ana||Wren|"),
                                "Tostatura|Dolcezza|Corpo|Dolcezza 2|Corpo 2",
                                "101|7|6|8|7",
                                "102|6|5|6|6"),
                        "Ana batch 101 {dolcezza=7.0, corpo=6.0}",
                        "Wren batch 101 {dolcezza=8.0, corpo=7.0}",
                        "Ana batch 102 {dolcezza=6.0, corpo=5.0}",
                        "Wren batch 102 {dolcezza=6.0, corpo=6.0}"),
                layout(
                        "a tab a cupper",
                        MadeTables.named(
                                "cupping 2031-06-04.xlsx",
                                "Wren",
                                List.of(),
                                "Batch|Acidity|Body",
                                "101|7|6",
                                "102|6|6"),
                        "2031-06-04 Wren batch 101 {acidity=7.0, body=6.0}",
                        "2031-06-04 Wren batch 102 {acidity=6.0, body=6.0}"),
                layout(
                        "a file a cupper, in French",
                        MadeTables.named(
                                "degustation_wren_2031-06-04.csv",
                                "",
                                List.of(),
                                "Torréfaction|Acidité|Corps",
                                "101|7|6",
                                "102|6|6"),
                        "2031-06-04 Wren batch 101 {acidité=7.0, corps=6.0}",
                        "2031-06-04 Wren batch 102 {acidité=6.0, corps=6.0}"),
                layout(
                        "a cupper above, in German",
                        MadeTables.named(
                                "bogen.csv",
                                "",
                                List.of("Verkoster: Wren", "Datum|04.06.2031"),
                                "Charge|Säure|Körper",
                                "101|7|6",
                                "102|6|6"),
                        "2031-06-04 Wren batch 101 {säure=7.0, körper=6.0}",
                        "2031-06-04 Wren batch 102 {säure=6.0, körper=6.0}"),
                layout(
                        "batches side by side",
                        MadeTables.named(
                                "bogen.csv",
                                "",
                                List.of("Cupper: Wren"),
                                "|101|102",
                                "Date|2031-06-04|2031-06-05",
                                "Acidity|7|6",
                                "Body|6|6",
                                "Comments|plum|"),
                        "2031-06-04 Wren batch 101 {acidity=7.0, body=6.0} 'plum'",
                        "2031-06-05 Wren batch 102 {acidity=6.0, body=6.0}"),
                layout(
                        "batches side by side, by their codes, in Spanish",
                        MadeTables.named(
                                "cata.csv", "", List.of("Catador: Wren"), "Atributo|K7|M2", "Acidez|7|6", "Cuerpo|6|6"),
                        "Wren code K7 {acidez=7.0, cuerpo=6.0}",
                        "Wren code M2 {acidez=6.0, cuerpo=6.0}"),
                layout(
                        "long",
                        MadeTables.of(
                                "batch|cupper|attribute|score",
                                "101|Ana|acidity|7",
                                "101|Ana|body|6",
                                "101|Wren|acidity|8",
                                "101|Wren|body|7"),
                        "Ana batch 101 {acidity=7.0, body=6.0}",
                        "Wren batch 101 {acidity=8.0, body=7.0}"),
                layout(
                        "long, in German",
                        MadeTables.of(
                                "Charge|Prüfer|Merkmal|Punkte",
                                "101|Ana|Säure|7",
                                "101|Ana|Süße|6",
                                "102|Ana|Säure|8",
                                "102|Ana|Süße|7"),
                        "Ana batch 101 {säure=7.0, süße=6.0}",
                        "Ana batch 102 {säure=8.0, süße=7.0}"),
                layout(
                        "means only",
                        MadeTables.of("Batch|Average acidity|Average body", "101|7.25|6.5", "102|6.5|6.5"),
                        "nobody batch 101 {acidity=7.25, body=6.5}",
                        "nobody batch 102 {acidity=6.5, body=6.5}"),
                layout(
                        "means only, in Italian",
                        MadeTables.of("Tostatura|Media", "101|7,5", "102|6,5"),
                        "nobody batch 101 {overall=7.5}",
                        "nobody batch 102 {overall=6.5}"),
                layout(
                        "cups of a batch side by side",
                        MadeTables.of("Batch|Cupper|Sweetness cup 1|Sweetness cup 2", "101|Ana|7|8", "102|Ana|6|6"),
                        "Ana batch 101 cup 1 {sweetness=7.0}",
                        "Ana batch 101 cup 2 {sweetness=8.0}",
                        "Ana batch 102 cup 1 {sweetness=6.0}",
                        "Ana batch 102 cup 2 {sweetness=6.0}"),
                layout(
                        "cups of a batch in rows, in German",
                        MadeTables.of(
                                "Charge|Tasse|Verkoster|Süße|Körper",
                                "101|1|Ana|7|6",
                                "101|2|Ana|7|7",
                                "102|1|Ana|6|6",
                                "102|2|Ana|6|5"),
                        "Ana batch 101 cup 1 {süße=7.0, körper=6.0}",
                        "Ana batch 101 cup 2 {süße=7.0, körper=7.0}",
                        "Ana batch 102 cup 1 {süße=6.0, körper=6.0}",
                        "Ana batch 102 cup 2 {süße=6.0, körper=5.0}"),
                layout(
                        "codes only, in French",
                        MadeTables.of("Code|Dégustateur|Acidité|Équilibre", "K7|Ana|7|6", "M2|Ana|6|6"),
                        "Ana code K7 {acidité=7.0, équilibre=6.0}",
                        "Ana code M2 {acidité=6.0, équilibre=6.0}"),
                layout(
                        "cuppers in rows, batches in columns",
                        MadeTables.of("Cupper|101|102|103", "Ana|7|6|6", "Wren|8|7|6"),
                        "Ana batch 101 {overall=7.0}",
                        "Ana batch 102 {overall=6.0}",
                        "Ana batch 103 {overall=6.0}",
                        "Wren batch 101 {overall=8.0}",
                        "Wren batch 102 {overall=7.0}",
                        "Wren batch 103 {overall=6.0}"),
                layout(
                        "numbered lines beside codes",
                        MadeTables.of("No|Code|Cupper|Acidity|Body", "1|K7|Ana|7|6", "2|M2|Ana|6|6", "3|P3|Ana|6|7"),
                        "Ana code K7 {acidity=7.0, body=6.0} 'No: 1'",
                        "Ana code M2 {acidity=6.0, body=6.0} 'No: 2'",
                        "Ana code P3 {acidity=6.0, body=7.0} 'No: 3'"),
                layout(
                        "numbered lines before batches",
                        MadeTables.of("#|Batch|Cupper|Acidity|Body", "1|101|Ana|7|6", "2|102|Ana|6|6"),
                        "Ana batch 101 {acidity=7.0, body=6.0} '#: 1'",
                        "Ana batch 102 {acidity=6.0, body=6.0} '#: 2'"),
                layout(
                        "batches under a number sign",
                        MadeTables.of("#|Verkoster|Säure|Körper", "101|Ana|7|6", "102|Ana|6|6"),
                        "Ana batch 101 {säure=7.0, körper=6.0}",
                        "Ana batch 102 {säure=6.0, körper=6.0}"),
                layout(
                        "a tab an attribute",
                        MadeTables.named("s.xlsx", "Sweetness", List.of(), "Batch|Ana|Wren", "101|7|8", "102|6|6"),
                        "Ana batch 101 {sweetness=7.0}",
                        "Wren batch 101 {sweetness=8.0}",
                        "Ana batch 102 {sweetness=6.0}",
                        "Wren batch 102 {sweetness=6.0}"),
                layout(
                        "a lot and its day of roast, with the place at the table",
                        MadeTables.of(
                                "Coffee|Roast date|Order|Cupper|Aroma|Flavour",
                                "Low Orchard|2031-06-01|2|Ana|7|7.5",
                                "Far Terrace|2031-06-02|1|Ana|6|7.5"),
                        "Ana batch 2031-06-01 lot Low Orchard place 2 {aroma=7.0, flavour=7.5}",
                        "Ana batch 2031-06-02 lot Far Terrace place 1 {aroma=6.0, flavour=7.5}"));
    }

    @ParameterizedTest(name = "{0}")
    @MethodSource("layouts")
    void readsEveryLayout(String what, FoundTable table, List<String> cups) {
        ScoreSheet sheet = read(table);
        assertEquals(cups.stream().sorted().toList(), MadeTables.words(sheet.cups()), sheet.toString());
    }

    static Stream<Arguments> noScores() {
        return Stream.of(
                Arguments.of(
                        "a list",
                        MadeTables.of(
                                "Batch|Date|Green (kg)|Drop temp|End",
                                "101|2031-06-01|5|204|9:30",
                                "102|2031-06-01|5|205|9:40")),
                Arguments.of(
                        "a list with one score",
                        MadeTables.of("Batch|Green (kg)|Drop temp|Score", "101|5|204|85", "102|5|205|86")),
                Arguments.of(
                        "a German list",
                        MadeTables.of("Charge|Rohkaffee kg|Röstzeit|Verlust", "101|5|9,5|15", "102|5|9,5|15")),
                Arguments.of(
                        "a recording",
                        MadeTables.of("Time|Bean temp|Air temp|Gas", "0|90|92|40", "1|90|93|40", "2|91|93|40")),
                Arguments.of("a key", MadeTables.of("Code|Batch", "K7|101", "M2|102")),
                Arguments.of(
                        "lots",
                        MadeTables.of(
                                "Lot|Process|Moisture|Density",
                                "Low Orchard|washed|11|710",
                                "Far Terrace|natural|11|700")));
    }

    @ParameterizedTest(name = "{0}")
    @MethodSource("noScores")
    void takesNoOtherTableForScores(String what, FoundTable table) {
        assertTrue(
                ScoreSheets.of(table, CLUES).isEmpty(),
                () -> ScoreSheets.of(table, CLUES).toString());
    }

    @Test
    void leavesOutATotalThatIsOnlyASum() {
        ScoreSheet sheet = read(MadeTables.of(
                "Batch|Cupper|Acidity|Sweetness|Body|Total",
                "101|Ana|7|7|6|20",
                "102|Ana|6|7|6|19",
                "103|Ana|7|8|7|22"));
        assertEquals(
                List.of("acidity", "sweetness", "body"),
                List.copyOf(sheet.cups().get(0).scores().keySet()));
        assertTrue(
                sheet.told()
                        .contains(
                                "'total' is only the sum of the others in 3 cups and is left out; it can be worked out again."),
                sheet.told().toString());
    }

    @Test
    void keepsATotalThatIsMoreThanASum() {
        ScoreSheet sheet = read(MadeTables.of(
                "Charge|Verkoster|Säure|Süße|Körper|Summe",
                "101|Ana|7|7|6|84",
                "102|Ana|6|7|6|86",
                "103|Ana|7|8|7|85"));
        assertEquals(
                "{säure=7.0, süße=7.0, körper=6.0, total=84.0}",
                sheet.cups().get(0).scores().toString());
    }

    @Test
    void namesAMeanThatIsNotThatOfTheScoresBesideIt() {
        ScoreSheet sheet = read(MadeTables.of("Batch|Ana|Wren|Average", "101|7|8|7.5", "102|6|7|9", "103|6|6|6"));
        assertEquals(6, sheet.cups().size());
        assertTrue(
                sheet.told()
                        .contains(
                                "Line 3: the mean 9 of 'overall' is not that of the scores beside it (6.5); it is left out, the scores are kept."),
                sheet.told().toString());
    }

    @Test
    void keepsWordsAndMarksBesideAScoreInTheNote() {
        ScoreSheet sheet = read(MadeTables.of(
                "Batch|Cupper|Acidity|Body|Table", "101|Ana|7.5*|good|T1", "102|Ana|6|7 (thin)|", "103|Ana|n/a|6|"));
        assertEquals(
                List.of(
                        "Ana batch 101 {acidity=7.5} 'acidity: *; body: good; Table: T1'",
                        "Ana batch 102 {acidity=6.0, body=7.0} 'body: (thin)'",
                        "Ana batch 103 {body=6.0}"),
                MadeTables.words(sheet.cups()));
        assertTrue(
                sheet.told().contains("Line 2, 'Body': 'good' is no score; it is kept in the note."),
                sheet.told().toString());
    }

    @Test
    void namesAScoreOffItsScaleAndKeepsIt() {
        ScoreSheet sheet = read(
                MadeTables.of("Batch|Cupper|Acidity (0-10)|Body (0-10)", "101|Ana|75|7", "102|Ana|6|7", "103|Ana|7|6"));
        assertEquals(75, sheet.cups().get(0).scores().get("acidity"));
        assertTrue(
                sheet.told()
                        .contains(
                                "Line 2: 75 for 'acidity' is off the scale 0 to 10. It is written as it stands; mend it if it is a slip."),
                sheet.told().toString());
        assertEquals(
                List.of(0.0, 10.0),
                List.of(sheet.scales().get(0).low(), sheet.scales().get(0).high()));
    }

    @Test
    void asksForAScaleThatCannotBeTold() {
        ScoreSheet sheet = read(MadeTables.of("Batch|Cupper|Acidity|Body", "101|Ana|2|4", "102|Ana|3|4"));
        assertTrue(sheet.scales().isEmpty());
        assertTrue(
                sheet.open()
                        .contains(
                                "What is the scale of acidity, body? There are scores from 2 to 4 in steps of 1 in 4 cells, which fit "
                                        + "1 to 5, 0 to 5, 1 to 7, 1 to 9, 0 to 9, 1 to 10, 0 to 10."),
                sheet.open().toString());
    }

    @Test
    void asksWhetherNamesAreCuppersUnlessTheyAreKnown() {
        String[] lines = {"Batch|Ana|Wren", "101|7|8", "102|7|8", "103|7|7"};
        FoundTable table = MadeTables.named("list.csv", "", List.of(), lines);
        FoundTable named = MadeTables.named("cupping.csv", "", List.of(), lines);
        assertEquals(Confidence.CLEAR, read(named).confidence());
        assertTrue(read(named).open().contains("Are 'Ana', 'Wren' cuppers, and their numbers overall scores?"));
        assertEquals(Confidence.DOUBTFUL, read(table).confidence());
        assertTrue(read(table).open().contains("Are 'Ana', 'Wren' cuppers, and their numbers overall scores?"));
        assertEquals(
                Confidence.LIKELY,
                ScoreSheets.of(table, CLUES.withCuppers(List.of("Ana")))
                        .orElseThrow()
                        .confidence());
    }

    @Test
    void takesTheRoastersWordForAHeading() {
        FoundTable table = MadeTables.of("Batch|Ana|Wren|Round feel", "101|7|8|5", "102|7|8|6", "103|7|7|5");
        ScoreSheet sheet = ScoreSheets.of(table, CLUES.withStated("Round feel", ScorePart.ATTRIBUTE))
                .orElseThrow();
        assertTrue(
                MadeTables.words(sheet.cups()).contains("nobody batch 101 {round feel=5.0}"),
                MadeTables.words(sheet.cups()).toString());
    }

    @Test
    void saysThatNothingButCodesStandsThere() {
        assertEquals(
                Served.CODES_ALONE,
                read(MadeTables.of("Code|Cupper|Acidity|Body", "K7|Ana|7|6", "M2|Ana|6|6"))
                        .served());
        assertEquals(
                Served.NAMED,
                read(MadeTables.of("Code|Batch|Cupper|Acidity|Body", "K7|101|Ana|7|6", "M2|102|Ana|6|6"))
                        .served());
    }

    @Test
    void asksForTheDayAndTheCupper() {
        List<String> open =
                read(MadeTables.of("Batch|Acidity|Body", "101|7|6", "102|6|6")).open();
        assertTrue(
                open.contains("On which day was this tasted? Cups without a day of tasting cannot be written."),
                open.toString());
        assertTrue(
                open.contains(
                        "Who scored? Without an answer the cupper is written as 'panel', as for means over cuppers."),
                open.toString());
    }

    @Test
    void asksAboutAllDaysOfAKindAtOnce() {
        FoundTable table = MadeTables.of(
                "Date|Batch|Cupper|Acidity|Body",
                "04/06/2031|101|Ana|7|6",
                "04/06/2031|101|Ben|7|6",
                "05/06/2031|102|Ana|7|6",
                "4 Zork 2031|103|Ana|7|6");
        ScoreSheet sheet = ScoreSheets.of(table, ScoreClues.of(List.of("101", "102", "103")))
                .orElseThrow();
        assertEquals(
                List.of(
                        "Which day is '04/06/2031', and 1 more such day, of 3 cups? date.order answers it; until then nobody knows when they were tasted, and they are left out.",
                        "Which day is '4 Zork 2031', of 1 cup? Cups without a day of tasting cannot be written."),
                sheet.open().stream()
                        .filter(line -> line.startsWith("Which day"))
                        .toList());
    }

    @Test
    void asksWhichPartOfADateIsTheDay() {
        FoundTable table = MadeTables.of("Date|Batch|Cupper|Acidity|Body", "04/06/2031|101|Ana|7|6");
        ScoreSheet sheet = ScoreSheets.of(table, ScoreClues.of(List.of("101"))).orElseThrow();
        assertTrue(
                sheet.open()
                        .contains(
                                "Which day is '04/06/2031', of 1 cup? date.order answers it; until then nobody knows when they were tasted, and they are left out."),
                sheet.open().toString());
        assertTrue(sheet.cups().get(0).tastedOn().isEmpty());
    }

    @Test
    void takesTheRoastersAnswersForTheDayAndTheCupper() {
        ScoreSheet sheet = read(MadeTables.of("Batch|Acidity|Body", "101|7|6"))
                .on(LocalDate.of(2031, 6, 4))
                .by("Ana");
        assertEquals(List.of("2031-06-04 Ana batch 101 {acidity=7.0, body=6.0}"), MadeTables.words(sheet.cups()));
        ScoreSheet known = read(MadeTables.of("Date|Cupper|Batch|Acidity|Body", "2031-06-05|Wren|101|7|6"))
                .on(LocalDate.of(2031, 6, 4))
                .by("Ana");
        assertEquals(List.of("2031-06-05 Wren batch 101 {acidity=7.0, body=6.0}"), MadeTables.words(known.cups()));
    }

    @ParameterizedTest(name = "{0}")
    @MethodSource("layouts")
    void dropsNoCellInSilence(String what, FoundTable table, List<String> cups) {
        assertEquals(List.of(), unaccounted(table, read(table)));
    }

    @Test
    void dropsNoCellInSilenceWhereColumnsOfAnyKindStandBetween() {
        List<List<String>> kinds = List.of(
                List.of("Table", "T1", "T1", "T2"),
                List.of("", "x9 y", "", "zz z"),
                List.of("Water temp [°C]", "93", "94", "93"),
                List.of("Who washed up", "Oda", "", "Oda"),
                List.of("", "831", "832", "835"),
                List.of("Roast level", "light", "light", "dark"),
                List.of("Order", "72", "71", "first"),
                List.of("Cup", "1", "2", "left"),
                List.of("Date", "2031-06-04", "soon", ""),
                List.of("Remarks", "plum", "", "dry"),
                List.of("Coffee", "Hill", "Quay", ""),
                List.of("No", "907", "908", "911"),
                List.of("Session", "a", "a", "b"),
                List.of("Average", "1.5", "2.5", "9.5"),
                List.of("Total", "13", "14", "12"));
        List<String> lost = new ArrayList<>();
        for (int seed = 0; seed < 300; seed++) {
            Random random = new Random(seed);
            List<List<String>> columns = new ArrayList<>(List.of(
                    List.of("Batch", "101", "102", "103"),
                    List.of("Cupper", "Ana", "Wren", "Ana"),
                    List.of("Acidity", "7", "6*", "poor"),
                    List.of("Body", "6", "8", "7")));
            List<List<String>> more = new ArrayList<>(kinds);
            Collections.shuffle(more, random);
            for (List<String> column : more.subList(0, 1 + random.nextInt(4))) {
                columns.add(random.nextInt(columns.size() + 1), column);
            }
            String[] lines = new String[4];
            for (int row = 0; row < 4; row++) {
                int line = row;
                lines[row] =
                        String.join("|", columns.stream().map(c -> c.get(line)).toList());
            }
            FoundTable table = MadeTables.of(lines);
            for (String cell : unaccounted(table, read(table))) {
                lost.add("seed " + seed + ": " + cell + " of " + Arrays.toString(lines));
            }
        }
        assertEquals(List.of(), lost);
    }

    /** Returns the cells that stand neither in a cup nor in what is told. */
    private static List<String> unaccounted(FoundTable table, ScoreSheet sheet) {
        String all = MadeTables.words(sheet.cups()) + " " + sheet.told() + " " + sheet.open();
        List<String> lost = new ArrayList<>();
        for (List<String> row : table.rows()) {
            for (String cell : row) {
                ScoreCell read = ScoreCell.of(cell);
                boolean there = read.kind() == ScoreCell.Kind.MISSING
                        || all.contains(cell)
                        || all.contains(cell.toLowerCase(Locale.ROOT))
                        || read.isScore() && all.contains("=" + read.score())
                        || ScoreSheetsTest.date(cell).filter(all::contains).isPresent()
                        || ScoreWords.key(cell).isPresent()
                        || sheet.told().stream()
                                        .anyMatch(
                                                t -> t.contains("means over cuppers") || t.contains("is only the sum"))
                                && read.isScore();
                if (!there) {
                    lost.add(cell);
                }
            }
        }
        return lost;
    }

    private static Optional<String> date(String cell) {
        return CLUES.day(cell).map(LocalDate::toString);
    }
}
