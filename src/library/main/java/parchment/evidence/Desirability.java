package parchment.evidence;

import java.util.List;
import java.util.Locale;
import parchment.display.Showable;

/**
 * Turns a score into how welcome it is, from 0 (not at all) to 1 (fully).
 *
 * <pre>{@code
 * Desirability.target(4, 6, 8)
 * }</pre>
 *
 * @see <a href="https://doi.org/10.1080/00224065.1980.11980968">Derringer and Suich 1980, Journal of Quality Technology 12:214</a>
 */
public final class Desirability implements Showable {
    private final double low;
    private final double best;
    private final double high;
    private final double weight;

    private Desirability(double low, double best, double high, double weight) {
        this.low = low;
        this.best = best;
        this.high = high;
        this.weight = weight;
    }

    /**
     * The more the better: 0 up to the lower score, 1 from the upper one on.
     *
     * @throws IllegalArgumentException if the first is not below the second
     */
    public static Desirability larger(double unwelcome, double welcome) {
        ordered(unwelcome, welcome);
        return new Desirability(unwelcome, welcome, Double.POSITIVE_INFINITY, 1);
    }

    /**
     * The less the better: 1 up to the lower score, 0 from the upper one on.
     *
     * @throws IllegalArgumentException if the first is not below the second
     */
    public static Desirability smaller(double welcome, double unwelcome) {
        ordered(welcome, unwelcome);
        return new Desirability(Double.NEGATIVE_INFINITY, welcome, unwelcome, 1);
    }

    /**
     * Best at one score, 0 outside two others.
     *
     * @throws IllegalArgumentException if they do not rise
     */
    public static Desirability target(double low, double best, double high) {
        ordered(low, best);
        ordered(best, high);
        return new Desirability(low, best, high, 1);
    }

    /**
     * Returns the same with the course between 0 and 1 raised to a power: above 1 only the near-best is welcome, below 1 a little goes far.
     *
     * @throws IllegalArgumentException if it is not above 0
     */
    public Desirability withWeight(double power) {
        return new Desirability(low, best, high, EvidenceChecks.positive("The weight of a desirability", power));
    }

    private static void ordered(double first, double second) {
        if (!(first < second)) {
            throw new IllegalArgumentException(String.format(
                    Locale.ROOT,
                    "A desirability needs scores that rise, as in larger(5, 7) or target(4, 6, 8); it was given %s before %s.",
                    first,
                    second));
        }
    }

    /** Returns how welcome a score is; NaN if it is missing. */
    public double of(double score) {
        if (Double.isNaN(score)) {
            return Double.NaN;
        }
        double share = score <= best
                ? low == Double.NEGATIVE_INFINITY ? 1 : (score - low) / (best - low)
                : high == Double.POSITIVE_INFINITY ? 1 : (high - score) / (high - best);
        return Math.pow(Math.max(0, Math.min(1, share)), weight);
    }

    /** Returns the geometric mean: if one is not welcome at all, the whole is not. NaN for an empty list. */
    public static double overall(List<Double> each) {
        double product = 1;
        for (double one : each) {
            product *= one;
        }
        return each.isEmpty() ? Double.NaN : Math.pow(product, 1.0 / each.size());
    }

    @Override
    public String toString() {
        String course = high == Double.POSITIVE_INFINITY
                ? String.format(Locale.ROOT, "the more the better, from %.2f (not welcome) to %.2f (fully)", low, best)
                : low == Double.NEGATIVE_INFINITY
                        ? String.format(
                                Locale.ROOT, "the less the better, from %.2f (fully) to %.2f (not welcome)", best, high)
                        : String.format(
                                Locale.ROOT, "best at %.2f, not welcome under %.2f or over %.2f", best, low, high);
        return weight == 1 ? course : course + String.format(Locale.ROOT, ", weight %.2f", weight);
    }
}
