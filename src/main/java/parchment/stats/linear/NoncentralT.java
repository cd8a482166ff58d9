package parchment.stats.linear;

import org.hipparchus.distribution.continuous.NormalDistribution;
import org.hipparchus.special.Beta;
import org.hipparchus.special.Gamma;

/**
 * Looks up the distribution of a t statistic whose true value is not zero: a normal number with that mean over an estimated standard error.
 *
 * <p>Right to 1e-10 for noncentralities up to 37 in size; beyond, a probability that far out is 0 or 1 as a double anyway.
 *
 * @see <a href="https://doi.org/10.2307/2347693">Lenth 1989, Algorithm AS 243, Appl. Stat. 38:185</a>
 */
public final class NoncentralT {
    private static final double MOST = 37.62;
    private static final double SMALL = 1e-14;
    private static final int MOST_TERMS = 10_000;

    private NoncentralT() {}

    /**
     * Returns the chance that a two-sided t test finds a true value that is not zero.
     *
     * @param noncentrality the true value in standard errors
     * @param degreesOfFreedom of the standard error, above 0
     * @param chance of a false finding, as in 0.05
     */
    public static double power(double noncentrality, double degreesOfFreedom, double chance) {
        double critical = Quantiles.tTwoSided(1 - chance, degreesOfFreedom);
        return 1
                - cumulative(critical, degreesOfFreedom, noncentrality)
                + cumulative(-critical, degreesOfFreedom, noncentrality);
    }

    /** Returns the chance that the statistic is at most t. */
    public static double cumulative(double t, double degreesOfFreedom, double noncentrality) {
        Checks.positive("The degrees of freedom of a t distribution", degreesOfFreedom);
        if (Math.abs(noncentrality) > MOST) {
            return noncentrality > 0 ? 0 : 1;
        }
        return t >= 0 ? above(t, degreesOfFreedom, noncentrality) : 1 - above(-t, degreesOfFreedom, -noncentrality);
    }

    private static double above(double t, double df, double delta) {
        double normal = new NormalDistribution().cumulativeProbability(-delta);
        double x = t * t / (t * t + df);
        if (x <= 0) {
            return normal;
        }
        double half = delta * delta / 2;
        double p = 0.5 * Math.exp(-half);
        double q = Math.sqrt(2 / Math.PI) * p * delta;
        double sum = 0;
        double a = 0.5;
        double b = df / 2;
        double logBeta = Gamma.logGamma(a) + Gamma.logGamma(b) - Gamma.logGamma(a + b);
        double odd = Beta.regularizedBeta(x, a, b);
        double oddStep = 2 * Math.exp(a * Math.log(x) + b * Math.log1p(-x) - logBeta);
        double even = 1 - Math.exp(b * Math.log1p(-x));
        double evenStep = b * x * Math.exp(b * Math.log1p(-x));
        sum = p * odd + q * even;
        double left = 0.5 - p;
        for (int n = 1; n <= MOST_TERMS; n++) {
            a++;
            odd -= oddStep;
            even -= evenStep;
            oddStep *= x * (a + b - 1) / a;
            evenStep *= x * (a + b - 0.5) / (a + 0.5);
            p *= half / n;
            q *= half / (n + 0.5);
            left -= p;
            sum += p * odd + q * even;
            if (2 * left * Math.max(0, odd - oddStep) < SMALL) {
                break;
            }
        }
        return Math.min(1, sum + normal);
    }
}
