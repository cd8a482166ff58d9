package parchment.stats;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;

class HampelFilterTest {

    @Test
    void findsASpikeOnARisingCurveAndNothingElse() {
        double[] x = new double[100];
        double[] y = new double[100];
        Arrays.setAll(x, i -> i);
        Arrays.setAll(y, i -> 90 + 0.3 * i + 0.05 * ((i * 7) % 5));
        y[40] += 25;
        y[41] -= 30;
        y[80] = Double.NaN;
        HampelFilter.Result result = HampelFilter.of(5).apply(x, y);
        assertArrayEquals(new int[] {40, 41}, result.wildIndices());
        assertTrue(Double.isNaN(result.withoutWild()[40]));
        assertEquals("2 of 99 readings called wild, 1 missing", result.toString());
    }

    @Test
    void doesNotCallOneStepOfTheReadingsWild() {
        double[] x = new double[40];
        double[] y = new double[40];
        Arrays.setAll(x, i -> i);
        Arrays.setAll(y, i -> i == 20 ? 91 : 90);
        assertArrayEquals(new int[] {20}, HampelFilter.of(6).apply(x, y).wildIndices());
        assertArrayEquals(
                new int[0], HampelFilter.of(6).withResolution(1).apply(x, y).wildIndices());
    }

    /** Hand-computed: window 1 2 3 100 5 has median 3 and absolute deviations 2 1 0 97 2, so 1.4826 times 2 is the spread. */
    @Test
    void usesTheMedianAndItsDeviation() {
        double[] x = {0, 1, 2, 3, 4};
        HampelFilter.Result result = HampelFilter.of(10).apply(x, new double[] {1, 2, 3, 100, 5});
        assertArrayEquals(new double[] {3, 3, 3, 3, 3}, result.medians());
        assertArrayEquals(new int[] {3}, result.wildIndices());
        assertEquals(2 * 1.482602218505602, Robust.medianAbsoluteDeviation(new double[] {1, 2, 3, 100, 5}), 1e-12);
    }

    @Test
    void windowsAreMeasuredInUnitsOfX() {
        double[] x = {0, 1, 2, 3, 50, 51, 52, 53};
        double[] y = {10, 10.1, 9.9, 10, 90, 90.1, 89.9, 90};
        assertArrayEquals(new int[0], HampelFilter.of(4).apply(x, y).wildIndices());
    }

    /** The deviation of normal values estimates their standard deviation; quantiles are R's type 7 on hand-computed cases. */
    @Test
    void robustMeasuresEstimateWhatTheySay() {
        SplittableRandom random = new SplittableRandom(1);
        double[] values = new double[20_000];
        Arrays.setAll(values, i -> 2 * random.nextGaussian());
        assertEquals(2, Robust.medianAbsoluteDeviation(values), 0.05);
        assertEquals(2.5, Robust.median(new double[] {4, 1, Double.NaN, 2, 3}));
        assertEquals(1.75, Robust.quantile(new double[] {1, 2, 3, 4}, 0.25), 1e-12);
        assertTrue(Double.isNaN(Robust.median(new double[] {Double.NaN})));
    }
}
