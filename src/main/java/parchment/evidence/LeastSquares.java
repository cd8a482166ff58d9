package parchment.evidence;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/** Takes columns out of a list of numbers by least squares (modified Gram-Schmidt, done twice; a mean is always taken out). */
final class LeastSquares {
    /** A column is taken as determined by the earlier ones if this share of its length or less is left. */
    private static final double DETERMINED = 1e-7;

    private final List<double[]> directions = new ArrayList<>();

    private LeastSquares() {}

    /** Prepares to take out a mean and the given columns; columns that the earlier ones determine are passed over. */
    static LeastSquares on(List<double[]> columns, int rows) {
        LeastSquares squares = new LeastSquares();
        double[] ones = new double[rows];
        Arrays.fill(ones, 1);
        squares.add(ones);
        columns.forEach(squares::add);
        return squares;
    }

    private void add(double[] column) {
        double before = length(column);
        double[] rest = rest(rest(column));
        double after = length(rest);
        if (after > DETERMINED * before) {
            for (int i = 0; i < rest.length; i++) {
                rest[i] /= after;
            }
            directions.add(rest);
        }
    }

    /** Returns what is left of the values. */
    double[] rest(double[] values) {
        double[] rest = values.clone();
        for (double[] direction : directions) {
            double dot = 0;
            for (int i = 0; i < rest.length; i++) {
                dot += direction[i] * rest[i];
            }
            for (int i = 0; i < rest.length; i++) {
                rest[i] -= dot * direction[i];
            }
        }
        return rest;
    }

    /** Returns how many columns are taken out, the mean included. */
    int rank() {
        return directions.size();
    }

    /**
     * Returns the share of the values' variance that the columns explain, corrected for their number (adjusted R squared); never
     * below 0, NaN if the values do not vary or there are too few.
     */
    double explained(double[] values) {
        double mean = Arrays.stream(values).average().orElse(Double.NaN);
        double all = 0;
        for (double value : values) {
            all += (value - mean) * (value - mean);
        }
        double left = length(rest(values));
        int degrees = values.length - rank();
        if (!(all > 0) || degrees < 1) {
            return Double.NaN;
        }
        return Math.max(0, 1 - left * left / degrees / (all / (values.length - 1)));
    }

    private static double length(double[] values) {
        double sum = 0;
        for (double value : values) {
            sum += value * value;
        }
        return Math.sqrt(sum);
    }
}
