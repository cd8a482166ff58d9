package parchment.align;

import parchment.display.answer.InShort;
import parchment.stats.Interval;

/** Puts how much of the spread of drop times is pace into three sentences. */
final class SplitInShort {
    private SplitInShort() {}

    static InShort cannotTell(int asked) {
        return new InShort(
                "How much of what makes drop times differ is pace cannot be told.",
                "It takes " + Crowd.LEAST + " batches on one probe with a bean temperature and a drop, more than these "
                        + asked + " give.",
                "Ask again when more batches have been roasted on today's probe.");
    }

    /**
     * Says the split of the drop time.
     *
     * @param usual the usual drop temperature, in words
     * @param paceShare the share that is the time taken to there; under 0 or over 1 where one part made up for the other
     * @param interval of the share
     */
    static InShort of(String usual, double paceShare, Interval interval) {
        long pace = Math.round(100 * paceShare);
        boolean known = Double.isFinite(interval.lower()) && Double.isFinite(interval.upper());
        return new InShort(
                pace > 100
                        ? "Drop times differ by pace, and the drop temperature made up for a part of it."
                        : pace < 0
                                ? "Drop times differ by the drop temperature, and pace made up for a part of it."
                                : "Of what makes drop times differ, about " + pace + " parts in 100 are pace up to "
                                        + usual + " and " + (100 - pace) + " a hotter or colder drop.",
                known
                        ? "Anything from " + part(interval.lower()) + " to " + part(interval.upper())
                                + " parts in 100 for pace agrees with the batches."
                        : "How sure that is cannot be told from so few roast days.",
                !known || interval.lower() <= 0.5 && interval.upper() >= 0.5
                        ? "Which of the two is larger cannot be told: more roast days would tell."
                        : paceShare > 0.5
                                ? "To even out drop times, look where slow and fast batches lose or gain theirs."
                                : "To even out drop times, drop nearer to one temperature.");
    }

    private static long part(double share) {
        return Math.max(0, Math.min(100, Math.round(100 * share)));
    }
}
