package parchment.stats;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.concurrent.ForkJoinPool;
import java.util.stream.IntStream;
import java.util.stream.LongStream;
import parchment.display.Showable;
import smile.data.DataFrame;
import smile.data.formula.Formula;
import smile.data.vector.DoubleVector;
import smile.regression.RandomForest;

/**
 * Holds a random forest: the mean of many regression trees, each grown on resampled rows with a third of the features tried per split.
 *
 * <p>Needs no idea of the shape of an effect, and therefore many rows; what it predicts better than a smooth model on left-out groups is
 * worth looking for. It gives no slopes and no intervals. Nodes of five rows or fewer are not split. Grown by Smile (Li, Haifeng 2014).
 *
 * @see <a href="https://doi.org/10.1023/A:1010933404324">Breiman 2001, Machine Learning 45:5</a>
 */
public final class ForestModel implements Showable {
    private static final String RESPONSE = "response";
    private static final int LEAF = 5;
    private static final int DEEPEST = 30;

    private final List<String> names;
    private final RandomForest forest;
    private final double[] importance;
    private final int trees;
    private final int used;
    private final int leftOut;
    private final long seed;

    private ForestModel(
            List<String> names, RandomForest forest, double[] importance, int trees, int used, int leftOut, long seed) {
        this.names = names;
        this.forest = forest;
        this.importance = importance;
        this.trees = trees;
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
     * @throws IllegalArgumentException if fewer than 10 complete rows are left, or fewer than 1 tree or feature is given
     */
    public static ForestModel fit(
            List<String> names, List<double[]> features, double[] response, int trees, long seed) {
        FeatureRows data = FeatureRows.of("A forest", names, features, response, FeatureRows.Scaling.CENTRED);
        if (data.rows.length < 2 * LEAF || trees < 1 || names.isEmpty()) {
            throw new IllegalArgumentException("A forest needs at least " + 2 * LEAF
                    + " rows without missing numbers, 1 tree and 1 feature, but has " + data.rows.length + ", " + trees
                    + " and " + names.size() + ".");
        }
        DataFrame frame =
                frame(features, data.rows).merge(DoubleVector.of(RESPONSE, MixedDesign.pick(response, data.rows)));
        int tried = Math.max(1, names.size() / 3);
        int leaves = Math.max(2, data.rows.length / 2);
        // Smile draws from a generator per thread, which threads that help each other share between trees: on one
        // thread of its own the
        // same seed gives the same forest.
        ForkJoinPool alone = new ForkJoinPool(1);
        RandomForest forest;
        try {
            forest = alone.submit(() -> RandomForest.fit(
                            Formula.lhs(RESPONSE),
                            frame,
                            trees,
                            tried,
                            DEEPEST,
                            leaves,
                            LEAF,
                            1.0,
                            LongStream.range(0, trees).map(tree -> seed + 0x632BE59BD9B4E019L * tree)))
                    .join();
        } finally {
            alone.shutdown();
        }
        double[] gains = forest.importance();
        double total = Arrays.stream(gains).sum();
        double[] shares =
                Arrays.stream(gains).map(g -> total > 0 ? g / total : 0).toArray();
        return new ForestModel(List.copyOf(names), forest, shares, trees, data.rows.length, data.leftOut, seed);
    }

    /** Columns by number, so that names of features cannot collide with each other or with the response. */
    private static DataFrame frame(List<double[]> features, int[] rows) {
        DoubleVector[] columns = IntStream.range(0, features.size())
                .mapToObj(k -> DoubleVector.of("x" + k, MixedDesign.pick(features.get(k), rows)))
                .toArray(DoubleVector[]::new);
        return DataFrame.of(columns);
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
                    fit(names, FeatureRows.pick(features, train), MixedDesign.pick(response, train), trees, seed);
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
        int[] complete = IntStream.range(0, n)
                .filter(i -> features.stream().allMatch(f -> Double.isFinite(f[i])))
                .toArray();
        double[] out = new double[n];
        Arrays.fill(out, Double.NaN);
        if (complete.length > 0) {
            double[] blank = new double[complete.length];
            double[] predicted = forest.predict(frame(features, complete).merge(DoubleVector.of(RESPONSE, blank)));
            for (int i = 0; i < complete.length; i++) {
                out[complete[i]] = predicted[i];
            }
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
                trees,
                seed,
                used,
                leftOut,
                names.get(order.get(0)),
                100 * importance[order.get(0)]);
    }
}
