package parchment.stats.linear;

import java.util.Arrays;

/** Measures the middle and the spread of numbers without letting a few wild ones decide. Missing numbers are left out. */
public final class Robust {
    /** Makes the median absolute deviation of normal values estimate their standard deviation: 1 / quantile(0.75). */
    static final double NORMAL = 1.482602218505602;

    private Robust() {}

    /** Returns the median, or NaN if no number is left. */
    public static double median(double[] values) {
        double[] sorted = Vectors.finite(values);
        Arrays.sort(sorted);
        return medianOfSorted(sorted, sorted.length);
    }

    /** Returns the median absolute deviation from the median, times 1.4826 so that it reads as a standard deviation. */
    public static double medianAbsoluteDeviation(double[] values) {
        double[] finite = Vectors.finite(values);
        double middle = median(finite);
        for (int i = 0; i < finite.length; i++) {
            finite[i] = Math.abs(finite[i] - middle);
        }
        return NORMAL * median(finite);
    }

    static double medianOfSorted(double[] sorted, int count) {
        if (count == 0) {
            return Double.NaN;
        }
        int half = count / 2;
        return count % 2 == 1 ? sorted[half] : 0.5 * (sorted[half - 1] + sorted[half]);
    }

    /** Returns the quantile at a share from 0 to 1, interpolated as R's type 7 (Hyndman and Fan 1996), or NaN if no number is left. */
    public static double quantile(double[] values, double share) {
        if (!(share >= 0 && share <= 1)) {
            throw new IllegalArgumentException(
                    "A quantile needs a share from 0 to 1, but it is " + Checks.number(share) + ".");
        }
        double[] sorted = Vectors.finite(values);
        if (sorted.length == 0) {
            return Double.NaN;
        }
        Arrays.sort(sorted);
        double position = share * (sorted.length - 1);
        int below = (int) Math.floor(position);
        int above = Math.min(below + 1, sorted.length - 1);
        return sorted[below] + (position - below) * (sorted[above] - sorted[below]);
    }

    /**
     * Bounds beyond which some numbers lie far out: beyond the quartiles by three times their distance.
     *
     * @param median of the numbers
     * @param low bound below
     * @param high bound above
     * @see "Tukey 1977, Exploratory Data Analysis, section 2D, whose outer fences these are (from memory)"
     */
    public record Fences(double median, double low, double high) {
        private static final double FACTOR = 3;
        /** Fewest numbers from which a quartile is told. */
        private static final int FEWEST = 5;

        /** Returns the fences of the numbers that are not missing; NaN if there are fewer than 5. */
        public static Fences of(double[] values) {
            double[] known = Vectors.finite(values);
            if (known.length < FEWEST) {
                return new Fences(Double.NaN, Double.NaN, Double.NaN);
            }
            double lower = quantile(known, 0.25);
            double upper = quantile(known, 0.75);
            double reach = FACTOR * (upper - lower);
            return new Fences(Robust.median(known), lower - reach, upper + reach);
        }

        /** Tells whether a number is far out, and by at least so much from the median; a missing one is not. */
        public boolean farOut(double value, double least) {
            return (value < low || value > high) && Math.abs(value - median) >= least;
        }
    }
}
