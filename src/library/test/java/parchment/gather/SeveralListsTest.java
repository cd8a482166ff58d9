package parchment.gather;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.IntStream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import parchment.logbook.Logbook;
import parchment.logbook.WrittenFolder;
import parchment.quantity.MassUnit;
import parchment.sheet.Numbers;
import parchment.sheet.Sheet;

/** Holds what becomes of folders in which several tables speak of one thing; invented batches and cuppers. */
class SeveralListsTest {
    @TempDir
    Path temporary;

    private WrittenFolder old;
    private String said = "";

    @BeforeEach
    void begin() {
        old = new WrittenFolder(temporary.resolve("old"));
    }

    private Path gathered(String answers) throws Exception {
        Path file = temporary.resolve("answers.properties");
        Files.writeString(file, answers + "\n");
        StringBuilder out = new StringBuilder();
        Path made = temporary.resolve("made");
        assertEquals(0, Gather.run(old.path(), made, Optional.of(file), Gather.NOBODY, out), out.toString());
        said = out.toString();
        return made;
    }

    @Test
    void massesInKilogramsAndInGramsAreWrittenInOneUnit() throws Exception {
        old.with(
                "a.csv",
                "Batch,Date,Coffee,Green [kg],Roasted [kg],Charge temperature [°C]",
                "1,2031-03-05,Wren,5,4.25,200",
                "2,2031-03-05,Wren,5.2,4.4,205",
                "3,2031-03-05,Wren,5.1,4.3,210");
        old.with(
                "b.csv",
                "Batch,Date,Coffee,Green [g],Roasted [g],Charge temperature [°F]",
                "4,2031-03-06,Wren,4500,3825,392",
                "5,2031-03-06,Wren,4600,3900,401");
        Path made = gathered("");
        String batches = Files.readString(made.resolve("batches.csv"));
        assertFalse(batches.contains("[g]"), batches);
        assertFalse(batches.contains("[°F]"), batches);
        assertEquals(
                4.5,
                Logbook.open(made)
                        .batch("4")
                        .conditions()
                        .greenMass()
                        .orElseThrow()
                        .in(MassUnit.KILOGRAM),
                1e-9);
        assertTrue(batches.lines().anyMatch(line -> line.startsWith("4,") && line.contains(",200,")), batches);
        assertTrue(said.contains("The green mass stands in kg and g in the lists; all are written in kg."), said);
    }

    /** The answer stands whatever a third list, which nobody asked about, says beside. */
    @Test
    void theListThatIsAnsweredToStandIsWrittenThoughAThirdNamesTheBatches() throws Exception {
        String[] heads = {"Batch,Date,Coffee,Green kg,Roasted kg"};
        old.with("a.csv", rows(heads[0], "5.1"));
        old.with(
                "b.csv",
                "Batch,Date,Coffee,Operator",
                "1,2031-03-05,Wren,Ana",
                "2,2031-03-05,Wren,Ana",
                "3,2031-03-05,Wren,Ana");
        old.with("c.csv", rows(heads[0], "4.9"));
        Path made = gathered("lists.a.c=c");
        Logbook logbook = Logbook.open(made);
        for (String name : List.of("1", "2", "3")) {
            assertEquals(
                    4.9,
                    logbook.batch(name).conditions().greenMass().orElseThrow().in(MassUnit.KILOGRAM),
                    1e-9,
                    said);
        }
    }

    private static String[] rows(String head, String green) {
        return IntStream.rangeClosed(0, 3)
                .mapToObj(i -> i == 0 ? head : i + ",2031-03-05,Wren," + green + ",4.2")
                .toArray(String[]::new);
    }

    private static TastedCup cup(FoundTable table, String cupper, int line, double score) {
        return ScoreSheets.of(table, ScoreClues.of(List.of("101"))).orElseThrow().cups().stream()
                .filter(cup -> cup.cupper().equals(cupper) && cup.line() == line)
                .filter(cup -> cup.scores().containsValue(score))
                .findFirst()
                .orElseThrow();
    }

    private static FoundTable scores(String day, String... rows) {
        String[] lines = new String[rows.length + 1];
        lines[0] = "Batch|" + day + "|Cupper|Acidity|Body";
        System.arraycopy(rows, 0, lines, 1, rows.length);
        return MadeTables.of(lines);
    }

    @Test
    void aScoreSheetThatIsSavedTwiceCountsOnce() {
        FoundTable one = scores("Tasted", "101|2031-03-09|Ana|7|6", "101|2031-03-09|Ben|6|5");
        FoundTable copy = scores("Tasted", "101|2031-03-09|Ana|7|6", "101|2031-03-09|Ben|6|5.5");
        List<TastedCup> cups =
                List.of(cup(one, "Ana", 2, 7), cup(one, "Ben", 3, 5), cup(copy, "Ana", 2, 7), cup(copy, "Ben", 3, 5.5));
        CupsTwice once = CupsTwice.of(cups);
        assertEquals(List.of(cups.get(0), cups.get(1), cups.get(3)), once.cups());
        assertTrue(
                once.told()
                        .get(0)
                        .endsWith("1 cup stands in " + TablePlace.of(one).shown()
                                + " too, of the same day, cupper and batch and with the same scores; counted once."),
                once.told().toString());
        assertTrue(
                once.told()
                        .get(1)
                        .contains("give two scores of 'Ben' for '101' on 2031-03-09: both are written as cups"),
                once.told().toString());
    }

    @Test
    void cupsOfTwoDaysOrOfNobodyOrOfOneSheetStayTwo() {
        FoundTable one = scores("Tasted", "101|2031-03-09|Ana|7|6", "101|2031-03-09|Ana|7|6");
        FoundTable other = scores("Tasted", "101|2031-03-10|Ana|7|6", "101|2031-03-10|Ben|7|6");
        List<TastedCup> cups =
                List.of(cup(one, "Ana", 2, 7), cup(one, "Ana", 3, 7), cup(other, "Ana", 2, 7), cup(other, "Ben", 3, 7));
        assertEquals(cups, CupsTwice.of(cups).cups());
    }

    @Test
    void codesThatAreUsedAgainAreOfTheDayInTheKeyWhateverItsHeading() {
        for (String heading : List.of("tasting", "proeverij", "date")) {
            BlindKey key = BlindKey.of(
                            MadeTables.of(
                                    heading + "|code|batch",
                                    "2031-03-09|A|R01",
                                    "2031-03-09|B|R02",
                                    "2031-03-16|A|R03",
                                    "2031-03-16|B|R04"),
                            ScoreClues.of(List.of("R01", "R02", "R03", "R04")))
                    .orElseThrow();
            assertEquals(
                    List.of("2031-03-09", "2031-03-09", "2031-03-16", "2031-03-16"),
                    key.entries().stream()
                            .map(entry -> entry.day().orElseThrow().toString())
                            .toList(),
                    heading);
            assertEquals(List.of(), key.told());
        }
    }

    @Test
    void lotsWithACodeAreAListOfLots() throws Exception {
        old.with(
                "lots.csv",
                "Code,Name,Origin,Process,Moisture",
                "AB,Alto Bruma,Northern Ridge,washed,11.2",
                "PR,Red Rock,Coast,natural,10.4",
                "VL,Long Valley,Northern Ridge,washed,11.9");
        old.with(
                "roasts.csv",
                "Batch,Date,Coffee,Green kg,Roasted kg",
                "1,2031-03-05,AB,5,4.25",
                "2,2031-03-05,PR,5,4.27",
                "3,2031-03-05,VL,5,4.29",
                "4,2031-03-05,AB,5,4.31");
        String lots = Files.readString(gathered("").resolve("lots.csv"));
        assertTrue(lots.startsWith("lot,origin,process,moisture [%]"), lots);
        assertTrue(lots.contains("Alto Bruma,Northern Ridge,washed,11.2"), lots);
    }

    @Test
    void whereLotsGrewIsNoNameBesideAColumnOfLots() {
        ListColumns found = ListColumns.of(
                Sheets.table(
                        "Lot|Origin|Process|Density", "Kela|A|washed|700", "Kela|B|washed|710", "Wren|C|natural|690"),
                Clues.NONE);
        assertEquals(0, TableClaims.lotPlace(found));
    }

    /** A table that was cut out of another has no rows of a sheet around it. */
    @Test
    void aTableWithoutTheRowsOfItsSheetIsReadToo() {
        FoundTable table = new FoundTable(
                new Sheet(Path.of("a.csv"), "", ',', Numbers.Decimal.POINT, List.of()),
                List.of(),
                List.of("Batch", "Acidity", "Body"),
                List.of(List.of("101", "7", "6"), List.of("102", "6", "5")),
                List.of(2, 3),
                List.of());
        assertEquals(
                2,
                ScoreSheets.of(table, ScoreClues.of(List.of("101", "102")))
                        .orElseThrow()
                        .cups()
                        .size());
    }

    @Test
    void temperaturesThatNoRoastReachesInTheirUnitAreAskedAbout() {
        for (Map.Entry<String, ListColumn.Confidence> each : Map.of(
                        "340", ListColumn.Confidence.OPEN, "210", ListColumn.Confidence.CERTAIN)
                .entrySet()) {
            ListColumn column = ListColumns.of(
                            Sheets.table(
                                    "Batch|Date|Charge temperature °C",
                                    "1|2031-03-05|" + each.getKey(),
                                    "2|2031-03-05|" + each.getKey(),
                                    "3|2031-03-05|" + each.getKey()),
                            Clues.NONE)
                    .of(ListMeaning.CHARGE_TEMPERATURE)
                    .orElseThrow();
            assertEquals(each.getValue(), column.confidence(), column.reason());
        }
    }

    @Test
    void tablesUnderOneAnotherWithADayEachCountAnew() throws Exception {
        old.with(
                "cahier.csv",
                "Cahier de torréfaction,,,,",
                ",,,,",
                "Journée du mercredi 11 juin 2031,,,,",
                "cuisson,heure,café,vert (kg),torréfié (kg)",
                "1,8h56,Wren,5.38,4.68",
                "2,9h15,Salt,7.72,6.77",
                "3,9h33,Wren,2.27,1.95",
                ",,,,",
                "Journée du samedi 14 juin 2031,,,,",
                "cuisson,heure,café,vert (kg),torréfié (kg)",
                "1,8h18,Salt,1.92,1.64",
                "2,8h36,Wren,11.43,9.49",
                "3,8h51,Salt,11.49,9.78",
                "4,9h09,Salt,4.00,3.42");
        Path made = gathered("");
        Logbook logbook = Logbook.open(made);
        assertEquals(7, logbook.batches().size(), said);
        assertFalse(said.contains("say different things"), said);
        String batches = Files.readString(made.resolve("batches.csv"));
        assertTrue(batches.contains("2031-06-11T08:56"), batches);
        assertTrue(batches.contains("2031-06-14T08:18"), batches);
        assertTrue(
                said.contains("its rows are of the day that stands above it, 'Journée du samedi 14 juin 2031'"), said);
    }

    @Test
    void theDayOfAPrintoutIsNoDayOfItsRoasts() throws Exception {
        old.with(
                "roasts.csv",
                "Printed on 14 June 2031,,,",
                "batch,coffee,green (kg),roasted (kg)",
                "1,Wren,5.38,4.68",
                "2,Salt,7.72,6.77",
                "3,Wren,2.27,1.95");
        Path made = gathered("");
        String batches = Files.readString(made.resolve("batches.csv"));
        assertTrue(batches.contains("Wren"), batches);
        assertFalse(batches.contains("2031-06-14"), batches);
    }

    @Test
    void aNumberSignOverNumbersThatCountUpIsTheBatchWhateverMassTheWordIsUsedFor() throws Exception {
        old.with(
                "torrefactions.csv",
                "café torréfié n°;date;heure;café;vert (g);torréfié (g)",
                "61;11/06/2031;08:56;Wren;5380;4683",
                "62;11/06/2031;09:15;Salt;7720;6770",
                "63;13/06/2031;09:33;Wren;2270;1953",
                "64;14/06/2031;08:18;Salt;1920;1640");
        old.with("codes.csv", "dégustation;code;lot torréfié n°", "1;708;61", "1;233;62", "2;515;64");
        old.with(
                "degustations.csv",
                "dégustation;date;dégustateur;code;acidité;corps",
                "1;18/06/2031;Ana;708;6,5;7",
                "1;18/06/2031;Ana;233;7;6,25",
                "2;25/06/2031;Ana;515;5,5;6");
        Path made = gathered("");
        Logbook logbook = Logbook.open(made);
        assertEquals(
                List.of("61", "62", "63", "64"),
                logbook.batches().stream().map(batch -> batch.name()).toList(),
                said);
        assertEquals(
                List.of("61", "62", "64"),
                logbook.cups().stream().map(cup -> cup.batch()).sorted().toList(),
                said);
    }

    @Test
    void aSheetOfShortNamesMayCountTheBagsThatAreLeft() throws Exception {
        old.with(
                "coffees.csv", "short;coffee;bags left", "CTE;Côte Brumel;7", "HAR;Harbour blend;2", "WRE;Wren Hill;4");
        old.with(
                "roasts.csv",
                "no;day;start;coffee;green g;roasted g",
                "61;11-Jun-2031;08:56;CTE;5380;4683",
                "62;11-Jun-2031;09:15;HAR;7720;6770",
                "63;13-Jun-2031;09:33;WRE;2270;1954",
                "64;13-Jun-2031;09:51;CTE;2300;1980");
        Path made = gathered("");
        String batches = Files.readString(made.resolve("batches.csv"));
        assertTrue(batches.contains("Côte Brumel"), batches);
        assertFalse(batches.contains("CTE"), batches);
        assertFalse(said.contains("On which day were"), said);
    }
}
