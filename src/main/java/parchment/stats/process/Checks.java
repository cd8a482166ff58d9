package parchment.stats.process;

import java.util.Locale;
import parchment.stats.CannotFitException;

/** Refuses input that a method of this package cannot use, in one way everywhere. */
final class Checks {
    private Checks() {}

    static double[] series(String job, int least, double[] values) {
        if (values.length < least) {
            throw new CannotFitException(
                    job + " needs at least " + least + " values, but there are " + values.length + ".");
        }
        for (int i = 0; i < values.length; i++) {
            if (!Double.isFinite(values[i])) {
                throw new IllegalArgumentException(job + " needs every value, but value " + (i + 1) + " is "
                        + number(values[i]) + ". Leave it out first.");
            }
        }
        return values.clone();
    }

    static int atLeast(int least, String what, int found) {
        if (found < least) {
            throw new IllegalArgumentException(what + " must be " + least + " or more, but it is " + found + ".");
        }
        return found;
    }

    /** Prints a number in a message: short, with a point. */
    static String number(double value) {
        if (Double.isNaN(value)) {
            return "missing";
        }
        if (value == Math.rint(value) && Math.abs(value) < 1e9) {
            return String.format(Locale.ROOT, "%d", (long) value);
        }
        String four = String.format(Locale.ROOT, "%.4g", value);
        return four.contains(".") && !four.contains("e") ? four.replaceAll("\\.?0+$", "") : four;
    }
}
