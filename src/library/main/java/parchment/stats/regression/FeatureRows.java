package parchment.stats.regression;

import java.util.Arrays;
import java.util.List;
import java.util.stream.IntStream;
import parchment.stats.linear.CannotFitException;
import parchment.stats.linear.Checks;
import parchment.stats.linear.Vectors;

/** Complete rows of features and a response, features centred and scaled to a (population) standard deviation of 1. */
final class FeatureRows {
    final int[] rows;
    final double[] means;
    final double[] scales;
    final double[][] columns;
    final double[] response;
    final double responseMean;
    final int leftOut;

    private FeatureRows(
            int[] rows,
            double[] means,
            double[] scales,
            double[][] columns,
            double[] response,
            double responseMean,
            int leftOut) {
        this.rows = rows;
        this.means = means;
        this.scales = scales;
        this.columns = columns;
        this.response = response;
        this.responseMean = responseMean;
        this.leftOut = leftOut;
    }

    /** How columns are brought to a common size before a fit. */
    enum Scaling {
        CENTRED,
        STANDARDISED
    }

    static FeatureRows of(String job, List<String> names, List<double[]> features, double[] response, Scaling scaling) {
        Checks.sameLength(job, names.size(), "the features", features.size());
        for (int k = 0; k < names.size(); k++) {
            Checks.sameLength(job, response.length, "'" + names.get(k) + "'", features.get(k).length);
        }
        int[] rows = IntStream.range(0, response.length)
                .filter(i -> Double.isFinite(response[i]) && features.stream().allMatch(f -> Double.isFinite(f[i])))
                .toArray();
        if (rows.length < 3) {
            throw new CannotFitException(job + " needs at least 3 rows without missing numbers, but there are "
                    + rows.length + " of " + response.length + ".");
        }
        double[] means = new double[names.size()];
        double[] scales = new double[names.size()];
        double[][] columns = new double[names.size()][];
        for (int k = 0; k < columns.length; k++) {
            double[] column = Vectors.pick(features.get(k), rows);
            means[k] = Arrays.stream(column).average().orElse(Double.NaN);
            double size = 0;
            for (int i = 0; i < column.length; i++) {
                column[i] -= means[k];
                size += column[i] * column[i];
            }
            double deviation = Math.sqrt(size / column.length);
            // A column that does not vary stays at 0 and gets no weight.
            boolean varies = deviation > 1e-12 * Math.abs(means[k]);
            scales[k] = scaling == Scaling.STANDARDISED && varies ? deviation : 1;
            for (int i = 0; i < column.length; i++) {
                column[i] = varies ? column[i] / scales[k] : 0;
            }
            columns[k] = column;
        }
        double[] y = Vectors.pick(response, rows);
        double mean = Arrays.stream(y).average().orElse(Double.NaN);
        return new FeatureRows(
                rows,
                means,
                scales,
                columns,
                Arrays.stream(y).map(v -> v - mean).toArray(),
                mean,
                response.length - rows.length);
    }

    static List<double[]> pick(List<double[]> features, int[] rows) {
        return features.stream().map(f -> Vectors.pick(f, rows)).toList();
    }
}
