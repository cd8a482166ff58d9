package parchment.gather;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import parchment.sheet.DateOrder;

class DropRivalsTest {
    private static String meanings(String... lines) {
        return ListColumns.of(Sheets.table(lines), Clues.NONE).columns().stream()
                .map(column -> column.meaning().toString())
                .collect(Collectors.joining(", "));
    }

    @Test
    void aTimeThatRisesThroughEachDayIsNoDrop() {
        assertEquals(
                "BATCH, DATE, TIME_OF_DAY",
                meanings(
                        "Batch|Date|Time",
                        "1|2031-06-01|08:13",
                        "2|2031-06-01|08:35",
                        "3|2031-06-01|09:16",
                        "4|2031-06-02|08:06",
                        "5|2031-06-02|08:31",
                        "6|2031-06-02|08:57",
                        "7|2031-06-02|09:47"));
        assertEquals(
                "BATCH, DATE, DROP",
                meanings(
                        "Batch|Date|Time",
                        "1|2031-06-01|9:13",
                        "2|2031-06-01|8:35",
                        "3|2031-06-01|9:16",
                        "4|2031-06-02|9:06",
                        "5|2031-06-02|8:31",
                        "6|2031-06-02|8:57",
                        "7|2031-06-02|8:47"));
    }

    @Test
    void whatIsCalledTheDropKeepsItAgainstATimeAndAnUnknownWord() {
        assertEquals(
                "BATCH, DATE, TIME_OF_DAY, DROP",
                meanings(
                        "Batch|Date|Time|Drop",
                        "1|2031-06-01|9:16|9:13",
                        "2|2031-06-01|8:35|9:33",
                        "3|2031-06-02|8:31|9:53",
                        "4|2031-06-02|8:06|10:13"));
        assertTrue(meanings(
                        "Batch|Date|Brrp|Drop",
                        "1|2031-06-01|11:16|9:13",
                        "2|2031-06-01|11:35|9:33",
                        "3|2031-06-02|11:31|9:53",
                        "4|2031-06-02|11:06|10:13")
                .endsWith("DROP"));
    }

    @ParameterizedTest
    @CsvSource({"Ausgetragen,DROP", "FC,FIRST_CRACK_START", "Drop,DROP"})
    void aHeadingOfTheTradeIsKnown(String heading, ListMeaning meaning) {
        assertTrue(meanings(
                        "Charge|Datum|" + heading,
                        "1|2031-06-01|9:16",
                        "2|2031-06-01|8:35",
                        "3|2031-06-02|8:31",
                        "4|2031-06-02|8:06")
                .endsWith(meaning.toString()));
    }

    @Test
    void aChargeThatHoldsClockTimesIsTheTimeOfTheCharge() {
        assertEquals(
                "BATCH, DATE, TIME_OF_DAY, DROP",
                meanings(
                        "Batch|Date|Charge|Drop",
                        "1|2031-06-01|08:13|9:13",
                        "2|2031-06-01|09:35|9:03",
                        "3|2031-06-02|08:31|9:53"));
        assertTrue(meanings("Batch|Date|Charge", "1|2031-06-01|200", "2|2031-06-01|205", "3|2031-06-02|201")
                .endsWith("CHARGE_TEMPERATURE"));
    }

    @ParameterizedTest
    @CsvSource({"Roast oz", "Roasted oz"})
    void ouncesOfTheRoastAreTheRoastedMass(String heading) {
        assertEquals(
                "BATCH, DATE, GREEN_MASS, ROASTED_MASS",
                meanings(
                        "Batch|Date|Green oz|" + heading,
                        "1|2031-06-01|176|154",
                        "2|2031-06-01|192|166.5",
                        "3|2031-06-02|176|150.9"));
    }

    @Test
    void theLotIsWrittenWhereTheBatchesStandUnderLot() {
        BatchList list = BatchList.of(
                ListColumns.of(
                        Sheets.table(
                                "Lot|Date|Café|Vert kg",
                                "G201|2031-06-01|Guji|8",
                                "G202|2031-06-01|Huila|8",
                                "P3|2031-06-02|Guji|9"),
                        Clues.NONE),
                DateOrder.DAY_MONTH_YEAR);
        assertEquals(
                List.of("Guji", "Huila", "Guji"),
                list.batches().stream().map(batch -> batch.written().get("lot")).toList());
    }

    @Test
    void inAListOfRoastsWhatIsTheCoffee() {
        assertEquals(
                "BATCH, DATE, LOT, GREEN_MASS, ROASTED_MASS",
                meanings(
                        "#|Date|What|In kg|Out kg",
                        "1|2031-06-01|Guji|5|4.2",
                        "2|2031-06-01|Huila|5|4.3",
                        "3|2031-06-02|Guji|5|4.25",
                        "4|2031-06-02|Huila|5|4.2"));
        // Work is a sentence of its own each time.
        assertEquals(
                "BATCH, DATE, WORK, GREEN_MASS, ROASTED_MASS",
                meanings(
                        "#|Date|What|In kg|Out kg",
                        "1|2031-06-01|Guji|5|4.2",
                        "2|2031-06-01|Huila|5|4.3",
                        "3|2031-06-02|cleaned|5|4.25",
                        "4|2031-06-02|Huila|5|4.2"));
    }
}
