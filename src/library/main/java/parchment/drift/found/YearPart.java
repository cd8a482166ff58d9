package parchment.drift.found;

import parchment.display.Showable;
import parchment.stats.Estimate;

/**
 * One part of how a lot's number moved through time, and whether the logbook can tell it from the others.
 *
 * @param name in words, with the step it is told in, as in "ageing per 100 days"
 * @param verdict whether it can be told
 * @param estimate the part as the library keeps the number, NaN where nothing was estimated
 * @param shown the estimate with its 90 % interval in the reader's unit; empty where nothing was estimated
 * @param words what is to be said of it
 */
public record YearPart(String name, Verdict verdict, Estimate estimate, String shown, String words)
        implements Showable {
    /** Whether a part can be told from the others. */
    public enum Verdict {
        /** The number is this part's. */
        TOLD,
        /** The number is the sum of this and other parts, which no logbook like this one can separate. */
        SUM_ONLY,
        /** There is no number worth giving. */
        CANNOT_TELL
    }

    @Override
    public String toString() {
        return name + ": " + (verdict == Verdict.CANNOT_TELL ? "cannot tell. " : shown + ". ") + words;
    }
}
