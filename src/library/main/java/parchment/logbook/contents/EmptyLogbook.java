package parchment.logbook.contents;

import parchment.logbook.Batch;
import parchment.quantity.TemperatureUnit;

/**
 * Tells whoever opens a logbook that holds no batch yet what to do with it.
 *
 * <pre>{@code
 * EmptyLogbook.isStandIn(logbook.lastWithCurve())
 * }</pre>
 */
public final class EmptyLogbook {
    /** What a table of batches says in place of its rows, and the summary of the logbook in place of its lots. */
    public static final String WORDS =
            "The logbook has no batch yet. Write a line for each batch into batches.csv, put its curve into the folder 'curves' as a file of"
                    + " the batch's name, and open the logbook again.";

    /** Stands where the name of a batch would; parentheses, so that nobody takes it for one. */
    private static final String NO_NAME = "(none yet)";

    private EmptyLogbook() {}

    /** Returns what stands in for the newest batch of a logbook that has none: a batch of which nothing is known. */
    public static Batch batch(TemperatureUnit reader) {
        return Batch.named(NO_NAME).readerUnit(reader).build();
    }

    /** Tells whether a batch is the one that stands in. */
    public static boolean isStandIn(Batch batch) {
        return isName(batch.name());
    }

    /** Tells whether a name is that of the batch that stands in. */
    public static boolean isName(String batch) {
        return NO_NAME.equals(batch);
    }
}
