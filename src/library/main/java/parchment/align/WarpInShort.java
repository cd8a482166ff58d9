package parchment.align;

import java.util.Locale;
import parchment.display.answer.InShort;
import parchment.quantity.Elapsed;

/** Puts how far a batch's own clock ran ahead of the others' or behind it into three sentences. */
final class WarpInShort {
    /** Fewer batches make no middle that says what is usual; common practice, no source. */
    private static final int FEWEST = 5;

    private WarpInShort() {}

    /**
     * Where a batch is farthest from the reference clock.
     *
     * @param at time on the reference clock, in seconds
     * @param behind by how many seconds the batch is later; negative if it is earlier
     */
    record Farthest(double at, double behind) {}

    /**
     * Says where a batch is farthest from the others.
     *
     * @param laid how many batches are on the clock, this one included
     */
    static InShort of(Clock clock, String batch, Farthest farthest, int laid) {
        String way = Math.round(Math.abs(farthest.behind())) == 0
                ? "Batch " + batch + " kept the pace of the middle batch to the second."
                : String.format(
                        Locale.ROOT,
                        "Batch %s was farthest from the middle batch at %s on its clock: %.0f s %s.",
                        batch,
                        Elapsed.seconds(farthest.at()),
                        Math.abs(farthest.behind()),
                        farthest.behind() < 0 ? "ahead" : "behind");
        return new InShort(
                way,
                laid < FEWEST
                        ? "The middle of " + laid + " batches is not yet what is usual here."
                        : clock == Clock.BY_ALL_MARKS
                                ? "The middle is that of " + laid
                                        + " batches; a mark written late moves the line as a slow roast does."
                                : "The middle is that of " + laid + " batches.",
                laid < FEWEST
                        ? "Ask again when more batches have been roasted."
                        : "Where its line rises it lost time: look at gas and air there.");
    }

    /** Says that nothing is to be compared: no batch is on the clock, or the clock moves none. */
    static InShort cannotTell(Clock clock, int laid) {
        if (laid == 0) {
            return new InShort(
                    "Which batch ran ahead or behind cannot be told: none is on this clock.",
                    "It needs a bean temperature and the " + clock.needed().words() + ".",
                    "Log the one and write the other while you roast, then ask again.");
        }
        return laid == 1
                ? new InShort(
                        "Whether this batch ran ahead or behind cannot be told.",
                        "It is the only one on this clock.",
                        "Ask again when more batches have been roasted.")
                : new InShort(
                        "On this clock no batch is shifted, and none runs ahead or behind.",
                        "All " + laid + " batches keep the time on which they were logged.",
                        "Take the clock of all marks.");
    }
}
