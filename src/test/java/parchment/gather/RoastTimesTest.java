package parchment.gather;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

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

    /** A roast of 1,000 s, and one other time at a share of it: beans turn before 0.25, are yellow before 0.65, crack before 0.98. */
    @ParameterizedTest
    @CsvSource({
        "4:09, 'extra, extra'",
        "4:11, 'yellowing, extra'",
        "10:49, 'yellowing, extra'",
        "10:51, 'first crack start, drop'",
        "16:19, 'first crack start, drop'",
        "16:21, 'extra, extra'",
    })
    void theShareOfTheRoastTellsWhichMarkATimeIs(String mark, String meanings) {
        assertEquals(
                "batch, " + meanings,
                meanings("Batch|P|Q", "61|" + mark + "|16:40", "62|" + mark + "|16:40", "63|" + mark + "|16:40"));
    }

    @ParameterizedTest
    @CsvSource({"0.94, 0.9 hours", "1, 1 hour", "1.04, 1 hour", "1.06, 1.1 hours", "2, 2 hours"})
    void hoursOfTheDayAreCounted(double hours, String words) {
        List<String> lines = new ArrayList<>(List.of("Batch|Date|Time|Drop"));
        for (int i = 0; i <= 100; i++) {
            int seconds = 8 * 3600 + (int) Math.round(hours * 3600 * Math.min(Math.max(i - 5, 0), 90) / 90.0);
            lines.add((61 + i) + "|11.06.2031|"
                    + String.format(Locale.ROOT, "%02d:%02d:%02d", seconds / 3600, seconds / 60 % 60, seconds % 60)
                    + "|12:" + (10 + i % 50));
        }
        ListColumn time = ListColumns.of(Sheets.table(lines.toArray(String[]::new)), Clues.NONE)
                .of(ListMeaning.TIME_OF_DAY)
                .orElseThrow();
        assertTrue(time.reason().endsWith("go through " + words + " of the day"), time.reason());
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
