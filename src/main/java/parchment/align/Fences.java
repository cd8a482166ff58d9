package parchment.align;

import java.util.Arrays;
import parchment.stats.Robust;

/**
 * Tells which of some numbers lie far out: beyond the quartiles by three times their distance.
 *
 * @see "Tukey 1977, Exploratory Data Analysis, section 2D, whose outer fences these are (from memory)"
 */
record Fences(double median, double low, double high) {
    private static final double FACTOR = 3;

    /** Returns the fences of the numbers that are not missing; NaN if there are fewer than 5. */
    static Fences of(double[] values) {
        double[] known = Arrays.stream(values).filter(Double::isFinite).toArray();
        if (known.length < Crowd.LEAST) {
            return new Fences(Double.NaN, Double.NaN, Double.NaN);
        }
        double lower = Robust.quantile(known, 0.25);
        double upper = Robust.quantile(known, 0.75);
        double reach = FACTOR * (upper - lower);
        return new Fences(Robust.median(known), lower - reach, upper + reach);
    }

    /** Tells whether a number is far out, and by at least so much from the median; a missing one is not. */
    boolean farOut(double value, double least) {
        return (value < low || value > high) && Math.abs(value - median) >= least;
    }
}
