package parchment.stats.regression;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;

/** What holds of a Gaussian process by itself; outside numbers are in {@link AgreementTest}. */
class GaussianProcessTest {
    @Test
    void rowsWithMissingNumbersAreLeftOutAndCounted() {
        SplittableRandom random = new SplittableRandom(4);
        double[] x = random.doubles(12).toArray();
        double[] z = random.doubles(12).toArray();
        double[] y = random.doubles(12).toArray();
        x[5] = Double.NaN;
        GaussianProcess process = GaussianProcess.fit(List.of(x, z), y, ProcessShape.MATERN_FIVE_HALVES);
        assertEquals(1, process.leftOut());
        assertTrue(Double.isNaN(process.value(Double.NaN, 0.5)));
    }

    @Test
    void findsTheSurfaceThatWasPutInAndKnowsLessFurtherAway() {
        SplittableRandom random = new SplittableRandom(8);
        double[] x = random.doubles(90).map(v -> 10 * v).toArray();
        double[] z = random.doubles(90).map(v -> 0.1 * v).toArray();
        double[] y = new double[90];
        for (int i = 0; i < y.length; i++) {
            y[i] = 80 + 3 * Math.sin(x[i]) + 40 * z[i] + 0.2 * random.nextGaussian();
        }
        GaussianProcess process = GaussianProcess.fit(List.of(x, z), y, ProcessShape.SQUARED_EXPONENTIAL);
        assertEquals(80 + 3 * Math.sin(4) + 2, process.value(4, 0.05), 0.35);
        assertEquals(0.2, process.noiseStandardDeviation(), 0.06);
        assertTrue(process.standardError(14, 0.05) > 3 * process.standardError(4, 0.05));
    }

    @Test
    void saysWhenTheDataDoNotTellALength() {
        double[] x = {0, 1, 2, 3, 4, 5, 6, 7};
        double[] y = {1, -1, 1, -1, -1, 1, 1, -1};
        GaussianProcess process = GaussianProcess.fit(List.of(x), y, ProcessShape.MATERN_THREE_HALVES);
        assertFalse(Double.isNaN(process.value(3.5)));
        assertTrue(process.surfaceStandardDeviation() < 1.5);
    }
}
