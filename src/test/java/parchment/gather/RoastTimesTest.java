package parchment.gather;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;

class RoastTimesTest {
    private static String meanings(String... lines) {
        return ListColumns.of(Sheets.table(lines), Clues.NONE).columns().stream()
                .map(column -> column.meaning().words())
                .collect(Collectors.joining(", "));
    }

    @Test
    void timesWithoutTradeWordsFollowEachOtherRowByRow() {
        assertEquals(
                "batch, yellowing, first crack start, drop",
                meanings("Batch|P|Q|R", "61|5:44|10:22|12:34", "62|6:09|11:30|12:49", "63|5:55|10:37|12:37"));
    }

    @Test
    void abbreviatedHeadsAreReadWhereTheirValuesAgree() {
        assertEquals(
                "batch, date, lot, yellowing, first crack start, drop",
                meanings(
                        "No|Dt|Cof|Yel|Cr|Drp",
                        "61|2031-06-11|Wren|5:44|10:22|12:34",
                        "62|2031-06-12|Kestrel|6:09|11:30|12:49",
                        "63|2031-06-13|Wren|5:55|10:37|12:37"));
    }

    @Test
    void aTimeBesideADropIsATimeOfDay() {
        assertEquals(
                "batch, date, time of day, drop",
                meanings(
                        "Batch|Date|Time|Drop",
                        "61|11.06.2031|08:56|12:34",
                        "62|11.06.2031|09:15|12:49",
                        "63|11.06.2031|09:33|12:37",
                        "64|11.06.2031|09:51|11:32"));
    }

    @Test
    void aBatchAndItsLotInOneCellAreTakenApart() {
        assertEquals(
                "batch, drop, lot", meanings("Batch/Lot|Drop", "61/Wren|12:34", "62/Kestrel|12:49", "63/Wren|12:37"));
    }

    @Test
    void lotsThatStandOnceEachLeaveACellWhole() {
        assertEquals("batch, drop", meanings("Batch/Lot|Drop", "61/Wren|12:34", "62/Kestrel|12:49", "63/Heron|12:37"));
    }

    @Test
    void theOriginIsTheLotOfAListOfRoastsWithoutOne() {
        assertEquals(
                "batch, lot, drop", meanings("Batch|Origin|Drop", "61|Wren|12:34", "62|Wren|12:49", "63|Heron|12:37"));
        assertEquals(
                "batch, origin, lot, drop",
                meanings("Batch|Origin|Lot|Drop", "61|A|Wren|12:34", "62|A|Wren|12:49", "63|B|Heron|12:37"));
    }
}
