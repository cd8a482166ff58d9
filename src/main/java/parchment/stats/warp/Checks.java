package parchment.stats.warp;

import java.util.List;
import java.util.Locale;

/** Refuses input that a method of this package cannot use, in one way everywhere. */
final class Checks {
    private Checks() {}

    static int atLeast(int least, String what, int found) {
        if (found < least) {
            throw new IllegalArgumentException(what + " must be " + least + " or more, but it is " + found + ".");
        }
        return found;
    }

    static void curve(String job, String what, double[] values) {
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

    static void sameLength(String job, String first, int a, String second, int b) {
        if (a != b) {
            throw new IllegalArgumentException(job + " needs as many samples in " + first + " as in " + second
                    + ", but there are " + a + " and " + b + ".");
        }
    }

    static void increasing(String what, double[] x) {
        for (int i = 0; i < x.length; i++) {
            if (!Double.isFinite(x[i]) || (i > 0 && !(x[i] > x[i - 1]))) {
                throw new IllegalArgumentException(what + " must increase at every step, but position " + (i + 1)
                        + " holds " + number(x[i]) + (i > 0 ? " after " + number(x[i - 1]) : "") + ".");
            }
        }
    }

    /** Refuses a set of curves that are not all sampled on the same grid. */
    static void sameGrid(String job, int least, int points, List<double[]> curves) {
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

    /** Prints a number in a message: short, with a point. */
    static String number(double value) {
        if (Double.isNaN(value)) {
            return "missing";
        }
        if (value == Math.rint(value) && Math.abs(value) < 1e9) {
            return String.format(Locale.ROOT, "%d", (long) value);
        }
        return String.format(Locale.ROOT, "%.4g", value);
    }
}
