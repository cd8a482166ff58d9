package parchment.kernel.words;

import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import parchment.kernel.stop.CellThrew;
import parchment.sheet.Words;

/**
 * Puts what Tablesaw throws at a slip in a column's name, or at a column of another kind, into words that name the columns there are. Tablesaw tells the
 * table by its name alone, so its columns are looked up among the variables of the session.
 */
public final class TablesawWords {
    private static final String TABLESAW = "tech.tablesaw.";
    private static final Pattern NO_COLUMN =
            Pattern.compile("Column (.*) (?:does not exist|is not present) in table (.*)", Pattern.DOTALL);
    private static final Pattern NO_COLUMN_TO_SORT = Pattern.compile("Unrecognized Column: '(.*)'", Pattern.DOTALL);
    private static final Pattern OTHER_CELL =
            Pattern.compile("Column (.*) is of type (\\w+) and cannot be cast to (\\w+)\\..*", Pattern.DOTALL);
    private static final Pattern OTHER_COLUMN =
            Pattern.compile("class tech\\.tablesaw\\.api\\.(\\w+)Column cannot be cast to class .*", Pattern.DOTALL);

    /** What a column holds, by the name of its kind in Tablesaw. */
    private static final Map<String, String> HELD = Map.ofEntries(
            Map.entry("STRING", "text"),
            Map.entry("DOUBLE", "decimal numbers"),
            Map.entry("FLOAT", "decimal numbers"),
            Map.entry("INT", "whole numbers"),
            Map.entry("INTEGER", "whole numbers"),
            Map.entry("LONG", "whole numbers"),
            Map.entry("SHORT", "whole numbers"),
            Map.entry("BOOLEAN", "yes and no"),
            Map.entry("DATE", "days"),
            Map.entry("LOCAL_DATE", "days"),
            Map.entry("TIME", "times of day"),
            Map.entry("LOCAL_TIME", "times of day"),
            Map.entry("DATETIME", "days with a time"),
            Map.entry("LOCAL_DATE_TIME", "days with a time"));

    /** How a row of a table is asked for a cell, where that is not called as the kind is. */
    private static final Map<String, String> ASKED = Map.of(
            "INTEGER", "getInt", "LOCAL_DATE", "getDate", "LOCAL_TIME", "getTime", "LOCAL_DATE_TIME", "getDateTime");

    private TablesawWords() {}

    /**
     * Returns what a cell threw, or the same in our words where Tablesaw threw it at a column's name or kind.
     *
     * @param variables what the variables of the session hold
     */
    public static Throwable inOurs(Throwable thrown, Stream<?> variables) {
        StackTraceElement[] frames = CellThrew.trace(thrown);
        // What a cell's own class says of itself is not asked here: it may fail, or never end.
        if (frames.length == 0
                || !frames[0].getClassName().startsWith(TABLESAW)
                || !thrown.getClass().getName().startsWith("java.lang.")) {
            return thrown;
        }
        String said = Objects.requireNonNullElse(thrown.getMessage(), "");
        Optional<String> words = words(thrown, frames[0].getMethodName(), said, variables);
        return words.isPresent() ? new IllegalArgumentException(words.get()) : thrown;
    }

    private static Optional<String> words(Throwable thrown, String asked, String said, Stream<?> variables) {
        Matcher none = NO_COLUMN.matcher(said);
        if (none.matches()) {
            return Optional.of(noColumn(none.group(1), none.group(2), variables));
        }
        Matcher noneToSort = NO_COLUMN_TO_SORT.matcher(said);
        if (noneToSort.matches()) {
            return Optional.of("The table has no column '" + noneToSort.group(1)
                    + "' to sort by. Its `columnNames()` lists those it has.");
        }
        Matcher cell = OTHER_CELL.matcher(said);
        if (cell.matches()) {
            return Optional.of(
                    "The column '" + cell.group(1) + "' holds " + held(cell.group(2)) + ". Ask the row with `"
                            + ASKED.getOrDefault(cell.group(2), "get" + capital(cell.group(2))) + "(\"" + cell.group(1)
                            + "\")`.");
        }
        Matcher column = OTHER_COLUMN.matcher(said);
        if (thrown instanceof ClassCastException && column.matches() && asked.endsWith("Column")) {
            String kind = column.group(1);
            String right = kind.substring(0, 1).toLowerCase(Locale.ROOT) + kind.substring(1) + "Column";
            return Optional.of("`" + asked + "` was asked of a column that holds " + held(kind.toUpperCase(Locale.ROOT))
                    + ". Take it with `" + right + "`.");
        }
        return Optional.empty();
    }

    private static String noColumn(String column, String table, Stream<?> variables) {
        List<String> columns = variables
                .flatMap(value -> columns(value, table).stream())
                .findFirst()
                .orElse(List.of());
        return "The table '" + table + "' has no column '" + column + "'."
                + (columns.isEmpty()
                        ? " Its `columnNames()` lists those it has."
                        : Words.didYouMean(column, columns) + " Columns: " + String.join(", ", columns) + ".");
    }

    /** Returns the names of a table's columns; nothing where a value is no table of that name. */
    private static Optional<List<String>> columns(Object value, String table) {
        if (!value.getClass().getName().startsWith(TABLESAW)
                || !table.equals(asked(value, "name"))
                || !(asked(value, "columnNames") instanceof List<?> names)) {
            return Optional.empty();
        }
        return Optional.of(names.stream().map(String::valueOf).toList());
    }

    private static @Nullable Object asked(Object value, String method) {
        try {
            return value.getClass().getMethod(method).invoke(value);
        } catch (ReflectiveOperationException e) {
            return null; // Something else of Tablesaw's, such as a column, has no such method.
        }
    }

    private static String held(String kind) {
        return HELD.getOrDefault(kind, "something else");
    }

    private static String capital(String kind) {
        return kind.charAt(0) + kind.substring(1).toLowerCase(Locale.ROOT);
    }
}
