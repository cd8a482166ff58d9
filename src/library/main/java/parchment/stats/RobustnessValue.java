package parchment.stats;

import java.util.Locale;
import parchment.display.Showable;
import parchment.stats.linear.CannotFitException;
import parchment.stats.linear.Checks;
import parchment.stats.linear.Quantiles;

/**
 * Measures how strong a cause that nobody wrote down would have to be to explain an estimated slope away.
 *
 * <p>Strength is the share of the remaining variation that the hidden cause explains, both of the feature and of the score.
 *
 * @see <a href="https://doi.org/10.1111/rssb.12348">Cinelli and Hazlett 2020, J. R. Stat. Soc. B 82:39, section 4</a>
 */
public final class RobustnessValue implements Showable {
    private final Estimate estimate;

    private RobustnessValue(Estimate estimate) {
        this.estimate = estimate;
    }

    /**
     * Looks at an estimate.
     *
     * @throws CannotFitException if it is missing or its degrees of freedom are not finite and above 1
     */
    public static RobustnessValue of(Estimate estimate) {
        if (Double.isNaN(estimate.t())
                || !(estimate.degreesOfFreedom() > 1)
                || Double.isInfinite(estimate.degreesOfFreedom())) {
            throw new CannotFitException(
                    "How strong a hidden cause must be can be said of an estimate with a standard error and more than "
                            + "1 degree of freedom, but '" + estimate.name() + "' has "
                            + Checks.number(estimate.degreesOfFreedom()) + ".");
        }
        return new RobustnessValue(estimate);
    }

    /** Returns the share of the score's remaining variation that the feature explains, 0 to 1. */
    public double partialRSquared() {
        double t2 = estimate.t() * estimate.t();
        return t2 / (t2 + estimate.degreesOfFreedom());
    }

    /** Returns the robustness value: a hidden cause this strong on both sides would bring the estimate to 0. */
    public double robustness() {
        return robustness(Math.abs(estimate.t()) / Math.sqrt(estimate.degreesOfFreedom()));
    }

    /**
     * Returns the strength that would bring the estimate's interval to touch 0; 0 if it does already.
     *
     * @param level of the interval, as in 0.95
     */
    public double robustnessOfInterval(double level) {
        double df = estimate.degreesOfFreedom();
        double critical = Quantiles.tTwoSided(level, df - 1) / Math.sqrt(df - 1);
        return robustness(Math.max(0, Math.abs(estimate.t()) / Math.sqrt(df) - critical));
    }

    private static double robustness(double f) {
        double f2 = f * f;
        return 0.5 * (Math.sqrt(f2 * f2 + 4 * f2) - f2);
    }

    @Override
    public String toString() {
        return String.format(
                Locale.ROOT,
                "a hidden cause that explains %.1f %% of what is left of both feature and score would explain '%s' away",
                100 * robustness(),
                estimate.name());
    }
}
