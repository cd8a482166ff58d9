package parchment.evidence;

/**
 * One row of the model of scores: one score of one cup with what stands beside it.
 *
 * @param batch the batch in the cup, by its position in the batches that are kept
 * @param restDays whole days from the roast to the tasting
 * @param score the score in points
 */
record ScoreRow(int batch, String cupping, String cupper, double restDays, double score) {

    /** Names one cupper's work in one cupping. */
    String sitting() {
        return cupping + " \u00b7 " + cupper;
    }
}
