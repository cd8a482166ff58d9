package parchment.evidence;

import parchment.display.answer.InShort;
import parchment.evidence.finding.Wording;
import parchment.stats.Interval;

/** Puts how far attributes move together in one cupper's scores into three sentences. */
final class HaloInShort {
    /** A mean correlation on either side of which attributes are said to move together or hardly to; common practice, no source. */
    static final double TOGETHER = 0.3;

    private HaloInShort() {}

    /**
     * Says the halo.
     *
     * @param attributes how many are scored
     * @param looks as how many separate ones they count
     * @param mean the mean correlation; NaN if it cannot be told
     * @param interval of it; its ends are NaN where that cannot be told
     */
    static InShort of(
            int attributes, Halo.Cuppers cuppers, double looks, double mean, Interval interval, int cuppings) {
        if (Double.isNaN(mean)) {
            return new InShort(
                    "Whether attributes move together in one cupper's scores cannot be told.",
                    "That needs two attributes that one cupper scored for two batches in one cupping.",
                    "Let each cupper score at least two attributes of every cup.");
        }
        boolean known = !Double.isNaN(interval.lower());
        boolean together = known && interval.lower() > TOGETHER;
        boolean hardly = known && interval.upper() < TOGETHER;
        String whose = cuppers == Halo.Cuppers.SEVERAL ? "one cupper's own scores" : "this cupper's scores";
        String separate = ": they count as about " + Wording.plain(looks, 1) + " separate ones.";
        return new InShort(
                together || hardly
                        ? "In " + whose + " the " + attributes + " attributes " + (together ? "move" : "hardly move")
                                + " together" + separate
                        : "How far the " + attributes + " attributes move together in " + whose + " cannot be told.",
                known
                        ? "Between 0, not at all, and 1, always, two of them stand at " + Wording.plain(mean, 2) + " ("
                                + Wording.plain(interval.lower(), 2) + " to " + Wording.plain(interval.upper(), 2)
                                + ")."
                        : cuppings < Halo.FEWEST_CUPPINGS
                                ? "That takes " + Halo.FEWEST_CUPPINGS + " cuppings, and there "
                                        + (cuppings == 1 ? "is 1." : "are " + cuppings + ".")
                                : "It hangs on one of the " + cuppings
                                        + " cuppings, and without that it cannot be worked out.",
                cuppers == Halo.Cuppers.ONE
                        ? "Ask a second cupper to the table: only that parts a better cup from a generous cupper."
                        : hardly
                                ? "Ask about each attribute by itself."
                                : "Take several attributes that rise together for one finding, not for several.");
    }
}
