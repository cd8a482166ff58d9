package parchment.stats.ordinal;

import java.util.Arrays;
import java.util.Optional;
import java.util.stream.IntStream;
import parchment.stats.linear.QuasiNewton;
import parchment.stats.linear.SmallSolve;
import parchment.stats.linear.Vectors;

/**
 * Brings the estimates of an ordinal fit from its orthogonal columns to the columns as given, with their covariance: thresholds,
 * coefficients, standard deviations, in this order.
 *
 * <p>The covariance is the inverse of the second derivatives of minus the log likelihood; a standard deviation of zero, its lower bound,
 * counts as known.
 */
final class OrdinalCovariance {
    private final double[][] back;
    private final double[][] matrix;

    private OrdinalCovariance(double[][] back, double[][] matrix) {
        this.back = back;
        this.matrix = matrix;
    }

    static OrdinalCovariance of(OrdinalRows data, OrdinalLikelihood likelihood, double[] found) {
        int thresholds = data.categories.length - 1;
        int first = found.length - data.blocks.size();
        double[][] back = backTransform(data, found.length, thresholds, first);
        int[] free = IntStream.range(0, found.length)
                .filter(k -> k < first || found[k] > 0)
                .toArray();
        double[][] rows =
                Arrays.stream(back).map(row -> Vectors.pick(row, free)).toArray(double[][]::new);
        Optional<double[][]> inverse = QuasiNewton.hessian(likelihood, found)
                .flatMap(all -> SmallSolve.inverse(Arrays.stream(free)
                        .mapToObj(k -> Vectors.pick(all[k], free))
                        .toArray(double[][]::new)));
        double[][] matrix = new double[found.length][found.length];
        for (int i = 0; i < found.length; i++) {
            double[] row = rows[i];
            double[] times = inverse.map(known -> Vectors.times(known, row)).orElse(new double[0]);
            for (int j = 0; j < found.length; j++) {
                matrix[i][j] = inverse.isPresent() ? Vectors.dot(rows[j], times) : Double.NaN;
            }
        }
        return new OrdinalCovariance(back, matrix);
    }

    /** From the numbers of the orthogonal columns to the wanted ones, which are its rows. */
    private static double[][] backTransform(OrdinalRows data, int size, int thresholds, int first) {
        double[][] out = new double[size][size];
        for (int j = 0; j < size; j++) {
            out[j][j] = j < thresholds || j >= first ? 1 : 0;
        }
        for (int k = thresholds; k < first; k++) {
            double[] unit = new double[data.basis.size()];
            unit[k - thresholds + 1] = data.scale();
            double[] solved = data.basis.backSolve(unit);
            for (int j = 0; j < thresholds; j++) {
                out[j][k] = -solved[0];
            }
            for (int i = thresholds; i < first; i++) {
                out[i][k] = solved[i - thresholds + 1];
            }
        }
        return out;
    }

    double[] natural(double[] found) {
        return Vectors.times(back, found);
    }

    double[][] matrix() {
        return matrix;
    }

    double[] standardErrors() {
        double[] errors = new double[matrix.length];
        Arrays.setAll(errors, i -> Math.sqrt(matrix[i][i]));
        return errors;
    }
}
