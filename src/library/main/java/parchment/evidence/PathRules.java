package parchment.evidence;

import java.util.List;
import java.util.function.Supplier;
import parchment.evidence.finding.Slope;
import parchment.evidence.finding.Verdict;
import parchment.evidence.finding.Wording;
import parchment.stats.Interval;

/**
 * Turns what was worked out of one comparison of destination and path into a verdict with its reason.
 *
 * <p>In order: a comparison that follows from others, too few roast days, measures or controls that moved together, or error of
 * measuring gives "cannot tell". A slope (at 1 in 100, as five are looked at) or a bend (at 1 in 500) is a finding, never more than
 * "suggestive"; if the next roast day's measure goes with the score too, it is "cannot tell". Whatever was seen, if no difference that
 * matters is left it is "too small to matter", and where nothing was seen, "nothing seen"; else "cannot tell".
 */
final class PathRules {
    /** Beyond this variance inflation two things count as one (Marquardt 1970: above 10 a coefficient is not to be trusted). */
    static final double MOST_INFLATION = 10;

    /** Five comparisons share a chance of 5 in 100. */
    static final double CHANCE = 0.01;

    /** Five bends share a chance of 1 in 100 on top. */
    static final double CHANCE_OF_BEND = 0.002;

    /** With fewer degrees of freedom nothing is said. */
    static final double FEWEST_DEGREES = 3;

    /** Two one-sided tests at 5 %, as one interval. */
    private static final double TWO_ONE_SIDED = 0.90;

    /** Stands in the reason of a bend that opens upward. */
    static final String FALLS_THEN_RISES = "falls and rises";

    private PathRules() {}

    /**
     * Holds all that a verdict on one comparison rests on.
     *
     * @param slope of the score along the comparison
     * @param told the interval of the slope that is told
     * @param controls the controls and calendar facts from which the comparison cannot be told, closest first; worked out only if it
     *     is asked for
     * @param bend the differences along it with a bend; worked out only if it is asked for
     * @param control whether the next roast day's measure goes with today's score; worked out only if it is asked for
     * @param margin the smallest difference that matters, in points
     */
    record Findings(
            JointSlope slope,
            Interval told,
            Supplier<List<String>> controls,
            Supplier<PairsOfPlaces> bend,
            Supplier<NegativeControl> control,
            double margin) {}

    /** Holds a verdict, its kind of reason, and the reason in words. */
    record Judgement(Verdict verdict, PathContrast.Because because, String words) {}

    static Judgement judge(Findings found) {
        JointSlope slope = found.slope();
        if (Double.isNaN(slope.fitted().estimate())) {
            return cannotTell(
                    PathContrast.Because.FOLLOWS_FROM_OTHERS,
                    "in this logbook one of drop temperature, development time and time to first crack follows from the others");
        }
        if (!slope.told().known() || slope.fitted().degreesOfFreedom() < FEWEST_DEGREES) {
            return cannotTell(
                    PathContrast.Because.TOO_FEW_DAYS,
                    "once lots, dates and the rest are taken into account, too few roast days are left to compare");
        }
        if (slope.inflation() > MOST_INFLATION) {
            return cannotTell(
                    PathContrast.Because.MOVED_TOGETHER,
                    "the batches differ in it only together with the rest (variance inflation "
                            + Wording.plain(slope.inflation(), 0) + ", over " + Wording.plain(MOST_INFLATION, 0) + ")");
        }
        List<String> controls = found.controls().get();
        if (!controls.isEmpty()) {
            return cannotTell(
                    PathContrast.Because.MOVED_WITH_A_CONTROL,
                    "the batches differ in it only together with " + Wording.list(controls)
                            + ", and the score may have gone with either");
        }
        if (slope.reliability().tooNarrow() || slope.reliability().tooLow()) {
            return cannotTell(
                    PathContrast.Because.ERROR_OF_MEASURING,
                    "once the rest is held, the batches differ in it by little more than the error of measuring");
        }
        return told(found);
    }

    private static Judgement told(Findings found) {
        JointSlope slope = found.slope();
        boolean sloped = slope.fitted().chance() < CHANCE;
        PairsOfPlaces pairs = found.bend().get();
        Slope bend = pairs.square();
        boolean bent = bend.chance() < CHANCE_OF_BEND;
        boolean small = noneThatMatters(found, pairs);
        if (sloped || bent) {
            return found.control().get().setOff()
                    ? cannotTell(
                            PathContrast.Because.CALENDAR,
                            "it went with the score, but the next roast day's does too, which cannot be by itself: something that moves with"
                                    + " the calendar may be behind both (by chance alone 1 logbook in 20 shows this)")
                    : finding(found, sloped ? Slope.MISSING : bend, small);
        }
        boolean zeroLeftOut = found.told().lower() > 0 || found.told().upper() < 0;
        String margin = Wording.points(found.margin());
        if (small) {
            return zeroLeftOut
                    ? new Judgement(
                            Verdict.TOO_SMALL,
                            PathContrast.Because.NONE_THAT_MATTERS,
                            "zero lies outside its interval, but over what was tried of it no difference and no bend larger than "
                                    + margin + " points is left")
                    : new Judgement(
                            Verdict.NOTHING_SEEN,
                            PathContrast.Because.NONE_THAT_MATTERS,
                            "over what was tried of it no difference and no bend larger than " + margin
                                    + " points is left");
        }
        return cannotTell(
                PathContrast.Because.TOO_WIDE,
                zeroLeftOut
                        ? "zero lies outside its interval, but as five comparisons are looked at that is not rare enough: chance alone would do"
                                + " as much in 1 of 100 logbooks or more"
                        : "zero and differences large enough to matter (" + margin
                                + " points over what was tried) both agree with the scores");
    }

    /** A slope is told if the bend is missing. */
    private static Judgement finding(Findings found, Slope bend, boolean small) {
        PathContrast.Because because = bend.known() ? PathContrast.Because.BEND : PathContrast.Because.SLOPE;
        String seen = bend.known()
                ? "the score " + (bend.estimate() < 0 ? "rises and falls" : FALLS_THEN_RISES)
                        + " along it, so no one slope describes it; chance alone brings about such a bend in fewer than 1 of 500 logbooks"
                : "chance alone would do as much in fewer than 1 of 100 logbooks";
        return small
                ? new Judgement(
                        Verdict.TOO_SMALL,
                        because,
                        seen + ", but over what was tried of it no difference and no bend larger than "
                                + Wording.points(found.margin()) + " points is left")
                : new Judgement(
                        Verdict.SUGGESTIVE,
                        because,
                        seen
                                + "; nobody drew the way there by chance, whatever set the drop, so what the roaster saw in the beans may stand behind both");
    }

    /** Says whether no two places of what was tried differ by the margin, as for one feature. */
    private static boolean noneThatMatters(Findings found, PairsOfPlaces pairs) {
        JointSlope slope = found.slope();
        Interval straight = slope.told().per(slope.width()).interval(TWO_ONE_SIDED);
        return pairs.noneThatMatters(slope.low(), slope.low() + slope.width(), straight, found.margin());
    }

    private static Judgement cannotTell(PathContrast.Because because, String words) {
        return new Judgement(Verdict.CANNOT_TELL, because, words);
    }
}
