package parchment.evidence;

import parchment.display.Showable;
import parchment.evidence.finding.Slope;
import parchment.evidence.finding.Verdict;
import parchment.evidence.finding.Wording;
import parchment.stats.Interval;

/**
 * One way in which a roast can differ from its neighbours, named by what gives way, with what went with it.
 *
 * <pre>{@code
 * DestinationOrPath.of("sweetness", logbook).contrast("added time")
 * }</pre>
 *
 * @param name in two words, as in "added time"
 * @param meaning what changes and what stays, in words
 * @param stepWords the step it is told in, as in "10 s"
 * @param fitted points per step, as fitted
 * @param perStep points per step, corrected for the measures' errors where that matters
 * @param interval of the told slope
 * @param reliability how much of what it rests on is the batches' own and not error of measuring
 * @param inflation by how much its variance grew because destination, development and early pace moved together
 * @param triedSteps how many steps lie between the 10th and the 90th percentile of the batches, everything else held
 * @param verdict suggestive at most: nobody drew the path by chance
 * @param because the kind of reason behind the verdict
 * @param reason why, in words
 */
public record PathContrast(
        String name,
        String meaning,
        String stepWords,
        Slope fitted,
        Slope perStep,
        Interval interval,
        Reliability reliability,
        double inflation,
        double triedSteps,
        Verdict verdict,
        Because because,
        String reason)
        implements Showable {

    /** Says whether this logbook can tell it from the others at all, whatever the answer. */
    public Separation separation() {
        return perStep.known()
                        && !reliability.tooNarrow()
                        && !reliability.tooLow()
                        && inflation <= PathRules.MOST_INFLATION
                        && because != Because.MOVED_WITH_A_CONTROL
                ? Separation.SEPARATED
                : Separation.NOT_SEPARATED;
    }

    /** Which way a bend goes. */
    enum Bend {
        RISES_THEN_FALLS,
        FALLS_THEN_RISES
    }

    /** Returns which way the score bends along it, as the reason says; of use only where a bend was seen. */
    Bend bend() {
        return reason.contains(PathRules.FALLS_THEN_RISES) ? Bend.FALLS_THEN_RISES : Bend.RISES_THEN_FALLS;
    }

    /** Says what kind of reason stands behind a verdict. */
    public enum Because {
        /** There is not enough to fit three measures. */
        TOO_FEW_SCORES,
        /** One of the three measures is determined by the others. */
        FOLLOWS_FROM_OTHERS,
        /** Too few roast days are left to compare. */
        TOO_FEW_DAYS,
        /** The batches differ in it only together with the other measures. */
        MOVED_TOGETHER,
        /** They differ in it only together with a control that somebody set, or with the calendar. */
        MOVED_WITH_A_CONTROL,
        /** What is left of it is little more than error of measuring. */
        ERROR_OF_MEASURING,
        /** The next roast day's measure goes with today's score too. */
        CALENDAR,
        /** A slope was seen. */
        SLOPE,
        /** A bend was seen. */
        BEND,
        /** No difference as large as matters is left. */
        NONE_THAT_MATTERS,
        /** Zero and differences that matter both agree with the scores, or what was seen is not rare enough. */
        TOO_WIDE
    }

    /** Says whether a contrast can be told from the others. */
    public enum Separation {
        /** The batches differ in it while the rest stays. */
        SEPARATED,
        /** They hardly differ in it, or only together with the rest or with a control. */
        NOT_SEPARATED
    }

    @Override
    public String toString() {
        String sentence = Wording.sentence(name) + ": " + verdict.words() + "; " + reason;
        return perStep.known()
                ? sentence + ". Per " + stepWords + " " + Wording.signed(perStep.estimate(), interval) + " points ("
                        + Wording.percent(interval.level()) + " interval " + Wording.signed(interval) + ")."
                : sentence + ".";
    }
}
