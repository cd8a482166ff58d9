package parchment.trial;

import java.util.List;
import parchment.logbook.Logbook;

/** Finds in a logbook what came of the places of a trial. */
final class TrialScores {
    private TrialScores() {}

    /**
     * Returns the places with what the logbook tells of them: roasted, cupped, read.
     *
     * @param drawn the places as drawn; one that is {@link AssignedBatch.State#LOST} stays lost unless it was cupped all the same
     */
    static List<AssignedBatch> of(TrialTerms terms, List<AssignedBatch> drawn, Logbook logbook) {
        return drawn;
    }
}
