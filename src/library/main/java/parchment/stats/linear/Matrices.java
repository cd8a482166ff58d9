package parchment.stats.linear;

import java.util.Optional;
import org.hipparchus.linear.EigenDecompositionSymmetric;
import org.hipparchus.linear.LUDecomposition;
import org.hipparchus.linear.MatrixUtils;
import org.hipparchus.linear.RealMatrix;

/** Arithmetic of small square matrices, as of the covariance of a few measures. */
public final class Matrices {
    /** A covariance whose correlations leave less than this share of any direction free counts as having no inverse. */
    private static final double LEAST_FREE = 1e-8;

    private Matrices() {}

    /** Returns left' · matrix · right. */
    public static double form(double[] left, double[][] matrix, double[] right) {
        double sum = 0;
        for (int i = 0; i < left.length; i++) {
            for (int j = 0; j < right.length; j++) {
                sum += left[i] * matrix[i][j] * right[j];
            }
        }
        return sum;
    }

    /** Returns first · second. */
    public static double[][] times(double[][] first, double[][] second) {
        return MatrixUtils.createRealMatrix(first)
                .multiply(MatrixUtils.createRealMatrix(second))
                .getData();
    }

    /** Returns the matrix with rows and columns exchanged. */
    public static double[][] transposed(double[][] matrix) {
        return MatrixUtils.createRealMatrix(matrix).transpose().getData();
    }

    /** Returns first - second. */
    public static double[][] minus(double[][] first, double[][] second) {
        return MatrixUtils.createRealMatrix(first)
                .subtract(MatrixUtils.createRealMatrix(second))
                .getData();
    }

    /** Returns the inverse of a covariance, whatever the units of its rows; nothing if it is not positive definite. */
    public static Optional<double[][]> inverse(double[][] covariance) {
        int n = covariance.length;
        double[][] scaled = new double[n][n];
        for (int i = 0; i < n; i++) {
            for (int j = 0; j < n; j++) {
                // Rounding may have left the two halves a little different.
                double both = (covariance[i][j] + covariance[j][i]) / 2;
                scaled[i][j] = both / Math.sqrt(covariance[i][i] * covariance[j][j]);
                if (!Double.isFinite(scaled[i][j])) {
                    return Optional.empty();
                }
            }
        }
        RealMatrix correlation = MatrixUtils.createRealMatrix(scaled);
        double least = Double.POSITIVE_INFINITY;
        for (double value : new EigenDecompositionSymmetric(correlation).getEigenvalues()) {
            least = Math.min(least, value);
        }
        if (!(least > LEAST_FREE)) {
            return Optional.empty();
        }
        double[][] inverse =
                new LUDecomposition(correlation).getSolver().getInverse().getData();
        for (int i = 0; i < n; i++) {
            for (int j = 0; j < n; j++) {
                inverse[i][j] /= Math.sqrt(covariance[i][i] * covariance[j][j]);
            }
        }
        return Optional.of(inverse);
    }
}
