package parchment.gather;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Holds which tables with dates are too sparse for a recording, and that headings which stand again are the first rows' too. */
class SparseRowsTest {
    /** Readings by hand are a minute apart, roasts eight or more; common practice, no source. */
    @ParameterizedTest
    @CsvSource({"60, false", "180, false", "181, true", "1200, true"})
    void rowsOfDatesWithTimesMoreThanThreeMinutesApartAreRoasts(int step, boolean sparse) {
        List<List<String>> rows = new ArrayList<>();
        for (int i = 0; i < 20; i++) {
            int at = 8 * 3600 + i * step;
            rows.add(List.of(
                    String.format(Locale.ROOT, "2031-06-01 %02d:%02d:%02d", at / 3600, at / 60 % 60, at % 60), "200"));
        }
        assertEquals(sparse, TableClaims.isSparse(Tables.of(List.of("When", "Temp"), rows)));
    }

    @ParameterizedTest
    @CsvSource({"1, 5, false", "2, 11, true", "2, 12, false", "6, 3, true"})
    void aDozenRowsOfADayCanBeReadings(int days, int each, boolean sparse) {
        List<List<String>> rows = new ArrayList<>();
        for (int i = 0; i < days * each; i++) {
            rows.add(List.of("2031-06-0" + (1 + i / each), i % each + ":30", "200"));
        }
        assertEquals(sparse, TableClaims.isSparse(Tables.of(List.of("Date", "Time", "Temp"), rows)));
    }

    @Test
    void headingsThatStandAgainAreThoseOfTheFirstRowsToo() {
        FoundTable table = Sheets.table(
                "Date|Who|What was done|Machine|Notes",
                "2031-06-19|Ana|filter new|Drum|fine",
                "2031-06-24|Ben|belt new|Drum|fine",
                "Date|Who|What was done|Machine|Notes",
                "2031-06-25|7|8:30|9|fine",
                "2031-06-26|7|8:30|9|fine",
                "2031-06-27|7|8:30|9|fine");
        assertEquals(List.of(2, 3, 5, 6, 7), table.lines());
        assertEquals(List.of("Line 4 holds the headings again."), table.leftOut());
    }

    @Test
    void aRowOfWordsThatIsTakenForHeadingsIsTold() {
        FoundTable table = Sheets.table(
                "Date|Who|Machine|Notes",
                "Max|Vera|Sola|Lund",
                "2031-06-24|7|8|9",
                "2031-06-25|7|8|9",
                "2031-06-26|7|8|9");
        assertEquals(List.of(3, 4, 5), table.lines());
        assertEquals(
                List.of("Line 2 is taken for a second row of headings: 'Max', 'Vera', 'Sola', 'Lund'."),
                table.leftOut());
    }
}
