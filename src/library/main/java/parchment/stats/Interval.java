package parchment.stats;

import java.util.Locale;
import parchment.display.Showable;

/**
 * The two ends of an interval and the share of repetitions in which such an interval is meant to hold the truth.
 *
 * @param lower lower end, negative infinity if unbounded, NaN if missing
 * @param upper upper end, positive infinity if unbounded, NaN if missing
 * @param level as in 0.90
 */
public record Interval(double lower, double upper, double level) implements Showable {

    /** Says whether a value lies between the ends. */
    public boolean contains(double value) {
        return value >= lower && value <= upper;
    }

    /** Returns the distance of the ends. */
    public double width() {
        return upper - lower;
    }

    @Override
    public String toString() {
        if (Double.isNaN(lower) || Double.isNaN(upper)) {
            return "interval missing";
        }
        return String.format(Locale.ROOT, "%.4g to %.4g (%.0f %%)", lower, upper, 100 * level);
    }
}
