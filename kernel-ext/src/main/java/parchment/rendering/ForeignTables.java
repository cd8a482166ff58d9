package parchment.rendering;

import java.time.LocalDateTime;
import java.util.List;
import java.util.function.IntFunction;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;
import parchment.display.Showable;

/** Shows the tables of other libraries as ours: sorted by a click, with bounds. */
final class ForeignTables {
    /** How Tablesaw heads a column of means and the like; what is counted or picked out of the rows keeps its digits. */
    private static final Pattern SUMMARY = Pattern.compile(
            "(Mean|Geometric Mean|Quadratic Mean|Std\\. Deviation|Variance|Pop\\. Variance|CV|Skewness|Kurtosis) \\[.*]");

    private static final Class<?>[] ONE = {int.class};
    private static final Class<?>[] TWO = {int.class, int.class};

    private ForeignTables() {}

    /** Tablesaw tells what is missing apart from the value: a missing whole number would otherwise be a very small one. */
    static Showable ofTablesaw(Object table) {
        Reflected asked = Reflected.of(table);
        int rows = asked.number("rowCount");
        ValueTable shown = ValueTable.titled(title(asked.text("name"), rows), rows);
        if (asked.get("columns") instanceof List<?> columns) {
            for (Object each : columns) {
                Reflected column = Reflected.of(each);
                IntFunction<@Nullable Object> value = row -> Boolean.TRUE.equals(column.call("isMissing", ONE, row))
                        ? null
                        : inWords(column.call("get", ONE, row));
                if (printsInItsOwnWay(column, rows)) {
                    shown.printedColumn(
                            column.text("name"), value, row -> String.valueOf(column.call("getString", ONE, row)));
                } else if (SUMMARY.matcher(column.text("name")).matches()) {
                    shown.summaryColumn(column.text("name"), value);
                } else {
                    shown.column(column.text("name"), value);
                }
            }
        }
        return shown.table();
    }

    /**
     * Tells whether a column of numbers prints them in a way that somebody gave it, rounded or with a currency: what it prints is then not the number
     * itself. (Which way that is, it does not tell.)
     */
    private static boolean printsInItsOwnWay(Reflected column, int rows) {
        for (int row = 0; row < Math.min(rows, ValueTable.ROWS); row++) {
            if (Boolean.TRUE.equals(column.call("isMissing", ONE, row))) {
                continue;
            }
            if (!(column.call("get", ONE, row) instanceof Number number)) {
                return false;
            }
            String printed = String.valueOf(column.call("getString", ONE, row)).replace(',', '.');
            if (!isThatNumber(printed, number.doubleValue())) {
                return true;
            }
        }
        return false;
    }

    private static boolean isThatNumber(String printed, double number) {
        try {
            return Double.parseDouble(printed) == number;
        } catch (NumberFormatException e) {
            return false;
        }
    }

    private static @Nullable Object inWords(@Nullable Object value) {
        return value instanceof LocalDateTime at ? at.toString().replace('T', ' ') : value;
    }

    /** Smile has renamed what counts its rows, and may do so again. */
    static Showable ofSmile(Object frame) {
        Reflected asked = Reflected.of(frame);
        int rows = asked.number(asked.has("nrow") ? "nrow" : asked.has("nrows") ? "nrows" : "size");
        ValueTable shown = ValueTable.titled(title("", rows), rows);
        if (asked.get("names") instanceof String[] names) {
            for (int c = 0; c < names.length; c++) {
                int column = c;
                shown.column(names[c], row -> asked.call("get", TWO, row, column));
            }
        }
        return shown.table();
    }

    private static String title(String name, int rows) {
        return (name.isBlank() ? "A table of " : name + ", ") + ValueTable.counted(rows, "row");
    }
}
