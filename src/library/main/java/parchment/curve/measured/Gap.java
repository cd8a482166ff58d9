package parchment.curve.measured;

import java.util.Locale;
import parchment.quantity.Elapsed;

/**
 * A stretch of time without readings, which nothing here bridges.
 *
 * @param fromSeconds the last reading before it
 * @param toSeconds the first reading after it
 */
public record Gap(double fromSeconds, double toSeconds) {

    /** Returns how long it lasts, in seconds. */
    public double seconds() {
        return toSeconds - fromSeconds;
    }

    /** Returns whether a time lies strictly inside. */
    public boolean contains(double atSeconds) {
        return atSeconds > fromSeconds && atSeconds < toSeconds;
    }

    /** Prints as in "14 s from 6:02 to 6:16". */
    @Override
    public String toString() {
        return String.format(
                Locale.ROOT,
                "%.0f s from %s to %s",
                seconds(),
                Elapsed.seconds(fromSeconds),
                Elapsed.seconds(toSeconds));
    }
}
