package parchment.card;

import java.util.Arrays;
import parchment.quantity.TemperatureUnit;
import parchment.quantity.Unit;

/** Prints numbers that stand side by side with as many digits as their spread deserves, and all with the same. */
final class Digits {
    /** A digit is dropped as long as the numbers still differ by this many steps of the last one left; common practice, no source. */
    private static final double STEPS = 2;

    private final Unit unit;
    private final TemperatureUnit reader;

    private Digits(Unit unit, TemperatureUnit reader) {
        this.unit = unit;
        this.reader = reader;
    }

    /**
     * Chooses the digits for some numbers.
     *
     * @param least fewest decimals; a scale's reading is worth more than the spread of what was weighed
     */
    static Digits of(double[] values, Unit unit, int least, TemperatureUnit reader) {
        double[] known = Arrays.stream(values).filter(Double::isFinite).toArray();
        double spread = known.length == 0
                ? 0
                : unit.shownStep(
                        Arrays.stream(known).max().orElse(0)
                                - Arrays.stream(known).min().orElse(0),
                        reader);
        int digits = unit.digits();
        while (digits > least && spread >= STEPS * Math.pow(10, 1.0 - digits)) {
            digits--;
        }
        return new Digits(unit.withDigits(digits), reader);
    }

    /** Prints a number with its unit; empty if it is missing. Times are in minutes and seconds. */
    String with(double value) {
        return Double.isFinite(value) ? unit.formatOnClock(value, reader) : "";
    }

    /** Prints two ends as a range, as in "9:05 to 9:40" or "203 to 206 °C"; one number if both print alike. */
    String range(double from, double to) {
        String low = with(from);
        String high = with(to);
        String symbol = isTime() ? "" : unit.symbol(reader);
        return low.equals(high)
                ? low
                : (symbol.isEmpty()
                                ? low
                                : low.substring(0, low.length() - symbol.length())
                                        .strip()) + " to " + high;
    }

    private boolean isTime() {
        return unit.symbol(reader).equals(Unit.SECONDS.symbol(reader));
    }
}
