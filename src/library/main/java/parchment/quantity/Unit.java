package parchment.quantity;

import java.util.Locale;
import java.util.Objects;

/**
 * What a number of a curve, a feature or an axis is measured in; it shows numbers in the reader's unit.
 *
 * <p>Numbers are kept as the library keeps them (degrees Celsius, seconds, kilograms, degrees Celsius per minute, shares from 0 to
 * 1). Only temperatures, shares and masses change when shown: a temperature to the reader's scale, a share to per cent, a mass
 * to the unit that its logbook is written in.
 */
public final class Unit {
    private enum Kind {
        TEMPERATURE,
        TEMPERATURE_STEP,
        RATE_OF_RISE,
        FIXED
    }

    /** A temperature, kept in degrees Celsius. */
    public static final Unit TEMPERATURE = new Unit(Kind.TEMPERATURE, "", 1, 1, 1);
    /** A difference of temperatures, kept in degrees Celsius. */
    public static final Unit TEMPERATURE_STEP = new Unit(Kind.TEMPERATURE_STEP, "", 1, 1, 1);
    /** A rate of rise, kept in degrees Celsius per minute. */
    public static final Unit RATE_OF_RISE = new Unit(Kind.RATE_OF_RISE, "", 1, 2, 1);
    /** A time, kept and shown in seconds. */
    public static final Unit SECONDS = new Unit(Kind.FIXED, "s", 1, 0, 10);
    /** A time, kept and shown in days. */
    public static final Unit DAYS = new Unit(Kind.FIXED, "days", 1, 0, 10);
    /** A mass, kept and shown in kilograms. */
    public static final Unit KILOGRAMS = mass(MassUnit.KILOGRAM);
    /** A share of a whole, kept as a number from 0 to 1 and shown in per cent. */
    public static final Unit SHARE = new Unit(Kind.FIXED, "%", 100, 1, 0.01);
    /** A cupper's score. */
    public static final Unit POINTS = new Unit(Kind.FIXED, "points", 1, 2, 1);
    /** A count. */
    public static final Unit COUNT = new Unit(Kind.FIXED, "", 1, 0, 1);
    /** A number without a unit. */
    public static final Unit NONE = new Unit(Kind.FIXED, "", 1, 3, 1);

    /** A smaller error than these decimals show is not one of a measurement. */
    private static final int MOST_DIGITS = 6;

    private final Kind kind;
    private final String label;
    private final double shownPerKept;
    private final int digits;
    private final double naturalStep;

    private Unit(Kind kind, String label, double shownPerKept, int digits, double naturalStep) {
        this.kind = kind;
        this.label = label;
        this.shownPerKept = shownPerKept;
        this.digits = digits;
        this.naturalStep = naturalStep;
    }

    /** Returns the unit of a mass that is kept in kilograms and shown in another unit of mass. */
    public static Unit mass(MassUnit shown) {
        return switch (shown) {
            case KILOGRAM -> mass(shown, 3, 0.1);
            case GRAM -> mass(shown, 0, 10);
            case POUND -> mass(shown, 2, 0.2);
            case OUNCE -> mass(shown, 1, 1);
        };
    }

    private static Unit mass(MassUnit shown, int digits, double step) {
        return new Unit(Kind.FIXED, shown.symbol(), shown.fromKilograms(1), digits, shown.toKilograms(step));
    }

    /** Returns the same unit, or, for a mass, the one in which a logbook's masses are shown. */
    public Unit withMassesIn(MassUnit shown) {
        return equals(KILOGRAMS) ? mass(shown) : this;
    }

    /** Returns a unit that is only a label, as a gas scale has ("%", "mbar", "step"); never converted. */
    public static Unit labelled(String label) {
        return new Unit(Kind.FIXED, label, 1, 2, 1);
    }

    /** Returns the same unit shown with another number of decimals. */
    public Unit withDigits(int decimals) {
        return new Unit(kind, label, shownPerKept, decimals, naturalStep);
    }

    /** Returns the same unit with another natural step, given as the library keeps numbers (so 0.01 is one per cent of a share). */
    public Unit withNaturalStep(double step) {
        return new Unit(kind, label, shownPerKept, digits, step);
    }

    /** Returns how many decimals a number of this unit is shown with. */
    public int digits() {
        return digits;
    }

    /** Returns the step in which a slope is told ("per 1 °C", "per 10 s"), as the library keeps numbers. */
    public double naturalStep() {
        return naturalStep;
    }

    /** Returns the printed unit, empty for a bare number. */
    public String symbol(TemperatureUnit reader) {
        return switch (kind) {
            case TEMPERATURE, TEMPERATURE_STEP -> reader.symbol();
            case RATE_OF_RISE -> reader.symbol() + "/min";
            case FIXED -> label;
        };
    }

    /** Converts a number as the library keeps it to the number that is shown. */
    public double shown(double kept, TemperatureUnit reader) {
        return switch (kind) {
            case TEMPERATURE -> reader.fromCelsius(kept);
            default -> shownStep(kept, reader);
        };
    }

    /** Converts a difference, slope or standard error as the library keeps it to the number that is shown. */
    public double shownStep(double kept, TemperatureUnit reader) {
        return switch (kind) {
            case TEMPERATURE, TEMPERATURE_STEP, RATE_OF_RISE -> reader.stepFromCelsius(kept);
            case FIXED -> kept * shownPerKept;
        };
    }

    /** Prints a number with its unit, as in "203.3 °C"; a missing number prints as "missing". */
    public String format(double kept, TemperatureUnit reader) {
        return print(shown(kept, reader), reader);
    }

    /** Prints a number as {@link #format} does, but a time as a roast clock shows it: minutes and seconds, as in "10:02". */
    public String formatOnClock(double kept, TemperatureUnit reader) {
        return isTime() && Double.isFinite(kept) ? Elapsed.seconds(kept).toString() : format(kept, reader);
    }

    /** Tells whether this is a time in seconds. */
    public boolean isTime() {
        return kind == Kind.FIXED && label.equals(SECONDS.label);
    }

    /** Prints a difference or a standard error with its unit. */
    public String formatStep(double kept, TemperatureUnit reader) {
        return print(shownStep(kept, reader), reader);
    }

    /**
     * Returns the same unit with as many decimals as an error asks for: its own, unless they would show less than two steps of the last
     * one; then as many as show two significant digits of the error. A unit without decimals, such as seconds, shows one of each.
     *
     * @param error a standard error or half of an interval, as the library keeps numbers; 0 or missing leaves the unit as it is
     */
    public Unit withDigitsFor(double error, TemperatureUnit reader) {
        double shown = Math.abs(shownStep(error, reader));
        double enough = (digits == 0 ? 1 : 2) * Math.pow(10, -digits);
        if (!isError(error, reader) || Double.isInfinite(shown) || shown >= enough * (1 - 1e-9)) {
            return this;
        }
        int decimals = (digits == 0 ? 0 : 1) - (int) Math.floor(Math.log10(shown) + 1e-9);
        return withDigits(Math.max(digits, Math.min(MOST_DIGITS, decimals)));
    }

    /** Prints an error to stand after its number, as in " ± 0.4 °C"; nothing where it is missing or no error at all. */
    public String formatError(double error, TemperatureUnit reader) {
        return isError(error, reader) ? " ± " + withDigitsFor(error, reader).formatStep(error, reader) : "";
    }

    /** Prints a number with its error and the unit once, as in "203.3 ± 0.4 °C"; without an error where that is missing or none at all. */
    public String formatWithError(double kept, double error, TemperatureUnit reader) {
        Unit fitting = withDigitsFor(error, reader);
        return fitting.withSymbol(fitting.number(shown(kept, reader)) + plusMinus(fitting, error, reader), reader);
    }

    /** Prints a difference with its error and the unit once, as in "2.6 ± 0.4 °C". */
    public String formatStepWithError(double kept, double error, TemperatureUnit reader) {
        Unit fitting = withDigitsFor(error, reader);
        return fitting.withSymbol(fitting.number(shownStep(kept, reader)) + plusMinus(fitting, error, reader), reader);
    }

    private static String plusMinus(Unit fitting, double error, TemperatureUnit reader) {
        return fitting.isError(error, reader) ? " ± " + fitting.number(fitting.shownStep(error, reader)) : "";
    }

    private boolean isError(double error, TemperatureUnit reader) {
        return Math.abs(shownStep(error, reader)) >= 0.5 * Math.pow(10, -MOST_DIGITS);
    }

    private String withSymbol(String number, TemperatureUnit reader) {
        String symbol = symbol(reader);
        return symbol.isEmpty() ? number : number + " " + symbol;
    }

    /** Prints a number that is in the reader's unit already, without the unit; what rounds to zero has no sign. */
    public String number(double shown) {
        return Double.isNaN(shown)
                ? "missing"
                : String.format(Locale.ROOT, "%." + digits + "f", shown).replaceFirst("^-(?=0(\\.0+)?$)", "");
    }

    private String print(double shown, TemperatureUnit reader) {
        if (Double.isNaN(shown)) {
            return "missing";
        }
        return withSymbol(number(shown), reader);
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof Unit unit
                && kind == unit.kind
                && label.equals(unit.label)
                && shownPerKept == unit.shownPerKept
                && digits == unit.digits
                && naturalStep == unit.naturalStep;
    }

    @Override
    public int hashCode() {
        return Objects.hash(kind, label, shownPerKept, digits, naturalStep);
    }

    @Override
    public String toString() {
        return symbol(TemperatureUnit.CELSIUS);
    }
}
