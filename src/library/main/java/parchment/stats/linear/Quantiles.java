package parchment.stats.linear;

import org.hipparchus.distribution.continuous.FDistribution;
import org.hipparchus.distribution.continuous.NormalDistribution;
import org.hipparchus.distribution.continuous.TDistribution;

/** Looks up the distributions that intervals and tests need. */
public final class Quantiles {
    private static final double MANY = 1e7;

    private Quantiles() {}

    /** Returns the number of standard errors on either side of an interval of the given level. */
    public static double normalTwoSided(double level) {
        Checks.share("The level of an interval", level);
        return new NormalDistribution().inverseCumulativeProbability(0.5 + level / 2);
    }

    public static double tTwoSided(double level, double degreesOfFreedom) {
        Checks.share("The level of an interval", level);
        if (!(degreesOfFreedom > 0)) {
            return Double.NaN;
        }
        if (degreesOfFreedom > MANY) {
            return normalTwoSided(level);
        }
        return new TDistribution(degreesOfFreedom).inverseCumulativeProbability(0.5 + level / 2);
    }

    /** Returns the two-sided p-value of a t statistic. */
    public static double tProbability(double t, double degreesOfFreedom) {
        if (Double.isNaN(t) || !(degreesOfFreedom > 0)) {
            return Double.NaN;
        }
        double lower = degreesOfFreedom > MANY
                ? new NormalDistribution().cumulativeProbability(-Math.abs(t))
                : new TDistribution(degreesOfFreedom).cumulativeProbability(-Math.abs(t));
        return 2 * lower;
    }

    /** Returns the upper-tail p-value of an F statistic. */
    public static double fProbability(double f, double numerator, double denominator) {
        if (Double.isNaN(f) || !(numerator > 0) || !(denominator > 0)) {
            return Double.NaN;
        }
        // The lower tail of the reciprocal keeps small p-values exact.
        return f <= 0 ? 1 : new FDistribution(Math.min(denominator, MANY), numerator).cumulativeProbability(1 / f);
    }
}
