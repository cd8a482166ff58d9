package parchment.stats.regression;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.SplittableRandom;
import java.util.stream.IntStream;
import parchment.display.Showable;
import parchment.stats.CannotFitException;
import parchment.stats.linear.Checks;
import parchment.stats.linear.Vectors;
import parchment.stats.resample.GroupedFolds;

/**
 * Holds a random forest: the mean of many regression trees, each grown on resampled rows with a third of the features tried per split.
 *
 * <p>Needs no idea of the shape of an effect, and therefore many rows; what it predicts better than a smooth model on left-out groups is
 * worth looking for. It gives no slopes and no intervals. Nodes of five rows or fewer are not split.
 *
 * @see <a href="https://doi.org/10.1023/A:1010933404324">Breiman 2001, Machine Learning 45:5</a>
 */
public final class ForestModel implements Showable {
    private static final int LEAF = 5;

    private final List<String> names;
    private final List<RegressionTree> forest;
    private final double[] importance;
    private final int used;
    private final int leftOut;
    private final long seed;

    private ForestModel(
            List<String> names, List<RegressionTree> forest, double[] importance, int used, int leftOut, long seed) {
        this.names = names;
        this.forest = forest;
        this.importance = importance;
        this.used = used;
        this.leftOut = leftOut;
        this.seed = seed;
    }

    /**
     * Grows a forest.
     *
     * @param features one column per name; rows with a missing number are left out
     * @param trees number of trees, as in 200
     * @param seed the same seed and rows give the same forest
     * @throws CannotFitException if fewer than 10 complete rows are left
     * @throws IllegalArgumentException if fewer than 1 tree or feature is given
     */
    public static ForestModel fit(
            List<String> names, List<double[]> features, double[] response, int trees, long seed) {
        FeatureRows data = FeatureRows.of("A forest", names, features, response, FeatureRows.Scaling.CENTRED);
        if (trees < 1 || names.isEmpty()) {
            throw new IllegalArgumentException(
                    "A forest needs at least 1 tree and 1 feature, but has " + trees + " and " + names.size() + ".");
        }
        if (data.rows.length < 2 * LEAF) {
            throw new CannotFitException("A forest needs at least " + 2 * LEAF
                    + " rows without missing numbers, but there are " + data.rows.length + ".");
        }
        double[][] columns = FeatureRows.pick(features, data.rows).toArray(double[][]::new);
        double[] y = Vectors.pick(response, data.rows);
        int[][] ranks = RegressionTree.ranks(columns);
        int tried = Math.max(1, names.size() / 3);
        // Each tree has a generator of its own, so that the order in which threads grow them does not matter.
        List<RegressionTree> forest = IntStream.range(0, trees)
                .parallel()
                .mapToObj(tree -> RegressionTree.grow(
                        columns,
                        ranks,
                        y,
                        tried,
                        LEAF,
                        new SplittableRandom(new SplittableRandom(seed + 0x632BE59BD9B4E019L * tree).nextLong())))
                .toList();
        double[] gains = new double[names.size()];
        for (RegressionTree tree : forest) {
            for (int k = 0; k < gains.length; k++) {
                gains[k] += tree.gains[k];
            }
        }
        double total = Arrays.stream(gains).sum();
        double[] shares =
                Arrays.stream(gains).map(g -> total > 0 ? g / total : 0).toArray();
        return new ForestModel(List.copyOf(names), forest, shares, data.rows.length, data.leftOut, seed);
    }

    /**
     * Measures the error on left-out groups: setting 0 is the plain mean, the other the forest.
     *
     * @param folds parts of whole groups (days, cuppings)
     */
    public static HeldOutErrors heldOut(
            List<String> names, List<double[]> features, double[] response, int trees, GroupedFolds folds, long seed) {
        return HeldOutErrors.of("trees", new double[] {0, trees}, response, folds, (train, test) -> {
            ForestModel forest =
                    fit(names, FeatureRows.pick(features, train), Vectors.pick(response, train), trees, seed);
            double mean = Arrays.stream(train)
                    .mapToDouble(row -> response[row])
                    .filter(Double::isFinite)
                    .average()
                    .orElse(Double.NaN);
            double[] plain = new double[test.length];
            double[] grown = forest.predict(FeatureRows.pick(features, test));
            for (int i = 0; i < plain.length; i++) {
                plain[i] = Double.isNaN(grown[i]) ? Double.NaN : mean;
            }
            return List.of(plain, grown);
        });
    }

    /** Predicts rows from their features, one column per name; NaN where a feature is missing. */
    public double[] predict(List<double[]> features) {
        Checks.sameLength("A prediction", names.size(), "the features", features.size());
        int n = features.get(0).length;
        double[] out = new double[n];
        for (int i = 0; i < n; i++) {
            double[] row = new double[names.size()];
            double sum = 0;
            for (int k = 0; k < row.length; k++) {
                row[k] = features.get(k)[i];
                sum = Double.isFinite(row[k]) ? sum : Double.NaN;
            }
            for (int tree = 0; tree < forest.size() && !Double.isNaN(sum); tree++) {
                sum += forest.get(tree).predict(row);
            }
            out[i] = sum / forest.size();
        }
        return out;
    }

    /**
     * Returns each feature's share of all the variation that the splits took away, in the order of the features. Features that move together
     * share it at random.
     */
    public List<Double> importance() {
        return Arrays.stream(importance).boxed().toList();
    }

    public int used() {
        return used;
    }

    public int leftOut() {
        return leftOut;
    }

    @Override
    public String toString() {
        List<Integer> order =
                new ArrayList<>(IntStream.range(0, names.size()).boxed().toList());
        order.sort((a, b) -> Double.compare(importance[b], importance[a]));
        return String.format(
                Locale.ROOT,
                "forest of %d trees (seed %d): %d rows used, %d left out; most used %s (%.0f %% of the gain)",
                forest.size(),
                seed,
                used,
                leftOut,
                names.get(order.get(0)),
                100 * importance[order.get(0)]);
    }
}
