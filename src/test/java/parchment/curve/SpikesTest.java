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
}
