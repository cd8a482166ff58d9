package parchment.quantity;

import java.util.Locale;

/**
 * A time as a roast clock shows it: seconds since charge, or the length of a phase.
 *
 * @param seconds the time in seconds; finite, negative before charge
 */
public record Elapsed(double seconds) implements Comparable<Elapsed> {

    /** @throws IllegalArgumentException if the number is missing or infinite */
    public Elapsed {
        if (!Double.isFinite(seconds)) {
            throw new IllegalArgumentException(
                    "A time needs a finite number of seconds; it was given " + seconds + ".");
        }
    }

    /** Returns a time in seconds. */
    public static Elapsed seconds(double seconds) {
        return new Elapsed(seconds);
    }

    /** Returns a time in minutes and seconds, as in {@code Elapsed.of(9, 19)}. */
    public static Elapsed of(int minutes, double seconds) {
        return new Elapsed(60.0 * minutes + seconds);
    }

    /** Returns this time plus the given one. */
    public Elapsed plus(Elapsed other) {
        return new Elapsed(seconds + other.seconds);
    }

    /** Returns the time from the given one to this one. */
    public Elapsed minus(Elapsed other) {
        return new Elapsed(seconds - other.seconds);
    }

    @Override
    public int compareTo(Elapsed other) {
        return Double.compare(seconds, other.seconds);
    }

    /** Prints minutes and whole seconds, as in "9:19" or "-0:30". */
    @Override
    public String toString() {
        long rounded = Math.round(Math.abs(seconds));
        return String.format(
                Locale.ROOT, "%s%d:%02d", seconds < 0 && rounded > 0 ? "-" : "", rounded / 60, rounded % 60);
    }
}
