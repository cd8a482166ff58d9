package parchment.virtual;

import java.util.ArrayList;
import java.util.List;
import parchment.sheet.CsvText;

/**
 * A table that becomes one file of a logbook.
 *
 * @param path the file's path within the logbook
 * @param columns the columns
 * @param rows the rows, blank where nothing was written
 */
record WrittenTable(String path, List<Column> columns, List<List<String>> rows) {
    /**
     * Describes a column.
     *
     * @param header the header, with its unit in brackets
     * @param type what is in it
     */
    record Column(String header, Type type) {}

    /** Types of the Frictionless Table Schema. */
    enum Type {
        STRING,
        NUMBER,
        INTEGER,
        DATE,
        DATETIME,
        BOOLEAN;

        String word() {
            return name().toLowerCase(java.util.Locale.ROOT);
        }
    }

    static Column string(String header) {
        return new Column(header, Type.STRING);
    }

    static Column number(String header) {
        return new Column(header, Type.NUMBER);
    }

    /** Returns the file's text, with a line feed at each line's end. */
    String text() {
        List<List<String>> all = new ArrayList<>(rows.size() + 1);
        all.add(columns.stream().map(Column::header).toList());
        all.addAll(rows);
        return CsvText.of(all);
    }
}
