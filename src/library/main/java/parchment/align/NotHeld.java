package parchment.align;

import java.util.Map;

/**
 * The batches that the same probe read and that a batch cannot be held against, because a curve is not whole.
 *
 * @param others how many
 * @param whose whose curve is not whole
 */
record NotHeld(int others, Whose whose) {
    /** Whose curve has a gap on the way or begins too late. */
    enum Whose {
        ITS_OWN,
        THEIRS
    }

    static NotHeld of(String batch, Map<String, FirstPassages> climbs, double base, int held) {
        FirstPassages own = climbs.get(batch);
        boolean whole = own != null && Double.isFinite(Nearest.distance(own, own, base));
        return new NotHeld(climbs.size() - 1 - held, whole ? Whose.THEIRS : Whose.ITS_OWN);
    }

    /** Says why nothing is held against the batch, in a sentence. */
    String words() {
        if (others <= 0) {
            return "No other batch with a bean temperature was read by the same probe.";
        }
        String read =
                others == 1 ? "the one other that its probe read" : "the " + others + " others that its probe read";
        return whose == Whose.ITS_OWN
                ? "Its curve has a gap or begins too late, so it cannot be held against " + read + "."
                : "Each curve of " + read + " has a gap or begins too late, so none can be held against it.";
    }
}
