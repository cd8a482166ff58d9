package parchment.gather;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import parchment.logbook.Logbook;
import parchment.logbook.Lot;
import parchment.sheet.DateOrder;

/** Lists of lots and of work on a machine, from the table to the opened logbook. */
class GatheredLotsTest {
    @TempDir
    Path temporary;

    private static LotList lots(Set<String> used, String... lines) {
        ListColumns columns = LotColumns.of(ListColumns.of(Sheets.table(lines), Clues.NONE), used);
        return LotList.of(columns, LotColumns.shortNames(columns, used), DateOrder.DAY_MONTH_YEAR);
    }

    private static UpkeepList work(String... lines) {
        return UpkeepList.of(ListColumns.of(Sheets.table(lines), Clues.NONE), DateOrder.DAY_MONTH_YEAR);
    }

    private void file(String name, String... lines) throws IOException {
        Files.createDirectories(temporary.resolve("folder"));
        Files.write(temporary.resolve("folder").resolve(name), List.of(lines));
    }

    private Gather gather() {
        return Gather.of(temporary.resolve("folder"));
    }

    private Logbook opened(Gather gather) {
        return gather.writeTo(temporary.resolve("logbook"));
    }

    private void batches(String... lots) throws IOException {
        String[] lines = new String[lots.length + 1];
        lines[0] = "Batch,Roasted at,Coffee,Green kg,Drop";
        for (int i = 0; i < lots.length; i++) {
            lines[i + 1] = (i + 1) + ",2031-06-" + (10 + i) + " 09:15," + lots[i] + ",5,10:1" + i;
        }
        file("list.csv", lines);
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "Lot|Origin|Process|Moisture|Arrived|Price",
                "Partie|Herkunft|Aufbereitung|Feuchtigkeit|Eingang|Preis",
                "Lote|Origen|Proceso|Humedad|Llegada|Precio",
                "Lote|Origem|Processo|Umidade|Chegada|Valor",
                "Lot|Origine|Traitement|Humidité|Arrivée|Prix",
                "Lotto|Origine|Lavorazione|Umidità|Arrivo|Prezzo"
            })
    void aListOfLotsIsReadInSixLanguages(String headings) {
        LotList list = lots(
                Set.of(),
                headings,
                "Low Orchard|coast|washed|11,2|05/01/2031|7",
                "Mist Ridge|hills|natural|10,8|06/02/2031|8");
        String price = headings.substring(headings.lastIndexOf('|') + 1);
        assertEquals("Low Orchard", list.lots().get(0).name());
        assertEquals(
                Map.of(
                        "origin",
                        "coast",
                        "process",
                        "washed",
                        "moisture [%]",
                        "11.2",
                        "arrived on",
                        "2031-01-05",
                        price,
                        "7"),
                list.lots().get(0).written());
        assertEquals(List.of(), list.told());
    }

    @ParameterizedTest
    @CsvSource({
        "Date|Machine|What was done",
        "Datum|Maschine|Arbeit",
        "Fecha|Máquina|Trabajo",
        "Data|Máquina|Manutenção",
        "Date|Machine|Travaux",
        "Data|Macchina|Lavori"
    })
    void aListOfWorkIsReadInSixLanguages(String headings) {
        UpkeepList list = work(headings, "05/01/2031|Drum 1|bean probe moved", "20/03/2031|Drum 1|fan cleaned");
        assertEquals(
                List.of(
                        new ListedUpkeep("Drum 1", LocalDate.of(2031, 1, 5), "bean probe moved", "", "", 2),
                        new ListedUpkeep("Drum 1", LocalDate.of(2031, 3, 20), "fan cleaned", "", "", 3)),
                list.work());
        assertEquals(List.of(), list.told());
    }

    @Test
    void aTypedKindIsKeptAndAnyOtherWordGoesIntoTheNote() {
        UpkeepList list = work(
                "Date|What was done|Kind|Cost",
                "05/01/2031|lower now|Bean Probe Moved|40",
                "20/03/2031|all wiped|big clean|",
                "late|fan new|fan|",
                "21/03/2031||fan|",
                "22/03/2031|all wiped|fan|",
                "23/03/2031|all wiped|fan|");
        assertEquals("bean probe moved", list.work().get(0).kind());
        assertEquals("Cost: 40", list.work().get(0).note());
        assertEquals("", list.work().get(1).kind());
        assertEquals("Kind: big clean", list.work().get(1).note());
        assertEquals(
                List.of(
                        "Line 4: 'late' is no date that can be read; left out: 'late', 'fan new', 'fan'.",
                        "Line 5: no words say what was done; left out: '21/03/2031', 'fan'."),
                list.told());
    }

    @ParameterizedTest
    @CsvSource({
        "Density g/L,710,density [g/L],710", "Density,0.71,density [g/L],710", "Density (kg/m3),710,density [g/L],710",
        "Density,200,density [g/L],200", "Density,199,density as written,199", "Density,1.99,density [g/L],1990",
        "Density,2,density as written,2"
    })
    void densityIsWrittenInGramsPerLitreOrAsItStands(String heading, String value, String under, String written) {
        LotList list = lots(
                Set.of(),
                "Lot|Origin|Process|" + heading,
                "Low Orchard|coast|washed|" + value,
                "Mist|hills|natural|" + value);
        assertEquals(written, list.lots().get(0).written().get(under), list.toString());
    }

    @Test
    void whatIsNoDateOrNumberIsKeptUnderItsOwnHeading() {
        LotList list = lots(
                Set.of(),
                "Lot|Origin|Arrived|Moisture",
                "A one|coast|05/01/2031|0.112",
                "B two|coast|06/01/2031|0.108",
                "C three|coast|07/01/2031|0.11",
                "D four|coast|08/01/2031|0.11",
                "E five|coast|09/01/2031|0.11",
                "F six|coast|10/01/2031|0.11",
                "G seven|coast|in spring|damp",
                "|hills|11/01/2031|0.11");
        assertEquals("11.2", list.lots().get(0).written().get("moisture [%]"));
        assertEquals(
                Map.of("origin", "coast", "Arrived", "in spring", "moisture as written", "damp"),
                list.lots().get(6).written());
        assertEquals(
                List.of(
                        "The values under 'Moisture' were multiplied by 100, so that they are %.",
                        "Line 8: 'in spring' under 'Arrived' is no date that can be read; it is kept under 'Arrived'.",
                        "Line 8: 'damp' under 'Moisture' is no number in a known unit; it is kept under 'moisture as written'.",
                        "Line 9 names no lot: left out, with 'hills', '2031-01-11', '11'."),
                list.told());
    }

    @Test
    void lotsThatNoListHasGetARowAndTheLogbookOpensWithoutAProblem() throws IOException {
        batches("Low Orchard", "Mist Ridge", "Low Orchard");
        Logbook logbook = opened(gather());
        assertEquals(
                List.of("Low Orchard", "Mist Ridge"),
                logbook.lots().stream().map(Lot::name).toList());
        assertEquals(0, logbook.problems().size(), logbook.problems().toString());
    }

    @Test
    void aListOfLotsAndOneOfWorkComeBackThroughTheLogbook() throws IOException {
        batches("LO", "LO", "MR", "MR");
        file(
                "lots.csv",
                "Lot,Short,Origin,Process,Moisture %,Arrived,Price",
                "Low Orchard,LO,coast,washed,11.2,05/01/2031,7.2",
                "Mist Ridge,MR,hills,natural,10.8,13/02/2031,8");
        file("work.csv", "Date,What was done,By", "05/01/2031,bean probe moved 1 cm,Ana", "20/03/2031,fan cleaned,Ben");
        Gather gather = gather();
        assertTrue(
                gather.text()
                        .contains(
                                "'LO', the lot of 2 batches, is short for 'Low Orchard', because a list has them beside each other"),
                gather.text());
        Logbook logbook = opened(gather);
        assertEquals(2, logbook.lots().size());
        Lot low = logbook.lots().get(0);
        assertEquals(Optional.of("coast"), low.origin());
        assertEquals(Optional.of(LocalDate.of(2031, 1, 5)), low.arrivedOn());
        assertEquals(0.112, low.moisture().orElseThrow(), 1e-9);
        assertEquals(2, logbook.ofLot("Low Orchard").batches().size());
        assertEquals(2, logbook.upkeep().size());
        assertTrue(logbook.upkeep().get(0).kind().changesTheBeanProbe());
        assertEquals(0, logbook.problems().size(), logbook.problems().toString());
    }

    @Test
    void aTableOfTwoColumnsMakesShortNamesFullOnes() throws IOException {
        batches("LO", "MR", "LO");
        file("names.csv", "Code,Name", "LO,Low Orchard", "MR,Mist Ridge");
        Logbook logbook = opened(gather());
        assertEquals(
                List.of("Low Orchard", "Mist Ridge"),
                logbook.lots().stream().map(Lot::name).toList());
        assertEquals(Optional.of("Low Orchard"), logbook.batch("1").lot());
    }

    @Test
    void aShortNameOfTwoLotsIsAskedAboutAndStays() {
        GatherQuestions questions = new GatherQuestions(Map.of());
        List<ListedLot> listed = List.of(
                new ListedLot("Low Orchard", List.of("LO"), Map.of(), 2),
                new ListedLot("Long Ridge", List.of("LO"), Map.of(), 3));
        assertEquals(Map.of("LO", "LO"), LotNames.of(Map.of("LO", 3), listed, questions));
        assertEquals(
                "Which lot is 'LO'? The lists have it beside 'Low Orchard', 'Long Ridge'. Enter keeps the short name.",
                questions.open().get(0).question());
        GatherQuestions answered = new GatherQuestions(Map.of("lot.lo", "Long Ridge"));
        assertEquals(Map.of("LO", "Long Ridge"), LotNames.of(Map.of("LO", 3), listed, answered));
    }

    @Test
    void namesThatDifferInCaseStayApartUnlessAnsweredAndBlanksDoNotCount() throws IOException {
        batches("Kela washed", "Kela  washed", "kela washed");
        Gather gather = gather();
        assertTrue(
                gather.text()
                        .contains(
                                "The lots 'Kela washed' (2 batches) and 'kela washed' (1 batch) differ in upper and lower case only."),
                gather.text());
        assertEquals(
                List.of("Kela washed", "kela washed"),
                List.copyOf(gather.gathering().lots().lots().keySet()));
        assertEquals(
                List.of("Kela washed"),
                List.copyOf(gather.answer("lot.kela-washed", "Kela washed")
                        .gathering()
                        .lots()
                        .lots()
                        .keySet()));
    }

    @Test
    void noShortNamesAreTakenWhereBatchesUseTheFullOnes() {
        ListColumns columns = LotColumns.of(
                ListColumns.of(
                        Sheets.table("Lot|Short|Origin", "Low Orchard|LO|coast", "Mist Ridge|MR|hills"), Clues.NONE),
                Set.of("low orchard", "mist ridge"));
        assertEquals(OptionalInt.empty(), LotColumns.shortNames(columns, Set.of("low orchard", "mist ridge")));
    }
}
