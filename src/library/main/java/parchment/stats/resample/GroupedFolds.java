package parchment.stats.resample;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.SplittableRandom;
import java.util.TreeMap;
import java.util.function.BiFunction;
import parchment.display.Showable;
import parchment.stats.linear.CannotFitException;
import parchment.stats.linear.Checks;
import parchment.stats.mixed.MixedDesign;
import parchment.stats.mixed.Prediction;

/**
 * Splits rows for cross-validation so that a group is left out as a whole, never row by row.
 *
 * <p>Rows of one day share their weather, machine and cuppers; with a part of a day in hand the rest is easy to guess, and a gain
 * measured that way is false (Roberts et al. 2017, Ecography 40:913). Rows without a group are in no part.
 */
public final class GroupedFolds implements Showable {

    /** One split: rows to learn from, rows to be tested on, the groups that were left out. Row numbers count from 0. */
    public static final class Fold {
        private final int[] train;
        private final int[] test;
        private final List<String> groups;

        private Fold(int[] train, int[] test, List<String> groups) {
            this.train = train;
            this.test = test;
            this.groups = groups;
        }

        public int[] train() {
            return train.clone();
        }

        public int[] test() {
            return test.clone();
        }

        public List<String> groups() {
            return groups;
        }

        @Override
        public String toString() {
            return test.length + " rows of " + String.join(", ", groups) + " left out, " + train.length
                    + " rows to learn from";
        }
    }

    private final List<Fold> folds;
    private final int rows;
    private final int leftOut;

    private GroupedFolds(List<Fold> folds, int rows, int leftOut) {
        this.folds = folds;
        this.rows = rows;
        this.leftOut = leftOut;
    }

    /**
     * Leaves out one group at a time.
     *
     * @param groups group of each row, empty if not known
     * @throws CannotFitException if there are fewer than two groups
     */
    public static GroupedFolds leaveOneOut(List<String> groups) {
        Map<String, Integer> partOf = new LinkedHashMap<>();
        for (String group : groups) {
            if (!group.isEmpty()) {
                partOf.putIfAbsent(group, partOf.size());
            }
        }
        return of(groups, partOf, partOf.size());
    }

    /**
     * Leaves out several groups at a time: groups are shuffled, then dealt to the part with the fewest rows so far.
     *
     * @param parts how many parts, from 2 to the number of groups (more are cut to it)
     * @param seed of the shuffle
     * @throws IllegalArgumentException if fewer than two parts are asked for
     * @throws CannotFitException if there are fewer than two groups
     */
    public static GroupedFolds of(List<String> groups, int parts, long seed) {
        if (parts < 2) {
            throw new IllegalArgumentException(
                    "Cross-validation needs at least 2 parts, but was asked for " + parts + ".");
        }
        Map<String, Integer> sizes = new TreeMap<>();
        for (String group : groups) {
            if (!group.isEmpty()) {
                sizes.merge(group, 1, Integer::sum);
            }
        }
        List<String> order = new ArrayList<>(sizes.keySet());
        SplittableRandom random = new SplittableRandom(seed);
        for (int i = order.size() - 1; i > 0; i--) {
            int j = random.nextInt(i + 1);
            String held = order.get(i);
            order.set(i, order.get(j));
            order.set(j, held);
        }
        int used = Math.min(parts, order.size());
        int[] filled = new int[Math.max(1, used)];
        Map<String, Integer> partOf = new LinkedHashMap<>();
        for (String group : order) {
            int best = 0;
            for (int k = 1; k < used; k++) {
                best = filled[k] < filled[best] ? k : best;
            }
            partOf.put(group, best);
            filled[best] += sizes.getOrDefault(group, 0);
        }
        return of(groups, partOf, used);
    }

    private static GroupedFolds of(List<String> groups, Map<String, Integer> partOf, int parts) {
        if (parts < 2) {
            throw new CannotFitException("Leaving out groups needs at least 2 of them, but there "
                    + (parts == 1
                            ? "is only one: '" + partOf.keySet().iterator().next() + "'."
                            : "is none."));
        }
        int[] part = groups.stream().mapToInt(g -> partOf.getOrDefault(g, -1)).toArray();
        List<Fold> folds = new ArrayList<>();
        for (int k = 0; k < parts; k++) {
            int[] test = new int[part.length];
            int[] train = new int[part.length];
            int tests = 0;
            int trains = 0;
            for (int i = 0; i < part.length; i++) {
                if (part[i] == k) {
                    test[tests++] = i;
                } else if (part[i] >= 0) {
                    train[trains++] = i;
                }
            }
            int number = k;
            folds.add(new Fold(
                    Arrays.copyOf(train, trains),
                    Arrays.copyOf(test, tests),
                    partOf.entrySet().stream()
                            .filter(e -> e.getValue() == number)
                            .map(Map.Entry::getKey)
                            .toList()));
        }
        return new GroupedFolds(List.copyOf(folds), groups.size(), (int)
                Arrays.stream(part).filter(p -> p < 0).count());
    }

    public List<Fold> folds() {
        return folds;
    }

    /**
     * Predicts every row from the rows of other groups.
     *
     * @param predictor takes the rows to learn from and the rows to predict, returns one prediction per row to predict
     * @return one prediction per row; NaN for rows without a group
     */
    public double[] predict(BiFunction<int[], int[], double[]> predictor) {
        double[] out = new double[rows];
        Arrays.fill(out, Double.NaN);
        for (Fold fold : folds) {
            double[] predicted = predictor.apply(fold.train(), fold.test());
            Checks.sameLength("Cross-validation", fold.test.length, "the prediction", predicted.length);
            for (int i = 0; i < predicted.length; i++) {
                out[fold.test[i]] = predicted[i];
            }
        }
        return out;
    }

    /** Predicts every row of a mixed design from the rows of other groups. */
    public double[] predict(MixedDesign design, Prediction kind) {
        Checks.sameLength("Cross-validation", rows, "the design", design.rows());
        return predict((train, test) -> design.withRows(train).fit().predict(design.withRows(test), kind));
    }

    @Override
    public String toString() {
        return folds.size() + " parts of " + (rows - leftOut) + " rows, whole groups left out together; " + leftOut
                + " rows without a group";
    }
}
