package parchment.logbook;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.stream.DoubleStream;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import parchment.logbook.written.Problem;

/** Which readings of a clock that misbehaves are kept, and what is said. The first reading stands on line 2. */
class CurveClockTest {
    private final ProblemLog problems = new ProblemLog("curves/1.csv");

    private int[] order(double... seconds) {
        Readings readings = new Readings(1);
        for (int i = 0; i < seconds.length; i++) {
            readings.add(seconds[i], i + 2);
        }
        return CurveClock.order(readings, "time [s]", problems);
    }

    private List<String> said() {
        return problems.toList().stream().map(Problem::toString).toList();
    }

    private static int[] range(int from, int to) {
        return IntStream.range(from, to).toArray();
    }

    private static double[] times(double[]... parts) {
        return Arrays.stream(parts).flatMapToDouble(DoubleStream::of).toArray();
    }

    private static double[] steps(double from, double step, int count) {
        return IntStream.range(0, count).mapToDouble(i -> from + i * step).toArray();
    }

    @Test
    void keepsAClockThatRises() {
        assertArrayEquals(range(0, 4), order(0, 1, 2, 3));
        assertArrayEquals(range(0, 0), order());
        assertArrayEquals(range(0, 1), order(5));
        assertEquals(List.of(), said());
    }

    @Test
    void keepsTheFirstOfReadingsAtTheSameTime() {
        assertArrayEquals(new int[] {0, 1, 3, 5}, order(0, 1, 1, 2, 2, 3));
        assertEquals(
                List.of(
                        "curves/1.csv, line 4, column 'time [s]': found 2 readings at a time that was already read; expected one reading"
                                + " for each time; the first of each kept."),
                said());
    }

    @Test
    void leavesOutASmallStepBackUntilTheClockHasCaughtUp() {
        assertArrayEquals(new int[] {0, 1, 2, 5, 6}, order(0, 10, 20, 10, 15, 20.5, 30));
        assertEquals(
                List.of(
                        "curves/1.csv, line 5, column 'time [s]': found a clock that steps back, over 2 readings; expected times that rise;"
                                + " those readings left out until the clock had caught up."),
                said());
    }

    @Test
    void oneReadingOfASmallStepBackIsCountedAsOne() {
        assertArrayEquals(new int[] {0, 1, 3}, order(0, 10, 9, 20));
        assertEquals(
                List.of(
                        "curves/1.csv, line 4, column 'time [s]': found a clock that steps back, over 1 reading; expected times that rise;"
                                + " those readings left out until the clock had caught up."),
                said());
    }

    @Test
    void aStepBackOfMoreThanTenSecondsIsAJumpAndTheLongestStretchIsKept() {
        assertArrayEquals(range(3, 7), order(0, 1, 20, 9.9, 11, 12, 13));
        assertEquals(
                List.of(
                        "curves/1.csv, line 5, column 'time [s]': found 1 jump of the clock, the first by -10 s; expected one clock from"
                                + " start to end; the longest stretch kept, lines 5 to 8; 3 readings left out."),
                said());
    }

    @Test
    void aStepBackOfTenSecondsIsNoJump() {
        assertArrayEquals(new int[] {0, 1, 2, 6}, order(0, 1, 20, 10, 11, 12, 21));
    }

    @Test
    void ofStretchesOfOneLengthTheFirstIsKept() {
        assertArrayEquals(range(0, 3), order(100, 101, 102, 0, 1, 2));
    }

    @Test
    void theLastStretchMayBeTheLongestAndTheFirstToo() {
        assertArrayEquals(range(2, 6), order(100, 101, 0, 1, 2, 3));
        assertArrayEquals(range(0, 4), order(100, 101, 102, 103, 0, 1));
        assertEquals(
                "curves/1.csv, line 6, column 'time [s]': found 1 jump of the clock, the first by -103 s; expected one clock from start to"
                        + " end; the longest stretch kept, lines 2 to 5; 2 readings left out.",
                said().get(1));
    }

    @Test
    void aGapOfTenMinutesIsAJumpOnlyIfItIsLonger() {
        assertArrayEquals(range(0, 10), order(times(steps(0, 1, 5), steps(604, 1, 5))));
        assertEquals(List.of(), said());
        assertArrayEquals(range(0, 5), order(times(steps(0, 1, 5), steps(604.1, 1, 5))));
        assertEquals(
                List.of(
                        "curves/1.csv, line 7, column 'time [s]': found 1 jump of the clock, the first by 600 s; expected one clock from"
                                + " start to end; the longest stretch kept, lines 2 to 6; 5 readings left out."),
                said());
    }

    @Test
    void whereReadingsLieFarApartAGapIsAHundredOfTheirSteps() {
        assertArrayEquals(range(0, 10), order(times(steps(0, 10, 5), steps(1040, 10, 5))));
        assertArrayEquals(range(0, 5), order(times(steps(0, 10, 5), steps(1041, 10, 5))));
    }

    @Test
    void jumpsAreCountedAndTheFirstIsTold() {
        assertArrayEquals(range(4, 7), order(50, 51, 20, 21, 0, 1, 2));
        assertEquals(
                List.of(
                        "curves/1.csv, line 4, column 'time [s]': found 2 jumps of the clock, the first by -31 s; expected one clock from"
                                + " start to end; the longest stretch kept, lines 6 to 8; 4 readings left out."),
                said());
    }

    @Test
    void aFileThatRunsBackwardsIsSorted() {
        assertArrayEquals(new int[] {4, 3, 2, 1, 0}, order(5, 4, 3, 2, 1));
        assertEquals(
                List.of(
                        "curves/1.csv, line 3, column 'time [s]': found 4 times before the one above; expected times that rise; readings"
                                + " sorted by time."),
                said());
    }

    @Test
    void threeStepsBackAreNotAFileOutOfOrder() {
        assertArrayEquals(range(0, 1), order(4, 3, 2, 1));
        assertEquals(
                List.of(
                        "curves/1.csv, line 3, column 'time [s]': found a clock that steps back, over 3 readings; expected times that rise;"
                                + " those readings left out until the clock had caught up."),
                said());
    }

    /** Swaps neighbours here and there: so many steps back in so many readings. */
    private static double[] swapped(int swaps, int readings) {
        double[] seconds = steps(0, 1, readings);
        for (int i = 0; i < swaps; i++) {
            int at = 2 + i * 7;
            double kept = seconds[at];
            seconds[at] = seconds[at + 1];
            seconds[at + 1] = kept;
        }
        return seconds;
    }

    @Test
    void readingsOutOfOrderMoreOftenThanOnceInFiftyAreSorted() {
        int[] sorted = order(swapped(5, 200));
        assertEquals(200, sorted.length);
        assertEquals(3, sorted[2]);
        assertEquals(
                List.of(
                        "curves/1.csv, line 5, column 'time [s]': found 5 times before the one above; expected times that rise; readings"
                                + " sorted by time."),
                said());
    }

    @Test
    void readingsOutOfOrderOnceInFiftyAreLeftOut() {
        int[] kept = order(swapped(4, 200));
        assertEquals(196, kept.length);
        List<Integer> places = new ArrayList<>();
        IntStream.of(kept).forEach(places::add);
        assertEquals(List.of(0, 1, 2, 4), places.subList(0, 4));
        assertEquals(
                List.of(
                        "curves/1.csv, line 5, column 'time [s]': found a clock that steps back, over 4 readings; expected times that rise;"
                                + " those readings left out until the clock had caught up."),
                said());
    }

    @Test
    void sortedReadingsAtTheSameTimeAreKeptOnce() {
        assertArrayEquals(new int[] {5, 3, 2, 1, 0}, order(5, 4, 3, 2, 2, 1));
        assertEquals(2, said().size());
    }
}
