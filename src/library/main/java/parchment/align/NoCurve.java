package parchment.align;

import parchment.display.answer.InShort;
import parchment.logbook.Batch;
import parchment.logbook.Quantity;

/** Tells of a batch whose bean temperature was not logged that nothing can be told from it, and what to do. */
final class NoCurve {
    private NoCurve() {}

    /** Tells whether a batch has no bean temperature, so that nothing can be asked of its path. */
    static boolean of(Batch batch) {
        return !batch.logged().contains(Quantity.BEAN_TEMPERATURE);
    }

    /**
     * Says so in three sentences.
     *
     * @param found what cannot be told, as a sentence
     */
    static InShort inShort(String found) {
        return new InShort(
                found,
                "No batch of this logbook has a bean temperature curve yet.",
                "Log the bean temperature, put one file for each batch into the folder 'curves', and ask again.");
    }
}
