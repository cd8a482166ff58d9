package parchment.period;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;
import parchment.StatedPage;

/** Holds every threshold of the search for steps to the number that docs/drift.md states. */
class StatedNumbersTest {
    private static final StatedPage PAGE = StatedPage.of("drift.md");

    @Test
    void everyThresholdIsTheOneThatThePageStates() {
        assertTrue(PAGE.says("For each roast day with four others on either side"));
        assertEquals(4, ChangeSearch.SHORTEST);
        assertEquals(PAGE.number("is held against # logbooks drawn from the fit without it"), ChangeSearch.DRAWS);
        assertTrue(PAGE.says("Drawing stops early once ten of them gain as much"));
        assertEquals(10, ChangeSearch.ENOUGH_EXCEEDING);
        assertEquals(PAGE.number("A change passes at # in 100."), 100 * ChangeSearch.LEVEL);
        assertTrue(PAGE.says("Then the next one is looked for, at most six."));
        assertEquals(6, ChangeSearch.MOST);
        assertTrue(PAGE.says("if it loses by fewer than four points"));
        assertEquals(4, ChangeSearch.CLEARLY);
        assertEquals(PAGE.number("shows it by itself (#, the 90 % point"), ChangeSearch.SUPPORT);
    }
}
