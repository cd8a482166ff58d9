package parchment.align;

import java.util.List;
import parchment.display.answer.InShort;
import parchment.display.answer.Sentence;

/** Puts the difference of two groups into three sentences. */
final class DifferenceInShort {
    private DifferenceInShort() {}

    static InShort cannotTell(String first, String second) {
        return new InShort(
                "Whether these two differ cannot be told: " + first + " and " + second + ".",
                "Each needs batches of 5 roast days that reach over a common stretch.",
                "Roast both on more days, then ask again.");
    }

    /**
     * Says where two groups differ.
     *
     * @param stretches in words, the largest difference first; empty if none is seen
     * @param notRuledOut the largest difference that agrees with the batches, with its unit
     */
    static InShort of(String first, String second, List<String> stretches, String notRuledOut) {
        if (stretches.isEmpty()) {
            return new InShort(
                    "No difference is seen: " + first + " against " + second + ".",
                    "Differences of up to " + notRuledOut + " are not ruled out.",
                    "More batches of both on more roast days would rule out smaller ones.");
        }
        int more = stretches.size() - 1;
        return new InShort(
                Sentence.of(stretches.get(0)) + ".",
                "That is more than luck, also over the whole curve at once"
                        + (more == 0
                                ? "."
                                : more == 1
                                        ? ", and so is one other stretch below."
                                        : ", and so are " + more + " other stretches below."),
                "Chance did not part these groups: look for what else differed between them.");
    }
}
