package parchment.stats.linear;

import java.util.Optional;

/** Solves small symmetric positive definite systems by Cholesky's method. Nothing is returned for a matrix that is singular to working precision. */
public final class SmallSolve {
    /** A pivot under this share of its diagonal is rounding. */
    private static final double SINGULAR = 1e-14;

    private SmallSolve() {}

    /** Returns the given column of the inverse, or nothing if the matrix is singular. */
    static Optional<double[]> unit(double[][] matrix, int column) {
        double[] right = new double[matrix.length];
        right[column] = 1;
        return solve(matrix, right);
    }

    /** Returns the solution, or nothing if the matrix is singular. */
    public static Optional<double[]> solve(double[][] matrix, double[] right) {
        return cholesky(matrix).map(lower -> {
            double[] z = right.clone();
            solveFactored(lower, z);
            return z;
        });
    }

    /** Solves L L' z = right in place. */
    public static void solveFactored(double[][] lower, double[] z) {
        int n = lower.length;
        for (int i = 0; i < n; i++) {
            for (int k = 0; k < i; k++) {
                z[i] -= lower[i][k] * z[k];
            }
            z[i] /= lower[i][i];
        }
        for (int i = n - 1; i >= 0; i--) {
            for (int k = i + 1; k < n; k++) {
                z[i] -= lower[k][i] * z[k];
            }
            z[i] /= lower[i][i];
        }
    }

    /** Returns the inverse, or nothing if the matrix is singular. */
    public static Optional<double[][]> inverse(double[][] matrix) {
        return cholesky(matrix).map(lower -> {
            double[][] inverse = new double[lower.length][lower.length];
            for (int c = 0; c < lower.length; c++) {
                inverse[c][c] = 1;
                solveFactored(lower, inverse[c]);
            }
            return inverse;
        });
    }

    /** Returns the lower factor, or nothing if a pivot is not a number above 1e-14 of its diagonal. */
    public static Optional<double[][]> cholesky(double[][] matrix) {
        int n = matrix.length;
        double[][] lower = new double[n][n];
        for (int i = 0; i < n; i++) {
            for (int j = 0; j <= i; j++) {
                double sum = matrix[i][j];
                for (int k = 0; k < j; k++) {
                    sum -= lower[i][k] * lower[j][k];
                }
                if (i == j) {
                    if (!(sum > SINGULAR * matrix[i][i] && sum < Double.POSITIVE_INFINITY)) {
                        return Optional.empty();
                    }
                    lower[i][i] = Math.sqrt(sum);
                } else {
                    lower[i][j] = sum / lower[j][j];
                }
            }
        }
        return Optional.of(lower);
    }
}
