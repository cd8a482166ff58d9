package parchment.stats.mixed;

import java.util.Arrays;
import org.hipparchus.distribution.continuous.ChiSquaredDistribution;
import parchment.stats.Interval;

/**
 * Intervals of shares of a variance, from variances that were fitted to responses drawn from the fitted model.
 *
 * <p>In a balanced design the mean square between g groups is distributed as (v + f) χ² / (g - 1), where v is the variance between
 * groups and the floor f is what their means differ by anyhow. In other designs the floor is found from the spread of the drawn
 * variances, var = 2 (v + f)² / (g - 1); what has no floor gets its degrees of freedom from its moments, 2 mean² / var. So each
 * variance has its bounds; those of the sum of all others and of the quotient come from the distances of the bounds from the
 * estimates.
 *
 * @see "Satterthwaite 1946, Biometrics Bulletin 2:110 (degrees of freedom by moments); Graybill and Wang 1980, J. Am. Stat. Assoc. 75:869
 *     (bounds of a sum of variances); Donner and Zou 2012, Stat. Methods Med. Res. 21:347 (bounds of a quotient); all from memory"
 */
public final class ShareIntervals {
    private static final double LEVEL = 0.90;
    private static final double TAIL = (1 - LEVEL) / 2;
    /** With more than this share of the drawn variances at zero, their spread is taken from above the estimate only. */
    private static final double FEW_ZEROS = 0.05;

    private static final double NOTHING = 1e-9;
    private static final double MOST_DEGREES = 1e6;

    private ShareIntervals() {}

    /** A variance with its bounds. */
    private record Bounds(double lower, double variance, double upper) {
        private static final Bounds NONE = new Bounds(0, 0, 0);

        /**
         * Bounds a variance.
         *
         * @param groups degrees of freedom by the number of groups; not positive where there is no such number
         */
        static Bounds of(double variance, double[] drawn, double groups) {
            double spread = spread(variance, drawn);
            double floor = Math.sqrt(spread * groups / 2) - variance;
            boolean known = groups > 0 && floor >= 0;
            double from = known ? floor : 0;
            double degrees = known ? groups : byMoments(spread, mean(drawn));
            return new Bounds(bound(variance, from, degrees, 1 - TAIL), variance, bound(variance, from, degrees, TAIL));
        }

        private static double byMoments(double spread, double mean) {
            return spread > 0 ? Math.min(MOST_DEGREES, Math.max(1, 2 * mean * mean / spread)) : MOST_DEGREES;
        }

        private static double bound(double variance, double floor, double degrees, double probability) {
            double chi = new ChiSquaredDistribution(degrees).inverseCumulativeProbability(probability);
            return Math.max(0, (variance + floor) * degrees / chi - floor);
        }

        Bounds plus(Bounds other) {
            double sum = variance + other.variance;
            return new Bounds(
                    Math.max(0, sum - Math.hypot(variance - lower, other.variance - other.lower)),
                    sum,
                    sum + Math.hypot(upper - variance, other.upper - other.variance));
        }

        /** Returns the bounds of this variance's share of itself and another. */
        Interval shareBeside(Bounds other) {
            double product = variance * other.variance;
            double high = other.mirrored(other.lower);
            double low = other.mirrored(other.upper);
            return new Interval(
                    share(product - root(product, mirrored(lower), low), low, 0),
                    share(product + root(product, mirrored(upper), high), high, 1),
                    LEVEL);
        }

        /** Returns a bound times its mirror image on the other side of the variance. */
        private double mirrored(double bound) {
            return bound * (2 * variance - bound);
        }

        private static double root(double product, double of, double by) {
            return Math.sqrt(Math.max(0, product * product - of * by));
        }

        /** Returns the share that belongs to a quotient, or a bound of all shares where the quotient has none. */
        private static double share(double of, double by, double unbounded) {
            double quotient = of / by;
            // Rounding errors make zeros with a sign; a share has none.
            return Double.isFinite(quotient) && quotient >= 0 ? Math.max(0, quotient / (1 + quotient)) : unbounded;
        }
    }

    /**
     * Returns the 90 % intervals of the shares.
     *
     * @param variances the estimates; the last is what is left over
     * @param drawn one row for each of them
     * @param groups how many groups each has, without the last
     */
    public static Interval[] of(double[] variances, double[][] drawn, int[] groups) {
        Bounds[] single = new Bounds[variances.length];
        for (int k = 0; k < single.length; k++) {
            single[k] = Bounds.of(variances[k], drawn[k], k < groups.length ? groups[k] - 1 : 0);
        }
        Interval[] intervals = new Interval[single.length];
        for (int k = 0; k < single.length; k++) {
            Bounds others = Bounds.NONE;
            for (int j = 0; j < single.length; j++) {
                others = j == k ? others : others.plus(single[j]);
            }
            intervals[k] = single[k].shareBeside(others);
        }
        return intervals;
    }

    private static double spread(double variance, double[] drawn) {
        double mean = mean(drawn);
        long zeros = Arrays.stream(drawn).filter(d -> d <= NOTHING * mean).count();
        return zeros <= FEW_ZEROS * drawn.length
                ? Arrays.stream(drawn).map(d -> (d - mean) * (d - mean)).sum() / (drawn.length - 1)
                : Arrays.stream(drawn)
                        .filter(d -> d > variance)
                        .map(d -> (d - variance) * (d - variance))
                        .average()
                        .orElse(0);
    }

    private static double mean(double[] drawn) {
        return Arrays.stream(drawn).average().orElse(Double.NaN);
    }
}
