package parchment.display;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.function.Function;
import java.util.function.ToDoubleFunction;
import org.jspecify.annotations.Nullable;
import parchment.quantity.TemperatureUnit;
import parchment.quantity.Unit;

/**
 * One column of a table: a heading, a unit, and one printed value per row.
 *
 * <p>A column is text (set to the left) or numbers (set to the right, all with the same decimals). A value can be missing: a NaN, a
 * null or an empty text. Missing values are kept as missing and never printed as 0.
 */
public final class Column {
    /** How the values of a column are set. */
    public enum Setting {
        /** Words, set to the left. */
        TEXT,
        /** Numbers, set to the right so that their digits stand under each other. */
        NUMBER
    }

    private final Setting setting;
    private final String heading;
    private final String unit;
    private final List<String> printed; // "" is missing
    private final List<Double> values; // empty for words

    private Column(Setting setting, String heading, String unit, List<String> printed, List<Double> values) {
        this.setting = setting;
        this.heading = heading;
        this.unit = unit;
        this.printed = List.copyOf(printed);
        this.values = List.copyOf(values);
    }

    /** Makes a column of words, one per row; an empty one is missing. */
    public static Column text(String heading, List<String> values) {
        return text(heading, values, value -> value);
    }

    /** Makes a column of words by asking each row for its own; an empty one or a null is missing. */
    public static <R> Column text(String heading, List<R> rows, Function<? super R, @Nullable String> value) {
        List<String> printed = new ArrayList<>(rows.size());
        for (R row : rows) {
            String text = value.apply(row);
            printed.add(text == null || text.isBlank() ? "" : text);
        }
        return new Column(Setting.TEXT, heading, "", printed, List.of());
    }

    /** Makes a column of numbers by asking each row for its own, already in the unit that is shown; a NaN is missing. */
    public static <R> Column number(
            String heading, String unit, int decimals, List<R> rows, ToDoubleFunction<? super R> value) {
        List<String> printed = new ArrayList<>(rows.size());
        List<Double> values = new ArrayList<>(rows.size());
        for (R row : rows) {
            double number = value.applyAsDouble(row);
            values.add(number);
            printed.add(print(number, decimals));
        }
        return new Column(Setting.NUMBER, heading, unit, printed, values);
    }

    /**
     * Makes a column of numbers that are printed each in its own way, as whole numbers of any size or powers of ten are; sorted by the numbers.
     *
     * @param value the number; NaN is missing
     * @param printed the number as it is shown, without a unit
     */
    public static <R> Column printedNumber(
            String heading, List<R> rows, ToDoubleFunction<? super R> value, Function<? super R, String> printed) {
        List<String> texts = new ArrayList<>(rows.size());
        List<Double> values = new ArrayList<>(rows.size());
        for (R row : rows) {
            double number = value.applyAsDouble(row);
            values.add(number);
            texts.add(Double.isNaN(number) ? "" : printed.apply(row));
        }
        return new Column(Setting.NUMBER, heading, "", texts, values);
    }

    /**
     * Makes a column of numbers by asking each row for its own as the library keeps it, and shows it in the reader's unit.
     *
     * @param unit what the numbers are measured in; says the decimals too
     * @param reader the scale on which the reader wants temperatures
     */
    public static <R> Column number(
            String heading, Unit unit, TemperatureUnit reader, List<R> rows, ToDoubleFunction<? super R> value) {
        return number(
                heading, unit.symbol(reader), unit.digits(), rows, row -> unit.shown(value.applyAsDouble(row), reader));
    }

    private static String print(double value, int decimals) {
        if (Double.isNaN(value)) {
            return "";
        }
        if (Double.isInfinite(value)) {
            return value > 0 ? "infinite" : "-infinite";
        }
        String number = String.format(Locale.ROOT, "%." + decimals + "f", value);
        // A small negative number rounds to "-0.0", which reads as a mistake.
        return number.matches("-0(\\.0*)?") ? number.substring(1) : number;
    }

    /** Returns whether the column is set as words or as numbers. */
    public Setting setting() {
        return setting;
    }

    /** Returns the heading without the unit. */
    public String heading() {
        return heading;
    }

    /** Returns the printed unit, empty if there is none. */
    public String unit() {
        return unit;
    }

    /** Returns the heading with its unit, as in "drop temperature [°C]". */
    public String fullHeading() {
        return unit.isEmpty() ? heading : heading + " [" + unit + "]";
    }

    /** Returns the number of rows. */
    public int size() {
        return printed.size();
    }

    /** Tells whether the value of a row, counted from 0, is missing. */
    public boolean isMissing(int row) {
        return printed.get(row).isEmpty();
    }

    /** Returns the printed value of a row, counted from 0; empty if it is missing. */
    public String value(int row) {
        return printed.get(row);
    }

    /**
     * Returns what a row, counted from 0, is sorted by: the number before it was rounded for print, to seven digits. Empty for words,
     * which are sorted as they stand, and where the value is missing.
     */
    String sortKey(int row) {
        return values.isEmpty() || isMissing(row)
                ? ""
                : Float.toString(values.get(row).floatValue());
    }

    @Override
    public String toString() {
        return String.format(Locale.ROOT, "Column '%s' with %d rows", fullHeading(), size());
    }
}
