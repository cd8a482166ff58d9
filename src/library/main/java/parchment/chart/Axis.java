package parchment.chart;

import java.util.List;
import java.util.Locale;
import java.util.OptionalDouble;
import parchment.quantity.Elapsed;
import parchment.quantity.TemperatureUnit;
import parchment.quantity.Unit;

/**
 * Describes an axis: what it measures, in full words, and how its numbers are written.
 *
 * <p>Positions are given as the library keeps numbers; the axis converts them to the reader's unit, so that the same lines show in
 * °C or °F. Default limits are those of the data with a little room.
 */
public final class Axis {
    enum Kind {
        NUMBER,
        CLOCK,
        DATE,
        ROWS
    }

    private final Kind kind;
    private final String label;
    private final Unit unit;
    private final TemperatureUnit reader;
    private final List<String> rows;
    private final double low;
    private final double high;

    private Axis(
            Kind kind, String label, Unit unit, TemperatureUnit reader, List<String> rows, double low, double high) {
        this.kind = kind;
        this.label = label;
        this.unit = unit;
        this.reader = reader;
        this.rows = List.copyOf(rows);
        this.low = low;
        this.high = high;
    }

    private static Axis of(Kind kind, String label, Unit unit, TemperatureUnit reader, List<String> rows) {
        return new Axis(kind, label, unit, reader, rows, Double.NaN, Double.NaN);
    }

    /** Makes an axis of numbers in a unit, with temperatures on the reader's scale. */
    public static Axis of(String label, Unit unit, TemperatureUnit reader) {
        return of(Kind.NUMBER, label, unit, reader, List.of());
    }

    /** Makes an axis of numbers with a unit that is only a label ("%", "mbar"), or none if it is empty. */
    public static Axis number(String label, String unit) {
        return of(label, Unit.labelled(unit), TemperatureUnit.CELSIUS);
    }

    /** Makes an axis of times that are kept in seconds and written as minutes and seconds. */
    public static Axis clock(String label) {
        return of(Kind.CLOCK, label, Unit.labelled("min:s"), TemperatureUnit.CELSIUS, List.of());
    }

    /** Makes an axis of days that are kept as {@link java.time.LocalDate#toEpochDay()} and written as dates. */
    public static Axis dates(String label) {
        return of(Kind.DATE, label, Unit.NONE, TemperatureUnit.CELSIUS, List.of());
    }

    /** Makes an upright axis of named rows: position 0 is the first row, at the top. */
    public static Axis rows(String label, List<String> names) {
        return of(Kind.ROWS, label, Unit.NONE, TemperatureUnit.CELSIUS, names);
    }

    /**
     * Returns the axis with fixed limits, in the kept unit. NaN leaves an end to the data; what lies outside is cut off.
     *
     * @throws IllegalArgumentException if the lower limit is not below the upper one
     */
    public Axis withLimits(double lower, double upper) {
        if (lower >= upper) {
            throw new IllegalArgumentException(String.format(
                    Locale.ROOT, "The axis '%s' needs limits that rise; it was given %s to %s.", label, lower, upper));
        }
        return new Axis(kind, label, unit, reader, rows, lower, upper);
    }

    /** Returns the axis with zero as its lower limit, so that lengths can be compared. */
    public Axis fromZero() {
        return withLimits(0, Double.NaN);
    }

    /** Returns the axis's words without the unit. */
    public String label() {
        return label;
    }

    /** Returns the axis's words with the unit, as in "bean temperature (°C)". */
    public String fullLabel() {
        String symbol = unit.symbol(reader);
        return symbol.isEmpty() || label.isEmpty() ? label : label + " (" + symbol + ")";
    }

    Kind kind() {
        return kind;
    }

    List<String> rows() {
        return rows;
    }

    OptionalDouble fixedLow() {
        return Double.isNaN(low) ? OptionalDouble.empty() : OptionalDouble.of(low);
    }

    OptionalDouble fixedHigh() {
        return Double.isNaN(high) ? OptionalDouble.empty() : OptionalDouble.of(high);
    }

    /** Converts a kept position to the number that the axis shows. */
    double shown(double kept) {
        return unit.shown(kept, reader);
    }

    /** Prints a kept position with its unit: "203.3 °C", "8:30", "2026-03-14", or the name of the row. */
    public String format(double kept) {
        return switch (kind) {
            case NUMBER -> unit.format(kept, reader);
            case CLOCK -> Double.isFinite(kept) ? new Elapsed(kept).toString() : "missing";
            case DATE -> Double.isFinite(kept) ? Ticks.isoDay(kept) : "missing";
            case ROWS -> {
                int row = (int) Math.round(kept);
                yield row >= 0 && row < rows.size() ? rows.get(row) : "missing";
            }
        };
    }

    /** Prints an uncertainty with its unit: "0.4 °C", "5 s", "2 days". */
    public String formatStep(double kept) {
        return switch (kind) {
            case NUMBER, ROWS -> unit.withDigitsFor(kept, reader).formatStep(kept, reader);
            case CLOCK -> Unit.SECONDS.withDigitsFor(kept, reader).format(kept, reader);
            case DATE -> Unit.DAYS.withDigitsFor(kept, reader).format(kept, reader);
        };
    }

    @Override
    public String toString() {
        return fullLabel();
    }
}
