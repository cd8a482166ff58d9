package parchment.evidence;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;
import parchment.StatedPage;

/** Holds every threshold of an answer to the number that docs/evidence.md states. */
class StatedNumbersTest {
    private static final StatedPage PAGE = StatedPage.of("evidence.md");

    private static double stated(String sentence) {
        return PAGE.number(sentence);
    }

    @Test
    void everyThresholdIsTheOneThatThePageStates() {
        assertEquals(
                stated("by chance in fewer than # of 100 logbooks, or the bend"), 100 * VerdictRules.CHANCE_OF_SLOPE);
        assertEquals(stated("or the bend in fewer than # of 100"), 100 * VerdictRules.CHANCE_OF_BEND);
        assertEquals(stated("- at least # days"), VerdictRules.DAYS_FOR_STRONG);
        assertEquals(stated("- at least # % of the scores are written down as blind"), 100 * Blindness.ENOUGH);
        assertEquals(stated("fewer than # degrees of freedom are left"), VerdictRules.FEWEST_DEGREES);
        assertEquals(stated("if fewer than # scored batches or"), Analysis.FEWEST_BATCHES);
        assertEquals(stated("scored batches or # days"), Analysis.FEWEST_DAYS);
        assertEquals(stated("variance inflation over #, whether"), Collinearity.MOST_INFLATION);
        assertEquals(stated("(operator, room temperature) explains # %"), 100 * Facts.SAME, 1e-9);
        assertEquals(stated("ten-point scale: # % of the attribute's"), 100 * SmallestDifference.SHARE_OF_SCALE);
        assertEquals(stated("today's score (# in 100)"), 100 * NegativeControl.CHANCE);
        assertEquals(stated("Over # batches: \"no affordable number tells\""), NextBatches.MOST);
        assertEquals(stated("from # scored batches on 3 roast days on"), Bests.BATCHES_FOR_SLOPE);
        assertEquals(stated("from 8 scored batches on # roast days on"), Bests.DAYS_FOR_SLOPE);
        assertEquals(stated("Under # lots with a slope of their own"), Bests.LOTS_FOR_NEXT);
        assertEquals(stated("by chance in fewer than # of 100 logbooks. For the"), 100 * Bests.CHANCE_OF_DIFFERENCE);
        assertEquals(stated("| # or more | nothing |"), Reliability.CORRECTED);
        assertEquals(stated("| under # | \"cannot tell\" |"), Reliability.TOO_LOW);
        assertTrue(PAGE.says("spans less than three of the measure's own errors"));
        assertEquals(3, Reliability.ERRORS_IN_SPREAD);
        assertTrue(PAGE.says("From six cuppers on each has a slope of their own"));
        assertEquals(6, ScoreDesign.CUPPERS_FOR_SLOPES);
    }
}
