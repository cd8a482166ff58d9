package parchment.evidence;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Map;
import org.junit.jupiter.api.Test;
import parchment.quantity.TemperatureUnit;
import parchment.quantity.Unit;
import parchment.stats.Estimate;

/** Holds "what would tell" to the information at hand, worked out again here, and to simulation. */
class NextBatchesTest {
    private static final TriedRange RANGE = new TriedRange(198, 212, 200, 210, 205);
    private static final Measure DROP =
            new Measure("drop temperature", Unit.TEMPERATURE, TemperatureUnit.CELSIUS, Map.of());

    private static NextBatches.AtHand atHand(double error) {
        return new NextBatches.AtHand(error, 0.006, 0, 20, 0.1, 4);
    }

    private static double half(double information, double degrees) {
        return new Estimate("slope", 0, 14 / Math.sqrt(information), degrees)
                .interval(0.90)
                .upper();
    }

    @Test
    void theNumberIsTheLeastAfterWhichTheIntervalIsNoWiderThanWhatMatters() {
        NextBatches next = NextBatches.of(atHand(0.05), RANGE, 0.5, NextBatches.Kind.MORE);
        assertEquals(NextBatches.Kind.MORE, next.kind());
        assertEquals(4 * next.roastDays(), next.batches());
        double each = 25 / 0.1;
        double now = 1 / (0.05 * 0.05);
        long n = next.batches();
        assertTrue(2 * half(now + n * each, 20 + n - next.roastDays()) <= 0.5);
        assertTrue(2 * half(now + (n - 4) * each, 20 + (n - 4) - (next.roastDays() - 1)) > 0.5);
        assertEquals(36, n);
    }

    @Test
    void whatIsAtHandSavesBatches() {
        long little =
                NextBatches.of(atHand(0.05), RANGE, 0.5, NextBatches.Kind.MORE).batches();
        long much =
                NextBatches.of(atHand(0.015), RANGE, 0.5, NextBatches.Kind.MORE).batches();
        long afresh = NextBatches.of(atHand(0.015), RANGE, 0.5, NextBatches.Kind.AFRESH)
                .batches();
        assertTrue(much < little, much + " " + little);
        assertTrue(afresh > little, afresh + " " + little);
    }

    @Test
    void anErrorThatNoBatchTakesAwayMayLeaveNoAffordableNumber() {
        NextBatches.AtHand cuppers = new NextBatches.AtHand(0.05, 0.006, 0.03, 20, 0.1, 4);
        NextBatches next = NextBatches.of(cuppers, RANGE, 0.5, NextBatches.Kind.MORE);
        assertEquals(NextBatches.Kind.TOO_MANY, next.kind());
        assertEquals(0, next.batches());
        assertEquals(
                "No affordable number tells: over the range tried so far a difference of 0.50 points would take more than 200 further"
                        + " batches. A wider range of drop temperature, inside what your machine's maker allows, or more cups of each"
                        + " batch would be cheaper.",
                next.words(DROP));
        assertEquals("no affordable number of batches, more than 200", next.toString());
    }

    /** What the cuppers leave is no part of the information at hand, and stays in the error after the new batches. */
    @Test
    void theErrorThatLastsIsTakenOutOfWhatIsAtHandAndLeftInWhatComes() {
        double lasting = 0.008;
        NextBatches next = NextBatches.of(
                new NextBatches.AtHand(0.03, 0.006, lasting, 20, 0.1, 4), RANGE, 0.5, NextBatches.Kind.MORE);
        double now = 1 / (0.03 * 0.03 - lasting * lasting);
        long n = next.batches();
        double after = lasting * lasting + 1 / (now + n * 25 / 0.1);
        double before = lasting * lasting + 1 / (now + (n - 4) * 25 / 0.1);
        assertTrue(n > 4, "" + n);
        assertTrue(2 * half(1 / after, 20 + n - next.roastDays()) <= 0.5);
        assertTrue(2 * half(1 / before, 20 + (n - 4) - (next.roastDays() - 1)) > 0.5);
    }

    /** Under one degree of freedom, or where all of the error lasts, what is at hand tells nothing: as many batches as from the start. */
    @Test
    void whatIsAtHandCountsFromOneDegreeOfFreedomOn() {
        long afresh = NextBatches.of(atHand(0.02), RANGE, 0.5, NextBatches.Kind.AFRESH)
                .batches();
        NextBatches.AtHand none = new NextBatches.AtHand(0.02, 0.006, 0, 0.99, 0.1, 4);
        NextBatches.AtHand one = new NextBatches.AtHand(0.02, 0.006, 0, 1, 0.1, 4);
        assertEquals(
                afresh, NextBatches.of(none, RANGE, 0.5, NextBatches.Kind.MORE).batches());
        assertTrue(NextBatches.of(one, RANGE, 0.5, NextBatches.Kind.MORE).batches() < afresh);
        NextBatches.AtHand all = new NextBatches.AtHand(0.005, 0.006, 0.005, 20, 0.1, 4);
        NextBatches.AtHand most = new NextBatches.AtHand(0.005, 0.006, 0.0049, 20, 0.1, 4);
        assertTrue(NextBatches.of(all, RANGE, 0.5, NextBatches.Kind.MORE).batches() >= afresh);
        assertEquals(4, NextBatches.of(most, RANGE, 0.5, NextBatches.Kind.MORE).batches());
    }

    /** One roast day more may be enough; batches that stand by themselves need four. */
    @Test
    void batchesThatTellByThemselvesTakeAtLeastFourRoastDays() {
        assertEquals(
                1,
                NextBatches.of(atHand(0.05), RANGE, 20, NextBatches.Kind.MORE).roastDays());
        assertEquals(
                4,
                NextBatches.of(atHand(0.05), RANGE, 20, NextBatches.Kind.AFRESH).roastDays());
    }

    @Test
    void theBoundOfTwoHundredIsReachedAndNotPassed() {
        long most = 0;
        for (double size = 0.5; size > 0.1; size -= 0.001) {
            NextBatches next = NextBatches.of(atHand(0.05), RANGE, size, NextBatches.Kind.MORE);
            most = Math.max(most, next.batches());
        }
        assertEquals(200, most);
    }

    @Test
    void anOpenBendAsksForTheMiddleToo() {
        NextBatches next = NextBatches.of(atHand(0.03), RANGE, 0.5, NextBatches.Kind.BEND);
        assertEquals(6 * next.roastDays(), next.batches());
        double information = 1 / (0.006 * 0.006);
        double each = Math.pow(10, 4) / 72 / 0.1;
        long n = next.batches();
        double depth = new Estimate("bend", 0, 49 / Math.sqrt(information + n * each), 20 + n - next.roastDays())
                .interval(0.90)
                .upper();
        assertTrue(2 * depth <= 0.5, depth + " after " + n);
        double fewer = new Estimate(
                        "bend", 0, 49 / Math.sqrt(information + (n - 6) * each), 20 + n - 6 - (next.roastDays() - 1))
                .interval(0.90)
                .upper();
        assertTrue(2 * fewer > 0.5, fewer + " after " + (n - 6));
        NextBatches.AtHand unseen = new NextBatches.AtHand(0.03, Double.NaN, 0, 20, 0.1, 4);
        assertTrue(NextBatches.of(unseen, RANGE, 0.5, NextBatches.Kind.BEND).batches() > n, "no bend is at hand");
        assertTrue(next.words(DROP).contains("near 200.0 °C as near 210.0 °C and half way between, which of them"));
    }

    @Test
    void theSentenceSaysHowManyWhereAndWhy() {
        assertEquals(
                "What would tell: about 36 more batches on 9 roast days, all of one lot and each roast day as many with a drop"
                        + " temperature near 200.0 °C as near 210.0 °C, which of them drawn by chance before charge, cupped blind and"
                        + " scored before anybody speaks. Then the 90 % interval would be no wider than 0.50 points, the smallest"
                        + " difference that matters: it leaves out zero or holds nothing that matters, in at least 8 of 10 such"
                        + " logbooks.",
                NextBatches.of(atHand(0.05), RANGE, 0.5, NextBatches.Kind.MORE).words(DROP));
        assertTrue(NextBatches.of(atHand(0.05), RANGE, 0.5, NextBatches.Kind.AFRESH)
                .words(DROP)
                .contains("They would have to tell by themselves, as those at hand may follow the calendar."));
        assertEquals(
                "about 36 more batches on 9 roast days",
                NextBatches.of(atHand(0.05), RANGE, 0.5, NextBatches.Kind.MORE).toString());
    }

    @Test
    void noNumberIsNamedWhereMoreOfTheSameTellsNothing() {
        NextBatches moved = NextBatches.of(atHand(0.05), RANGE, 0.5, NextBatches.Kind.MOVE_IT);
        assertEquals(0, moved.batches());
        assertTrue(moved.words(DROP)
                .startsWith("What would tell: batches in which the drop temperature is moved on purpose, inside"));
        NextBatches apart = NextBatches.of(atHand(0.05), RANGE, 0.5, NextBatches.Kind.MOVE_APART);
        assertEquals(NextBatches.Kind.MOVE_APART, apart.kind());
        TriedRange one = new TriedRange(205, 205, 205, 205, 205);
        assertEquals(
                NextBatches.Kind.MOVE_IT,
                NextBatches.of(atHand(0.05), one, 0.5, NextBatches.Kind.MORE).kind());
        assertEquals("batches in which the measure is moved on purpose", moved.toString());
        assertEquals("batches in which the measure is moved and what moved with it is not", apart.toString());
    }

    /** A short run; the table of docs/measurements/what-would-tell.md is the long one. */
    @Test
    void theBatchesAskedForDoTellOnceTheyAreAdded() {
        WhatWouldTellStudy.Counts counts = WhatWouldTellStudy.run(() -> WhatWouldTellStudy.truth(10, 0.03), 4, 500);
        assertTrue(counts.asked() >= 1, counts.toString());
        assertEquals(counts.asked(), counts.told(), counts.toString());
    }
}
