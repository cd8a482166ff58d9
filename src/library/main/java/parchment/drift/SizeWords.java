package parchment.drift;

import java.util.Locale;
import parchment.quantity.TemperatureUnit;
import parchment.quantity.Unit;
import parchment.stats.Estimate;
import parchment.stats.Interval;

/** Prints by how much something moved, with as many digits as its interval deserves. */
final class SizeWords {
    static final double LEVEL = 0.90;
    private static final int MOST_DIGITS = 2;

    private SizeWords() {}

    /** Returns a difference to one side with its interval, as in "2.8 °C (2.1 to 3.4)"; positive towards the side of the estimate. */
    static String of(Estimate size, Unit unit, TemperatureUnit reader) {
        if (!Double.isFinite(size.estimate())) {
            return "by how much cannot be told";
        }
        double side = size.estimate() < 0 ? -1 : 1;
        Interval interval = size.interval(LEVEL);
        double one = unit.shownStep(interval.lower(), reader) * side;
        double other = unit.shownStep(interval.upper(), reader) * side;
        String words = withUnit(
                Math.abs(unit.shownStep(size.estimate(), reader)), digits(Math.abs(one - other)), unit, reader);
        return Double.isFinite(one) && Double.isFinite(other)
                ? words + " (" + number(Math.min(one, other), digits(Math.abs(one - other))) + " to "
                        + number(Math.max(one, other), digits(Math.abs(one - other))) + ")"
                : words;
    }

    /** Returns what lies from one size to another, as in "0.6 to 1.1 percentage points". */
    static String range(double low, double high, Unit unit, TemperatureUnit reader) {
        double from = unit.shownStep(low, reader);
        double to = unit.shownStep(high, reader);
        int digits = to > from ? digits(to - from) : unit.digits();
        return number(from, digits).equals(number(to, digits))
                ? "about " + withUnit(to, digits, unit, reader)
                : number(from, digits) + " to " + withUnit(to, digits, unit, reader);
    }

    private static String withUnit(double shown, int digits, Unit unit, TemperatureUnit reader) {
        String symbol = unit.symbol(reader).replaceFirst("^%$", "percentage points");
        return number(shown, digits) + (symbol.isEmpty() ? "" : " " + symbol);
    }

    /** One digit of half of the width is all that an interval deserves. */
    static int digits(double width) {
        return width > 0 ? (int) Math.max(0, Math.min(MOST_DIGITS, -Math.floor(Math.log10(width / 2)))) : MOST_DIGITS;
    }

    private static String number(double shown, int digits) {
        return String.format(Locale.ROOT, "%." + digits + "f", shown).replaceFirst("^-(?=0(\\.0+)?$)", "");
    }
}
