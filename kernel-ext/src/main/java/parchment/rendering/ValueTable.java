package parchment.rendering;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Objects;
import java.util.Set;
import java.util.function.IntFunction;
import java.util.stream.IntStream;
import org.jspecify.annotations.Nullable;
import parchment.display.Column;
import parchment.display.Table;

/** Makes a table of values of any class, column by column: numbers to the right, all else in words, within bounds that are told. */
final class ValueTable {
    static final int ROWS = 1_000;
    static final int COLUMNS = 40;

    /** A cell shows so much of a text. */
    static final int CHARACTERS = 200;

    private final String title;
    private final int rowsInAll;
    private final List<Column> columns = new ArrayList<>();
    private final Set<String> headings = new HashSet<>();
    private int columnsInAll;
    private boolean cut;
    private boolean rounded;
    private boolean summariesRounded;

    private ValueTable(String title, int rowsInAll) {
        this.title = title;
        this.rowsInAll = rowsInAll;
    }

    static ValueTable titled(String title, int rowsInAll) {
        return new ValueTable(title, rowsInAll);
    }

    /** Returns a number with what it counts, as in "1,000 rows" and "1 row". */
    static String counted(int number, String what) {
        return String.format(Locale.ROOT, "%,d %s%s", number, what, number == 1 ? "" : "s");
    }

    /**
     * Adds a column on the right.
     *
     * @param cell gives the value of a row, counted from 0; null is missing
     */
    ValueTable column(String heading, IntFunction<@Nullable Object> cell) {
        return column(heading, cell, NumberDigits.SHOWN);
    }

    /** Adds a column of numbers that were worked out of others, such as means: they are shown with fewer digits. */
    ValueTable summaryColumn(String heading, IntFunction<@Nullable Object> cell) {
        return column(heading, cell, NumberDigits.SHOWN_OF_SUMMARIES);
    }

    private ValueTable column(String heading, IntFunction<@Nullable Object> cell, int shown) {
        columnsInAll++;
        if (columns.size() == COLUMNS) {
            return this;
        }
        List<@Nullable Object> values = new ArrayList<>();
        for (int row = 0; row < Math.min(rowsInAll, ROWS); row++) {
            values.add(cell.apply(row));
        }
        columns.add(column(unused(heading), values, shown));
        return this;
    }

    /**
     * Adds a column of numbers that are printed in a way of their own.
     *
     * @param number gives the number of a row, counted from 0; null is missing
     * @param printed gives it as it is to be shown
     */
    ValueTable printedColumn(String heading, IntFunction<@Nullable Object> number, IntFunction<String> printed) {
        columnsInAll++;
        if (columns.size() < COLUMNS) {
            List<Integer> rows =
                    IntStream.range(0, Math.min(rowsInAll, ROWS)).boxed().toList();
            columns.add(Column.printedNumber(
                    unused(heading),
                    rows,
                    row -> number.apply(row) instanceof Number one ? one.doubleValue() : Double.NaN,
                    printed::apply));
        }
        return this;
    }

    private Column column(String heading, List<@Nullable Object> values, int shown) {
        List<Integer> rows = IntStream.range(0, values.size()).boxed().toList();
        List<Object> present =
                values.stream().filter(Objects::nonNull).map(Object.class::cast).toList();
        if (!present.isEmpty() && present.stream().allMatch(NumberDigits::isNumber)) {
            NumberDigits digits = NumberDigits.of(present, shown);
            rounded |= shown == NumberDigits.SHOWN && digits.rounds();
            summariesRounded |= shown != NumberDigits.SHOWN && digits.rounds();
            return Column.printedNumber(
                    heading,
                    rows,
                    row -> values.get(row) instanceof Number number ? number.doubleValue() : Double.NaN,
                    row -> digits.print((Number) Objects.requireNonNull(values.get(row))));
        }
        return Column.text(heading, rows, row -> values.get(row) == null ? null : words(values.get(row)));
    }

    private String words(@Nullable Object value) {
        String line = PlainText.of(value).strip().replaceAll("\\s*\\R\\s*", " ");
        if (line.codePointCount(0, line.length()) <= CHARACTERS) {
            return line;
        }
        cut = true;
        return line.substring(0, line.offsetByCodePoints(0, CHARACTERS)) + "...";
    }

    private String unused(String heading) {
        String free = heading.isBlank() ? "(no name)" : heading;
        for (int i = 2; !headings.add(free); i++) {
            free = heading + " (" + i + ")";
        }
        return free;
    }

    /** Returns the table, with what it leaves out at its foot. */
    Table table() {
        Table table = Table.titled(title);
        for (Column column : columns) {
            table = table.withColumn(column);
        }
        if (rowsInAll > ROWS) {
            table = table.withNote(String.format(Locale.ROOT, "The first %,d of %,d rows are here.", ROWS, rowsInAll));
        }
        if (columnsInAll > COLUMNS) {
            table = table.withNote(
                    String.format(Locale.ROOT, "The first %d of %,d columns are here.", COLUMNS, columnsInAll));
        }
        if (cut) {
            table = table.withNote("Texts end after " + CHARACTERS + " characters.");
        }
        if (summariesRounded) {
            table = table.withNote(
                    "What was worked out is rounded to about " + NumberDigits.SHOWN_OF_SUMMARIES + " digits.");
        }
        return rounded ? table.withNote("Numbers are rounded to about " + NumberDigits.SHOWN + " digits.") : table;
    }
}
