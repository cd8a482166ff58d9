package parchment.align;

import java.util.List;
import java.util.Locale;
import parchment.display.answer.InShort;

/** Puts which roast was most like a batch into three sentences. */
final class NearestInShort {
    private static final String TASTE = "Taste the two side by side: alike on paper is not alike in the cup.";

    private NearestInShort() {}

    /**
     * Says which is nearest.
     *
     * @param batch the batch that was asked about
     * @param nearest the others by distance; empty if there are none
     * @param usual the seconds that half of the others are farther than; of no meaning with fewer than two
     * @param otherProbe how many batches another probe read
     */
    static InShort of(String batch, List<Nearest.Neighbour> nearest, double usual, int otherProbe) {
        if (nearest.isEmpty()) {
            return new InShort(
                    "Which roast was most like batch " + batch + " cannot be told.",
                    otherProbe == 0
                            ? "No other batch has a bean temperature."
                            : (otherProbe == 1 ? "The one other batch was" : "All " + otherProbe + " others were")
                                    + " read by another probe, or before or after it was moved.",
                    "Ask again when more batches have been roasted on its probe.");
        }
        Nearest.Neighbour first = nearest.get(0);
        String spent = "One of the two spent " + seconds(first.secondsElsewhere()) + " at other temperatures";
        if (nearest.size() == 1) {
            return new InShort(
                    "The only other batch on the probe of batch " + batch + " is batch "
                            + first.batch().name() + ".",
                    spent + "; whether that is much, one other batch cannot tell.",
                    TASTE);
        }
        return new InShort(
                "Of " + nearest.size() + " batches on its probe, batch "
                        + first.batch().name() + " was roasted most like batch " + batch + ".",
                spent + "; of half of all batches it is more than " + seconds(usual) + ".",
                first.sameLot() == Nearest.Lot.SAME ? TASTE : ofItsOwnLot(nearest));
    }

    /** Says that curves that are not whole cannot be held against each other. */
    static InShort ofTornCurves(String batch, String why) {
        return new InShort(
                "Which roast was most like batch " + batch + " cannot be told.",
                why,
                "Ask about a batch whose curve is whole from the turning point to the drop.");
    }

    private static String ofItsOwnLot(List<Nearest.Neighbour> nearest) {
        return nearest.stream()
                .filter(other -> other.sameLot() == Nearest.Lot.SAME)
                .findFirst()
                .map(own -> "Of its own lot batch " + own.batch().name() + " is nearest: taste the two side by side.")
                .orElse("None of them is known to be of its lot, so a different cup may be the coffee.");
    }

    private static String seconds(double seconds) {
        return String.format(Locale.ROOT, "%.0f s", seconds);
    }
}
