package parchment.gather;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.IntStream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import parchment.logbook.Quantity;
import parchment.sheet.DateOrder;

/** When a clock began again, and when a recording starts at the charge: one row on each side of each edge. */
class RecordingTimesTest {
    @ParameterizedTest
    @CsvSource({
        // Ten rows before and ten after.
        "10, 0, 1, 10, 1",
        "9, 0, 1, 10, 0",
        "10, 0, 1, 9, 0",
        // Steps up to three usual ones.
        "20, 0, 3, 12, 1",
        "20, 0, 3.1, 12, 0",
        // It shows no more than a minute after its start.
        "100, 60, 1, 12, 1",
        "100, 61, 1, 12, 0",
    })
    void aClockBeganAgainWhereItRisesSteadilyFromNearItsStart(
            int before, double from, double step, int after, int restarts) {
        List<List<String>> rows = new ArrayList<>();
        IntStream.range(0, before).forEach(i -> rows.add(List.of(Integer.toString(i))));
        IntStream.range(0, after).forEach(i -> rows.add(List.of(Double.toString(from + i * step))));
        RecordingTimes times = RecordingTimes.of(
                Tables.of(List.of("t"), rows), 0, "s", DateOrder.ISO_ONLY, Recording.AfterRestart.FOLLOW);
        assertEquals(restarts, times.restarts().size());
        assertEquals(
                restarts == 1 ? before + after : before,
                times.rows().stream()
                        .filter(row -> row < before || restarts == 1)
                        .count());
    }

    @ParameterizedTest
    @CsvSource({"0, 180, true", "0, 182, false", "10, 180, true", "12, 180, false", "-10, 100, true", "-12, 100, false"
    })
    void aRecordingThatBeginsAtNoughtAndTurnsWithinThreeMinutesStartsAtTheCharge(
            int first, int turning, boolean starts) {
        List<List<String>> rows = IntStream.rangeClosed(0, 300)
                .mapToObj(i ->
                        List.of(Integer.toString(first + 2 * i), Double.toString(90 + 0.1 * Math.abs(2 * i - turning))))
                .toList();
        Recording recording = Recording.of(
                Tables.of(List.of("t", "beans"), rows),
                List.of(Meaning.time("s"), Meaning.of(Quantity.BEAN_TEMPERATURE, "°C")),
                DateOrder.ISO_ONLY);
        assertEquals(starts, GatherRecordings.beginsAsAtCharge(recording));
    }
}
