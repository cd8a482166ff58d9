package parchment.phase;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;
import parchment.StatedPage;

/** Holds every threshold of marks and habits to the number that docs/marks-and-phases.md states. */
class StatedNumbersTest {
    private static final StatedPage PAGE = StatedPage.of("marks-and-phases.md");

    @Test
    void everyThresholdOfAFallIsTheOneThatThePageStates() {
        assertEquals(PAGE.number("counts at charge where it is at least # °C deep"), OnCurve.FALL_AT_CHARGE);
        assertTrue(PAGE.says("deep within four minutes and"));
        assertEquals(4 * 60, OnCurve.LONGEST_FALL_SECONDS);
        assertEquals(PAGE.number("a rise of at least # °C follows"), OnCurve.RISE_AFTER_CHARGE);
        assertEquals(PAGE.number("does not come back, is at least # °C, 5 standard"), OnCurve.LEAST_FALL);
        assertEquals(PAGE.number("1.5 °C, # standard deviations of the noise"), OnCurve.NOISES);
        assertEquals(PAGE.number("of the noise and # steps of the logger deep"), OnCurve.STEPS);
        assertEquals(PAGE.number("loses # °C a minute or more"), OnCurve.FALL_AT_DROP);
        assertEquals(PAGE.number("the sharp fall more than # s from it"), MarkFinder.SAME_CLOCK_SECONDS);
        assertTrue(PAGE.says("smoothed over three quarters of the usual window"));
        assertEquals(0.75, TurningPoint.SHARPER);
    }

    @Test
    void everyThresholdOfAHabitIsTheOneThatThePageStates() {
        assertEquals(PAGE.number("the mean rate over the # °C below the usual"), HabitModel.APPROACH_CELSIUS);
        assertEquals(PAGE.number("from # marks and 8 days on"), HabitModel.MARKS_FOR_RATE);
        assertEquals(PAGE.number("from 12 marks and # days on"), HabitModel.DAYS_FOR_RATE);
        assertEquals(PAGE.number("from # marks on, if it varied"), HabitModel.MARKS_FOR_MASS);
        assertEquals(PAGE.number("if it varied by more than # %"), 100 * HabitModel.MASS_VARIED);
        assertEquals(PAGE.number("From # roast days on, k is"), HabitModel.DAYS_TO_CALIBRATE);
        assertEquals(PAGE.number("more than # robust standard deviations"), HabitModel.SET_ASIDE);
        assertEquals(PAGE.number("With fewer than # marks or 4 days"), HabitModel.FEWEST_MARKS);
        assertEquals(PAGE.number("With fewer than 6 marks or # days"), HabitModel.FEWEST_DAYS);
        assertEquals(PAGE.number("standard error, and from # days on; else"), SignatureGain.FEWEST_DAYS);
    }
}
