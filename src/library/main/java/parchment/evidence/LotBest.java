package parchment.evidence;

import java.util.Optional;
import parchment.display.Showable;
import parchment.evidence.finding.Slope;
import parchment.evidence.finding.Wording;

/**
 * Where one lot is best, as a reading on today's probe, as far as its own batches tell.
 *
 * @param lot the lot, with its machine where the logbook has several
 * @param batches how many scored batches
 * @param roastDays on how many roast days
 * @param slope points per unit of the feature at the lot's own mean; the lots' common slope if the lot has too few batches for its own
 * @param own whether the slope is the lot's own
 * @param best the best place with its set
 */
public record LotBest(String lot, int batches, int roastDays, Slope slope, Own own, Peak best) implements Showable {
    /** Whose slope it is. */
    public enum Own {
        /** The lot's own. */
        OWN,
        /** That of all lots without one of their own, together. */
        SHARED
    }

    /**
     * Tells whether it is that of a lot on a machine, or of the lot where the logbook has one machine.
     *
     * @param onMachine the machine as written; empty if none was
     */
    public boolean isOf(String name, Optional<String> onMachine) {
        return lot.equals(name) || lot.equals(TastedBatch.lotWords(TastedBatch.lotKey(name, onMachine.orElse(""))));
    }

    @Override
    public String text() {
        return best.answer() == Peak.Answer.INSIDE ? EvidencePage.cautioned(toString()) : toString();
    }

    @Override
    public String toString() {
        return lot + " (" + Wording.count(batches, "batch", "batches") + ", "
                + Wording.count(roastDays, "roast day", "roast days") + "): " + best;
    }
}
