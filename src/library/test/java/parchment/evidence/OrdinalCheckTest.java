package parchment.evidence;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import parchment.display.ShortSentences;
import parchment.evidence.finding.Slope;
import parchment.quantity.TemperatureUnit;
import parchment.quantity.Unit;

/** Holds when two answers to one question agree, by built numbers, and every sentence that says so. */
class OrdinalCheckTest {
    private static final ScoreSteps STEPS = new ScoreSteps(240, 4, 0.98, 0.02, 0.1, 5, 8);
    private static final String WHY =
            "98 % of the scores take one of 4 values. So the question was asked a second time, with the scores"
                    + " only as steps in their order (a cumulative logit mixed model with the same columns, lots,"
                    + " days, batches, cuppers and cuppings). ";

    /** Half the width of a 90 % interval is 1.697 standard errors here. */
    private static Slope around(double estimate, double error) {
        return new Slope(estimate, error, 30);
    }

    static OrdinalCheck check(Slope linear, Slope ordinal, Slope linearBend, Slope bend) {
        return new OrdinalCheck(OrdinalCheck.State.FITTED, STEPS, linear, ordinal, linearBend, bend);
    }

    static OrdinalCheck check(Slope linear, Slope ordinal) {
        return check(linear, ordinal, Slope.MISSING, Slope.MISSING);
    }

    @Test
    void theDifferenceIsSeenOnlyOnTheSameSideAndWithoutZero() {
        assertTrue(check(around(0.8, 0.2), around(0.340, 0.2)).seesTheDifference());
        assertFalse(check(around(0.8, 0.2), around(0.339, 0.2)).seesTheDifference());
        assertFalse(check(around(0.8, 0.2), around(-0.8, 0.2)).seesTheDifference());
        assertTrue(check(around(-0.8, 0.2), around(-0.340, 0.2)).seesTheDifference());
        assertFalse(check(around(-0.8, 0.2), around(-0.339, 0.2)).seesTheDifference());
        assertFalse(check(around(-0.8, 0.2), around(0.8, 0.2)).seesTheDifference());
    }

    @Test
    void theSizesAgreeWhereEachLiesInTheOthersInterval() {
        assertTrue(check(around(0.8, 0.2), around(0.47, 0.2)).sameSize());
        assertFalse(check(around(0.8, 0.2), around(0.45, 0.2)).sameSize());
        assertFalse(check(around(0.8, 0.2), around(0.5, 0.1)).sameSize());
        assertFalse(check(around(0.8, 0.1), around(0.5, 0.2)).sameSize());
        assertTrue(check(around(0.8, 0.2), around(0.45, 0.2)).saysAnotherSize());
        assertFalse(check(around(0.8, 0.2), around(0.47, 0.2)).saysAnotherSize());
        // What does not see the difference at all says no size of it.
        assertFalse(check(around(0.8, 0.2), around(0.1, 0.2)).saysAnotherSize());
    }

    @Test
    void aBendIsDoubtfulWhereTheStepsDoNotBendTheSameWay() {
        Slope bend = around(-0.02, 0.005);
        assertFalse(check(around(0.8, 0.2), around(0.8, 0.2), bend, around(-0.0341, 0.02))
                .bendIsDoubtful());
        assertTrue(check(around(0.8, 0.2), around(0.8, 0.2), bend, around(-0.0339, 0.02))
                .bendIsDoubtful());
        assertTrue(check(around(0.8, 0.2), around(0.8, 0.2), bend, around(0.06, 0.02))
                .bendIsDoubtful());
        assertFalse(check(around(0.8, 0.2), around(0.8, 0.2)).bendIsDoubtful());
    }

    @Test
    void aFindingIsNoneWhereTheStepsShowNothingOrABendAloneDoesNotBend() {
        OrdinalCheck unseen = check(around(0.8, 0.2), around(0.1, 0.2));
        assertTrue(unseen.doesNotShow(true));
        assertTrue(unseen.doesNotShow(false));
        OrdinalCheck straight = check(around(0.8, 0.2), around(0.8, 0.2), around(-0.02, 0.005), around(0, 0.02));
        assertFalse(straight.doesNotShow(true));
        assertTrue(straight.doesNotShow(false));
        assertFalse(check(around(0.8, 0.2), around(0.8, 0.2)).doesNotShow(false));
        assertFalse(VerdictRulesTest.MANY_STEPS.doesNotShow(true));
    }

    @Test
    void roomForTheMarginIsLeftWhereTheIntervalReachesIt() {
        assertFalse(check(around(0.1, 0.2), around(0.1, 0.235)).leavesRoomFor(0.5));
        assertTrue(check(around(0.1, 0.2), around(0.1, 0.236)).leavesRoomFor(0.5));
        assertTrue(check(around(0.1, 0.2), around(-0.1, 0.236)).leavesRoomFor(0.5));
        assertFalse(VerdictRulesTest.MANY_STEPS.leavesRoomFor(0.5));
    }

    private static void says(String agreement, VerdictRules.Why why, OrdinalCheck check) {
        Measure drop = new Measure("drop temperature", Unit.TEMPERATURE, TemperatureUnit.CELSIUS, Map.of());
        TwoReadings told = new TwoReadings(
                "196 °C", "204 °C", check.linear(), check.linear().interval(0.9), Optional.empty(), 196, 204, true);
        String words = check.words(told, drop, 0.9, why, 0.5);
        assertEquals(agreement, words.substring(words.lastIndexOf("). ") + 3));
    }

    @Test
    void bothAnswersAreToldWithTheirIntervals() {
        Measure drop = new Measure("drop temperature", Unit.TEMPERATURE, TemperatureUnit.CELSIUS, Map.of());
        OrdinalCheck check = check(around(0.8, 0.2), around(0.7, 0.2));
        TwoReadings told = new TwoReadings(
                "196 °C", "204 °C", check.linear(), check.linear().interval(0.9), Optional.empty(), 196, 204, true);
        assertEquals(
                WHY
                        + "By steps a drop temperature of 204 °C scores, against 196 °C, +0.70 points (90 % interval +0.36 to +1.04). By numbers"
                        + " it is +0.80 (90 % interval +0.46 to +1.14). The two agree.",
                check.words(told, drop, 0.9, VerdictRules.Why.NOT_BLIND, 0.5));
        TwoReadings apart = new TwoReadings(
                "196 °C", "204 °C", check.linear(), check.linear().interval(0.9), Optional.empty(), 196, 204, false);
        assertEquals(
                WHY
                        + "By steps two batches of a lot 8.0 °C apart in drop temperature differ by +0.70 points (90 % interval +0.36 to +1.04)."
                        + " By numbers it is +0.80 (90 % interval +0.46 to +1.14). The two agree.",
                check.words(apart, drop, 0.9, VerdictRules.Why.NOT_BLIND, 0.5));
        assertEquals("", VerdictRulesTest.MANY_STEPS.words(told, drop, 0.9, VerdictRules.Why.NOT_BLIND, 0.5));
        assertEquals(
                "98 % of the scores take one of 4 values. So they were to be taken a second time, as steps in their order. These batches do"
                        + " not carry such a model, so only the answer by numbers stands.",
                new OrdinalCheck(
                                OrdinalCheck.State.NOT_FITTED,
                                STEPS,
                                check.linear(),
                                Slope.MISSING,
                                Slope.MISSING,
                                Slope.MISSING)
                        .words(told, drop, 0.9, VerdictRules.Why.NOT_BLIND, 0.5));
    }

    @Test
    void whetherTheyAgreeFollowsTheVerdictAndTheNumbers() {
        Slope bend = around(-0.02, 0.005);
        Slope flat = around(0, 0.02);
        says(
                "The two do not agree, so it counts as no finding.",
                VerdictRules.Why.STEPS_SHOW_NOTHING,
                check(around(0.8, 0.2), around(0.1, 0.2)));
        says(
                "By steps the course does not bend: it may only seem to where scores come near their end. The two do not agree, so it"
                        + " counts as no finding.",
                VerdictRules.Why.STEPS_SHOW_NOTHING,
                check(around(0.8, 0.2), around(0.8, 0.2), bend, flat));
        says(
                "By steps a difference of 0.50 points is not ruled out, so it cannot be said that none that matters is left.",
                VerdictRules.Why.STEPS_LEAVE_ROOM,
                check(around(0.1, 0.2), around(0.3, 0.2)));
        says(
                "Both see the difference, but not of the same size: take neither number as the last word.",
                VerdictRules.Why.NOT_BLIND,
                check(around(0.8, 0.2), around(0.4, 0.2)));
        says(
                "Both see the difference. By steps the course does not bend: it may only seem to where scores come near their end, so no"
                        + " best place is told.",
                VerdictRules.Why.NOT_BLIND,
                check(around(0.8, 0.2), around(0.8, 0.2), bend, flat));
        says(
                "By steps the difference is less sure.",
                VerdictRules.Why.NOT_RARE_ENOUGH,
                check(around(0.4, 0.2), around(0.3, 0.2)));
        says(
                "By steps the difference looks surer; the answer stays as careful as the numbers are.",
                VerdictRules.Why.OPEN,
                check(around(0.3, 0.2), around(0.4, 0.2)));
        says("The two agree.", VerdictRules.Why.OPEN, check(around(0.3, 0.2), around(0.2, 0.2)));
    }

    @Test
    void theFirstScreenSpeaksOnlyWhereBothSeeADifferenceAndDisagreeOnTheRest() {
        assertEquals("", check(around(0.8, 0.2), around(0.7, 0.2)).inTheFirstScreen());
        assertEquals("", check(around(0.8, 0.2), around(0.1, 0.2)).inTheFirstScreen());
        String size = check(around(0.8, 0.2), around(0.4, 0.2)).inTheFirstScreen();
        assertEquals(
                "The scores come in few steps. Counted only as steps in their order, they show a difference of 0.4 points (0.1 to 0.7).",
                size);
        String bend = check(around(0.8, 0.2), around(0.8, 0.2), around(-0.02, 0.005), around(0, 0.02))
                .inTheFirstScreen();
        assertEquals(
                "The scores come in few steps. So it cannot be told whether the middle is best, or the scores only come near their end.",
                bend);
        ShortSentences.keptBy(size);
        ShortSentences.keptBy(bend);
    }
}
