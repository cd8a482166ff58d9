package parchment.stats.resample;

import java.util.Arrays;
import java.util.Locale;
import java.util.function.Function;
import parchment.display.Progress;
import parchment.display.Showable;
import parchment.stats.linear.Checks;

/**
 * Compares statistics with what shuffled features give, one by one and against the largest of all (the luck line).
 *
 * <p>Large absolute values speak against chance. P-values count the observed order as one of the shuffles (Phipson and Smyth 2010,
 * Stat. Appl. Genet. Mol. Biol. 9:39); the adjusted ones are the single-step maximum method of Westfall and Young 1993.
 */
public final class PermutationTest implements Showable {
    private final double[] observed;
    private final double[] probabilities;
    private final double[] adjusted;
    private final double[] maxima;
    private final Permutation permutation;

    private PermutationTest(
            double[] observed, double[] probabilities, double[] adjusted, double[] maxima, Permutation permutation) {
        this.observed = observed;
        this.probabilities = probabilities;
        this.adjusted = adjusted;
        this.maxima = maxima;
        this.permutation = permutation;
    }

    /**
     * Runs the test.
     *
     * @param permutation how rows are shuffled
     * @param repeats number of shuffles, at least 1
     * @param statistics takes an order of the rows, returns one statistic per feature; NaN marks one that cannot be had
     */
    public static PermutationTest run(Permutation permutation, int repeats, Function<int[], double[]> statistics) {
        if (repeats < 1) {
            throw new IllegalArgumentException(
                    "A permutation test needs at least 1 shuffle, but was asked for " + repeats + ".");
        }
        int[] same = new int[permutation.rows()];
        Arrays.setAll(same, i -> i);
        double[] observed = statistics.apply(same).clone();
        int[] atLeast = new int[observed.length];
        int[] belowMaximum = new int[observed.length];
        double[] maxima = new double[repeats];
        try (Progress progress = Progress.of(repeats, "shuffling")) {
            for (int r = 0; r < repeats; r++) {
                double[] shuffled = statistics.apply(permutation.order(r));
                Checks.sameLength("A permutation test", observed.length, "the shuffled statistics", shuffled.length);
                double largest = 0;
                for (int k = 0; k < observed.length; k++) {
                    double size = Math.abs(shuffled[k]);
                    largest = Math.max(largest, Double.isNaN(size) ? 0 : size);
                    // Equal up to rounding counts as equal, else ties are decided by the order of summation.
                    atLeast[k] += size >= Math.abs(observed[k]) * (1 - 1e-10) ? 1 : 0;
                }
                maxima[r] = largest;
                for (int k = 0; k < observed.length; k++) {
                    belowMaximum[k] += largest >= Math.abs(observed[k]) * (1 - 1e-10) ? 1 : 0;
                }
                progress.step();
            }
        }
        double[] probabilities = new double[observed.length];
        double[] adjusted = new double[observed.length];
        for (int k = 0; k < observed.length; k++) {
            boolean missing = Double.isNaN(observed[k]);
            probabilities[k] = missing ? Double.NaN : (1.0 + atLeast[k]) / (1.0 + repeats);
            adjusted[k] = missing ? Double.NaN : (1.0 + belowMaximum[k]) / (1.0 + repeats);
        }
        Arrays.sort(maxima);
        return new PermutationTest(observed, probabilities, adjusted, maxima, permutation);
    }

    /** Returns the statistics in the order of the rows as they are. */
    public double[] observed() {
        return observed.clone();
    }

    /** Returns the share of shuffles that reach the statistic, each feature by itself. */
    public double probability(int feature) {
        return probabilities[feature];
    }

    /** Returns the share of shuffles in which any feature reaches the statistic: the price of having looked at all. */
    public double adjustedProbability(int feature) {
        return adjusted[feature];
    }

    /** Returns the absolute statistic that the best feature of a shuffle exceeds with the given chance, as in 0.05. */
    public double luckLine(double chance) {
        Checks.share("The chance of a luck line", chance);
        int rank = (int) Math.ceil((1 - chance) * (maxima.length + 1));
        return rank > maxima.length ? Double.POSITIVE_INFINITY : maxima[rank - 1];
    }

    public int repeats() {
        return maxima.length;
    }

    public Permutation permutation() {
        return permutation;
    }

    @Override
    public String toString() {
        double best =
                Arrays.stream(adjusted).filter(p -> !Double.isNaN(p)).min().orElse(Double.NaN);
        return String.format(
                Locale.ROOT,
                "%d statistics against %d shuffles (%s); smallest adjusted p-value %s",
                observed.length,
                maxima.length,
                permutation,
                Double.isNaN(best) ? "missing" : String.format(Locale.ROOT, "%.4g", best));
    }
}
