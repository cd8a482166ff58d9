package parchment.stats.series;

import java.util.List;
import parchment.stats.linear.CannotFitException;

/** Gives the squared error around the mean of any stretch of one or several series in constant time, from running sums. */
final class SegmentCost {
    private final double[][] counts;
    private final double[][] sums;
    private final double[][] squares;
    private final int length;

    private SegmentCost(double[][] counts, double[][] sums, double[][] squares, int length) {
        this.counts = counts;
        this.sums = sums;
        this.squares = squares;
        this.length = length;
    }

    static SegmentCost of(List<double[]> series) {
        if (series.isEmpty()) {
            throw new CannotFitException("A search for changes needs at least 1 series, but there is none.");
        }
        int n = series.get(0).length;
        int m = series.size();
        double[][] counts = new double[m][n + 1];
        double[][] sums = new double[m][n + 1];
        double[][] squares = new double[m][n + 1];
        for (int s = 0; s < m; s++) {
            double[] values = series.get(s);
            if (values.length != n) {
                throw new IllegalArgumentException("A search for changes needs series of one length, but series "
                        + (s + 1) + " has " + values.length + " values and the first has " + n + ".");
            }
            double middle = mean(values); // Without it the difference of large running sums would lose digits.
            for (int i = 0; i < n; i++) {
                boolean there = !Double.isNaN(values[i]);
                double x = there ? values[i] - middle : 0;
                counts[s][i + 1] = counts[s][i] + (there ? 1 : 0);
                sums[s][i + 1] = sums[s][i] + x;
                squares[s][i + 1] = squares[s][i] + x * x;
            }
        }
        return new SegmentCost(counts, sums, squares, n);
    }

    private static double mean(double[] values) {
        double sum = 0;
        int count = 0;
        for (double value : values) {
            if (!Double.isNaN(value)) {
                sum += value;
                count++;
            }
        }
        return count == 0 ? 0 : sum / count;
    }

    int length() {
        return length;
    }

    double observations() {
        double total = 0;
        for (double[] count : counts) {
            total += count[length];
        }
        return total;
    }

    /** Returns the squared error of the values from begin (inclusive) to end (exclusive), counted from 0. */
    double of(int begin, int end) {
        double total = 0;
        for (int s = 0; s < sums.length; s++) {
            double count = counts[s][end] - counts[s][begin];
            if (count > 0) {
                double sum = sums[s][end] - sums[s][begin];
                total += Math.max(0, squares[s][end] - squares[s][begin] - sum * sum / count);
            }
        }
        return total;
    }
}
