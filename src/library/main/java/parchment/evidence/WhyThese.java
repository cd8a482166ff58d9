package parchment.evidence;

import parchment.evidence.finding.Verdict;
import parchment.feature.kind.Role;

/**
 * Explains below the picture of an answer why just its two readings are compared, what its brackets hold, and where nobody looked.
 */
final class WhyThese {
    /** A reading within this part of the range from its end is at the end; readings are round. */
    private static final double LITTLE_PART = 5;

    private WhyThese() {}

    /**
     * Says why just these two readings are compared, and what stands in brackets; empty where the first sentence names neither.
     *
     * @param told the two readings
     * @param planned whether chance set the targets, so that a difference is what the feature itself did
     */
    static String words(
            TwoReadings told, Measure measure, Verdict verdict, VerdictRules.Why why, Findings.Planned planned) {
        boolean bracketed = verdict == Verdict.TOO_SMALL || verdict == Verdict.SUGGESTIVE || verdict == Verdict.STRONG;
        String brackets = !bracketed
                ? ""
                : planned == Findings.Planned.BY_CHANCE
                        ? " In brackets: the difference that the " + measure.name()
                                + " itself makes lies in there 9 times in 10."
                        : " In brackets: what many more batches like these would show lies in there 9 times in 10; what the "
                                + measure.name() + " itself does may lie outside.";
        if (told.placesAreReadings() && why != VerdictRules.Why.HARDLY_VARIED) {
            return "Why " + told.both(" and ") + ": there the drawn line is "
                    + (told.rises() ? "lowest and highest" : "highest and lowest")
                    + ", the outermost tenth of the batches at either end left aside." + brackets;
        }
        return bracketed
                ? "Why " + measure.difference(told.apart())
                        + ": so far apart the batches lie, the outermost tenth at either end left aside." + brackets
                : "";
    }

    /**
     * Says that nobody tried what lies beyond the better end, where the score was best at the end of what was tried; empty where it was not.
     *
     * @param told the two readings
     */
    static String beyond(TwoReadings told, Measure measure, Verdict verdict, TriedRange range) {
        boolean found = verdict == Verdict.SUGGESTIVE || verdict == Verdict.STRONG;
        if (!found || !told.placesAreReadings() || told.top().isPresent() || measure.role() == Role.CALENDAR) {
            return "";
        }
        // A bend may be best at neither end.
        double little = range.width() / LITTLE_PART;
        if (told.rises() ? told.to() < range.high() - little : told.to() > range.low() + little) {
            return "";
        }
        return told.higher() + " is only the better of these two: it lies near the edge, and nobody tried a "
                + measure.name()
                + (told.rises() ? " above " : " below ")
                + measure.value(told.rises() ? range.highest() : range.lowest())
                + ". There it may score higher still, or lower: go in small steps only, inside what your machine's maker allows.";
    }
}
