package parchment.evidence;

import org.hipparchus.distribution.continuous.TDistribution;

/** Answers the two questions of Student's t distribution that an answer needs. */
final class StudentT {
    /** Above this the distribution is the normal one to six digits, and the library's series would slow down. */
    private static final double MOST_DEGREES = 1e6;

    private StudentT() {}

    static double quantile(double share, double degrees) {
        return of(degrees).inverseCumulativeProbability(share);
    }

    static double twoSided(double statistic, double degrees) {
        return 2 * of(degrees).cumulativeProbability(-Math.abs(statistic));
    }

    private static TDistribution of(double degrees) {
        return new TDistribution(Math.min(degrees, MOST_DEGREES));
    }
}
