package parchment.evidence;

import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.Map;
import parchment.evidence.finding.PointsWords;
import parchment.evidence.finding.Slope;
import parchment.evidence.finding.Verdict;
import parchment.evidence.finding.Wording;
import parchment.stats.Estimate;
import parchment.stats.Interval;
import parchment.stats.linear.CannotFitException;
import parchment.stats.mixed.LinearMixedModel;
import parchment.stats.mixed.MixedDesign;
import parchment.stats.ordinal.OrdinalMixedModel;

/**
 * Answers a question a second time where scores come in few steps, with the steps taken in their order and nothing said of how far apart
 * they lie, and says whether both answers agree.
 *
 * <p>A cumulative logit model has the columns and the groups of the linear one. What it cannot hold (a course over the date that bends, a
 * slope of each cupper's own, what probe periods share, the price of estimated weights) enters in two ways: the course as the linear model
 * found it is a column, and its errors are widened by as much as all of this widens the linear model's error beyond that of a linear model
 * with just these columns and groups. Its degrees of freedom are the linear model's. The difference between two readings is that of the
 * expected scores, each step times its chance.
 *
 * @param state whether it was asked and could be fitted
 * @param steps what the scores look like
 * @param linear the difference between the two readings as the answer tells it
 * @param ordinal the same by steps in their order
 * @param linearBend the coefficient of the square in the linear model; missing where no bend was seen
 * @param bend the same on the scale of the steps
 */
record OrdinalCheck(State state, ScoreSteps steps, Slope linear, Slope ordinal, Slope linearBend, Slope bend) {
    /** At this level the two answers are held against each other, whatever the level at which they are told. */
    static final double LEVEL = 0.90;

    /** Whether there is a second answer. */
    enum State {
        /** Scores come in many steps. */
        NOT_ASKED,
        /** Scores come in few steps, but no second answer settled. */
        NOT_FITTED,
        FITTED
    }

    static OrdinalCheck of(Analysis analysis, Measure measure) {
        FittedScores linear = analysis.bendSeen() ? analysis.drawn() : analysis.fitted();
        double[] scores = linear.design().material().scores().stream()
                .mapToDouble(ScoreRow::score)
                .toArray();
        ScoreSteps steps = ScoreSteps.of(scores);
        TwoReadings told = TwoReadings.of(analysis, measure, Verdict.CANNOT_TELL);
        Slope linearBend = analysis.bendSeen() ? analysis.bendSlope() : Slope.MISSING;
        OrdinalCheck none = new OrdinalCheck(
                steps.asked() ? State.NOT_FITTED : State.NOT_ASKED,
                steps,
                told.difference(),
                Slope.MISSING,
                linearBend,
                Slope.MISSING);
        if (!steps.asked() || !told.difference().known()) {
            return none;
        }
        try {
            double center = analysis.range().center();
            Compared compared = new Compared(linear, told.from() - center, told.to() - center);
            // What corrects the slope for the measure's error corrects the second answer too.
            double corrected = analysis.bendSeen()
                    ? 1
                    : analysis.headline().estimate() / analysis.fittedSlope().estimate();
            return compared.of(none, ScoreSteps.joined(scores), corrected);
        } catch (CannotFitException tooFew) {
            return none;
        }
    }

    /** Fits both models with the columns and groups that both can hold. */
    private static final class Compared {
        private final double from;
        private final double to;
        private final MixedDesign design;
        private final boolean bent;

        Compared(FittedScores linear, double from, double to) {
            this.design = linear.forSteps();
            this.from = from;
            this.to = to;
            this.bent = design.fixedNames().contains(ScoreDesign.SQUARE);
        }

        OrdinalCheck of(OrdinalCheck none, double[] joined, double corrected) {
            OrdinalMixedModel model = OrdinalMixedModel.fit(design.withResponse(joined));
            LinearMixedModel twin = design.fit();
            Map<String, Double> weights = new LinkedHashMap<>();
            weights.put(ScoreDesign.FEATURE, to - from);
            if (bent) {
                weights.put(ScoreDesign.SQUARE, to * to - from * from);
            }
            if (!model.settled() || !twin.columnNames().containsAll(weights.keySet())) {
                return none;
            }
            double widened = none.linear().standardError()
                    / twin.contrast("difference", weights).standardError();
            Slope ordinal = slope(
                    model.expectedDifference(at(from), at(to)),
                    corrected,
                    Math.max(widened, Math.abs(corrected)),
                    none.linear());
            Slope bend = bent
                    ? slope(
                            model.term(ScoreDesign.SQUARE),
                            1,
                            Math.max(
                                    1,
                                    none.linearBend().standardError()
                                            / twin.term(ScoreDesign.SQUARE).standardError()),
                            none.linearBend())
                    : Slope.MISSING;
            return ordinal.known()
                    ? new OrdinalCheck(State.FITTED, none.steps(), none.linear(), ordinal, none.linearBend(), bend)
                    : none;
        }

        private static Slope slope(Estimate estimate, double times, double widened, Slope like) {
            return new Slope(estimate.estimate() * times, estimate.standardError() * widened, like.degreesOfFreedom());
        }

        /** Returns all scores' rows as if their batches had read the same. */
        private MixedDesign at(double place) {
            double[] feature = new double[design.rows()];
            Arrays.fill(feature, place);
            MixedDesign rows = design.withoutFixed(ScoreDesign.FEATURE).withCovariate(ScoreDesign.FEATURE, feature);
            if (!bent) {
                return rows;
            }
            double[] square = new double[feature.length];
            Arrays.fill(square, place * place);
            return rows.withoutFixed(ScoreDesign.SQUARE).withCovariate(ScoreDesign.SQUARE, square);
        }
    }

    boolean fitted() {
        return state == State.FITTED;
    }

    /** Says whether the second answer sees the difference too: on the same side, its interval without zero. */
    boolean seesTheDifference() {
        return sameSide(linear, ordinal);
    }

    /** Says whether it sees the bend too, where one was seen. */
    boolean seesTheBend() {
        return sameSide(linearBend, bend);
    }

    private static boolean sameSide(Slope first, Slope second) {
        Interval interval = second.interval(LEVEL);
        return first.estimate() > 0 ? interval.lower() > 0 : interval.upper() < 0;
    }

    /** Says whether a bend was seen and the second answer does not show it: it may be the end of the scale, where scores cannot go on. */
    boolean bendIsDoubtful() {
        return fitted() && linearBend.known() && !seesTheBend();
    }

    /**
     * Says whether a finding is none by steps: the difference is not seen, or the finding is a bend alone and the course does not bend.
     *
     * @param alsoASlope whether a slope was found too
     */
    boolean doesNotShow(boolean alsoASlope) {
        return fitted() && (!seesTheDifference() || !alsoASlope && bendIsDoubtful());
    }

    /** Says whether each answer lies inside the other's interval. */
    boolean sameSize() {
        return linear.interval(LEVEL).contains(ordinal.estimate())
                && ordinal.interval(LEVEL).contains(linear.estimate());
    }

    /** Says whether the second answer sees the difference too, but another size of it, or no bend where one was seen. */
    boolean saysAnotherSize() {
        return fitted() && seesTheDifference() && (!sameSize() || bendIsDoubtful());
    }

    /** Says whether the second answer leaves room for a difference as large as the margin, by two one-sided tests at 5 %. */
    boolean leavesRoomFor(double margin) {
        return fitted() && !PairsOfPlaces.inside(ordinal.interval(LEVEL), margin);
    }

    /**
     * Says both answers and whether they agree, for the part of a page that tells how it was worked out; empty where nothing was asked.
     *
     * @param told the two readings
     * @param level at which intervals are told
     * @param why what decided the verdict
     * @param margin the smallest difference that matters, in points
     */
    String words(TwoReadings told, Measure measure, double level, VerdictRules.Why why, double margin) {
        return switch (state) {
            case NOT_ASKED -> "";
            case NOT_FITTED ->
                steps.words()
                        + " So they were to be taken a second time, as steps in their order. These batches do not carry such a model, so only the"
                        + " answer by numbers stands.";
            case FITTED ->
                steps.words()
                        + " So the question was asked a second time, with the scores only as steps in their order (a cumulative logit mixed model"
                        + " with the same columns, lots, days, batches, cuppers and cuppings). By steps "
                        + between(told, measure) + " " + Wording.signed(ordinal.estimate()) + " points ("
                        + interval(ordinal, level) + "). By numbers it is " + Wording.signed(linear.estimate()) + " ("
                        + interval(linear, level) + "). " + agreement(why, margin);
        };
    }

    private static String between(TwoReadings told, Measure measure) {
        return told.placesAreReadings()
                ? measure.at(told.higher()) + " scores, against " + measure.afterName(told.lower()) + ","
                : "two batches of a lot " + measure.difference(told.apart()) + " apart in " + measure.name()
                        + " differ by";
    }

    private static String interval(Slope slope, double level) {
        Interval interval = slope.interval(level);
        return Wording.plain(100 * level, 0) + " % interval " + Wording.signed(interval.lower()) + " to "
                + Wording.signed(interval.upper());
    }

    private String agreement(VerdictRules.Why why, double margin) {
        if (why == VerdictRules.Why.STEPS_SHOW_NOTHING) {
            return (seesTheDifference()
                            ? "By steps the course does not bend: it may only seem to where scores come near their end. "
                            : "")
                    + "The two do not agree, so it counts as no finding.";
        }
        if (why == VerdictRules.Why.STEPS_LEAVE_ROOM) {
            return "By steps a difference of " + Wording.points(margin)
                    + " points is not ruled out, so it cannot be said that none that matters is left.";
        }
        if (saysAnotherSize()) {
            return bendIsDoubtful()
                    ? "Both see the difference. By steps the course does not bend: it may only seem to where scores come near their end, so"
                            + " no best place is told."
                    : "Both see the difference, but not of the same size: take neither number as the last word.";
        }
        if (leavesZeroOut(linear) && !seesTheDifference()) {
            return "By steps the difference is less sure.";
        }
        return leavesZeroOut(ordinal) && !leavesZeroOut(linear)
                ? "By steps the difference looks surer; the answer stays as careful as the numbers are."
                : "The two agree.";
    }

    private static boolean leavesZeroOut(Slope slope) {
        Interval interval = slope.interval(LEVEL);
        return interval.lower() > 0 || interval.upper() < 0;
    }

    /** Says in one sentence below the picture where both see a difference but do not agree on its size or bend; empty otherwise. */
    String inTheFirstScreen() {
        if (!saysAnotherSize()) {
            return "";
        }
        return bendIsDoubtful()
                ? "The scores come in few steps. So it cannot be told whether the middle is best, or the scores only come near their end."
                : "The scores come in few steps. Counted only as steps in their order, they show a difference of "
                        + Wording.plain(Math.abs(ordinal.estimate()), 1) + " points ("
                        + PointsWords.range(ordinal.interval(LEVEL)) + ").";
    }
}
