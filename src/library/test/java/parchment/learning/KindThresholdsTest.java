package parchment.learning;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.BitSet;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.junit.jupiter.api.Test;
import parchment.StatedPage;
import parchment.logbook.Batch;

/** Holds what makes a kind of roast, by a row on each side of every threshold; docs/one-clock.md states most of them. */
class KindThresholdsTest {
    private static final StatedPage PAGE = StatedPage.of("one-clock.md");

    /** Says into how many kinds groups are split that lie far apart, each losing one batch at a time when it is cut; some batches are alone. */
    private static int kinds(int wanted, int alone, int... sizes) {
        List<Integer> group = new ArrayList<>();
        for (int g = 0; g < sizes.length; g++) {
            for (int i = 0; i < sizes[g]; i++) {
                group.add(g);
            }
        }
        for (int i = 0; i < alone; i++) {
            group.add(-1 - i);
        }
        int size = group.size();
        float[][] distances = new float[size][size];
        for (int i = 0; i < size; i++) {
            for (int j = 0; j < size; j++) {
                int later = Math.max(i, j);
                boolean together = group.get(i).equals(group.get(j));
                boolean single = group.get(i) < 0 || group.get(j) < 0;
                distances[i][j] = i == j ? 0 : together ? 1 + later : single ? 5_000 + later : 1_000;
            }
        }
        return Split.into(wanted, Clusters.of(distances), size)
                .map(split -> split.kinds().size())
                .orElse(0);
    }

    @Test
    void sixBatchesAreAKindAndFiveAreNot() {
        assertEquals(6, PAGE.number("and a group of at least # batches and 8 % of all is a kind"));
        assertEquals(2, kinds(2, 0, 24, 6));
        assertEquals(0, kinds(2, 0, 25, 5));
    }

    @Test
    void eightOfAHundredAreAKindAndSevenAreNot() {
        assertEquals(8, PAGE.number("and a group of at least 6 batches and # % of all is a kind"));
        assertEquals(2, kinds(2, 0, 92, 8));
        assertEquals(0, kinds(2, 0, 93, 7));
    }

    @Test
    void kindsHoldFourFifthsOfAllBatches() {
        assertEquals(2, kinds(2, 10, 20, 20));
        assertEquals(0, kinds(2, 11, 20, 19));
    }

    private static boolean holds(double overlap, double chance) {
        Split split = new Split(List.of(BitSet.valueOf(new long[] {0b0011}), BitSet.valueOf(new long[] {0b1100})), 4);
        return new StableSplit(split, List.of(1.0, overlap), 0.5, chance).holds();
    }

    @Test
    void aSplitHoldsWhereEachKindComesAgainAndFewDrawsLieAsFarApart() {
        double overlap = PAGE.number("Each kind must overlap by # % or more") / 100;
        double chance = PAGE.number("splits as far apart in at most # of 100 draws") / 100;
        assertTrue(holds(overlap, chance));
        assertFalse(holds(overlap - 0.001, chance));
        assertFalse(holds(overlap, chance + 0.001));
        assertEquals(0.75, overlap);
        assertEquals(0.05, chance);
    }

    /** Two scored batches on each day, of a kind first and then of the others; all scores differ. */
    private static double error(int daysOfKind, int daysOfOthers) {
        List<Batch> batches = new ArrayList<>();
        List<String> days = new ArrayList<>();
        Map<String, Double> levels = new TreeMap<>();
        BitSet kind = new BitSet();
        for (int i = 0; i < 2 * (daysOfKind + daysOfOthers); i++) {
            batches.add(Batch.named("b" + i).build());
            days.add("day " + i / 2);
            levels.put("b" + i, 6 + 0.1 * (i * i % 7));
            kind.set(i, i < 2 * daysOfKind);
        }
        return KindScores.of(batches, days, levels).lessOthers(kind).standardError();
    }

    @Test
    void aDifferenceOfScoresHasAnErrorFromFiveRoastDaysOnEitherSideOn() {
        assertTrue(error(5, 5) > 0);
        assertFalse(error(4, 6) >= 0);
        assertFalse(error(6, 4) >= 0);
    }

    /** Four corners of a rectangle have the squares of its half sides as variances. */
    @Test
    void aDirectionThatHoldsLessThanAHundredthOfTheLargestIsNoise() {
        assertEquals(2, PrincipalSpreads.of(rectangle(0.0102)).length);
        assertEquals(1, PrincipalSpreads.of(rectangle(0.0098)).length);
    }

    private static float[][] rectangle(double share) {
        double side = Math.sqrt(share);
        return ClustersTest.distances(List.of(
                new double[] {1, side}, new double[] {1, -side}, new double[] {-1, side}, new double[] {-1, -side}));
    }
}
