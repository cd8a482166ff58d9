package parchment.stats;

import java.util.Arrays;
import java.util.stream.IntStream;

/**
 * Adjusts p-values for the number of looks taken. A missing p-value stays missing and is not counted as a look.
 *
 * <p>{@link #holm} bounds the chance of any false finding, whatever the tests' links; {@link #benjaminiHochberg} bounds the expected share
 * of false ones among the findings, for tests that are independent or positively linked. Where rows can be shuffled,
 * {@link PermutationTest#adjustedProbability} is sharper than both, for it knows the links.
 */
public final class Multiplicity {
    private Multiplicity() {}

    /** Returns each p-value times the number of looks, at most 1. */
    public static double[] bonferroni(double[] probabilities) {
        int looks = order(probabilities).length;
        return Arrays.stream(probabilities).map(p -> Math.min(1, looks * p)).toArray();
    }

    /**
     * Returns the step-down p-values.
     *
     * @throws IllegalArgumentException if a number is not a probability
     * @see <a href="https://www.jstor.org/stable/4615733">Holm 1979, Scand. J. Stat. 6:65</a>
     */
    public static double[] holm(double[] probabilities) {
        int[] order = order(probabilities);
        double[] out = missing(probabilities.length);
        double largest = 0;
        for (int k = 0; k < order.length; k++) {
            largest = Math.max(largest, Math.min(1, (order.length - k) * probabilities[order[k]]));
            out[order[k]] = largest;
        }
        return out;
    }

    /**
     * Returns the step-up p-values: calling those at most q findings keeps the expected share of false findings at most q.
     *
     * @throws IllegalArgumentException if a number is not a probability
     * @see <a href="https://doi.org/10.1111/j.2517-6161.1995.tb02031.x">Benjamini and Hochberg 1995, J. R. Stat. Soc. B 57:289</a>
     */
    public static double[] benjaminiHochberg(double[] probabilities) {
        int[] order = order(probabilities);
        double[] out = missing(probabilities.length);
        double smallest = 1;
        for (int k = order.length - 1; k >= 0; k--) {
            smallest = Math.min(smallest, probabilities[order[k]] * order.length / (k + 1));
            out[order[k]] = smallest;
        }
        return out;
    }

    private static int[] order(double[] probabilities) {
        for (double p : probabilities) {
            if (p < 0 || p > 1) {
                throw new IllegalArgumentException(
                        "A p-value must lie between 0 and 1, but one is " + Checks.number(p) + ".");
            }
        }
        return IntStream.range(0, probabilities.length)
                .filter(i -> !Double.isNaN(probabilities[i]))
                .boxed()
                .sorted((i, j) -> Double.compare(probabilities[i], probabilities[j]))
                .mapToInt(Integer::intValue)
                .toArray();
    }

    private static double[] missing(int length) {
        double[] out = new double[length];
        Arrays.fill(out, Double.NaN);
        return out;
    }
}
