package parchment.gather;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import parchment.logbook.Quantity;
import parchment.sheet.DateOrder;

class RecordingTest {
    private static Recording recording(String file, String above, String form, String... times) {
        FoundTable table = Tables.of(
                file,
                List.of(List.of(above)),
                List.of("time", "beans"),
                List.of(times).stream().map(time -> List.of(time, "200")).toList());
        return Recording.of(
                table, List.of(Meaning.time(form), Meaning.of(Quantity.BEAN_TEMPERATURE, "°C")), DateOrder.ISO_ONLY);
    }

    @Test
    void aClockGoesOnPastMidnight() {
        Recording night = recording("a.csv", "", Meaning.TIME_OF_DAY, "23:59:58", "23:59:59", "00:00:00", "00:00:02");
        assertEquals(List.of(86_398.0, 86_399.0, 86_400.0, 86_402.0), night.seconds());
        assertEquals(0, night.leftOut());
    }

    @Test
    void aClockThatIsPutBackAnHourHasNotPassedMidnight() {
        Recording back = recording("a.csv", "", Meaning.TIME_OF_DAY, "10:00:00", "10:00:01", "09:00:02", "10:00:03");
        assertEquals(List.of(36_000.0, 36_001.0, 36_003.0), back.seconds());
        assertEquals(1, back.leftOut());
    }

    @Test
    void theLinesSayTheDayUnlessTheyCanBeReadTwoWaysAndTheNameCannot() {
        assertEquals(
                Optional.of(LocalDate.of(2031, 4, 5)),
                recording("2031-04-03 a.csv", "2031-04-05", "s", "0", "1").day(FileDates.of(DateOrder.ISO_ONLY)));
        assertEquals(
                Optional.of(LocalDate.of(2031, 4, 3)),
                recording("2031-04-03 a.csv", "04/03/2031", "s", "0", "1").day(FileDates.of(DateOrder.DAY_MONTH_YEAR)));
    }
}
