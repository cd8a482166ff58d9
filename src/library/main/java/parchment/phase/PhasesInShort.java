package parchment.phase;

import java.util.List;
import parchment.display.answer.InShort;
import parchment.quantity.Elapsed;
import parchment.stats.linear.Robust;

/** Puts how long the phases of many batches took into three sentences, by the one that a roaster steers last: the development. */
final class PhasesInShort {
    /** Fewer batches have no middle half to speak of; common practice, no source. */
    private static final int FEWEST = 4;

    private PhasesInShort() {}

    /**
     * Says how long the development took.
     *
     * @param batches how many there are in all
     * @param seconds of the development, one for each batch with all three phases
     * @param toCheck how many batches have something to check
     */
    static InShort of(int batches, List<Double> seconds, int toCheck) {
        if (batches == 0) {
            return new InShort(
                    "How long the phases took cannot be told.",
                    "The logbook has no batch yet.",
                    "Write a line for each batch into batches.csv and open the logbook again.");
        }
        int without = batches - seconds.size();
        String write = "Write yellowing, first crack start and drop of every batch.";
        if (seconds.isEmpty()) {
            return new InShort(
                    "How long the phases took cannot be told.",
                    batches == 1
                            ? "The one batch has not all three marks: yellowing, first crack start and drop."
                            : "None of " + batches
                                    + " batches has all three marks: yellowing, first crack start and drop.",
                    write);
        }
        double[] sorted =
                seconds.stream().mapToDouble(Double::doubleValue).sorted().toArray();
        boolean half = sorted.length >= FEWEST;
        String from = Elapsed.seconds(half ? Robust.quantile(sorted, 0.25) : sorted[0])
                .toString();
        String to = Elapsed.seconds(half ? Robust.quantile(sorted, 0.75) : sorted[sorted.length - 1])
                .toString();
        String who = half
                ? "half of " + sorted.length + " batches"
                : sorted.length == 1 ? "the one batch" : "the " + sorted.length + " batches";
        return new InShort(
                "From first crack start to drop " + who + " took "
                        + (from.equals(to) ? from : "between " + from + " and " + to) + ".",
                without == 0
                        ? "All three phases are known of every batch, as well as its marks are."
                        : without + " of " + batches + (without == 1 ? " batches lacks" : " batches lack")
                                + " a mark and " + (without == 1 ? "is" : "are") + " not counted.",
                toCheck > 0
                        ? "Look at " + (toCheck == 1 ? "the batch" : "the " + toCheck + " batches")
                                + " with something in the last column."
                        : without == 0 ? "Nothing to do; the cup decides." : write);
    }
}
