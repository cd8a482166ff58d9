package parchment.gather;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.junit.jupiter.api.Test;
import parchment.gather.RandomScoreSheetStudy.Fate;

/** Holds that each score of a random sheet is read right or named, whatever its layout, language and hand; more seeds by {@link RandomScoreSheetStudy}. */
class RandomScoreSheetTest {
    /** Ten layouts in eight languages, one of them invented, twice. */
    private static final int SEEDS = 160;

    @Test
    void noScoreIsLostOrWrongInSilence() {
        List<String> silent = new ArrayList<>();
        Map<Fate, Integer> counts = new TreeMap<>();
        for (long seed = 0; seed < SEEDS; seed++) {
            RandomScoreSheet made = new RandomScoreSheet(seed);
            RandomScoreSheetStudy read = RandomScoreSheetStudy.of(made);
            read.counts().forEach((fate, count) -> counts.merge(fate, count, Integer::sum));
            if (!read.silent().isEmpty()) {
                silent.add("seed " + seed + ": " + read.silent() + "\n" + made.shown());
            }
        }
        assertEquals(List.of(), silent);
        int right = counts.getOrDefault(Fate.RIGHT, 0);
        int named = counts.getOrDefault(Fate.NAMED, 0);
        assertTrue(right > 20 * named, counts.toString());
    }
}
