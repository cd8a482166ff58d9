package parchment.curve;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.List;
import java.util.Random;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import parchment.curve.measured.Cleaning;

/** A row on each side of each rule of a spike. */
class SpikesTest {
    private static double[] flat(int readings) {
        double[] y = new double[readings];
        Arrays.fill(y, 100);
        return y;
    }

    private static List<Integer> found(double[] y, double step, Cleaning cleaning) {
        double[] x = IntStream.range(0, y.length).mapToDouble(i -> 2 * i).toArray();
        boolean[] spike = Spikes.find(x, y, step, cleaning);
        return IntStream.range(0, y.length).filter(i -> spike[i]).boxed().toList();
    }

    private static List<Integer> found(double[] y) {
        return found(y, 0.1, Cleaning.STANDARD);
    }

    /** On a line without noise three steps of the logger count. */
    @ParameterizedTest
    @CsvSource({"0.29, false", "0.31, true", "-0.29, false", "-0.31, true", "40, true", "-40, true"})
    void aSpikeIsMoreThanThreeStepsHigh(double height, boolean isSpike) {
        double[] y = flat(60);
        y[30] += height;
        assertEquals(isSpike ? List.of(30) : List.of(), found(y));
    }

    @Test
    void withoutAStepAnythingThatIsNotRoundingCounts() {
        double[] y = flat(60);
        y[30] += 1e-6;
        assertEquals(List.of(30), found(y, 0, Cleaning.STANDARD));
        y[30] = 100 + 1e-9;
        assertEquals(List.of(), found(y, 0, Cleaning.STANDARD));
    }

    @ParameterizedTest
    @CsvSource({"8, false", "9, true"})
    void needsNineReadings(int readings, boolean looksAtAll) {
        double[] y = flat(readings);
        y[4] += 10;
        assertEquals(looksAtAll ? List.of(4) : List.of(), found(y));
    }

    /** The first and the last reading have nothing to come back to. */
    @ParameterizedTest
    @ValueSource(ints = {0, 39})
    void theFirstAndTheLastReadingAreKept(int at) {
        double[] y = flat(40);
        y[at] += 50;
        assertEquals(List.of(), found(y));
    }

    @ParameterizedTest
    @ValueSource(ints = {1, 2, 3, 4, 5, 34, 35, 36, 37, 38})
    void readingsNearTheEndsAreLookedAt(int at) {
        double[] y = flat(40);
        y[at] += 50;
        assertEquals(List.of(at), found(y));
        y[at] -= 100;
        assertEquals(List.of(at), found(y));
    }

    @ParameterizedTest
    @CsvSource({"1, 1", "2, 2", "3, 3", "4, 0", "6, 0"})
    void upToThreeReadingsAreOneSpike(int width, int left) {
        double[] y = flat(60);
        IntStream.range(30, 30 + width).forEach(i -> y[i] += 20);
        assertEquals(IntStream.range(30, 30 + left).boxed().toList(), found(y));
    }

    @ParameterizedTest
    @CsvSource({"1, 1, 1", "1, 2, 0", "2, 2, 2", "2, 3, 0"})
    void theWidestSpikeCanBeSet(int widest, int width, int left) {
        double[] y = flat(60);
        IntStream.range(30, 30 + width).forEach(i -> y[i] += 20);
        assertEquals(
                IntStream.range(30, 30 + left).boxed().toList(),
                found(y, 0.1, Cleaning.STANDARD.withWidestSpike(widest)));
    }

    /** Across a jump of 10 degrees, a reading lies 1.5 times as far from the line between its neighbours, or it belongs to the jump. */
    @ParameterizedTest
    @CsvSource({"119.9, false", "120.1, true", "90.1, false", "89.9, true"})
    void aSpikeComesBackFurtherThanTheCurveMovesMeanwhile(double value, boolean isSpike) {
        double[] y = flat(60);
        Arrays.fill(y, 30, 60, 110);
        y[30] = value;
        assertEquals(isSpike ? List.of(30) : List.of(), found(y));
    }

    @Test
    void aFallThatStaysIsNoSpike() {
        double[] y = flat(60);
        Arrays.fill(y, 30, 60, 40);
        assertEquals(List.of(), found(y));
    }

    @Test
    void aSteepRiseHidesNoSpikeAndIsNone() {
        double[] y = IntStream.range(0, 60).mapToDouble(i -> 100 + 3 * i).toArray();
        assertEquals(List.of(), found(y));
        y[30] += 8.9; // the curve moves 6 between the neighbours, and 1.5 times that is 9
        assertEquals(List.of(), found(y));
        y[30] += 0.2;
        assertEquals(List.of(30), found(y));
    }

    private static double[] noisy(int seed, double deviation) {
        Random random = new Random(seed);
        return IntStream.range(0, 400)
                .mapToDouble(i -> 100 + 0.2 * i + deviation * random.nextGaussian())
                .toArray();
    }

    /** Five robust standard deviations of what lies off its neighbours, about 1.2 times the noise. */
    @Test
    void theNoiseAroundSetsTheLimit() {
        int small = 0;
        int large = 0;
        int others = 0;
        for (int seed = 0; seed < 40; seed++) {
            double[] y = noisy(seed, 0.5);
            y[200] = 140 + 1.5;
            y[300] = 160 + 6;
            List<Integer> found = found(y, 0, Cleaning.STANDARD);
            small += found.contains(200) ? 1 : 0;
            large += found.contains(300) ? 1 : 0;
            others += (int) found.stream().filter(i -> i != 200 && i != 300).count();
            assertTrue(!found(y, 0, Cleaning.STANDARD.withSpikeThreshold(40)).contains(300));
        }
        assertTrue(small <= 2, "3 standard deviations called a spike in " + small + " of 40");
        assertTrue(large >= 39, "12 standard deviations called a spike in " + large + " of 40");
        assertTrue(others <= 4, others + " of 15,920 good readings called spikes");
    }

    /** The noise is that of 15 readings to each side: a calm stretch has its own limit, 16 readings from a wild one. */
    @Test
    void aCalmStretchHasItsOwnLimit() {
        Random random = new Random(4);
        double[] y = flat(200);
        for (int i = 100; i < 200; i++) {
            y[i] += 3 * random.nextGaussian();
        }
        y[50] += 1;
        y[150] = 101;
        List<Integer> found = found(y);
        assertTrue(found.contains(50), found.toString());
        assertTrue(!found.contains(150), found.toString());
    }

    @Test
    void twoSpikesBesideEachOtherAreBothFound() {
        double[] y = flat(60);
        y[20] += 30;
        y[22] += 30;
        y[40] += 25;
        y[41] += 30;
        y[42] += 20;
        assertEquals(List.of(20, 22, 40, 41, 42), found(y));
    }

    /** A rise of 0.2 degrees a second to a drop, then a fall by 80 degrees with a lag of 15 s; the logger rounds to 0.1. */
    private static double[] dropped(double dropSeconds) {
        return IntStream.range(0, 60)
                .mapToDouble(i -> {
                    double u = 2 * i - dropSeconds;
                    double celsius = u <= 0 ? 200 + 0.2 * u : 200 - 80 * (1 - Math.exp(-u / 15));
                    return 0.1 * Math.rint(10 * celsius);
                })
                .toArray();
    }

    private static double[] mirrored(double[] y) {
        return IntStream.range(0, y.length)
                .mapToDouble(i -> y[y.length - 1 - i])
                .toArray();
    }

    private static double[] turnedOver(double[] y) {
        return Arrays.stream(y).map(value -> 300 - value).toArray();
    }

    /** Wherever between two readings the drop falls; and the same at a start, and upside down. */
    @Test
    void theCornerOfADropIsNoSpike() {
        for (int tenth = 0; tenth < 20; tenth++) {
            for (int readings = 43; readings < 60; readings += 4) {
                double[] y = Arrays.copyOf(dropped(80 + 0.1 * tenth), readings);
                assertEquals(List.of(), found(y), "drop at " + (80 + 0.1 * tenth) + " s, readings " + readings);
                assertEquals(List.of(), found(mirrored(y)));
                assertEquals(List.of(), found(turnedOver(y)));
                assertEquals(List.of(), found(turnedOver(mirrored(y))));
            }
        }
    }

    /** With one reading after its way back a corner looks as a spike does; from the second on it is told. */
    @ParameterizedTest
    @CsvSource({"1, false", "2, true", "3, true", "19, true"})
    void aCornerIsToldFromTheSecondReadingAfterItOn(int after, boolean isKept) {
        double[] y = Arrays.copyOf(dropped(81.8), 41 + after);
        assertEquals(isKept, found(y).isEmpty(), found(y).toString());
    }

    /**
     * Readings rise by 0.4 to a corner. The two at its top lie up to 0.67 above the line across them, and three readings before it the curve
     * lies 1.0 below that line: what lies higher by the rest of that is a spike.
     */
    @ParameterizedTest
    @CsvSource({"0.32, false", "0.35, true", "40, true"})
    void aSpikeOnTheTopOfACornerLeavesTheCourse(double height, boolean isSpike) {
        double[] y = flat(60);
        for (int i = 0; i < 60; i++) {
            y[i] = i <= 30 ? 100 + 0.4 * (i - 30) : 100 - 0.6 - 3 * (i - 31);
        }
        y[30] += height;
        assertEquals(isSpike, found(y).contains(30), found(y).toString());
    }

    /** The way back leads to the level of 28 again; both readings after it lie more than three steps below that, or it was a spike. */
    @ParameterizedTest
    @CsvSource({
        "-0.29, -9, true",
        "-0.31, -9, false",
        "-9, -0.29, true",
        "-9, -0.31, false",
        "-9, -9, false",
        "0, 0, true"
    })
    void afterACornerTheReadingsKeepFalling(double first, double second, boolean isSpike) {
        double[] y = new double[60];
        for (int i = 0; i < 60; i++) {
            y[i] = 100 + (i <= 30 ? 0.4 * (i - 28) : i == 32 ? first : i == 33 ? second : 0);
        }
        assertEquals(isSpike, found(y).contains(30), found(y).toString());
    }

    /** A spike up and one down straight after it are two spikes, and no corner. */
    @Test
    void readingsThatComeBackFromBelowAreNoCorner() {
        double[] y = flat(60);
        y[30] += 20;
        y[32] -= 20;
        assertEquals(List.of(30, 32), found(y));
    }

    /** A turn or a slow corner that few readings show: the three at its top lie off their neighbours, and so do the next ones. */
    @ParameterizedTest
    @CsvSource({"0.05", "0.2", "1", "5"})
    void aBendIsNoSpike(double bend) {
        for (double turn : new double[] {30, 30.2, 30.5, 30.9}) {
            double[] round = IntStream.range(0, 60)
                    .mapToDouble(i -> 90 + bend * (i - turn) * (i - turn))
                    .toArray();
            double[] sharp = IntStream.range(0, 60)
                    .mapToDouble(i -> 90 + bend * Math.abs(i - turn))
                    .toArray();
            assertEquals(List.of(), found(round));
            assertEquals(List.of(), found(sharp));
            assertEquals(List.of(), found(turnedOver(round)));
            assertEquals(List.of(), found(turnedOver(sharp)));
        }
    }

    /**
     * At the bottom of 90 + 0.2 i² the reading lies 0.2 below the line between its neighbours, and those two further out lie 1.6 above: a
     * spike is what lies further off than that.
     */
    @ParameterizedTest
    @CsvSource({"1.39, false", "1.41, true", "20, true"})
    void aSpikeAtABendLiesFurtherOffThanTheBendGoesOn(double deep, boolean isSpike) {
        double[] y = IntStream.range(0, 60)
                .mapToDouble(i -> 90 + 0.2 * (i - 30) * (i - 30))
                .toArray();
        y[30] -= deep;
        assertEquals(isSpike, found(y).contains(30), found(y).toString());
    }
}
