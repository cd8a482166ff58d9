package parchment.logbook;

import java.nio.file.Path;
import java.util.EnumMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalInt;
import parchment.logbook.contents.LogbookException;
import parchment.logbook.written.Problem;
import parchment.sheet.Delimiter;
import parchment.sheet.Header;
import parchment.sheet.Value;

/**
 * Describes how a curve file is written, for loggers that do not write the logbook's own form.
 *
 * <p>A layout is stated in code, as here, or in {@code curves/layout.properties}:
 *
 * <pre>{@code
 * var layout = CurveLayout.standard()
 *         .withDelimiter(';').withDecimal(CurveLayout.Decimal.COMMA).withRowsSkipped(3)
 *         .withTime("#1", "min:s")
 *         .with(Quantity.BEAN_TEMPERATURE, "Sensor 2", "°F");
 * var logbook = Logbook.open(Path.of("my-logbook"), layout);
 * }</pre>
 *
 * <p>A column is named by its heading, or by its place from the left as in "#1". Of a layout that is not changed the defaults are: the
 * sign between columns is found from the first row, decimals have a point, no row is skipped, there are headings, times are elapsed,
 * and columns are found by the headings of the logbook format.
 */
public final class CurveLayout {
    static final String FILE = "layout.properties";

    private static final CurveLayout STANDARD =
            new CurveLayout('\0', Decimal.FOUND, 0, Headings.YES, TimeForm.ELAPSED, Optional.empty(), Map.of());

    /** Says which sign stands before the decimals. */
    public enum Decimal {
        /** A point; a comma too where the columns are not separated by commas. */
        FOUND,
        /** A point, as in 204.5. */
        POINT,
        /** A comma, as in 204,5. */
        COMMA
    }

    /** Says whether the first row that is not skipped names the columns. */
    public enum Headings {
        /** It does. */
        YES,
        /** There are no headings; columns are named by their place. */
        NO
    }

    /** Says what the times count from. */
    public enum TimeForm {
        /** From some start, in a unit of time. */
        ELAPSED,
        /** From midnight: the time of day, with or without a date. Becomes seconds since the first reading. */
        TIME_OF_DAY
    }

    /**
     * Names a column of a file.
     *
     * @param column its heading, or its place from the left as in "#1"
     * @param unit the unit of its values; for a control any label
     */
    public record Source(String column, String unit) {

        /** Returns the place counted from 0, if the column is named by its place. */
        OptionalInt place() {
            return column.matches("#[1-9]\\d{0,3}")
                    ? OptionalInt.of(Integer.parseInt(column.substring(1)) - 1)
                    : OptionalInt.empty();
        }
    }

    private final char delimiter;
    private final Decimal decimal;
    private final int rowsSkipped;
    private final Headings headings;
    private final TimeForm timeForm;
    private final Optional<Source> time;
    private final Map<Quantity, Source> quantities;

    private CurveLayout(
            char delimiter,
            Decimal decimal,
            int rowsSkipped,
            Headings headings,
            TimeForm timeForm,
            Optional<Source> time,
            Map<Quantity, Source> quantities) {
        this.delimiter = delimiter;
        this.decimal = decimal;
        this.rowsSkipped = rowsSkipped;
        this.headings = headings;
        this.timeForm = timeForm;
        this.time = time;
        this.quantities = Map.copyOf(quantities);
    }

    /** Returns the layout of the logbook format. */
    public static CurveLayout standard() {
        return STANDARD;
    }

    /**
     * Reads a layout from a file of properties, the form of {@code curves/layout.properties}.
     *
     * @throws LogbookException if something in the file is not understood
     */
    public static CurveLayout read(Path file) {
        ProblemLog problems = new ProblemLog(String.valueOf(file.getFileName()));
        CurveLayout layout = LayoutFile.of(Settings.properties(file, problems), problems);
        for (Problem problem : problems.toList()) {
            throw new LogbookException(problem.toString());
        }
        return layout;
    }

    /** Returns the layout with the sign that stands between the columns. */
    public CurveLayout withDelimiter(char sign) {
        return new CurveLayout(sign, decimal, rowsSkipped, headings, timeForm, time, quantities);
    }

    /** Returns the layout with the sign that stands before the decimals. */
    public CurveLayout withDecimal(Decimal sign) {
        return new CurveLayout(delimiter, sign, rowsSkipped, headings, timeForm, time, quantities);
    }

    /**
     * Returns the layout with a number of lines to skip before the headings, or before the first reading if there are no headings.
     *
     * @throws IllegalArgumentException if the number is negative
     */
    public CurveLayout withRowsSkipped(int rows) {
        if (rows < 0) {
            throw new IllegalArgumentException("A layout skips 0 rows or more; it was told to skip " + rows + ".");
        }
        return new CurveLayout(delimiter, decimal, rows, headings, timeForm, time, quantities);
    }

    /** Returns the layout with or without headings. */
    public CurveLayout withHeadings(Headings present) {
        return new CurveLayout(delimiter, decimal, rowsSkipped, present, timeForm, time, quantities);
    }

    /**
     * Returns the layout with the column of elapsed times.
     *
     * @throws IllegalArgumentException if the unit is not s, min, min:s or h:min:s
     */
    public CurveLayout withTime(String column, String unit) {
        if (Value.TimeUnit.of(plainUnit(unit)).isEmpty()) {
            throw new IllegalArgumentException(
                    "A column of times needs the unit s, min, min:s or h:min:s; it was given '" + unit + "'.");
        }
        Optional<Source> source = Optional.of(new Source(column, unit));
        return new CurveLayout(delimiter, decimal, rowsSkipped, headings, TimeForm.ELAPSED, source, quantities);
    }

    /** Returns the layout with the column of times of day, such as 9:15:30 or 2025-03-04 09:15:30. */
    public CurveLayout withTimeOfDay(String column) {
        Optional<Source> source = Optional.of(new Source(column, ""));
        return new CurveLayout(delimiter, decimal, rowsSkipped, headings, TimeForm.TIME_OF_DAY, source, quantities);
    }

    /**
     * Returns the layout with the column of a quantity.
     *
     * @throws IllegalArgumentException if the quantity is a temperature and the unit is not °C, °F or K
     */
    public CurveLayout with(Quantity quantity, String column, String unit) {
        if (!quantity.isControl() && Header.temperatureUnit(plainUnit(unit)).isEmpty()) {
            throw new IllegalArgumentException(
                    "A column of temperatures needs the unit °C, °F or K; it was given '" + unit + "'.");
        }
        Map<Quantity, Source> more = new EnumMap<>(Quantity.class);
        more.putAll(quantities);
        more.put(quantity, new Source(column, unit));
        return new CurveLayout(delimiter, decimal, rowsSkipped, headings, timeForm, time, more);
    }

    private static String plainUnit(String unit) {
        return Header.parse("x [" + unit + "]").plainUnit();
    }

    /** Returns the sign between the columns; empty if it is found from the file. */
    public Optional<Character> delimiter() {
        return delimiter == '\0' ? Optional.empty() : Optional.of(delimiter);
    }

    /** Returns the sign before the decimals. */
    public Decimal decimal() {
        return decimal;
    }

    /** Returns how many lines are skipped at the start. */
    public int rowsSkipped() {
        return rowsSkipped;
    }

    /** Returns whether there are headings. */
    public Headings headings() {
        return headings;
    }

    /** Returns what the times count from. */
    public TimeForm timeForm() {
        return timeForm;
    }

    /** Returns the column of times; empty if it is found by its heading. */
    public Optional<Source> time() {
        return time;
    }

    /** Returns the column of a quantity; empty if it is found by its heading. */
    public Optional<Source> source(Quantity quantity) {
        return Optional.ofNullable(quantities.get(quantity));
    }

    /** Returns whether anything was stated. */
    boolean isStandard() {
        return equals(STANDARD);
    }

    /** Returns the layout as the settings that {@code layout.properties} holds. */
    public Map<String, String> settings() {
        Map<String, String> settings = new LinkedHashMap<>();
        if (delimiter != '\0') {
            settings.put("delimiter", Delimiter.nameOf(delimiter));
        }
        if (decimal != Decimal.FOUND) {
            settings.put("decimal", decimal.name().toLowerCase(Locale.ROOT));
        }
        if (rowsSkipped > 0) {
            settings.put("rows.to.skip", Integer.toString(rowsSkipped));
        }
        if (headings == Headings.NO) {
            settings.put("headings", "no");
        }
        if (timeForm == TimeForm.TIME_OF_DAY) {
            settings.put("time.form", "time of day");
        }
        time.ifPresent(source -> settings.put("time", LayoutFile.print(source)));
        for (Quantity quantity : List.of(Quantity.values())) {
            source(quantity)
                    .ifPresent(source -> settings.put(quantity.words().replace(' ', '.'), LayoutFile.print(source)));
        }
        return settings;
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof CurveLayout layout
                && delimiter == layout.delimiter
                && decimal == layout.decimal
                && rowsSkipped == layout.rowsSkipped
                && headings == layout.headings
                && timeForm == layout.timeForm
                && time.equals(layout.time)
                && quantities.equals(layout.quantities);
    }

    @Override
    public int hashCode() {
        return Objects.hash(delimiter, decimal, rowsSkipped, headings, timeForm, time, quantities);
    }

    @Override
    public String toString() {
        return isStandard() ? "the layout of the logbook format" : "a curve layout: " + settings();
    }
}
