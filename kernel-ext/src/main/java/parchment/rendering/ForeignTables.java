package parchment.rendering;

import java.util.List;
import parchment.display.Showable;

/** Shows the tables of other libraries as ours: sorted by a click, with bounds. */
final class ForeignTables {
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
                shown.column(
                        column.text("name"),
                        row -> Boolean.TRUE.equals(column.call("isMissing", ONE, row))
                                ? null
                                : column.call("get", ONE, row));
            }
        }
        return shown.table();
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
