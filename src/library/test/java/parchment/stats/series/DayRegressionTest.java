package parchment.stats.series;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.Random;
import org.junit.jupiter.api.Test;
import parchment.stats.linear.Vectors;

class DayRegressionTest {
    @Test
    void whiteningIsGeneralisedLeastSquares() {
        // Against the textbook formula with the whole covariance matrix written out: b = (X'V^-1 X)^-1 X'V^-1 y, one
        // column.
        Random random = new Random(5);
        int n = 14;
        int[] day = new int[n];
        double[] dates = {0, 3, 4, 11, 13};
        double[] x = new double[n];
        double[] y = new double[n];
        for (int i = 0; i < n; i++) {
            day[i] = i * dates.length / n;
            x[i] = random.nextGaussian();
            y[i] = 2 * x[i] + random.nextGaussian();
        }
        double ratio = 0.8;
        double length = 6;
        double[][] v = new double[n][n];
        for (int i = 0; i < n; i++) {
            for (int j = 0; j < n; j++) {
                v[i][j] = ratio * Math.exp(-Math.abs(dates[day[i]] - dates[day[j]]) / length) + (i == j ? 1 : 0);
            }
        }
        var inverse = new org.hipparchus.linear.LUDecomposition(new org.hipparchus.linear.Array2DRowRealMatrix(v))
                .getSolver();
        double[] vx =
                inverse.solve(new org.hipparchus.linear.ArrayRealVector(x)).toArray();
        double expected = Vectors.dot(vx, y) / Vectors.dot(vx, x);
        WanderingDays.Filter filter = new WanderingDays(day, dates).filter(ratio, length);
        double[] wx = filter.whitened(x);
        assertEquals(expected, Vectors.dot(wx, filter.whitened(y)) / Vectors.dot(wx, wx), 1e-12);
        double[] back = filter.whitened(filter.wandering(y));
        for (int i = 0; i < n; i++) {
            assertEquals(y[i], back[i], 1e-12);
        }
        double determinant = new org.hipparchus.linear.LUDecomposition(
                        new org.hipparchus.linear.Array2DRowRealMatrix(v))
                .getDeterminant();
        assertEquals(Math.log(determinant), filter.logDeterminant(), 1e-10);
    }
}
