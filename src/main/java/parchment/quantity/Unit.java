package parchment.quantity;

import java.util.Locale;
import java.util.Objects;

/**
 * Says what a number of a curve, a feature or an axis is measured in, and shows it in the reader's unit.
 *
 * <p>Numbers are kept as the library keeps them (degrees Celsius, seconds, kilograms, degrees Celsius per minute, shares from 0 to
 * 1). Only temperatures and shares change when shown: a temperature to the reader's scale, a share to per cent.
 */
public final class Unit {
    private enum Kind {
        TEMPERATURE,
        TEMPERATURE_STEP,
        RATE_OF_RISE,
        SHARE,
        FIXED
    }

    /** A temperature, kept in degrees Celsius. */
    public static final Unit TEMPERATURE = new Unit(Kind.TEMPERATURE, "", 1, 1);
    /** A difference of temperatures, kept in degrees Celsius. */
    public static final Unit TEMPERATURE_STEP = new Unit(Kind.TEMPERATURE_STEP, "", 1, 1);
    /** A rate of rise, kept in degrees Celsius per minute. */
    public static final Unit RATE_OF_RISE = new Unit(Kind.RATE_OF_RISE, "", 2, 1);
    /** A time, kept and shown in seconds. */
    public static final Unit SECONDS = new Unit(Kind.FIXED, "s", 0, 10);
    /** A time, kept and shown in days. */
    public static final Unit DAYS = new Unit(Kind.FIXED, "days", 0, 10);
    /** A mass, kept and shown in kilograms. */
    public static final Unit KILOGRAMS = new Unit(Kind.FIXED, "kg", 3, 0.1);
    /** A share of a whole, kept as a number from 0 to 1 and shown in per cent. */
    public static final Unit SHARE = new Unit(Kind.SHARE, "%", 1, 0.01);
    /** A cupper's score. */
    public static final Unit POINTS = new Unit(Kind.FIXED, "points", 2, 1);
    /** A count. */
    public static final Unit COUNT = new Unit(Kind.FIXED, "", 0, 1);
    /** A number without a unit. */
    public static final Unit NONE = new Unit(Kind.FIXED, "", 3, 1);

    private final Kind kind;
    private final String label;
    private final int digits;
    private final double naturalStep;

    private Unit(Kind kind, String label, int digits, double naturalStep) {
        this.kind = kind;
        this.label = label;
        this.digits = digits;
        this.naturalStep = naturalStep;
    }

    /** Returns a unit that is only a label, as a gas scale has ("%", "mbar", "step"); never converted. */
    public static Unit labelled(String label) {
        return new Unit(Kind.FIXED, label, 2, 1);
    }

    /** Returns the same unit shown with another number of decimals. */
    public Unit withDigits(int decimals) {
        return new Unit(kind, label, decimals, naturalStep);
    }

    /** Returns the same unit with another natural step, given as the library keeps numbers (so 0.01 is one per cent of a share). */
    public Unit withNaturalStep(double step) {
        return new Unit(kind, label, digits, step);
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
            case SHARE -> "%";
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
            case SHARE -> kept * 100;
            case FIXED -> kept;
        };
    }

    /** Prints a number with its unit, as in "203.3 °C"; a missing number prints as "missing". */
    public String format(double kept, TemperatureUnit reader) {
        return print(shown(kept, reader), reader);
    }

    /** Prints a difference or a standard error with its unit. */
    public String formatStep(double kept, TemperatureUnit reader) {
        return print(shownStep(kept, reader), reader);
    }

    private String print(double shown, TemperatureUnit reader) {
        if (Double.isNaN(shown)) {
            return "missing";
        }
        String symbol = symbol(reader);
        String number = String.format(Locale.ROOT, "%." + digits + "f", shown).replaceFirst("^-(?=0(\\.0+)?$)", "");
        return symbol.isEmpty() ? number : number + " " + symbol;
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof Unit unit
                && kind == unit.kind
                && label.equals(unit.label)
                && digits == unit.digits
                && naturalStep == unit.naturalStep;
    }

    @Override
    public int hashCode() {
        return Objects.hash(kind, label, digits, naturalStep);
    }

    @Override
    public String toString() {
        return symbol(TemperatureUnit.CELSIUS);
    }
}
