package parchment.stats.resample;

import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import org.hipparchus.special.Gamma;
import parchment.display.Showable;

/**
 * Asks of counts in groups, each divided into two kinds, whether the kinds fall unevenly on the groups: the share of all tables with the same sums that
 * are no more likely than this one.
 *
 * <p>All tables are gone through; nothing is approximated, so groups may be small or empty.
 *
 * @see <a href="https://archive.org/details/in.ernet.dli.2015.502684">Fisher 1935, The Design of Experiments, section 2</a>
 * @see <a href="https://doi.org/10.2307/2332822">Freeman and Halton 1951, Biometrika 38:141 (more than two groups)</a>
 */
public final class FisherExactTest implements Showable {
    /** Tables whose chances differ by less count as equally likely; R's fisher.test takes the same. */
    private static final double ROUNDING = 1e-7;

    private final List<Integer> first;
    private final List<Integer> second;
    private final double probability;

    private FisherExactTest(List<Integer> first, List<Integer> second, double probability) {
        this.first = first;
        this.second = second;
        this.probability = probability;
    }

    /**
     * Returns the test of a table with two rows.
     *
     * @param first counts of the first kind, one per group
     * @param second counts of the second kind, one per group
     * @throws IllegalArgumentException if there are fewer than two groups, or a count is negative
     */
    public static FisherExactTest of(List<Integer> first, List<Integer> second) {
        boolean negative =
                first.stream().anyMatch(n -> n < 0) || second.stream().anyMatch(n -> n < 0);
        if (first.size() < 2 || first.size() != second.size() || negative) {
            throw new IllegalArgumentException(
                    "Fisher's exact test needs two rows of counts, 0 or more, for two groups or more, but it was given "
                            + first + " and " + second + ".");
        }
        int groups = first.size();
        int[] sizes = new int[groups];
        Arrays.setAll(sizes, i -> first.get(i) + second.get(i));
        int taken = first.stream().mapToInt(Integer::intValue).sum();
        double observed = 0;
        for (int i = 0; i < groups; i++) {
            observed += logChoose(sizes[i], first.get(i));
        }
        double all = logChoose(Arrays.stream(sizes).sum(), taken);
        int[] after = new int[groups];
        for (int i = groups - 2; i >= 0; i--) {
            after[i] = after[i + 1] + sizes[i + 1];
        }
        double sum = added(sizes, after, 0, taken, 0, observed + ROUNDING, all);
        return new FisherExactTest(List.copyOf(first), List.copyOf(second), Math.min(1, sum));
    }

    /** Adds up the chances of all ways to fill the groups from one on that are no more likely than the table as a whole. */
    private static double added(int[] sizes, int[] after, int group, int left, double so, double most, double all) {
        if (group == sizes.length - 1) {
            double log = so + logChoose(sizes[group], left);
            return log <= most ? Math.exp(log - all) : 0;
        }
        double sum = 0;
        for (int n = Math.max(0, left - after[group]); n <= Math.min(sizes[group], left); n++) {
            sum += added(sizes, after, group + 1, left - n, so + logChoose(sizes[group], n), most, all);
        }
        return sum;
    }

    private static double logChoose(int n, int k) {
        return Gamma.logGamma(n + 1.0) - Gamma.logGamma(k + 1.0) - Gamma.logGamma(n - k + 1.0);
    }

    /** Returns the two-sided p-value. */
    public double probability() {
        return probability;
    }

    @Override
    public String toString() {
        return String.format(Locale.ROOT, "%s against %s: p %.3g by Fisher's exact test", first, second, probability);
    }
}
