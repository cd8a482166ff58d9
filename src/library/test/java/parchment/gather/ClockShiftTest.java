package parchment.gather;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.time.Duration;
import java.time.LocalDateTime;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Two clocks that differ by a constant: how few recordings show it, which differences are looked for, on which days, and what the answer does. */
class ClockShiftTest {
    private static final LocalDateTime FIRST = LocalDateTime.of(2031, 3, 27, 8, 0);
    /** Minutes from the first charge of a day: no constant difference joins one with the next. */
    private static final int[] CHARGES = {0, 23, 50};

    private final List<GatheredBatch> curves = new ArrayList<>();
    private final List<ListedRoast> roasts = new ArrayList<>();

    private void day(int day, int batches, int minutesBehind) {
        for (int i = 0; i < batches; i++) {
            LocalDateTime at = FIRST.plusDays(day).plusMinutes(CHARGES[i]);
            String name = at.toLocalDate() + "-" + (i + 1);
            curves.add(new GatheredBatch(
                    "log " + curves.size() + "x",
                    0,
                    Optional.of(at.minusMinutes(minutesBehind).plusSeconds(20)),
                    Optional.empty(),
                    Optional.empty(),
                    0,
                    0,
                    0,
                    Map.of(),
                    Map.of(),
                    List.of()));
            roasts.add(new ListedRoast(
                    name,
                    List.of(new ListedBatch(
                            name,
                            Optional.of(at),
                            Optional.empty(),
                            Map.of(),
                            Map.of(),
                            List.of(),
                            Tables.of("list.csv", List.of(), List.of("batch"), List.of(List.of("1"))),
                            2))));
        }
    }

    private List<String> found() {
        return ClockShift.in(curves, roasts).stream().map(ClockShift::words).toList();
    }

    @Test
    void aLoggerThatStaysOnWinterTimeIsSeenFromTheDayOn() {
        day(0, 3, 0);
        day(1, 3, 0);
        day(4, 3, 60);
        day(5, 3, 60);
        assertEquals(
                List.of(
                        "From 2031-03-31 on the logger's clock is one hour behind the list's: 6 of 6 recordings fit a row so."),
                found());
    }

    @Test
    void aStretchMayEndAgain() {
        day(0, 3, -120);
        day(1, 3, -120);
        day(2, 3, 0);
        day(3, 3, 0);
        day(4, 3, 15);
        day(5, 3, 15);
        day(6, 3, 0);
        day(7, 3, 0);
        assertEquals(
                List.of(
                        "Up to 2031-03-28 the logger's clock is two hours ahead of the list's: 6 of 6 recordings fit a row so.",
                        "From 2031-03-31 to 2031-04-01 the logger's clock is 15 minutes behind the list's: 6 of 6 recordings fit a row so."),
                found());
    }

    /** Five recordings show it and four do not; two hours are looked for and more are not; a quarter hour is and ten minutes are not. */
    @ParameterizedTest
    @CsvSource({
        "2, 60, true",
        "1, 60, false",
        "2, 120, true",
        "2, 135, false",
        "2, 15, true",
        "2, 10, false",
        "2, 0, false"
    })
    void fewRecordingsAndOtherDifferencesShowNothing(int onTheSecondDay, int minutes, boolean seen) {
        day(0, 3, minutes);
        day(1, onTheSecondDay, minutes);
        assertEquals(seen, !found().isEmpty(), found().toString());
    }

    @Test
    void timesThatDifferByNoConstantShowNothing() {
        day(0, 3, 60);
        day(1, 3, 20);
        day(2, 3, 95);
        day(3, 3, 38);
        assertEquals(List.of(), found());
    }

    @ParameterizedTest
    @CsvSource({
        "'', 2031-03-27T08:00:20, 2031-03-27T08:00, CERTAIN",
        "list, 2031-03-27T08:00:20, 2031-03-27T08:00, CERTAIN",
        "logger, 2031-03-27T07:00:20, 2031-03-27T07:00, CERTAIN",
        "neither, 2031-03-27T07:00:20, 2031-03-27T08:00, none"
    })
    void theAnswerPutsTheOtherClockRight(String answer, String ofCurve, String ofRow, String sure) {
        day(0, 3, 60);
        day(1, 3, 60);
        GatherQuestions questions =
                new GatherQuestions(answer.isEmpty() ? Map.of() : Map.of("clock.2031-03-27", answer));
        JoinClocks clocks = JoinClocks.of(curves, roasts, questions);
        assertEquals(ofCurve, clocks.curves().get(0).roastedAt().orElseThrow().toString());
        assertEquals(ofRow, clocks.roasts().get(0).roastedAt().orElseThrow().toString());
        assertEquals(
                sure,
                Joins.of(clocks.curves(), clocks.roasts()).stream()
                        .filter(join -> join.roast().name().equals("2031-03-27-2"))
                        .map(join -> join.sure().toString())
                        .findFirst()
                        .orElse("none"));
        assertEquals(answer.isEmpty() ? 1 : 0, questions.open().size());
        questions.open().forEach(open -> assertEquals("list", open.proposal()));
    }

    @Test
    void theDifferenceIsWhatTheLoggerIsBehind() {
        day(0, 3, 45);
        day(1, 3, 45);
        assertEquals(
                Duration.ofMinutes(45), ClockShift.in(curves, roasts).get(0).behind());
        assertEquals(
                List.of(
                        "On all days the logger's clock is 45 minutes behind the list's: 6 of 6 recordings fit a row so."),
                found());
    }

    /** A recording whose time fits its row under no difference that is looked for. */
    private void stray(int day) {
        day(day, 1, 37);
    }

    /** Four of five recordings of the stretch have to fit: 12 of 15 do, 11 of 14 do not. */
    @ParameterizedTest
    @CsvSource({"3, true", "2, false"})
    void fourOfFiveHaveToFit(int onTheLastDay, boolean seen) {
        for (int day = 0; day < 6; day += 2) {
            day(day, 3, 60);
            stray(day + 1);
        }
        day(6, onTheLastDay, 60);
        assertEquals(
                seen
                        ? List.of(
                                "On all days the logger's clock is one hour behind the list's: 12 of 15 recordings fit a row so.")
                        : List.of(),
                found());
    }

    /** Batches an hour apart fit one another's rows as the clocks stand: with the clock moved twice as many have to fit. */
    @ParameterizedTest
    @CsvSource({"2, true", "3, false"})
    void twiceAsManyHaveToFitAsWithout(int onTheLastDay, boolean seen) {
        for (int day = 0; day < 4; day++) {
            for (int i = 0; i < (day == 3 ? onTheLastDay : 2); i++) {
                hourly(day, i);
            }
        }
        int all = 6 + onTheLastDay;
        assertEquals(
                seen
                        ? List.of("On all days the logger's clock is one hour behind the list's: " + all + " of " + all
                                + " recordings fit a row so.")
                        : List.of(),
                found());
    }

    private void hourly(int day, int batch) {
        LocalDateTime at = FIRST.plusDays(day).plusHours(batch);
        curves.add(GatheredBatch.of("log " + curves.size() + "x").chargedAt(at.minusHours(1)));
        roasts.add(MadeJoins.rowAt("row " + roasts.size() + "y", at));
    }
}
