package parchment.table;

import parchment.logbook.Logbook;

/** What a table is called: what its rows are, of which logbook. */
final class TableNames {
    private TableNames() {}

    static String of(String what, Logbook logbook) {
        return what + " of " + logbook.name();
    }

    /** Returns the name of a table that has times of day, which would say nothing without their zone. */
    static String timed(String what, Logbook logbook) {
        return of(what, logbook) + ", times of " + logbook.contents().zone();
    }
}
