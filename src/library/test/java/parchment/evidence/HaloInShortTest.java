package parchment.evidence;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.api.Test;
import parchment.display.ShortSentences;
import parchment.display.answer.InShort;
import parchment.stats.Interval;

/** Holds each first sentence on attributes that move together. */
class HaloInShortTest {
    private static final String ONE_FINDING =
            "Take several attributes that rise together for one finding, not for several.";
    private static final String NOT_TOLD =
            "How far the 6 attributes move together in one cupper's own scores cannot be told.";

    private static InShort halo(
            Halo.Cuppers cuppers, double looks, double mean, double lower, double upper, int cuppings) {
        return ShortSentences.keptBy(
                HaloInShort.of(6, cuppers, looks, mean, new Interval(lower, upper, 0.90), cuppings));
    }

    private static void says(InShort words, String found, String howSure, String next) {
        assertEquals(found + "\n" + howSure + "\n" + next, words.text());
    }

    @Test
    void attributesThatHardlyMoveTogetherAreAskedOneByOne() {
        says(
                halo(Halo.Cuppers.SEVERAL, 5.7, 0.07, 0.01, 0.12, 50),
                "In one cupper's own scores the 6 attributes hardly move together: they count as about 5.7 separate ones.",
                "Between 0, not at all, and 1, always, two of them stand at 0.07 (0.01 to 0.12).",
                "Ask about each attribute by itself.");
    }

    @Test
    void attributesThatMoveTogetherAreOneFinding() {
        says(
                halo(Halo.Cuppers.SEVERAL, 1.6, 0.72, 0.60, 0.80, 50),
                "In one cupper's own scores the 6 attributes move together: they count as about 1.6 separate ones.",
                "Between 0, not at all, and 1, always, two of them stand at 0.72 (0.60 to 0.80).",
                ONE_FINDING);
    }

    @Test
    void anIntervalOnBothSidesOfTheLimitCannotTell() {
        assertEquals(
                NOT_TOLD, halo(Halo.Cuppers.SEVERAL, 4, 0.35, 0.30, 0.50, 50).found());
        assertEquals(
                ONE_FINDING, halo(Halo.Cuppers.SEVERAL, 4, 0.35, 0.30, 0.50, 50).next());
        assertEquals(
                "In one cupper's own scores the 6 attributes move together: they count as about 4.0 separate ones.",
                halo(Halo.Cuppers.SEVERAL, 4, 0.35, 0.31, 0.50, 50).found());
        assertEquals(
                NOT_TOLD, halo(Halo.Cuppers.SEVERAL, 4, 0.2, 0.10, 0.30, 50).found());
        assertEquals(
                "In one cupper's own scores the 6 attributes hardly move together: they count as about 4.0 separate ones.",
                halo(Halo.Cuppers.SEVERAL, 4, 0.2, 0.10, 0.29, 50).found());
    }

    @Test
    void oneCupperNeedsASecond() {
        says(
                halo(Halo.Cuppers.ONE, 5.7, 0.07, 0.01, 0.12, 50),
                "In this cupper's scores the 6 attributes hardly move together: they count as about 5.7 separate ones.",
                "Between 0, not at all, and 1, always, two of them stand at 0.07 (0.01 to 0.12).",
                "Ask a second cupper to the table: only that parts a better cup from a generous cupper.");
    }

    @Test
    void whatTooFewCuppingsCannotTellIsToldAsThat() {
        double unknown = Double.NaN;
        says(
                halo(Halo.Cuppers.SEVERAL, 4, 0.4, unknown, unknown, 7),
                NOT_TOLD,
                "That takes 8 cuppings, and there are 7.",
                ONE_FINDING);
        assertEquals(
                "That takes 8 cuppings, and there is 1.",
                halo(Halo.Cuppers.SEVERAL, 4, 0.4, unknown, unknown, 1).howSure());
        assertEquals(
                "It hangs on one of the 8 cuppings, and without that it cannot be worked out.",
                halo(Halo.Cuppers.SEVERAL, 4, 0.4, unknown, unknown, 8).howSure());
        says(
                halo(Halo.Cuppers.ONE, unknown, unknown, unknown, unknown, 0),
                "Whether attributes move together in one cupper's scores cannot be told.",
                "That needs two attributes that one cupper scored for two batches in one cupping.",
                "Let each cupper score at least two attributes of every cup.");
    }
}
