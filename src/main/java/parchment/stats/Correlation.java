package parchment.stats;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
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
        double[] a = centered(MixedDesign.pick(x, rows));
        double[] b = centered(MixedDesign.pick(y, rows));
        double size = FixedBasis.norm(a) * FixedBasis.norm(b);
        return size > 0 ? Math.max(-1, Math.min(1, FixedBasis.dot(a, b) / size)) : Double.NaN;
    }

    /** Returns Spearman's rank correlation; equal numbers get their mean rank. */
    public static double spearman(double[] x, double[] y) {
        Checks.sameLength("A correlation", x.length, "y", y.length);
        int[] rows = IntStream.range(0, x.length)
                .filter(i -> Double.isFinite(x[i]) && Double.isFinite(y[i]))
                .toArray();
        return pearson(ranks(MixedDesign.pick(x, rows)), ranks(MixedDesign.pick(y, rows)));
    }

    /** Returns ranks from 1, equal numbers at their mean rank. */
    static double[] ranks(double[] values) {
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

    /**
     * Returns for each column how many times larger its slope's variance is because other columns move with it: 1 / (1 - R^2) of the
     * column on the others, infinity if they determine it. Rows with a missing number are left out.
     *
     * @param columns columns of equal length
     */
    public static List<Double> varianceInflation(List<double[]> columns) {
        List<Double> factors = new ArrayList<>();
        for (int c = 0; c < columns.size(); c++) {
            MixedDesign design = MixedDesign.of("column", columns.get(c));
            for (int other = 0; other < columns.size(); other++) {
                design = other == c ? design : design.withCovariate("column " + (other + 1), columns.get(other));
            }
            LinearModel model = LinearModel.fit(design);
            double left = 1 - model.rSquared();
            factors.add(left > 1e-12 ? 1 / left : Double.POSITIVE_INFINITY);
        }
        return List.copyOf(factors);
    }

    /**
     * Returns the share of the variance that one random intercept holds (intraclass correlation); NaN if there is no variance at all. A
     * dropped term has share 0.
     */
    public static double varianceShare(LinearMixedModel model, String term) {
        double total = 0;
        double own = 0;
        for (VarianceComponent component : model.varianceComponents()) {
            if (!component.isCovariance()) {
                total += component.variance();
                own += component.term().equals(term) ? component.variance() : 0;
            }
        }
        return total > 0 ? own / total : Double.NaN;
    }
}
