package parchment.evidence;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import parchment.display.ShortSentences;
import parchment.quantity.TemperatureUnit;
import parchment.quantity.Unit;
import parchment.stats.Interval;

/** Holds how the place of a compromise is put into words. */
class TradeInShortTest {
    private static final Measure TIME =
            new Measure("development time", Unit.SECONDS, TemperatureUnit.CELSIUS, Map.of());

    private static final TriedRange TRIED = new TriedRange(90, 201, 100, 180, 140);

    private static String where(double lower, double upper) {
        return TradeInShort.where(TIME, new Interval(lower, upper, 0.90), TRIED);
    }

    /** A set of 144 to 154 s is not told as 140 to 150 s: each end is rounded away from its middle, by steps of its own width. */
    @Test
    void aSetIsRoundedOutwardsInStepsOfItsOwnWidth() {
        assertEquals("between a development time of 144 s and 154 s", where(144.2, 153.8));
        assertEquals("between a development time of 110 s and 170 s", where(113, 164));
        assertEquals("near a development time of 144 s", where(144, 144));
    }

    @Test
    void aSetThatTouchesAnEndIsOpenThere() {
        assertEquals("at a development time of 122 s or below, perhaps lower than was tried", where(100, 121.4));
        assertEquals("at a development time of 122 s or below, perhaps lower than was tried", where(100.7, 121.4));
        assertEquals("between a development time of 100 s and 122 s", where(100.9, 121.4));
        assertEquals("at a development time of 158 s or above, perhaps higher than was tried", where(158.6, 180));
        assertEquals("at a development time of 158 s or above, perhaps higher than was tried", where(158.6, 179.3));
        assertEquals("between a development time of 158 s and 180 s", where(158.6, 179.1));
    }

    @Test
    void noReadingThatWasNotTriedIsNamed() {
        TriedRange narrow = new TriedRange(144.2, 183.9, 145, 180, 160);
        assertEquals(List.of("140 s", "185 s"), TradeInShort.told(TIME, new Interval(144.5, 183.5, 0.90), TRIED));
        assertEquals(List.of("145 s", "180 s"), TradeInShort.told(TIME, new Interval(144.5, 183.5, 0.90), narrow));
    }

    @Test
    void whereSomethingMovedAlongNoCompromiseIsTold() {
        assertEquals(
                """
                No compromise between sweetness and acidity can be told.
                The development time moved together with the gas during drying, so the scores may have gone with either.
                Vary only the development time and keep the gas during drying the same.""",
                ShortSentences.keptBy(
                                TradeInShort.movedTogether("sweetness and acidity", TIME, List.of("gas in drying")))
                        .text());
        assertEquals(
                """
                No compromise between sweetness and acidity can be told.
                The development time moved together with the gas during drying and green mass, so the scores may have gone with any.
                Vary only the development time and keep the gas during drying and green mass the same.""",
                ShortSentences.keptBy(TradeInShort.movedTogether(
                                "sweetness and acidity", TIME, List.of("gas in drying", "green mass", "warm-up")))
                        .text());
    }

    @Test
    void whereNothingWasSeenNoCompromiseIsTold() {
        assertEquals(
                """
                Where between a development time of 100 s and 180 s the best compromise lies cannot be told.
                None of sweetness and acidity went with it more closely than luck explains.
                Ask each score by itself: its answer says whether a difference that matters is ruled out.""",
                ShortSentences.keptBy(TradeInShort.notSeen("sweetness and acidity", TIME, "100 s and 180 s"))
                        .text());
    }
}
