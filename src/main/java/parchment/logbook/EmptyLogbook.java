package parchment.logbook;

/** Says what to do with a logbook that holds no batch yet. */
public final class EmptyLogbook {
    /** What a table of batches says in place of its rows, and the summary of the logbook in place of its lots. */
    public static final String WORDS =
            "The logbook has no batch yet. Write a line for each batch into batches.csv, put its curve into the folder 'curves' as a file of"
                    + " the batch's name, and open the logbook again.";

    private EmptyLogbook() {}
}
