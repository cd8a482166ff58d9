package parchment.gather;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import java.util.Locale;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import parchment.sheet.DateOrder;

/** How the times of a recording are read: a row for each unit, one on each side of each border; what loggers do is common practice, no source. */
class TimeProposalTest {
    private static MeaningProposal of(String heading, List<String> cells) {
        FoundTable file =
                Tables.of(List.of(heading), cells.stream().map(List::of).toList());
        return TimeProposal.in(List.of(StrangeColumn.of(file, 0)))
                .getOrDefault(0, new MeaningProposal(Meaning.EXTRA, "none"));
    }

    private static List<String> numbers(int rows, double from, double step) {
        return IntStream.range(0, rows)
                .mapToObj(i -> String.format(Locale.ROOT, "%.7f", from + i * step))
                .toList();
    }

    private static String said(MeaningProposal proposal) {
        return proposal.meaning() + " " + proposal.doubt();
    }

    @ParameterizedTest
    @CsvSource({
        "Time [h], h",
        "Zeit [h], h",
        "Zeit (Std), h",
        "Time (hours), h",
        "Temps (heures), h",
        "Time h, h",
        "Hours, h",
        "Time (sec), s",
        "Zeit (Sek.), s",
        "Zeit s, s",
        "Sekunden, s",
        "Segundos, s",
        "elapsed seconds, s",
        "Time_s, s",
        "Time (min), min",
        "Zeit (Minuten), min",
        "Zeit min, min",
        "Minutos, min",
        "Tempo (minuti), min",
        "Time (msec), ms",
        "time_ms, ms",
        "Zeit (Millisekunden), ms",
    })
    void aUnitOfTimeIsReadHoweverItIsWritten(String heading, String unit) {
        // So many rows that only the heading can be the reason.
        assertEquals(
                "time [" + unit + "]",
                of(heading, numbers(30, 0, 0.5)).meaning().toString());
    }

    @ParameterizedTest
    @CsvSource({
        // Twelve minutes with a reading each second, in hours and in parts of a day.
        "720, 0, 0.00027778, time [h] KNOWN",
        "720, 0, 0.00001157, time [share of a day] KNOWN",
        // A reading each 2 s in parts of a day for five hours; as hours it would be one each 0.08 s.
        "9000, 0, 0.00002315, time [share of a day] KNOWN",
        // Each 0.3 s in hours is each 7 s in parts of a day: it is asked.
        "2000, 0, 0.00008333, time [share of a day] OPEN",
        // A third of an hour, which 20 s cannot be.
        "1200, 0, 0.00027778, time [h] KNOWN",
        // A clock in parts of a day begins in the morning.
        "5000, 0.33, 0.00005787, time [share of a day] OPEN",
        // Below one minute as hours.
        "59, 0, 0.00027778, time [share of a day] KNOWN",
        "62, 0, 0.00027778, time [h] KNOWN",
    })
    void numbersBelowOneArePartsOfAnHourOrOfADay(int rows, double from, double step, String said) {
        assertEquals(said, said(of("Time", numbers(rows, from, step))));
    }

    @ParameterizedTest
    @CsvSource({
        // Eight hours each 2 s, in hours: as minutes it would be a reading each 33 ms.
        "14400, 0.000556, time [h] OPEN",
        // Twelve minutes with ten readings a second.
        "7200, 0.0016667, time [min] KNOWN",
        // Twelve minutes with twenty readings a second is more than loggers write.
        "14400, 0.00083333, time [h] OPEN",
        // A few rows say nothing of how often they were written.
        "59, 0.0556, time [min] KNOWN",
    })
    void numbersUpToFortyAreMinutesUnlessNoLoggerIsSoFast(int rows, double step, String said) {
        assertEquals(said, said(of("t", numbers(rows, 0, step))));
    }

    @ParameterizedTest
    @CsvSource({
        "Time [s], 60, 0.99, OPEN",
        "Time [s], 60, 1.02, KNOWN",
        "Time [s], 59, 0.9, KNOWN",
        "Time [min], 100, 14, KNOWN",
        "Time [min], 100, 15, OPEN",
        "Time [ms], 600, 1, OPEN",
    })
    void aWrittenUnitThatMakesNoRecordingIsAsked(String heading, int rows, double step, String doubt) {
        assertEquals(doubt, of(heading, numbers(rows, 0, step)).doubt().toString());
    }

    @Test
    void theDoubtIsNamed() {
        assertEquals(
                "it rises from row to row, by 12 in all, and its heading has the unit, though that makes 12 s in all",
                of("Time [s]", numbers(720, 0, 0.0166667)).reason());
    }

    private static List<String> clocks(int rows, int from, int step) {
        return IntStream.range(0, rows)
                .mapToObj(
                        i -> (from + i * step) / 60 + ":" + String.format(Locale.ROOT, "%02d", (from + i * step) % 60))
                .toList();
    }

    @ParameterizedTest
    @CsvSource({
        "t, 600, 0, 1, time [min:s] KNOWN",
        // A row each minute for twelve minutes: twelve seconds are no recording.
        "t, 13, 0, 1, time [h:min] OPEN",
        "Uhrzeit, 13, 485, 1, time [time of day] KNOWN",
        "t, 61, 0, 1, time [min:s] KNOWN",
        "t, 60, 0, 1, time [h:min] OPEN",
        "Time [h:min], 40, 0, 1, time [h:min] KNOWN",
        "Time (hh:mm), 61, 0, 1, time [h:min] KNOWN",
        "Time (hh:mm), 600, 0, 1, time [h:min] OPEN",
    })
    void clocksOfTwoPartsAreMinutesAndSecondsUnlessTheHeadingOrTheLengthSaysHours(
            String heading, int rows, int from, int step, String said) {
        assertEquals(said, said(of(heading, clocks(rows, from, step))));
    }

    @ParameterizedTest
    @CsvSource({"h, 0.2, 720", "h:min, 0:12, 720", "min, 12, 720", "ms, 720000, 720", "share of a day, 0.0083333, 720"})
    void eachUnitHasItsSeconds(String unit, String cell, double seconds) {
        FoundTable file = Tables.of(List.of("t"), List.of(List.of(cell)));
        assertEquals(
                List.of(seconds),
                Recording.of(file, List.of(Meaning.time(unit)), DateOrder.ISO_ONLY)
                        .seconds());
        assertEquals(Meaning.time(unit), Meaning.parse("time [" + unit + "]").orElseThrow());
    }

    /** No logger writes more often than each tenth of a second: 3,300 readings up to 55 are a session of 55 minutes. */
    @Test
    void bareNumbersTooCloseForSecondsAreAskedAboutAsMinutes() {
        assertEquals("time [min] OPEN", said(of("Time", numbers(3_300, 0, 1 / 60.0))));
        assertEquals("time [s] KNOWN", said(of("Time", numbers(600, 0, 0.101))));
        assertEquals("time [min] OPEN", said(of("Time", numbers(600, 0, 0.099))));
    }
}
