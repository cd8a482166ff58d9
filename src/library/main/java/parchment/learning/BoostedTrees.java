package parchment.learning;

import java.util.Arrays;
import smile.base.cart.Loss;
import smile.data.DataFrame;
import smile.data.formula.Formula;
import smile.regression.GradientTreeBoost;

/**
 * Foretells by boosted regression trees (Friedman 2001, Ann. Statist. 29:1189): each small tree is grown on what those before it left, and
 * counts for a twentieth.
 *
 * <p>They know steps, and features that only count together, without being told; they know nothing of slopes.
 */
final class BoostedTrees {
    /** Trees of at most 4 leaves: up to three features count together. */
    private static final int DEPTH = 3;

    private static final int LEAVES = 4;
    private static final int SMALLEST_LEAF = 5;
    private static final int TREES = 150;
    private static final double SHRINKAGE = 0.05;
    /** Share of the rows that each tree is grown on; Friedman 2002 found about a half to do best. */
    private static final double SHARE = 0.6;

    private final GradientTreeBoost trees;
    private final int features;

    private BoostedTrees(GradientTreeBoost trees, int features) {
        this.trees = trees;
        this.features = features;
    }

    /**
     * Grows trees.
     *
     * @param rows one row of features per row of the response, nothing missing
     */
    static BoostedTrees fit(double[][] rows, double[] response, long seed) {
        double[][] both = new double[rows.length][];
        for (int i = 0; i < rows.length; i++) {
            both[i] = Arrays.copyOf(rows[i], rows[i].length + 1);
            both[i][rows[i].length] = response[i];
        }
        int features = rows[0].length;
        DataFrame frame = DataFrame.of(both, names(features, "response"));
        GradientTreeBoost grown = SeededRun.of(
                seed,
                () -> GradientTreeBoost.fit(
                        Formula.lhs("response"),
                        frame,
                        Loss.ls(),
                        TREES,
                        DEPTH,
                        LEAVES,
                        SMALLEST_LEAF,
                        SHRINKAGE,
                        SHARE));
        return new BoostedTrees(grown, features);
    }

    private static String[] names(int features, String response) {
        String[] names = new String[features + 1];
        Arrays.setAll(names, k -> k < features ? "feature " + k : response);
        return names;
    }

    /** Returns the prediction of each row. */
    double[] predict(double[][] rows) {
        DataFrame frame = frame(rows);
        double[] out = new double[rows.length];
        Arrays.setAll(out, i -> trees.predict(frame.get(i)));
        return out;
    }

    /**
     * Returns how much each feature moves the prediction of each row away from that of the average row: SHAP values (Lundberg and Lee
     * 2017): the prediction of a row less the sum of its values is the same number for every row.
     */
    double[][] shares(double[][] rows) {
        DataFrame frame = frame(rows);
        double[][] out = new double[rows.length][];
        for (int i = 0; i < rows.length; i++) {
            // Smile gives the mean over the trees, of which each counts for the shrinkage in the sum that is predicted.
            out[i] = Arrays.stream(trees.shap(frame.get(i)))
                    .map(share -> share * TREES * SHRINKAGE)
                    .toArray();
        }
        return out;
    }

    private DataFrame frame(double[][] rows) {
        double[][] both = new double[rows.length][];
        Arrays.setAll(both, i -> Arrays.copyOf(rows[i], features + 1));
        return DataFrame.of(both, names(features, "response"));
    }
}
