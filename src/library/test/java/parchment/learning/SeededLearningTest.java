package parchment.learning;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.SplittableRandom;
import java.util.concurrent.ForkJoinPool;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import smile.math.MathEx;
import smile.stat.distribution.GaussianDistribution;

/** What is drawn from Smile: the same seed gives the same answer, whoever else draws, and published properties hold. */
class SeededLearningTest {
    private static List<double[]> cloud(int size, int columns, long seed) {
        SplittableRandom random = new SplittableRandom(seed);
        List<double[]> rows = new ArrayList<>();
        for (int i = 0; i < size; i++) {
            double[] row = new double[columns];
            Arrays.setAll(row, k -> random.nextGaussian());
            rows.add(row);
        }
        return rows;
    }

    /** Smile's normal numbers come in pairs that all threads share: without care an odd number drawn elsewhere shifts every later draw. */
    @Test
    void theSameSeedGivesTheSameScoresWhateverWasDrawnBefore() throws Exception {
        List<double[]> rows = cloud(80, 5, 1);
        double[] first = IsolatedBatches.scores(rows, 7);
        for (int again = 0; again < 8; again++) {
            for (int drawn = 0; drawn <= again % 3; drawn++) {
                GaussianDistribution.getInstance().rand();
            }
            assertArrayEquals(first, IsolatedBatches.scores(rows, 7), "run " + again);
        }
        ForkJoinPool other = new ForkJoinPool(3);
        assertArrayEquals(
                first, other.submit(() -> IsolatedBatches.scores(rows, 7)).get());
        other.shutdown();
        assertTrue(!Arrays.equals(first, IsolatedBatches.scores(rows, 8)), "another seed draws otherwise");
    }

    @Test
    void theReadersOwnSeedIsLeftAlone() {
        MathEx.setSeed(5);
        double[] expected = {MathEx.random(), MathEx.random()};
        MathEx.setSeed(5);
        double one = MathEx.random();
        IsolatedBatches.scores(cloud(40, 3, 2), 7);
        assertArrayEquals(expected, new double[] {one, MathEx.random()});
    }

    /** Liu, Ting and Zhou 2008, section 2: a row that is soon alone scores near 1, and rows drawn evenly score about 0.5. */
    @Test
    @Tag("agrees-with")
    void aRowFarFromAllOthersIsSoonAloneAndEvenRowsAreNot() {
        SplittableRandom random = new SplittableRandom(3);
        List<double[]> rows = new ArrayList<>();
        for (int i = 0; i < 200; i++) {
            rows.add(new double[] {random.nextDouble(), random.nextDouble()});
        }
        double[] even = IsolatedBatches.scores(rows, 1);
        assertEquals(0.5, Arrays.stream(even).average().orElseThrow(), 0.05);
        rows.add(new double[] {6, -5});
        double[] scores = IsolatedBatches.scores(rows, 1);
        double most = Arrays.stream(scores, 0, 200).max().orElseThrow();
        assertTrue(scores[200] > 0.75 && scores[200] > most, scores[200] + " and " + most);
    }

    /**
     * Lundberg and Lee 2017, property 1 (local accuracy): what the features add up to is the prediction, from the same start for every row.
     * Section 2.4: a feature that changes nothing gets nothing.
     */
    @Test
    @Tag("agrees-with")
    void sharesOfTheFeaturesAddUpToThePrediction() {
        List<double[]> rows = cloud(150, 4, 4);
        rows.forEach(row -> row[3] = 0);
        SplittableRandom random = new SplittableRandom(5);
        double[] response = rows.stream()
                .mapToDouble(row -> 2 * row[0] + (row[1] > 0 ? 1 : 0) + 0.3 * random.nextGaussian())
                .toArray();
        double[][] all = rows.toArray(double[][]::new);
        BoostedTrees trees = BoostedTrees.fit(all, response, 1);
        double[] predicted = trees.predict(all);
        double[][] shares = trees.shares(all);
        double start = predicted[0] - Arrays.stream(shares[0]).sum();
        for (int i = 0; i < all.length; i++) {
            assertEquals(predicted[i], start + Arrays.stream(shares[i]).sum(), 1e-9);
            assertEquals(0, shares[i][3]);
        }
        assertEquals(Arrays.stream(response).average().orElseThrow(), start, 0.3);
        double[] size = new double[3];
        for (double[] row : shares) {
            for (int k = 0; k < 3; k++) {
                size[k] += Math.abs(row[k]);
            }
        }
        assertTrue(size[0] > size[1] && size[1] > 3 * size[2], Arrays.toString(size));
        assertArrayEquals(predicted, BoostedTrees.fit(all, response, 1).predict(all));
    }
}
