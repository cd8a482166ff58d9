package parchment.drift;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;
import parchment.StatedPage;

/** Holds the thresholds of "is this batch like its lot's others" to the numbers that docs/drift.md states. */
class StatedNumbersTest {
    private static final StatedPage PAGE = StatedPage.of("drift.md");

    @Test
    void everyThresholdIsTheOneThatThePageStates() {
        assertEquals(PAGE.number("t at 1 - #/11 for"), Usual.ALARM);
        assertEquals(PAGE.number("t at 1 - 0.05/# for"), Usual.LOOKED_AT.size());
        assertEquals(PAGE.number("the same with t at 1 - #/11, which"), Usual.LITTLE);
        assertTrue(PAGE.says("all features of the next batch in 80 of 100 cases"));
        assertTrue(
                PAGE.says(
                        "eleven features against the lot's other batches (same recipe, mass within a tenth, where at least eight are left)"));
        assertEquals(11, Usual.LOOKED_AT.size());
        assertEquals(0.1, OneCharge.WITHIN);
        assertEquals(8, Usual.ENOUGH);
        assertTrue(PAGE.says("those beyond ten times the first"));
        assertEquals(10, Usual.SLIP);
        assertTrue(PAGE.says("by at least half of the seconds that the usual rate of rise makes of it"));
        assertEquals(0.5, Usual.ABOUT_AS_MUCH);
        assertTrue(PAGE.says("variance is inflated more than tenfold by the others"));
        assertEquals(10, YearModel.TOO_ALIKE);
    }
}
