package parchment.trial;

import java.util.List;
import java.util.Set;
import parchment.quantity.TemperatureUnit;
import parchment.trial.sealed.TrialControl;
import parchment.trial.sealed.TrialTerms;

/** Results of this room for tests of all results, with markup in every name. */
public final class TrialExamples {
    private static final String MARKUP = "<b onerror=\"x\">quay</b>";

    private TrialExamples() {}

    /** A trial with a lost batch and a cupper who had seen targets. */
    public static TrialAnswer answer() {
        List<AssignedBatch> batches = new java.util.ArrayList<>(TrialTables.example().stream()
                .map(batch -> batch.seenBy(Set.of(MARKUP, "Ana")))
                .toList());
        batches.set(4, TrialTables.lost(batches.get(4)));
        return TrialAnswer.of(terms(), batches, TrialTables.SEAL);
    }

    /** A size. */
    public static TrialSize size() {
        return TrialSize.of(terms(), new TrialSpread(0.18, 40, 0.36, 6, 60, 18)).withLost(0.1);
    }

    private static TrialTerms terms() {
        return new TrialTerms(
                MARKUP,
                MARKUP,
                TrialControl.DROP_TEMPERATURE,
                List.of(201.5, 203.0, 204.5),
                0.5,
                1,
                1,
                List.of(MARKUP, "Ana"),
                2,
                TemperatureUnit.CELSIUS);
    }
}
