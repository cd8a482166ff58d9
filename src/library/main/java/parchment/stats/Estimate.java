package parchment.stats;

import java.util.Locale;
import parchment.display.Showable;
import parchment.stats.linear.Checks;
import parchment.stats.linear.Quantiles;

/**
 * An estimated number with its standard error and the degrees of freedom behind that error, so that an interval or a test can always be
 * made of it.
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

    /**
     * Returns the p-value of "the true value is at least the margin away from 0", by two one-sided tests: small where every difference that
     * matters can be ruled out. At most 0.05 exactly where the 90 % interval lies inside the margin.
     *
     * @param margin the smallest difference that matters, above 0, in units of the estimate
     * @see <a href="https://doi.org/10.1007/BF01068419">Schuirmann 1987, J. Pharmacokinet. Biopharm. 15:657</a>
     */
    public double equivalenceProbability(double margin) {
        Checks.positive("The smallest difference that matters", margin);
        double nearer = (margin - Math.abs(estimate)) / standardError;
        double half = 0.5 * Quantiles.tProbability(nearer, degreesOfFreedom);
        return nearer >= 0 ? half : 1 - half;
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
