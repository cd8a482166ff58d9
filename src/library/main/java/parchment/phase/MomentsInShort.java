package parchment.phase;

import java.util.List;
import parchment.display.answer.InShort;
import parchment.phase.found.Moment;

/** Puts the notable moments of batches into three sentences: the most unusual one, beside what, what to do next. */
final class MomentsInShort {
    private MomentsInShort() {}

    /**
     * Says what stands out most.
     *
     * @param moments the most unusual first
     * @param batches how many batches were asked about
     * @param held how many there are in all, of which each is held against the others
     * @param curves how many of those that were asked about have a bean temperature
     */
    static InShort of(List<Moment> moments, int batches, int held, int curves) {
        String these = batches == 1 ? "this batch" : "these " + batches + " batches";
        if (moments.isEmpty() && curves == 0) {
            return new InShort(
                    "Whether anything unusual happened cannot be told.",
                    batches == 0
                            ? "There is no batch yet."
                            : (batches == 1 ? "The batch has no" : "None of " + these + " has a")
                                    + " bean temperature.",
                    "Log the bean temperature of the next batches, then ask again.");
        }
        if (moments.isEmpty() && held < Moments.FEWEST) {
            return new InShort(
                    "Whether anything unusual happened cannot be told.",
                    "Each batch is held against at least " + (Moments.FEWEST - 1) + " others, and there "
                            + (held == 1 ? "is 1 batch" : "are " + held + " batches") + " in all.",
                    "Ask again when more have been roasted.");
        }
        if (moments.isEmpty()) {
            return new InShort(
                    "In " + these + " nothing was far enough from the others to be listed.",
                    "What is small, or slow, or the same in all of them, could still hide.",
                    "Nothing to do; the cup decides.");
        }
        Moment first = moments.get(0);
        return new InShort(
                "Batch " + first.batch() + " stands out at " + first.at() + ": "
                        + first.detector().name() + ", " + first.shownSize() + " where " + first.shownUsual()
                        + " is usual.",
                first.inWords(),
                moments.size() == 1
                        ? "Look at its picture and ask what happened then; unusual is not wrong."
                        : "Look at its picture, then at the " + (moments.size() - 1) + " below; unusual is not wrong.");
    }
}
