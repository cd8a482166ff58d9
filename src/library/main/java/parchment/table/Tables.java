package parchment.table;

import parchment.feature.BatchTable;
import parchment.feature.Feature;
import parchment.feature.Features;
import parchment.logbook.Logbook;
import parchment.logbook.contents.LogbookException;
import tech.tablesaw.api.Table;

/**
 * Gives the batches, marks, cups, lots and problems of a logbook as tables of the library Tablesaw, for questions of your own.
 *
 * <pre>{@code
 * var cups = Tables.cups(logbook);
 * cups.where(cups.stringColumn("cupper").isEqualTo("Ines"))
 * }</pre>
 *
 * <p>Rows are in the logbook's order. The heading of a number ends with its unit, written as the logbook format writes it: {@code drop temperature [°C]}. Temperatures and
 * masses are in the logbook's own units and shares in per cent, as every page shows them. Numbers are whole in the table and rounded where it is
 * shown. What is missing stays missing. Times of day are those of the logbook's time zone, which the table's name tells.
 */
public final class Tables {
    private static final String TABLESAW = "tech.tablesaw.api.Table";

    private Tables() {}

    /**
     * Returns a row for each batch: its name, lot, machine and time, the features asked for, or every built-in one if none is, and what else was written of it.
     *
     * @throws LogbookException if two features have the same name, or a column that is asked for is in no batch
     * @throws UnsupportedOperationException if Tablesaw is not on the class path
     */
    public static Table batches(Logbook logbook, Feature... features) {
        check();
        return TableOfBatches.of(
                features.length == 0
                        ? BatchTable.of(logbook, Features.all().list())
                        : BatchTable.of(logbook, features));
    }

    /**
     * Returns a row for each batch of a table that was measured already, such as one told on today's probe: {@code BatchTable.of(logbook).onTodaysProbe()}.
     *
     * @throws UnsupportedOperationException if Tablesaw is not on the class path
     */
    public static Table batches(BatchTable measured) {
        check();
        return TableOfBatches.of(measured);
    }

    /**
     * Returns a row for each mark of each batch, written or found: when it was, what the bean probe read, how sure both are, and where the mark comes from.
     *
     * @throws UnsupportedOperationException if Tablesaw is not on the class path
     */
    public static Table marks(Logbook logbook) {
        check();
        return TableOfMarks.of(logbook);
    }

    /**
     * Returns a row for each cup that somebody scored, a column for each attribute.
     *
     * @throws UnsupportedOperationException if Tablesaw is not on the class path
     */
    public static Table cups(Logbook logbook) {
        check();
        return TableOfCups.of(logbook);
    }

    /**
     * Returns a row for each purchase of green coffee, as it stands in {@code lots.csv}.
     *
     * @throws UnsupportedOperationException if Tablesaw is not on the class path
     */
    public static Table lots(Logbook logbook) {
        check();
        return TableOfLots.of(logbook);
    }

    /**
     * Returns a row for each thing that could not be read as written, with its file and line.
     *
     * @throws UnsupportedOperationException if Tablesaw is not on the class path
     */
    public static Table problems(Logbook logbook) {
        check();
        return TableOfProblems.of(logbook);
    }

    /**
     * Returns the heading that a feature's column has in {@link #batches}, as in "drop temperature [°C]". It hangs on the units of the logbook, so whoever
     * wants to ask any logbook asks for it by this.
     */
    public static String heading(Feature feature, Logbook logbook) {
        return Rows.heading(
                feature.name(), feature.unit().withMassesIn(logbook.massUnit()).symbol(logbook.readerUnit()));
    }

    /** Says what lacks before a class of it is asked for: Java would only name the class. */
    private static void check() {
        try {
            Class.forName(TABLESAW, false, Tables.class.getClassLoader());
        } catch (ClassNotFoundException missing) {
            throw new UnsupportedOperationException(
                    "A Tablesaw table needs the library Tablesaw, which is not on the class path. Add tech.tablesaw:tablesaw-core"
                            + " to your project; in a notebook of Parchment it is there.",
                    missing);
        }
    }
}
