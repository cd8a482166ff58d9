package parchment.drift;

import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import parchment.display.answer.InShort;

/** Puts where batches or cups differ into three sentences: the largest source, whether it is that for sure, and what to do about it. */
final class SharesInShort {
    /** A share whose interval is wider than this, of 1, is not told as one: half of everything is no answer. */
    static final double WIDEST = 0.5;

    /** So few of something are named as the reason why its share is hardly known. */
    private static final int FEW = 10;

    private SharesInShort() {}

    /**
     * Says the shares.
     *
     * @param name what differs
     * @param shares the sources; empty if they cannot be told
     * @param notes what could not be told, the reason last
     */
    static InShort of(String name, List<VarianceShares.Share> shares, List<String> notes) {
        if (shares.isEmpty()) {
            return new InShort(
                    "Where the " + name + " differs cannot be told.",
                    notes.get(notes.size() - 1),
                    "Ask again when more has been written down.");
        }
        List<VarianceShares.Share> bySize = shares.stream()
                .sorted(Comparator.comparingDouble(share -> -share.share()))
                .toList();
        VarianceShares.Share largest = bySize.get(0);
        String source = source(largest);
        if (largest.interval().upper() - largest.interval().lower() > WIDEST) {
            return new InShort(
                    "What makes the " + name + " differ most cannot be told.",
                    "Between " + source + " may lie anything from " + range(largest) + " parts in 100"
                            + (largest.groups() <= FEW ? "; there are only " + largest.groups() + " of them." : "."),
                    "Ask again when " + more(largest) + ".");
        }
        VarianceShares.Share second = bySize.get(1);
        boolean clear = second.interval().upper() < largest.interval().lower();
        return new InShort(
                "Of what makes the " + name + " differ, about " + parts(largest.share()) + " parts in 100 lie between "
                        + source + " (" + range(largest) + ").",
                (clear ? "Nothing else comes near: " : "What comes next may be as much: ") + source(second) + " with "
                        + parts(second.share()) + " parts (" + range(second) + ").",
                next(largest));
    }

    private static String parts(double share) {
        return String.format(Locale.ROOT, "%.0f", 100 * share);
    }

    private static String range(VarianceShares.Share share) {
        return parts(share.interval().lower()) + " to " + parts(share.interval().upper());
    }

    /** The rest of a cup's score has a longer name in the table. */
    private static String source(VarianceShares.Share share) {
        return share.source().replaceFirst(",.*", "");
    }

    private static String more(VarianceShares.Share share) {
        return switch (source(share)) {
            case "lots" -> "more lots have been roasted";
            case "roast days" -> "there are more roast days";
            case "roasters" -> "more people have roasted";
            case "cuppers" -> "more people have cupped";
            case "cuppings" -> "there have been more cuppings";
            default -> "there are more batches";
        };
    }

    private static String next(VarianceShares.Share share) {
        return switch (source(share)) {
            case "lots" -> "Compare batches of one lot only; lots differ by themselves.";
            case "roast days" -> "Ask what differs from day to day: the room, the warm-up, work on the machine.";
            case "roasters" -> "Let each roaster roast the same lots, and agree on how marks are written.";
            case "cuppers" -> "Let every cupper taste all the batches that you want to compare.";
            case "cuppings" -> "Put batches that you want to compare into one cupping.";
            case "batches within a day" ->
                "Ask what differs from batch to batch: charge, mass, gas, time since the last drop.";
            default -> "Taste more cups of each batch before you compare two.";
        };
    }
}
