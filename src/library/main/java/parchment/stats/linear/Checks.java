package parchment.stats.linear;

import java.util.List;
import java.util.Locale;

/** Refuses input that a method of these packages cannot use, in one way and in the same words everywhere. */
public final class Checks {
    private Checks() {}

    /** Refuses columns of different numbers of rows. */
    public static void sameLength(String job, int expected, String what, int found) {
        if (expected != found) {
            throw new IllegalArgumentException(job + " needs one value of " + what + " per row: there are " + expected
                    + " rows but " + found + " values of " + what + ".");
        }
    }

    /** Refuses what is not a number above 0. */
    public static double positive(String what, double value) {
        if (!(value > 0) || Double.isInfinite(value)) {
            throw new IllegalArgumentException(what + " must be a number above 0, but it is " + number(value) + ".");
        }
        return value;
    }

    /** Refuses what is not between 0 and 1. */
    public static double share(String what, double value) {
        if (!(value > 0 && value < 1)) {
            throw new IllegalArgumentException(
                    what + " must lie between 0 and 1, as in 0.90, but it is " + number(value) + ".");
        }
        return value;
    }

    /** Refuses positions that fall or are missing; equal ones may follow each other. */
    public static void increasing(String what, double[] x) {
        for (int i = 0; i < x.length; i++) {
            if (Double.isNaN(x[i]) || (i > 0 && !(x[i] >= x[i - 1]))) {
                throw new IllegalArgumentException(
                        what + " must be in increasing order without missing values, but position " + (i + 1)
                                + " holds " + number(x[i]) + (i > 0 ? " after " + number(x[i - 1]) : "") + ".");
            }
        }
    }

    /** Prints a number in a message: short, with a point, never in scientific notation where that can be avoided. */
    public static String number(double value) {
        if (Double.isNaN(value)) {
            return "missing";
        }
        if (value == Math.rint(value) && Math.abs(value) < 1e9) {
            return String.format(Locale.ROOT, "%d", (long) value);
        }
        return String.format(Locale.ROOT, "%.4g", value);
    }

    /** Refuses a count under the least that a method can use. */
    public static int atLeast(int least, String what, int found) {
        if (found < least) {
            throw new IllegalArgumentException(what + " must be " + least + " or more, but it is " + found + ".");
        }
        return found;
    }

    /** Refuses a curve of one sample or with a gap. */
    public static void curve(String job, String what, double[] values) {
        if (values.length < 2) {
            throw new IllegalArgumentException(
                    job + " needs at least 2 samples in " + what + ", but there are " + values.length + ".");
        }
        for (int i = 0; i < values.length; i++) {
            if (!Double.isFinite(values[i])) {
                throw new IllegalArgumentException(job + " needs every sample of " + what + ", but sample " + (i + 1)
                        + " is " + number(values[i]) + ". Fill the gap or cut the curve there first.");
            }
        }
    }

    /** Refuses two curves of different numbers of samples. */
    public static void asManySamples(String job, String first, int a, String second, int b) {
        if (a != b) {
            throw new IllegalArgumentException(job + " needs as many samples in " + first + " as in " + second
                    + ", but there are " + a + " and " + b + ".");
        }
    }

    /** Refuses positions that do not rise from each to the next. */
    public static void rising(String what, double[] x) {
        for (int i = 0; i < x.length; i++) {
            if (!Double.isFinite(x[i]) || (i > 0 && !(x[i] > x[i - 1]))) {
                throw new IllegalArgumentException(what + " must increase at every step, but position " + (i + 1)
                        + " holds " + number(x[i]) + (i > 0 ? " after " + number(x[i - 1]) : "") + ".");
            }
        }
    }

    /** Refuses a set of curves that are not all sampled on the same grid. */
    public static void sameGrid(String job, int least, int points, List<double[]> curves) {
        if (curves.size() < least) {
            throw new IllegalArgumentException(
                    job + " needs at least " + least + " curves, but there are " + curves.size() + ".");
        }
        for (int i = 0; i < curves.size(); i++) {
            if (curves.get(i).length != points) {
                throw new IllegalArgumentException(job + " needs all curves on one grid of " + points
                        + " points, but curve " + (i + 1) + " has " + curves.get(i).length + ".");
            }
        }
    }
}
