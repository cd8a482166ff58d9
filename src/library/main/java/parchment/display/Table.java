package parchment.display;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.function.Function;
import java.util.function.ToDoubleFunction;
import org.jspecify.annotations.Nullable;
import parchment.quantity.TemperatureUnit;
import parchment.quantity.Unit;

/**
 * Shows rows under headings with units, as text and as HTML.
 *
 * <pre>{@code
 * Table.titled("Batches").withText("batch", logbook.batches(), Batch::name)
 * }</pre>
 *
 * <p>A missing value prints as "missing", or as a dash that a note explains. The first column of words names the row. Of a long
 * table the first rows are shown and the rest is folded away; a note at the foot says what was used and left out.
 *
 * <p>A table is a value: every {@code with...} returns a copy. The defaults are: no note, missing values in words, 20 rows shown.
 */
public final class Table implements Showable {
    private static final int ROWS_SHOWN = 20;

    private final String title;
    private final List<Column> columns;
    private final List<String> notes;
    private final String missing;
    private final int rowsShown;

    private Table(String title, List<Column> columns, List<String> notes, String missing, int rowsShown) {
        this.title = title;
        this.columns = List.copyOf(columns);
        this.notes = List.copyOf(notes);
        this.missing = missing;
        this.rowsShown = rowsShown;
    }

    /** Returns a table without columns. */
    public static Table titled(String title) {
        return new Table(title, List.of(), List.of(), "missing", ROWS_SHOWN);
    }

    /**
     * Returns the table with one more column on its right.
     *
     * @throws IllegalArgumentException if the table has a column with that heading and unit, or a different number of rows
     */
    public Table withColumn(Column column) {
        if (!columns.isEmpty() && column.size() != rowCount()) {
            throw new IllegalArgumentException(String.format(
                    Locale.ROOT,
                    "The table '%s' has %d rows, but its column '%s' was given %d. Give each column one value per row.",
                    title,
                    rowCount(),
                    column.heading(),
                    column.size()));
        }
        for (Column there : columns) {
            if (there.fullHeading().equals(column.fullHeading())) {
                throw new IllegalArgumentException("The table '" + title + "' already has a column '"
                        + column.fullHeading() + "'. Give it another heading.");
            }
        }
        return new Table(title, append(columns, column), notes, missing, rowsShown);
    }

    /** Returns the table with one more column of words; see {@link Column#text(String, List, Function)}. */
    public <R> Table withText(String heading, List<R> rows, Function<? super R, @Nullable String> value) {
        return withColumn(Column.text(heading, rows, value));
    }

    /** Returns the table with one more column of numbers that are in the unit shown; a NaN is missing. */
    public <R> Table withNumber(
            String heading, String unit, int decimals, List<R> rows, ToDoubleFunction<? super R> value) {
        return withColumn(Column.number(heading, unit, decimals, rows, value));
    }

    /** Returns the table with one more column of numbers as the library keeps them, shown in the reader's unit. */
    public <R> Table withNumber(
            String heading, Unit unit, TemperatureUnit reader, List<R> rows, ToDoubleFunction<? super R> value) {
        return withColumn(Column.number(heading, unit, reader, rows, value));
    }

    /** Returns the table with one more sentence at its foot, such as how many batches were used and left out. */
    public Table withNote(String sentence) {
        return new Table(title, columns, append(notes, sentence), missing, rowsShown);
    }

    /** Returns the table with missing values printed as a dash, and a note that explains the dash, such as "not cupped". */
    public Table withDashForMissing(String explanation) {
        return new Table(title, columns, append(notes, "\u2013 means: " + explanation + "."), "\u2013", rowsShown);
    }

    /**
     * Returns the table with another number of rows shown before the rest is folded away.
     *
     * @throws IllegalArgumentException if the number is below 1
     */
    public Table withRowsShown(int rows) {
        if (rows < 1) {
            throw new IllegalArgumentException("A table shows at least 1 row; it was told to show " + rows + ".");
        }
        return new Table(title, columns, notes, missing, rows);
    }

    private static <T> List<T> append(List<T> list, T item) {
        List<T> longer = new ArrayList<>(list);
        longer.add(item);
        return longer;
    }

    /** Returns what the table is about. */
    public String title() {
        return title;
    }

    /** Returns the columns from left to right. */
    public List<Column> columns() {
        return columns;
    }

    /** Returns the sentences at the foot. */
    public List<String> notes() {
        return notes;
    }

    /** Returns how many rows there are, shown or folded away. */
    public int rowCount() {
        return columns.isEmpty() ? 0 : columns.get(0).size();
    }

    /** Returns how many rows are shown before the rest is folded away. */
    public int rowsShown() {
        return rowsShown;
    }

    /** Returns a value as it is shown, missing ones included; row and column count from 0. */
    public String cell(int row, int column) {
        Column of = columns.get(column);
        return of.isMissing(row) ? missing : of.value(row);
    }

    @Override
    public String text() {
        return TableText.of(this);
    }

    @Override
    public Optional<String> html() {
        return Optional.of(TableHtml.of(this));
    }

    @Override
    public String toString() {
        return String.format(
                Locale.ROOT,
                "%s: %d %s, %d %s",
                title,
                rowCount(),
                rowCount() == 1 ? "row" : "rows",
                columns.size(),
                columns.size() == 1 ? "column" : "columns");
    }
}
