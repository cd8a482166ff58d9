package parchment.evidence;

import java.util.List;
import parchment.display.answer.FirstFew;
import parchment.evidence.finding.Wording;

/**
 * Counts what a result could not use.
 *
 * @param count how many
 * @param what what they are
 * @param reason why, as in "not cupped"
 * @param batches the names of the batches, in the logbook's order; empty for scores
 */
record Exclusion(int count, What what, String reason, List<String> batches) {
    /** Copies the names. */
    public Exclusion {
        batches = List.copyOf(batches);
    }

    /** Names what can be left out. */
    public enum What {
        /** Roasts. */
        BATCHES("batch", "batches"),
        /** One cupper's scores of one cup. */
        SCORES("score", "scores");

        private final String one;
        private final String many;

        What(String one, String many) {
            this.one = one;
            this.many = many;
        }
    }

    @Override
    public String toString() {
        return Wording.count(count, what.one, what.many) + " left out"
                + (batches.isEmpty() ? "" : " (" + FirstFew.of(batches) + ")") + ": " + reason;
    }
}
