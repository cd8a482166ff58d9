package parchment.virtual;

import java.util.Optional;
import parchment.virtual.chance.Chance;
import parchment.virtual.written.PlannedBatch;
import parchment.virtual.written.VirtualBatch;

/**
 * What was written beside a batch's numbers, and what was forgotten.
 *
 * @param lot the lot, unless it was forgotten
 * @param roastedMass roasted mass, kg, unless it was forgotten
 * @param purpose what the batch was for
 * @param note what else was written, blank if nothing
 */
record Written(Optional<String> lot, Optional<Double> roastedMass, String purpose, String note) {
    static Written of(VirtualLogbook logbook, VirtualBatch batch) {
        Chance chance = logbook.seed().stream("written " + batch.name());
        boolean lotForgotten = chance.happens(logbook.story().writing().lotForgotten());
        boolean massForgotten = chance.happens(0.03);
        return new Written(
                lotForgotten
                        ? Optional.empty()
                        : Optional.of(logbook.story()
                                .writtenLot(
                                        batch.plan().lot(),
                                        batch.plan().roastedAt().toLocalDate())),
                massForgotten ? Optional.empty() : Optional.of(batch.cooledMass()),
                batch.plan().plan() == PlannedBatch.Plan.CHANCE ? "trial" : "production",
                note(batch, chance));
    }

    private static String note(VirtualBatch batch, Chance chance) {
        if (batch.conditions().draughtFactor() > 1.0 && chance.happens(0.5)) {
            return "windy, chimney pulls well";
        }
        if (batch.plan().lot().process().equals("natural") && chance.happens(0.06)) {
            return "first crack quiet, hard to tell when it began";
        }
        return chance.happens(0.03) ? "sample scoop left in at charge" : "";
    }
}
