package parchment.stats;

/** Solves small symmetric positive definite systems by Cholesky's method. */
final class SmallSolve {
    private SmallSolve() {}

    /** Returns the given column of the inverse, or an empty array if the matrix is singular to working precision. */
    static double[] unit(double[][] matrix, int column) {
        double[] right = new double[matrix.length];
        right[column] = 1;
        return solve(matrix, right);
    }

    /** Returns the solution, or an empty array if the matrix is singular to working precision. */
    static double[] solve(double[][] matrix, double[] right) {
        int n = matrix.length;
        double[][] lower = cholesky(matrix);
        if (lower.length != n) {
            return new double[0];
        }
        double[] z = right.clone();
        solveFactored(lower, z);
        return z;
    }

    /** Solves L L' z = right in place. */
    static void solveFactored(double[][] lower, double[] z) {
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

    /** Returns the inverse, or an empty array if the matrix is singular to working precision. */
    static double[][] inverse(double[][] matrix) {
        int n = matrix.length;
        double[][] inverse = new double[n][];
        for (int c = 0; c < n; c++) {
            inverse[c] = unit(matrix, c);
            if (inverse[c].length != n) {
                return new double[0][];
            }
        }
        return inverse;
    }

    /** Returns the lower factor, or an empty array if a pivot falls under 1e-14 of its diagonal. */
    static double[][] cholesky(double[][] matrix) {
        int n = matrix.length;
        double[][] lower = new double[n][n];
        for (int i = 0; i < n; i++) {
            for (int j = 0; j <= i; j++) {
                double sum = matrix[i][j];
                for (int k = 0; k < j; k++) {
                    sum -= lower[i][k] * lower[j][k];
                }
                if (i == j) {
                    if (!(sum > 1e-14 * matrix[i][i])) {
                        return new double[0][];
                    }
                    lower[i][i] = Math.sqrt(sum);
                } else {
                    lower[i][j] = sum / lower[j][j];
                }
            }
        }
        return lower;
    }
}
