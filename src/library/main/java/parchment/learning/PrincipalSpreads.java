package parchment.learning;

import java.util.Arrays;
import java.util.SplittableRandom;
import org.hipparchus.linear.EigenDecompositionSymmetric;
import org.hipparchus.linear.MatrixUtils;

/**
 * Finds along how many directions things spread, and how far, from how far each two are apart: the principal coordinates of Gower 1966, of which only
 * the sizes are kept.
 */
final class PrincipalSpreads {
    /** Directions that hold less than this share of the largest are left out, as the noise of the distances. */
    private static final double LEAST = 0.01;
    /** With more batches every second, third and so on is enough for the spread. */
    private static final int MOST = 300;

    private PrincipalSpreads() {}

    /** Returns the standard deviations along the directions, the largest first. */
    static double[] of(float[][] distances) {
        int every = 1 + (distances.length - 1) / MOST;
        int n = (distances.length + every - 1) / every;
        double[][] centred = new double[n][n];
        double[] means = new double[n];
        double mean = 0;
        for (int i = 0; i < n; i++) {
            for (int j = 0; j < n; j++) {
                double distance = distances[i * every][j * every];
                centred[i][j] = -0.5 * distance * distance;
                means[i] += centred[i][j] / n;
            }
            mean += means[i] / n;
        }
        for (int i = 0; i < n; i++) {
            for (int j = 0; j <= i; j++) {
                // One triangle, copied: near 0 the two orders of rounding are no longer alike enough for a symmetric
                // matrix.
                centred[i][j] += mean - means[i] - means[j];
                centred[j][i] = centred[i][j];
            }
        }
        double[] values = new EigenDecompositionSymmetric(MatrixUtils.createRealMatrix(centred)).getEigenvalues();
        double largest = Arrays.stream(values).max().orElse(0);
        return Arrays.stream(values)
                .filter(value -> value > LEAST * largest)
                .map(value -> -Math.sqrt(value / n))
                .sorted()
                .map(value -> -value)
                .toArray();
    }

    /** Returns how far apart so many things of one normal cloud with these spreads are. */
    static float[][] cloud(double[] spreads, int size, SplittableRandom random) {
        double[][] points = new double[size][spreads.length];
        for (double[] point : points) {
            Arrays.setAll(point, k -> spreads[k] * random.nextGaussian());
        }
        float[][] distances = new float[size][size];
        for (int i = 0; i < size; i++) {
            for (int j = 0; j < i; j++) {
                double sum = 0;
                for (int k = 0; k < spreads.length; k++) {
                    double off = points[i][k] - points[j][k];
                    sum += off * off;
                }
                distances[i][j] = (float) Math.sqrt(sum);
                distances[j][i] = distances[i][j];
            }
        }
        return distances;
    }
}
