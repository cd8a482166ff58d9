package parchment.stats;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import parchment.display.Showable;
import parchment.stats.linear.Checks;
import parchment.stats.linear.Quantiles;

/**
 * The values of a ratio of two estimates that the data do not rule out: all r for which "numerator - r times denominator is 0" is
 * not rejected by a t test.
 *
 * <p>If the denominator could be 0 the set has no end: everything outside a gap, or every number. That is an answer, not a failure,
 * and only with such sets counted does the stated level hold.
 *
 * @see <a href="https://doi.org/10.1111/j.2517-6161.1954.tb00159.x">Fieller 1954, J. R. Stat. Soc. B 16:175</a>
 */
public final class Fieller implements Showable {

    /** The three forms that the set can take. */
    public enum Form {
        /** All values between two ends. */
        BETWEEN,
        /** All values outside two ends: below the lower or above the upper. */
        OUTSIDE,
        /** Every value: the data say nothing of the ratio. */
        EVERYTHING
    }

    private final double ratio;
    private final Form form;
    private final double lower;
    private final double upper;
    private final double level;

    private Fieller(double ratio, Form form, double lower, double upper, double level) {
        this.ratio = ratio;
        this.form = form;
        this.lower = lower;
        this.upper = upper;
        this.level = level;
    }

    /**
     * Returns the set for numerator / denominator.
     *
     * @param numerator estimate above the line
     * @param denominator estimate below the line
     * @param numeratorVariance its squared standard error
     * @param covariance covariance of the two estimates
     * @param denominatorVariance squared standard error of the denominator
     * @param degreesOfFreedom of the standard errors, infinity if they are known
     * @param level as in 0.90
     * @throws IllegalArgumentException if a number is missing, a variance negative, or the covariance impossible
     */
    public static Fieller of(
            double numerator,
            double denominator,
            double numeratorVariance,
            double covariance,
            double denominatorVariance,
            double degreesOfFreedom,
            double level) {
        double slack = 1e-9 * numeratorVariance * denominatorVariance;
        if (!Double.isFinite(numerator)
                || !Double.isFinite(denominator)
                || !(numeratorVariance >= 0)
                || !(denominatorVariance >= 0)
                || !(covariance * covariance <= numeratorVariance * denominatorVariance + slack)) {
            throw new IllegalArgumentException(String.format(
                    Locale.ROOT,
                    "The set for a ratio needs two estimates with a possible covariance matrix, but it was given %s and %s with variances %s, %s "
                            + "and covariance %s.",
                    Checks.number(numerator),
                    Checks.number(denominator),
                    Checks.number(numeratorVariance),
                    Checks.number(denominatorVariance),
                    Checks.number(covariance)));
        }
        double t = Quantiles.tTwoSided(level, degreesOfFreedom);
        if (Double.isNaN(t)) {
            throw new IllegalArgumentException("The set for a ratio needs degrees of freedom above 0, but they are "
                    + Checks.number(degreesOfFreedom) + ".");
        }
        double t2 = t * t;
        double a = denominator * denominator - t2 * denominatorVariance;
        double b = numerator * denominator - t2 * covariance;
        double c = numerator * numerator - t2 * numeratorVariance;
        double discriminant = b * b - a * c;
        double ratio = numerator / denominator;
        if (a > 0) {
            double root = Math.sqrt(Math.max(0, discriminant));
            return new Fieller(ratio, Form.BETWEEN, (b - root) / a, (b + root) / a, level);
        }
        if (a < 0 && discriminant > 0) {
            double root = Math.sqrt(discriminant);
            return new Fieller(ratio, Form.OUTSIDE, (b + root) / a, (b - root) / a, level);
        }
        if (a == 0 && b != 0) {
            // One end has gone to infinity: the set is a half line.
            double end = c / (2 * b);
            return b > 0
                    ? new Fieller(ratio, Form.BETWEEN, end, Double.POSITIVE_INFINITY, level)
                    : new Fieller(ratio, Form.BETWEEN, Double.NEGATIVE_INFINITY, end, level);
        }
        return new Fieller(ratio, Form.EVERYTHING, Double.NEGATIVE_INFINITY, Double.POSITIVE_INFINITY, level);
    }

    /** Returns the plain ratio of the estimates. */
    public double ratio() {
        return ratio;
    }

    public Form form() {
        return form;
    }

    /** Returns the lower end (of the gap, if the set lies outside). */
    public double lower() {
        return lower;
    }

    /** Returns the upper end (of the gap, if the set lies outside). */
    public double upper() {
        return upper;
    }

    public double level() {
        return level;
    }

    /** Says whether a value is in the set. */
    public boolean contains(double value) {
        return switch (form) {
            case BETWEEN -> value >= lower && value <= upper;
            case OUTSIDE -> value <= lower || value >= upper;
            case EVERYTHING -> true;
        };
    }

    /** Returns the parts of the set that lie within a range, in order; none, one or two. */
    public List<Interval> within(double low, double high) {
        List<Interval> parts = new ArrayList<>();
        switch (form) {
            case BETWEEN -> add(parts, Math.max(low, lower), Math.min(high, upper));
            case OUTSIDE -> {
                add(parts, low, Math.min(high, lower));
                add(parts, Math.max(low, upper), high);
            }
            case EVERYTHING -> add(parts, low, high);
        }
        return List.copyOf(parts);
    }

    private void add(List<Interval> parts, double low, double high) {
        if (low <= high) {
            parts.add(new Interval(low, high, level));
        }
    }

    /** Returns the same set on a scale that is moved by a constant, as when x was measured from a center. */
    public Fieller shifted(double by) {
        return new Fieller(ratio + by, form, lower + by, upper + by, level);
    }

    @Override
    public String toString() {
        String share = String.format(Locale.ROOT, "%.0f %%", 100 * level);
        return switch (form) {
            case BETWEEN ->
                Double.isInfinite(lower) || Double.isInfinite(upper)
                        ? String.format(
                                Locale.ROOT,
                                Double.isInfinite(lower) ? "at most %.4g (%s)" : "at least %.4g (%s)",
                                Double.isInfinite(lower) ? upper : lower,
                                share)
                        : String.format(Locale.ROOT, "between %.4g and %.4g (%s)", lower, upper, share);
            case OUTSIDE ->
                String.format(Locale.ROOT, "below %.4g or above %.4g (%s): no end on either side", lower, upper, share);
            case EVERYTHING -> "anywhere (" + share + "): the data rule nothing out";
        };
    }
}
