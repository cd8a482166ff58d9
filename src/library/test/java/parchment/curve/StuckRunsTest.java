package parchment.curve;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.Arrays;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import parchment.curve.measured.Cleaning;

/** A row on each side of each threshold of a standstill. Slopes are fractions of two, so that every rate is exact. */
class StuckRunsTest {
    /** Where the standstill begins, in readings. */
    private static final int FROM = 30;

    /** A curve that stands still over some intervals from reading 30 on, then jumps and goes on. */
    private record Run(double every, double before, double after, int intervals, double jump) {
        static final Run USUAL = new Run(1, 0.5, 0.5, 8, 4.5);

        double[] x() {
            return IntStream.range(0, FROM + intervals + 31)
                    .mapToDouble(i -> i * every)
                    .toArray();
        }

        double[] y() {
            double[] x = x();
            int to = FROM + intervals;
            return IntStream.range(0, x.length)
                    .mapToDouble(i -> i <= FROM
                            ? 100 + before * (x[i] - x[FROM])
                            : i <= to ? 100 : 100 + jump + after * (x[i] - x[to + 1]))
                    .toArray();
        }

        long found(double step, Cleaning cleaning) {
            boolean[] stuck = StuckRuns.find(x(), y(), step, cleaning);
            long count = IntStream.range(0, stuck.length).filter(i -> stuck[i]).count();
            for (int i = 0; i < stuck.length; i++) {
                boolean inside = i > FROM && i <= FROM + intervals;
                assertEquals(count > 0 && inside, stuck[i], "reading " + i);
            }
            return count;
        }

        long found(double step) {
            return found(step, Cleaning.STANDARD);
        }
    }

    @ParameterizedTest
    @CsvSource({"7, 0", "8, 8", "20, 20"})
    void aStandstillLastsEightSecondsOrMore(int intervals, int found) {
        assertEquals(found, new Run(1, 0.5, 0.5, intervals, 0.5 * (intervals + 1)).found(0.125));
        assertEquals(
                intervals,
                new Run(1, 0.5, 0.5, intervals, 0.5 * (intervals + 1))
                        .found(0.125, Cleaning.STANDARD.withShortestStuck(7)));
    }

    @ParameterizedTest
    @CsvSource({"2, 0", "3, 3"})
    void aStandstillHasFourReadingsOrMore(int intervals, int found) {
        assertEquals(found, new Run(5, 0.5, 0.5, intervals, 2.5 * (intervals + 1)).found(0.125));
    }

    /** Eight seconds at half a degree each: 4 degrees missed; more than four steps are wanted. */
    @ParameterizedTest
    @CsvSource({"0.9375, 8", "1, 0", "2, 0"})
    void moreThanFourStepsWereMissed(double step, int found) {
        assertEquals(found, Run.USUAL.found(step));
    }

    /** Without a step four times a twentieth of a degree counts: at 1/64 degree each second 12 s miss 0.1875, 13 s 0.2031. */
    @ParameterizedTest
    @CsvSource({"12, 0", "13, 13"})
    void withoutAStepAFifthOfADegreeWasMissed(int intervals, int found) {
        assertEquals(found, new Run(1, 1 / 64.0, 1 / 64.0, intervals, 0.25).found(0));
    }

    @ParameterizedTest
    @CsvSource({"1.9375, 0", "2, 8", "-2, 8", "-1.9375, 0"})
    void theCurveJumpsByHalfOfWhatWasMissed(double jump, int found) {
        assertEquals(found, new Run(1, 0.5, 0.5, 8, jump).found(0.125));
    }

    /** Before 0.25, after 0.5 and the other way round: eight seconds miss 2 degrees. */
    @ParameterizedTest
    @CsvSource({"0.25, 0.5, 0.46875, 8", "0.25, 0.5, 0.5, 0", "0.5, 0.25, 0.46875, 8", "0.5, 0.25, 0.5, 0"})
    void theSlowerOfTheTwoRatesCounts(double before, double after, double step, int found) {
        assertEquals(found, new Run(1, before, after, 8, 4).found(step));
    }

    @ParameterizedTest
    @CsvSource({"0.5, -0.5, 0", "-0.5, 0.5, 0", "-0.5, -0.5, 8", "0, 0.5, 0", "0.5, 0, 0"})
    void aTurnOfTheCurveIsNoStandstill(double before, double after, int found) {
        double jump = before < 0 ? -4.5 : 4.5;
        Run run = new Run(1, before, after, 8, jump);
        if (before == 0 || after == 0) {
            // A flat part before is one run with the standstill, one after it is a run of its own.
            boolean[] stuck = StuckRuns.find(run.x(), run.y(), 2, Cleaning.STANDARD);
            assertEquals(
                    0, IntStream.rangeClosed(0, FROM + 8).filter(i -> stuck[i]).count());
            return;
        }
        assertEquals(found, run.found(0.125));
    }

    /** The rate before comes from the 20 s before: a reading 20 s away counts, one 21 s away does not. */
    @ParameterizedTest
    @CsvSource({"20, 0", "21, 8"})
    void theRateComesFromTwentySeconds(int secondsAway, int found) {
        double[] x = Run.USUAL.x();
        double[] y = Run.USUAL.y();
        y[FROM - secondsAway] = 101; // as if the curve had fallen until then
        boolean[] stuck = StuckRuns.find(x, y, 0.125, Cleaning.STANDARD);
        assertEquals(found, IntStream.range(0, x.length).filter(i -> stuck[i]).count());
        double[] other = Run.USUAL.y();
        int next = FROM + 9;
        other[next + secondsAway] = 104; // as if it had fallen since
        boolean[] after = StuckRuns.find(x, other, 0.125, Cleaning.STANDARD);
        assertEquals(found, IntStream.range(0, x.length).filter(i -> after[i]).count());
    }

    /** Three readings beside the standstill give a rate, two do not; here those before fall while the curve rises after. */
    @ParameterizedTest
    @CsvSource({"3, 0", "2, 8", "0, 8"})
    void atTheStartOfTheLogOneSideHasToDo(int before, int found) {
        double[] y = Arrays.copyOfRange(Run.USUAL.y(), FROM - before, 60);
        for (int i = 0; i < before; i++) {
            y[i] = 100 + 0.5 * (before - i);
        }
        assertEquals(found, count(y));
    }

    @Test
    void atTheEndOfTheLogOneSideHasToDo() {
        double[] all = Run.USUAL.y();
        assertEquals(8, count(Arrays.copyOf(all, FROM + 9)), "ends while it stands still");
        assertEquals(8, count(Arrays.copyOf(all, FROM + 9 + 3)), "two readings after its first reading");
        double[] falls = Arrays.copyOf(all, FROM + 9 + 3);
        falls[FROM + 10] = falls[FROM + 9] - 1;
        falls[FROM + 11] = falls[FROM + 9] - 2;
        assertEquals(8, count(falls), "two readings give no rate");
        double[] more = Arrays.copyOf(falls, FROM + 9 + 4);
        more[FROM + 12] = falls[FROM + 9] - 3;
        assertEquals(0, count(more), "three readings that fall do");
    }

    @Test
    void aProbeThatNeverMovedCannotBeCalledStuck() {
        double[] y = new double[50];
        Arrays.fill(y, 21);
        assertEquals(0, count(y));
        assertArrayEquals(new boolean[0], StuckRuns.find(new double[0], new double[0], 0.125, Cleaning.STANDARD));
    }

    @Test
    void findsEachOfTwoStandstills() {
        double[] first = Run.USUAL.y();
        double[] y = Arrays.copyOf(first, 2 * first.length);
        double lift = first[first.length - 1] + 0.5 - first[0];
        for (int i = 0; i < first.length; i++) {
            y[first.length + i] = first[i] + lift;
        }
        assertEquals(16, count(y));
    }

    private static long count(double[] y) {
        double[] x = IntStream.range(0, y.length).mapToDouble(i -> i).toArray();
        boolean[] stuck = StuckRuns.find(x, y, 0.125, Cleaning.STANDARD);
        return IntStream.range(0, y.length).filter(i -> stuck[i]).count();
    }
}
