package parchment.align;

import java.util.Locale;
import parchment.display.answer.InShort;

/** Puts in which way batches differ most into three sentences. */
final class ShapesInShort {
    private ShapesInShort() {}

    /**
     * The way in which batches differ most.
     *
     * @param amount by how much a batch one standard deviation up lies off the mean where it lies off most, with its unit
     * @param ways the two sides, as in "faster or slower"
     * @param place where that is, on the clock
     * @param share of the spread, 0 to 1
     * @param up the batch farthest up
     * @param down the batch farthest down
     */
    record First(String amount, String ways, String place, double share, String up, String down) {}

    static InShort of(First first, int batches) {
        return new InShort(
                "Batches differ most in one way: about one in three runs more than " + first.amount() + " "
                        + first.ways() + " at " + first.place() + ".",
                String.format(
                        Locale.ROOT,
                        "That way makes %.0f parts in 100 of how far %d batches lie apart; what brought it about is not told.",
                        100 * first.share(),
                        batches),
                "Compare batch " + first.up() + " with batch " + first.down() + ": they lie farthest apart in it.");
    }

    /** Says that no way of differing stands out. */
    static InShort none(int batches) {
        return new InShort(
                "No one way in which these batches differ stands out.",
                "What " + batches + " batches differ in changes sides too often to be told from chance.",
                "Look at the lines one by one.");
    }

    /** Says that there are too few batches. */
    static InShort tooFew(int batches, int needed) {
        return new InShort(
                "In which way batches differ most cannot be told.",
                batches + (batches == 1 ? " batch reaches" : " batches reach")
                        + " over a common stretch of this clock, and " + needed + " are needed.",
                "Ask again when more batches with a bean temperature have been roasted.");
    }
}
