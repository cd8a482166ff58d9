package parchment.virtual.chance;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;

import java.util.HashSet;
import java.util.List;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

class ChanceTest {
    /** SplittableRandom of the JDK is the generator of the cited paper. */
    @Test
    @Tag("agrees-with")
    void agreesWithTheSameGeneratorInTheJdk() {
        for (long seed : new long[] {0, 1, -7, 20240109L, Long.MIN_VALUE}) {
            SplittableRandom theirs = new SplittableRandom(seed);
            Chance ours = Chance.fromState(seed);
            for (int i = 0; i < 1000; i++) {
                assertEquals(theirs.nextLong(), ours.bits());
            }
        }
    }

    /** Moments of the normal distribution; 200,000 draws, five standard errors. */
    @Test
    @Tag("agrees-with")
    void normalNumbersHaveTheMomentsOfTheNormalDistribution() {
        Chance chance = Chance.of(3, "moments");
        int count = 200_000;
        double[] sums = new double[5];
        for (int i = 0; i < count; i++) {
            double drawn = chance.normal(0, 1);
            for (int power = 1; power <= 4; power++) {
                sums[power] += Math.pow(drawn, power) / count;
            }
        }
        assertEquals(0, sums[1], 5 * Math.sqrt(1.0 / count));
        assertEquals(1, sums[2], 5 * Math.sqrt(2.0 / count));
        assertEquals(0, sums[3], 5 * Math.sqrt(15.0 / count));
        assertEquals(3, sums[4], 5 * Math.sqrt(96.0 / count));
    }

    @Test
    void anotherNameOrSeedIsAnotherStream() {
        assertEquals(
                Chance.of(1, "batch H001").bits(), Chance.of(1, "batch H001").bits());
        assertNotEquals(
                Chance.of(1, "batch H001").bits(), Chance.of(1, "batch H002").bits());
        assertNotEquals(
                Chance.of(1, "batch H001").bits(), Chance.of(2, "batch H001").bits());
    }

    @Test
    void shufflesAndBoundsStayWithinWhatWasGiven() {
        Chance chance = Chance.of(5, "shuffle");
        List<Integer> order = chance.shuffled(List.of(1, 2, 3, 4, 5, 6, 7));
        assertEquals(7, new HashSet<>(order).size());
        int[] counts = new int[6];
        for (int i = 0; i < 60_000; i++) {
            counts[chance.below(6)]++;
        }
        for (int count : counts) {
            assertEquals(10_000, count, 5 * Math.sqrt(10_000 * 5.0 / 6));
        }
    }
}
