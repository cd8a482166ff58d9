package parchment.stats;

import java.util.Locale;
import parchment.display.Showable;

/**
 * Holds an estimated number with its standard error and the degrees of freedom behind that error.
 *
 * @param name what was estimated
 * @param estimate the estimate, NaN if it could not be estimated
 * @param standardError its standard error
 * @param degreesOfFreedom degrees of freedom of the standard error (Satterthwaite's in a mixed model), infinity if it is known
 */
public record Estimate(String name, double estimate, double standardError, double degreesOfFreedom)
        implements Showable {

    /** Returns the estimate divided by its standard error. */
    public double t() {
        return estimate / standardError;
    }

    /** Returns the two-sided p-value of "the true value is 0". */
    public double probability() {
        return Quantiles.tProbability(t(), degreesOfFreedom);
    }

    /** Returns the interval of the given level, as in 0.90. */
    public Interval interval(double level) {
        double half = Quantiles.tTwoSided(level, degreesOfFreedom) * standardError;
        return new Interval(estimate - half, estimate + half, level);
    }

    @Override
    public String toString() {
        if (Double.isNaN(estimate)) {
            return name + ": cannot be estimated";
        }
        if (Double.isInfinite(degreesOfFreedom)) {
            return String.format(Locale.ROOT, "%s %.4g, standard error %.3g", name, estimate, standardError);
        }
        return String.format(
                Locale.ROOT,
                "%s %.4g, standard error %.3g with %.1f degrees of freedom",
                name,
                estimate,
                standardError,
                degreesOfFreedom);
    }
}
