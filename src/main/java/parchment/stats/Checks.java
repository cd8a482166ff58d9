package parchment.stats;

import java.util.Locale;

/** Refuses input that a method of this package cannot use, in one way everywhere. */
final class Checks {
    private Checks() {}

    static void sameLength(String job, int expected, String what, int found) {
        if (expected != found) {
            throw new IllegalArgumentException(job + " needs one value of " + what + " per row: there are " + expected
                    + " rows but " + found + " values of " + what + ".");
        }
    }

    static double positive(String what, double value) {
        if (!(value > 0) || Double.isInfinite(value)) {
            throw new IllegalArgumentException(what + " must be a number above 0, but it is " + number(value) + ".");
        }
        return value;
    }

    static double share(String what, double value) {
        if (!(value > 0 && value < 1)) {
            throw new IllegalArgumentException(
                    what + " must lie between 0 and 1, as in 0.90, but it is " + number(value) + ".");
        }
        return value;
    }

    static void increasing(String what, double[] x) {
        for (int i = 0; i < x.length; i++) {
            if (Double.isNaN(x[i]) || (i > 0 && !(x[i] >= x[i - 1]))) {
                throw new IllegalArgumentException(
                        what + " must be in increasing order without missing values, but position " + (i + 1)
                                + " holds " + number(x[i]) + (i > 0 ? " after " + number(x[i - 1]) : "") + ".");
            }
        }
    }

    /** Prints a number in a message: short, with a point, never in scientific notation where that can be avoided. */
    static String number(double value) {
        if (Double.isNaN(value)) {
            return "missing";
        }
        if (value == Math.rint(value) && Math.abs(value) < 1e9) {
            return String.format(Locale.ROOT, "%d", (long) value);
        }
        return String.format(Locale.ROOT, "%.4g", value);
    }

    /**
     * Returns the values, if their squares and fourth powers are numbers that a double can hold.
     *
     * @throws CannotFitException if the largest is above 1e30 in size, or they are all below 1e-30
     */
    static double[] computable(String job, String what, double[] values) {
        double largest = 0;
        for (double value : values) {
            largest = Double.isNaN(value) ? largest : Math.max(largest, Math.abs(value));
        }
        if (largest > 1e30 || (largest > 0 && largest < 1e-30)) {
            throw new CannotFitException(job + " needs numbers between 1e-30 and 1e30 in size, but " + what
                    + " goes up to " + number(largest) + ". Look for a slip of the pen, or take another unit.");
        }
        return values;
    }
}
