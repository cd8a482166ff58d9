package parchment.evidence.finding;

import java.util.Locale;
import parchment.display.Showable;
import parchment.stats.Estimate;
import parchment.stats.Interval;

/**
 * One slope with its error, from which its interval and chance follow: points of score per unit of the measure, both as the library keeps
 * them.
 *
 * @param estimate points per unit
 * @param standardError in the same unit
 * @param degreesOfFreedom of the t distribution that the interval uses; 0 if there are none, then the interval is unbounded
 */
public record Slope(double estimate, double standardError, double degreesOfFreedom) implements Showable {
    /** Holds no slope: the model could not be fitted. */
    public static final Slope MISSING = new Slope(Double.NaN, Double.NaN, 0);

    /** Says whether there is a slope with an error at all. */
    public boolean known() {
        return Double.isFinite(estimate) && standardError > 0 && degreesOfFreedom >= 1;
    }

    /** Returns the interval of the given level, as in 0.90. */
    public Interval interval(double level) {
        if (!known()) {
            return new Interval(Double.NaN, Double.NaN, level);
        }
        return asEstimate().interval(level);
    }

    /** Returns the two-sided chance of a slope at least this far from 0 if there were none; 1 if the slope is not known. */
    public double chance() {
        return known() ? asEstimate().probability() : 1;
    }

    public Estimate asEstimate() {
        return new Estimate("slope", estimate, standardError, degreesOfFreedom);
    }

    /** Returns the slope over another step of the measure: both numbers times the step. */
    public Slope per(double step) {
        return new Slope(estimate * step, standardError * Math.abs(step), degreesOfFreedom);
    }

    @Override
    public String toString() {
        return known()
                ? String.format(
                        Locale.ROOT,
                        "%.4g points per unit, standard error %.3g on %.1f degrees of freedom",
                        estimate,
                        standardError,
                        degreesOfFreedom)
                : "no slope could be estimated";
    }
}
