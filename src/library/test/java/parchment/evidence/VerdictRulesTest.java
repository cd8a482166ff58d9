package parchment.evidence;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import org.junit.jupiter.api.Test;
import parchment.evidence.finding.Slope;
import parchment.evidence.finding.Verdict;
import parchment.stats.Estimate;
import parchment.stats.Interval;

/** Holds every branch of the verdict by built numbers, one on each side of each threshold. */
class VerdictRulesTest {
    private static final String SLOPE_SEEN =
            "the slope inside lots passed the threshold of a finding: chance alone brings about as much in fewer than 4 of 100 logbooks";
    private static final String BEND_SEEN =
            "the bend of the course passed the threshold of a finding: chance alone brings about as much in fewer than 1 of 100 logbooks";
    private static final String NO_CHANCE =
            "the drop temperature was not drawn by chance beforehand, so what the roaster saw in the beans may stand behind both";
    private static final String SMALL =
            "no two places of the tried range differ by as much as 0.50 points, the smallest difference that matters";

    /** Scores in many steps: nothing is asked a second time. */
    static final OrdinalCheck MANY_STEPS = new OrdinalCheck(
            OrdinalCheck.State.NOT_ASKED,
            new ScoreSteps(240, 25, 0.95, 0.01, 0.01, 3, 9),
            Slope.MISSING,
            Slope.MISSING,
            Slope.MISSING,
            Slope.MISSING);

    /** Holds what each row changes; the start is a strong finding. */
    private static final class Row {
        Findings.Planned planned = Findings.Planned.BY_CHANCE;
        Slope slope = atChance(0.001);
        double degrees = 20;
        Interval told = new Interval(0.05, 0.15, 0.90);
        Slope bend = atChance(0.5);
        Reliability reliability = new Reliability(0.95, 0.3, 5, 80);
        List<Collinearity.Twin> twins = List.of();
        List<Facts.Fact> standIns = List.of();
        Interval difference = new Interval(0.3, 1.2, 0.90);
        Interval unseenBend = new Interval(-0.2, 0.2, 0.90);
        NegativeControl control = new NegativeControl(atChance(0.5), 30);
        Blindness blindness = new Blindness(1, 1);
        int days = 30;
        PredictiveSkill gain = new PredictiveSkill(0.10, 0.2, 0.01, 30);
        long agreeing = 8;
        OrdinalCheck ordinal = MANY_STEPS;

        VerdictRules.Judgement judged() {
            return VerdictRules.judge(new Findings(
                    "drop temperature",
                    planned,
                    slope,
                    degrees,
                    told,
                    bend,
                    reliability,
                    twins,
                    standIns,
                    new Equivalence(0.5, "stated", 200, 210, slope, difference, difference, unseenBend),
                    control,
                    blindness,
                    days,
                    gain,
                    agreeing,
                    8,
                    ordinal));
        }
    }

    /** Returns a slope that chance alone would bring about in just this share of logbooks. */
    static Slope atChance(double share) {
        double quantile = new Estimate("slope", 0, 1, 30).interval(1 - share).upper();
        return new Slope(quantile, 1, 30);
    }

    private static void says(Row row, Verdict verdict, String... reasons) {
        assertEquals(List.of(reasons), row.judged().reasons());
        assertEquals(verdict, row.judged().verdict());
    }

    @Test
    void aFindingFromChanceWithAllConditionsIsStrong() {
        says(
                new Row(),
                Verdict.STRONG,
                "among batches whose target was drawn by chance, " + SLOPE_SEEN,
                "the target was drawn by chance, all eight other ways of looking agree, and roast days left out were foretold better");
    }

    @Test
    void eachMissingConditionMakesItSuggestiveAndIsNamed() {
        Row watched = new Row();
        watched.planned = Findings.Planned.NOT_BY_CHANCE;
        says(watched, Verdict.SUGGESTIVE, SLOPE_SEEN, NO_CHANCE);
        Row open = new Row();
        open.blindness = new Blindness(0.94, 1);
        missing(open, "not all scores were given blind and before discussion");
        open.blindness = new Blindness(1, 0.94);
        missing(open, "not all scores were given blind and before discussion");
        open.blindness = new Blindness(0.95, 0.95);
        assertEquals(Verdict.STRONG, open.judged().verdict());
        Row few = new Row();
        few.days = 14;
        missing(few, "fewer than 15 roast days stand behind it");
        few.days = 15;
        assertEquals(Verdict.STRONG, few.judged().verdict());
        Row turning = new Row();
        turning.agreeing = 7;
        missing(turning, "only 7 of the 8 other ways of looking show the same sign");
        Row gain = new Row();
        gain.gain = new PredictiveSkill(0.016, 0.2, 0.01, 30);
        missing(gain, "on roast days left out the gain may be none: its one-sided 95 % bound is not above zero");
        gain.gain = new PredictiveSkill(0.017, 0.2, 0.01, 30);
        assertEquals(Verdict.STRONG, gain.judged().verdict());
        gain.gain = PredictiveSkill.MISSING;
        missing(gain, "on roast days left out the gain may be none: its one-sided 95 % bound is not above zero");
    }

    private static void missing(Row row, String reason) {
        says(row, Verdict.SUGGESTIVE, "among batches whose target was drawn by chance, " + SLOPE_SEEN, reason);
    }

    @Test
    void aSlopeIsAFindingBelowFourInAHundredAndABendBelowOne() {
        Row row = new Row();
        row.slope = atChance(0.0399);
        assertEquals(Verdict.STRONG, row.judged().verdict());
        row.slope = atChance(0.0401);
        says(row, Verdict.CANNOT_TELL, zeroJustOutside("just over 4"));
        row.slope = atChance(0.0449);
        says(row, Verdict.CANNOT_TELL, zeroJustOutside("just over 4"));
        row.slope = atChance(0.0451);
        says(row, Verdict.CANNOT_TELL, zeroJustOutside("5"));
        row.slope = atChance(0.07);
        says(row, Verdict.CANNOT_TELL, zeroJustOutside("7"));
        row.told = new Interval(-0.15, -0.01, 0.90);
        says(row, Verdict.CANNOT_TELL, zeroJustOutside("7"));
        row.told = new Interval(-0.01, 0.15, 0.90);
        says(
                row,
                Verdict.CANNOT_TELL,
                "zero and differences large enough to matter (0.50 points) both agree with the scores");
        row.bend = atChance(0.0099);
        says(
                row,
                Verdict.SUGGESTIVE,
                "among batches whose target was drawn by chance, " + BEND_SEEN,
                "the eight other ways of looking compare slopes, not bends");
        row.bend = atChance(0.0101);
        assertEquals(Verdict.CANNOT_TELL, row.judged().verdict());
    }

    private static String zeroJustOutside(String often) {
        return "the interval leaves zero out, but chance alone would do as much in " + often
                + " of 100 logbooks, more than the 4 that count as a finding; differences large enough to matter (0.50 points) agree with the"
                + " scores too";
    }

    @Test
    void whateverWasSeenIsTooSmallToMatterIfNoPlacesDifferByTheMargin() {
        Row row = new Row();
        row.difference = new Interval(0.1, 0.49, 0.90);
        says(row, Verdict.TOO_SMALL, SMALL, "among batches whose target was drawn by chance, " + SLOPE_SEEN);
        row.difference = new Interval(0.1, 0.5, 0.90);
        assertEquals(Verdict.STRONG, row.judged().verdict());
        row.difference = new Interval(-0.49, 0.1, 0.90);
        assertEquals(Verdict.TOO_SMALL, row.judged().verdict());
        row.difference = new Interval(-0.5, 0.1, 0.90);
        assertEquals(Verdict.STRONG, row.judged().verdict());
        row.difference = new Interval(0.1, 0.49, 0.90);
        row.unseenBend = new Interval(-0.2, 0.5, 0.90);
        assertEquals(Verdict.STRONG, row.judged().verdict());
        row.unseenBend = new Interval(Double.NaN, Double.NaN, 0.90);
        assertEquals(Verdict.TOO_SMALL, row.judged().verdict());
    }

    @Test
    void nothingSeenNeverStandsBesideAnIntervalWithoutZero() {
        Row row = new Row();
        row.slope = atChance(0.3);
        row.difference = new Interval(-0.2, 0.4, 0.90);
        row.told = new Interval(-0.01, 0.05, 0.90);
        says(
                row,
                Verdict.NOTHING_SEEN,
                "no difference larger than 0.50 points over the tried range is left, by two one-sided tests at 5 in 100");
        row.told = new Interval(0.001, 0.05, 0.90);
        says(row, Verdict.TOO_SMALL, SMALL, "zero lies outside the interval, by less than a finding needs");
        row.told = new Interval(-0.05, -0.001, 0.90);
        assertEquals(Verdict.TOO_SMALL, row.judged().verdict());
        row.unseenBend = new Interval(-0.5, 0.1, 0.90);
        says(row, Verdict.CANNOT_TELL, zeroJustOutside("30"));
        assertEquals(NextBatches.Kind.BEND, row.judged().lacks());
        row.unseenBend = new Interval(-0.2, 0.2, 0.90);
        row.difference = new Interval(-0.2, 0.6, 0.90);
        assertEquals(NextBatches.Kind.MORE, row.judged().lacks());
    }

    @Test
    void theNextDaysFeatureLowersEveryVerdictByOneLevelAndSaysWhatATestCan() {
        String why =
                "the drop temperature of the next roast day goes with today's score, which it cannot have changed; one logbook in"
                        + " twenty shows this by chance, but something that moves with the calendar may stand behind both, so the verdict"
                        + " drops one level";
        Row row = new Row();
        row.control = new NegativeControl(atChance(0.049), 30);
        assertEquals(why, row.judged().reasons().get(0));
        assertEquals(Verdict.SUGGESTIVE, row.judged().verdict());
        row.control = new NegativeControl(atChance(0.051), 30);
        assertEquals(Verdict.STRONG, row.judged().verdict());
        row.control = new NegativeControl(atChance(0.049), 30);
        row.planned = Findings.Planned.NOT_BY_CHANCE;
        assertEquals(Verdict.CANNOT_TELL, row.judged().verdict());
        assertEquals(NextBatches.Kind.AFRESH, row.judged().lacks());
        row.difference = new Interval(0.1, 0.4, 0.90);
        assertEquals(Verdict.CANNOT_TELL, row.judged().verdict());
        row.slope = atChance(0.3);
        row.told = new Interval(-0.1, 0.1, 0.90);
        assertEquals(Verdict.CANNOT_TELL, row.judged().verdict());
        assertEquals(why, row.judged().reasons().get(0));
        row.difference = new Interval(-0.9, 0.9, 0.90);
        says(
                row,
                Verdict.CANNOT_TELL,
                "zero and differences large enough to matter (0.50 points) both agree with the scores");
    }

    @Test
    void whatStopsAnAnswerIsSaidInThisOrder() {
        Row row = new Row();
        row.standIns = List.of(new Facts.Fact("operator", 0.9, Facts.Handled.IN_ANOTHER_LOOK, 80));
        blocked(
                row,
                NextBatches.Kind.MOVE_APART,
                VerdictRules.Why.FOLLOWS_A_FACT,
                List.of("operator"),
                "operator explains the drop temperature so closely that the two cannot be told apart");
        row.degrees = 2.99;
        blocked(
                row,
                NextBatches.Kind.AFRESH,
                VerdictRules.Why.TOO_FEW_DAYS_LEFT,
                List.of(),
                "once lots, dates and the other terms are taken into account, too few roast days are left to compare");
        row.twins = List.of(
                new Collinearity.Twin("gas in development", Double.POSITIVE_INFINITY),
                new Collinearity.Twin("green mass", 12));
        blocked(
                row,
                NextBatches.Kind.MOVE_APART,
                VerdictRules.Why.MOVED_WITH_ANOTHER,
                List.of("gas in development", "green mass"),
                "inside lots the drop temperature cannot be told from gas in development and green mass: they moved together so"
                        + " closely that the score may have gone with either (variance inflation over 1000, over 10)");
        row.reliability = new Reliability(0.49, 0.3, 5, 80);
        blocked(
                row,
                NextBatches.Kind.MOVE_IT,
                VerdictRules.Why.MOSTLY_ERROR,
                List.of(),
                "only 49 % of the spread of the drop temperature is the batches' own, the rest is error of measuring");
        row.reliability = new Reliability(0.49, 2, 5.99, 80);
        blocked(
                row,
                NextBatches.Kind.MOVE_IT,
                VerdictRules.Why.HARDLY_VARIED,
                List.of(),
                "the drop temperature hardly varied inside lots: the middle 80 % of the batches span less than three times its own"
                        + " error");
    }

    private static void blocked(
            Row row, NextBatches.Kind lacks, VerdictRules.Why why, List<String> beside, String reason) {
        assertEquals(
                new VerdictRules.Judgement(
                        Verdict.CANNOT_TELL, List.of(reason), lacks, new VerdictRules.Decisive(why, beside)),
                row.judged());
    }

    private static void decides(Row row, VerdictRules.Why why) {
        assertEquals(new VerdictRules.Decisive(why, List.of()), row.judged().decisive());
    }

    @Test
    void whatDecidedIsNamedForTheFirstSentences() {
        decides(new Row(), VerdictRules.Why.ALL_HOLDS);
        Row row = new Row();
        row.gain = PredictiveSkill.MISSING;
        decides(row, VerdictRules.Why.NO_GAIN);
        row.agreeing = 7;
        decides(row, VerdictRules.Why.OTHER_LOOKS_DIFFER);
        row.slope = atChance(0.5);
        row.bend = atChance(0.001);
        decides(row, VerdictRules.Why.ONLY_A_BEND);
        row.days = 14;
        decides(row, VerdictRules.Why.TOO_FEW_DAYS);
        row.blindness = new Blindness(0.5, 1);
        decides(row, VerdictRules.Why.NOT_BLIND);
        row.planned = Findings.Planned.NOT_BY_CHANCE;
        decides(row, VerdictRules.Why.NOT_DRAWN_BY_CHANCE);
        row.control = new NegativeControl(atChance(0.001), 30);
        decides(row, VerdictRules.Why.NEXT_DAY_GOES_WITH_IT_TOO);
        Row open = new Row();
        open.slope = atChance(0.5);
        decides(open, VerdictRules.Why.NOT_RARE_ENOUGH);
        open.told = new Interval(-0.05, 0.15, 0.90);
        decides(open, VerdictRules.Why.OPEN);
        open.difference = new Interval(-0.1, 0.2, 0.90);
        decides(open, VerdictRules.Why.NO_DIFFERENCE_THAT_MATTERS);
        open.told = new Interval(0.01, 0.02, 0.90);
        decides(open, VerdictRules.Why.NO_DIFFERENCE_THAT_MATTERS);
        open.slope = atChance(0.001);
        decides(open, VerdictRules.Why.NO_DIFFERENCE_THAT_MATTERS);
    }

    private static final Slope CLEAR = new Slope(0.8, 0.2, 30);

    private static final Slope UNCLEAR = new Slope(0.1, 0.2, 30);

    private static final Slope BENT = new Slope(-0.02, 0.005, 30);

    private static final String NOT_BY_STEPS =
            "the scores come in few steps; as steps in their order they do not show what they show as numbers, so it is no finding";

    @Test
    void aFindingThatTheStepsShowTooStaysWhatItIs() {
        Row row = new Row();
        row.ordinal = OrdinalCheckTest.check(CLEAR, CLEAR);
        assertEquals(Verdict.STRONG, row.judged().verdict());
        decides(row, VerdictRules.Why.ALL_HOLDS);
    }

    @Test
    void aFindingThatTheStepsDoNotShowIsNone() {
        Row row = new Row();
        row.ordinal = OrdinalCheckTest.check(CLEAR, UNCLEAR);
        says(row, Verdict.CANNOT_TELL, NOT_BY_STEPS, "among batches whose target was drawn by chance, " + SLOPE_SEEN);
        decides(row, VerdictRules.Why.STEPS_SHOW_NOTHING);
        row.planned = Findings.Planned.NOT_BY_CHANCE;
        says(row, Verdict.CANNOT_TELL, NOT_BY_STEPS, SLOPE_SEEN);
        row.ordinal = OrdinalCheckTest.check(CLEAR, new Slope(-0.8, 0.2, 30));
        says(row, Verdict.CANNOT_TELL, NOT_BY_STEPS, SLOPE_SEEN);
    }

    @Test
    void aBendThatTheStepsDoNotShowIsNoFindingUnlessASlopeIsSeenToo() {
        Row row = new Row();
        row.planned = Findings.Planned.NOT_BY_CHANCE;
        row.bend = atChance(0.001);
        row.ordinal = OrdinalCheckTest.check(CLEAR, CLEAR, BENT, new Slope(0, 0.02, 30));
        says(
                row,
                Verdict.SUGGESTIVE,
                SLOPE_SEEN,
                NO_CHANCE,
                "the scores come in few steps; as steps in their order they show the difference but no bend");
        row.slope = atChance(0.5);
        says(row, Verdict.CANNOT_TELL, NOT_BY_STEPS, BEND_SEEN);
        row.ordinal = OrdinalCheckTest.check(CLEAR, CLEAR, BENT, new Slope(-0.06, 0.02, 30));
        assertEquals(Verdict.SUGGESTIVE, row.judged().verdict());
    }

    @Test
    void anotherSizeByStepsOrNoModelOfThemKeepsAFindingFromBeingStrong() {
        Row row = new Row();
        row.ordinal = OrdinalCheckTest.check(CLEAR, new Slope(0.4, 0.2, 30));
        missing(
                row,
                "the scores come in few steps; as steps in their order they show the difference but another size of it");
        decides(row, VerdictRules.Why.STEPS_SAY_ANOTHER_SIZE);
        row.ordinal = new OrdinalCheck(
                OrdinalCheck.State.NOT_FITTED,
                new ScoreSteps(240, 4, 0.98, 0.02, 0.1, 5, 8),
                CLEAR,
                Slope.MISSING,
                Slope.MISSING,
                Slope.MISSING);
        missing(
                row,
                "the scores come in few steps; no model of steps in their order could be fitted to hold the answer against");
        decides(row, VerdictRules.Why.STEPS_NOT_FITTED);
    }

    @Test
    void thatNoDifferenceMattersMustHoldByStepsToo() {
        Row row = new Row();
        row.slope = atChance(0.5);
        row.told = new Interval(-0.05, 0.15, 0.90);
        row.difference = new Interval(-0.1, 0.2, 0.90);
        row.ordinal = OrdinalCheckTest.check(UNCLEAR, new Slope(0.1, 0.235, 30));
        assertEquals(Verdict.NOTHING_SEEN, row.judged().verdict());
        String room =
                "the scores come in few steps; as steps in their order they leave room for a difference of 0.50 points,"
                        + " the smallest that matters; as numbers they leave none";
        row.ordinal = OrdinalCheckTest.check(UNCLEAR, new Slope(0.1, 0.236, 30));
        says(row, Verdict.CANNOT_TELL, room);
        decides(row, VerdictRules.Why.STEPS_LEAVE_ROOM);
        row.slope = atChance(0.001);
        says(row, Verdict.CANNOT_TELL, room);
        row.ordinal = OrdinalCheckTest.check(UNCLEAR, new Slope(0.1, 0.235, 30));
        assertEquals(Verdict.TOO_SMALL, row.judged().verdict());
    }

    @Test
    void stepsNeverMakeAnAnswerBolder() {
        Row row = new Row();
        row.slope = atChance(0.0401);
        row.ordinal = OrdinalCheckTest.check(UNCLEAR, CLEAR);
        assertEquals(Verdict.CANNOT_TELL, row.judged().verdict());
        decides(row, VerdictRules.Why.NOT_RARE_ENOUGH);
    }

    @Test
    void threeDegreesOfFreedomAndAReliabilityOfOneHalfAreEnough() {
        Row row = new Row();
        row.degrees = 3;
        row.reliability = new Reliability(0.5, 2, 6, 80);
        assertEquals(Verdict.STRONG, row.judged().verdict());
        row.slope = Slope.MISSING;
        assertEquals(Verdict.CANNOT_TELL, row.judged().verdict());
    }

    @Test
    void tooFewScoresForTheTermsIsSaid() {
        assertEquals(
                new VerdictRules.Judgement(
                        Verdict.CANNOT_TELL,
                        List.of("no batch has both a score and the measure; at least 8 are needed"),
                        NextBatches.Kind.MORE,
                        new VerdictRules.Decisive(VerdictRules.Why.NOTHING_FITTED, List.of())),
                VerdictRules.nothingFitted(new ModelFrame(List.of(), List.of(), List.of(), List.of())));
    }
}
