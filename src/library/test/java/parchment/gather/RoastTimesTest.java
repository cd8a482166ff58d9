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

    /** Shares of the drop, at 10:00: turned before a quarter, yellow before 0.65, cracked before 0.98; a crack makes the last one the drop. */
    @ParameterizedTest
    @CsvSource({
        "2:29, 'batch, extra, first crack start, drop'",
        "2:30, 'batch, yellowing, first crack start, drop'",
        "6:29, 'batch, yellowing, first crack start, drop'"
    })
    void theShareOfTheDropTellsTheMark(String mark, String meanings) {
        assertEquals(
                meanings,
                meanings(
                        "Batch|P|Q|R",
                        "61|" + mark + "|8:00|10:00",
                        "62|" + mark + "|8:10|10:10",
                        "63|" + mark + "|7:50|9:50"));
    }

    @ParameterizedTest
    @CsvSource({
        "6:29, 10:00, 'batch, yellowing, extra'",
        "6:30, 10:00, 'batch, first crack start, drop'",
        "9:47, 10:00, 'batch, first crack start, drop'",
        "9:48, 10:00, 'batch, extra, extra'",
        // A roast of less than 200 s or more than 2,000 s is none.
        "2:40, 3:20, 'batch, first crack start, drop'",
        "2:40, 3:19, 'batch, extra, extra'",
        "27:00, 33:20, 'batch, first crack start, drop'",
        "27:00, 33:21, 'batch, extra, extra'"
    })
    void aCrackAndADropTellEachOther(String mark, String drop, String meanings) {
        assertEquals(
                meanings,
                meanings("Batch|P|R", "61|" + mark + "|" + drop, "62|" + mark + "|" + drop, "63|" + mark + "|" + drop));
    }

    /** Nine rows of ten have the mark before the drop, or eight. */
    @ParameterizedTest
    @CsvSource({"1, 'batch, first crack start, drop'", "2, 'batch, extra, extra'"})
    void theMarkComesBeforeTheDropInNineRowsOfTen(int wrong, String meanings) {
        String[] lines = new String[11];
        lines[0] = "Batch|P|R";
        for (int i = 1; i <= 10; i++) {
            lines[i] = (60 + i) + "|" + (i <= wrong ? "12:00" : "8:00") + "|10:00";
        }
        assertEquals(meanings, meanings(lines));
    }

    /** Five steps that rise within days are those of a clock; four are not, and one step back says they are not. */
    @ParameterizedTest
    @CsvSource({"6, 0, 'batch, date, time of day'", "5, 0, 'batch, date, extra'", "6, 4, 'batch, date, extra'"})
    void timesThatRiseThroughADayAreTimesOfDay(int rows, int back, String meanings) {
        String[] lines = new String[rows + 1];
        lines[0] = "Batch|Date|P";
        for (int i = 1; i <= rows; i++) {
            lines[i] = (60 + i) + "|2031-06-11|" + (i == back ? "8:01" : (8 + i / 3) + ":" + (10 + 17 * (i % 3)));
        }
        assertEquals(meanings, meanings(lines));
    }

    /** Fourteen roasts six minutes apart, and some of them written as the first one: one is a slip, three are no clock. */
    @ParameterizedTest
    @CsvSource({"0, time of day", "1, time of day", "3, extra"})
    void aTimeWrittenWrongLeavesAColumnATimeOfDay(int slips, String meaning) {
        StringBuilder rows = new StringBuilder("Batch|Date|P");
        for (int i = 0; i < 14; i++) {
            int minutes = i % 4 == 2 && i / 4 < slips ? 471 : 480 + 6 * i;
            rows.append(String.format("\n%d|2031-06-01|%02d:%02d", 61 + i, minutes / 60, minutes % 60));
        }
        assertEquals("batch, date, " + meaning, meanings(rows.toString().split("\n")));
    }
}
