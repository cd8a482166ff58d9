package parchment.stats.linear;

import java.util.Arrays;
import java.util.stream.IntStream;

/** Measures how numbers go together. Pairs with a missing number are left out; NaN if fewer than 3 pairs or no variation is left. */
public final class Correlation {
    private Correlation() {}

    /** Returns Pearson's correlation. */
    public static double pearson(double[] x, double[] y) {
        Checks.sameLength("A correlation", x.length, "y", y.length);
        int[] rows = IntStream.range(0, x.length)
                .filter(i -> Double.isFinite(x[i]) && Double.isFinite(y[i]))
                .toArray();
        if (rows.length < 3) {
            return Double.NaN;
        }
        double[] a = centered(Vectors.pick(x, rows));
        double[] b = centered(Vectors.pick(y, rows));
        double size = Vectors.norm(a) * Vectors.norm(b);
        return size > 0 ? Math.max(-1, Math.min(1, Vectors.dot(a, b) / size)) : Double.NaN;
    }

    /** Returns Spearman's rank correlation; equal numbers get their mean rank. */
    public static double spearman(double[] x, double[] y) {
        Checks.sameLength("A correlation", x.length, "y", y.length);
        int[] rows = IntStream.range(0, x.length)
                .filter(i -> Double.isFinite(x[i]) && Double.isFinite(y[i]))
                .toArray();
        return pearson(ranks(Vectors.pick(x, rows)), ranks(Vectors.pick(y, rows)));
    }

    /** Returns ranks from 1, equal numbers at their mean rank. */
    public static double[] ranks(double[] values) {
        Integer[] order = IntStream.range(0, values.length).boxed().toArray(Integer[]::new);
        Arrays.sort(order, (a, b) -> Double.compare(values[a], values[b]));
        double[] ranks = new double[values.length];
        for (int i = 0; i < order.length; ) {
            int j = i;
            while (j + 1 < order.length && values[order[j + 1]] == values[order[i]]) {
                j++;
            }
            for (int k = i; k <= j; k++) {
                ranks[order[k]] = 1 + (i + j) / 2.0;
            }
            i = j + 1;
        }
        return ranks;
    }

    private static double[] centered(double[] values) {
        double mean = Arrays.stream(values).average().orElse(Double.NaN);
        return Arrays.stream(values).map(v -> v - mean).toArray();
    }
}
