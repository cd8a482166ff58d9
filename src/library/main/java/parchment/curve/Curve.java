package parchment.curve;

import java.util.Arrays;
import java.util.Locale;
import java.util.Objects;
import parchment.quantity.Unit;

/**
 * One quantity of one batch as it was sampled.
 *
 * <p>Times rise strictly and every value is finite: a reading that is missing is absent, not a number that means "missing".
 */
public final class Curve {
    private final String name;
    private final Unit unit;
    private final double[] seconds;
    private final double[] values;

    private Curve(String name, Unit unit, double[] seconds, double[] values) {
        this.name = Objects.requireNonNull(name);
        this.unit = Objects.requireNonNull(unit);
        this.seconds = seconds;
        this.values = values;
    }

    /**
     * Returns a curve of the given readings.
     *
     * @param name what was measured, in full words, as in "bean temperature"
     * @param unit what the values are measured in; temperatures in degrees Celsius
     * @param seconds the times since charge, strictly rising
     * @param values one value for each time, finite
     * @throws IllegalArgumentException if the lengths differ, a time does not rise, or a number is not finite
     */
    public static Curve of(String name, Unit unit, double[] seconds, double[] values) {
        if (seconds.length != values.length) {
            throw new IllegalArgumentException(String.format(
                    Locale.ROOT,
                    "A curve needs one value for each time; '%s' was given %d times and %d values.",
                    name,
                    seconds.length,
                    values.length));
        }
        for (int i = 0; i < seconds.length; i++) {
            if (!Double.isFinite(seconds[i]) || !Double.isFinite(values[i])) {
                throw new IllegalArgumentException(String.format(
                        Locale.ROOT, "A curve needs finite readings; reading %d of '%s' is not.", i + 1, name));
            }
            if (i > 0 && seconds[i] <= seconds[i - 1]) {
                throw new IllegalArgumentException(String.format(
                        Locale.ROOT,
                        "A curve's times must rise; reading %d of '%s' is at %s s after one at %s s.",
                        i + 1,
                        name,
                        seconds[i],
                        seconds[i - 1]));
            }
        }
        return new Curve(name, unit, seconds.clone(), values.clone());
    }

    /** Returns what was measured, in full words. */
    public String name() {
        return name;
    }

    /** Returns what the values are measured in. */
    public Unit unit() {
        return unit;
    }

    /** Returns the number of readings; may be 0. */
    public int size() {
        return seconds.length;
    }

    /** Returns whether the curve has no reading at all. */
    public boolean isEmpty() {
        return seconds.length == 0;
    }

    /** Returns the time of a reading, in seconds since charge; readings count from 0. */
    public double secondsAt(int reading) {
        return seconds[reading];
    }

    /** Returns the value of a reading; readings count from 0. */
    public double valueAt(int reading) {
        return values[reading];
    }

    /** Returns a copy of the times, in seconds since charge, rising. */
    public double[] seconds() {
        return seconds.clone();
    }

    /** Returns a copy of the values. */
    public double[] values() {
        return values.clone();
    }

    /** Returns the part from one time to another, both included. */
    public Curve between(double fromSeconds, double toSeconds) {
        int from = position(fromSeconds);
        int to = from;
        while (to < seconds.length && seconds[to] <= toSeconds) {
            to++;
        }
        return new Curve(name, unit, Arrays.copyOfRange(seconds, from, to), Arrays.copyOfRange(values, from, to));
    }

    /** Returns the same readings on a clock that starts the given number of seconds later. */
    public Curve withZeroAt(double zeroSeconds) {
        double[] moved = new double[seconds.length];
        for (int i = 0; i < moved.length; i++) {
            moved[i] = seconds[i] - zeroSeconds;
        }
        return new Curve(name, unit, moved, values);
    }

    /**
     * Returns the position of the first reading at or after a time; {@code size()} if there is none. Takes logarithmic time.
     */
    public int position(double atSeconds) {
        int found = Arrays.binarySearch(seconds, atSeconds);
        return found >= 0 ? found : -found - 1;
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof Curve curve
                && name.equals(curve.name)
                && unit.equals(curve.unit)
                && Arrays.equals(seconds, curve.seconds)
                && Arrays.equals(values, curve.values);
    }

    @Override
    public int hashCode() {
        return Objects.hash(name, unit, Arrays.hashCode(seconds), Arrays.hashCode(values));
    }

    @Override
    public String toString() {
        return isEmpty()
                ? String.format(Locale.ROOT, "%s: no readings", name)
                : String.format(
                        Locale.ROOT,
                        "%s: %d readings from %.0f to %.0f s since charge",
                        name,
                        seconds.length,
                        seconds[0],
                        seconds[seconds.length - 1]);
    }
}
