package parchment.trial;

import java.util.List;
import parchment.display.Showable;

/** Answers a finished trial. */
public final class TrialAnswer implements Showable {
    private final TrialTerms terms;
    private final List<AssignedBatch> batches;
    private final String seal;
    private final int look;

    private TrialAnswer(TrialTerms terms, List<AssignedBatch> batches, String seal, int look) {
        this.terms = terms;
        this.batches = List.copyOf(batches);
        this.seal = seal;
        this.look = look;
    }

    /** Answers at the first look. */
    static TrialAnswer of(TrialTerms terms, List<AssignedBatch> batches, String seal) {
        return atLook(1, terms, batches, seal);
    }

    /**
     * Answers at a look.
     *
     * @param look counted from 1; one more than were planned is said to be one too many and gets no verdict
     * @param seal the trial's seal, 64 digits as printed
     */
    static TrialAnswer atLook(int look, TrialTerms terms, List<AssignedBatch> batches, String seal) {
        return new TrialAnswer(terms, batches, seal, look);
    }

    @Override
    public String toString() {
        return "Trial " + terms.trial() + ", look " + look + ": " + batches.size() + " places, seal " + seal;
    }
}
