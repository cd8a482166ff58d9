package parchment.stats.resample;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.SplittableRandom;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import parchment.stats.Interval;
import parchment.stats.ReferenceData;
import parchment.stats.mixed.LinearMixedModelTest;
import parchment.stats.mixed.MixedDesign;
import parchment.stats.mixed.Prediction;

class ResamplingTest {
    private static final List<String> DAYS = List.of("a", "a", "b", "b", "b", "c", "", "d", "d", "e");

    @Test
    void foldsLeaveWholeGroupsOut() {
        for (GroupedFolds folds : List.of(GroupedFolds.leaveOneOut(DAYS), GroupedFolds.of(DAYS, 3, 7))) {
            int[] times = new int[DAYS.size()];
            for (GroupedFolds.Fold fold : folds.folds()) {
                Set<String> tested = new HashSet<>(
                        Arrays.stream(fold.test()).mapToObj(DAYS::get).toList());
                assertEquals(new HashSet<>(fold.groups()), tested);
                for (int row : fold.train()) {
                    assertFalse(tested.contains(DAYS.get(row)));
                }
                for (int row : fold.test()) {
                    times[row]++;
                }
                assertEquals(9, fold.train().length + fold.test().length);
            }
            assertArrayEquals(new int[] {1, 1, 1, 1, 1, 1, 0, 1, 1, 1}, times);
        }
        assertEquals(5, GroupedFolds.leaveOneOut(DAYS).folds().size());
        assertEquals(3, GroupedFolds.of(DAYS, 3, 7).folds().size());
    }

    /** Leave one subject out on sleepstudy with a straight line: 49.60447584, computed in R (no mixed effects, plain lm per fold). */
    @Test
    void leavingOutSubjectsGivesTheErrorThatRFinds() {
        MixedDesign design = LinearMixedModelTest.sleepstudyIntercept().withoutRandom("Subject");
        List<String> subject = ReferenceData.table("lme4/sleepstudy.csv").words("Subject");
        double[] predicted = GroupedFolds.leaveOneOut(subject).predict(design, Prediction.AVERAGE_GROUP);
        double squares = 0;
        for (int i = 0; i < predicted.length; i++) {
            squares += Math.pow(design.response()[i] - predicted[i], 2);
        }
        assertEquals(49.60447584, Math.sqrt(squares / predicted.length), 1e-7);
    }

    @Test
    void oneGroupCannotBeLeftOut() {
        IllegalArgumentException e =
                assertThrows(IllegalArgumentException.class, () -> GroupedFolds.leaveOneOut(List.of("a", "a")));
        assertEquals("Leaving out groups needs at least 2 of them, but there is only one: 'a'.", e.getMessage());
    }

    @Test
    void shufflesStayWithinBlocksAndRepeatWithTheSeed() {
        Permutation permutation = Permutation.withinBlocks(DAYS, 5);
        for (int number = 0; number < 50; number++) {
            int[] order = permutation.order(number);
            for (int i = 0; i < order.length; i++) {
                assertEquals(DAYS.get(i), DAYS.get(order[i]));
            }
            assertArrayEquals(order, Permutation.withinBlocks(DAYS, 5).order(number));
            assertArrayEquals(
                    IntStream.range(0, 10).toArray(),
                    Arrays.stream(order).sorted().toArray());
        }
        assertEquals(3, permutation.sets());
        assertEquals(Math.log(2 * 6 * 2), permutation.logOrders(), 1e-12);
    }

    @Test
    void allOrdersOfABlockComeEquallyOften() {
        Permutation permutation = Permutation.withinBlocks(List.of("a", "a", "a"), 99);
        int[] counts = new int[27];
        for (int number = 0; number < 6000; number++) {
            int[] order = permutation.order(number);
            counts[9 * order[0] + 3 * order[1] + order[2]]++;
        }
        int[] seen = Arrays.stream(counts).filter(c -> c > 0).toArray();
        assertEquals(6, seen.length);
        // Chi-squared with 5 degrees of freedom; 20.5 is its 99.9 % point.
        assertTrue(Arrays.stream(seen)
                        .mapToDouble(c -> (c - 1000.0) * (c - 1000.0) / 1000)
                        .sum()
                < 20.5);
    }

    @Test
    void wholeBlocksMoveTogether() {
        List<String> days = List.of("a", "a", "b", "b", "c", "c");
        int[] order = Permutation.ofWholeBlocks(days, 3).order(1);
        for (int i = 0; i < 6; i += 2) {
            assertEquals(order[i] + 1, order[i + 1]);
            assertEquals(days.get(order[i]), days.get(order[i + 1]));
        }
    }

    /** All 20 splits of 6 values are listed here by hand; the test must find their share within sampling error. */
    @Test
    void agreesWithTheFullList() {
        double[] y = {12, 15, 19, 8, 9, 11};
        double[] group = {1, 1, 1, 0, 0, 0};
        // Splits whose mean difference is as large as 18/3 either way: {12,15,19} and {8,9,11}: 2 of 20.
        PermutationTest test = PermutationTest.run(
                Permutation.withinBlocks(List.of("a", "a", "a", "a", "a", "a"), 1), 20_000, order -> {
                    double difference = 0;
                    for (int i = 0; i < 6; i++) {
                        difference += (group[order[i]] == 1 ? 1 : -1) * y[i];
                    }
                    return new double[] {difference};
                });
        assertEquals(0.1, test.probability(0), 0.007);
        assertEquals(test.probability(0), test.adjustedProbability(0));
    }

    /** Under no effect the best of 20 features passes its luck line in one logbook of twenty (Monte-Carlo error 1.5 points at 200). */
    @Test
    void luckLineHoldsItsChance() {
        int found = 0;
        for (int world = 0; world < 200; world++) {
            SplittableRandom random = new SplittableRandom(world);
            List<String> block =
                    IntStream.range(0, 40).mapToObj(i -> "day" + i / 5).toList();
            double[] y = random.doubles(40).toArray();
            double[][] x = new double[20][];
            for (int k = 0; k < 20; k++) {
                x[k] = IntStream.range(0, 40)
                        .mapToDouble(i -> random.nextDouble() + i / 5)
                        .toArray();
            }
            PermutationTest test = PermutationTest.run(Permutation.withinBlocks(block, world), 99, order -> {
                double[] statistics = new double[20];
                for (int k = 0; k < 20; k++) {
                    double mean = Arrays.stream(x[k]).average().orElse(0);
                    for (int i = 0; i < 40; i++) {
                        statistics[k] += (x[k][order[i]] - mean) * y[i];
                    }
                }
                return statistics;
            });
            found += IntStream.range(0, 20).anyMatch(k -> test.adjustedProbability(k) <= 0.05) ? 1 : 0;
        }
        assertTrue(found <= 0.05 * 200 + 2 * Math.sqrt(0.05 * 0.95 * 200), found + " of 200");
        assertTrue(found >= 1);
    }

    @Test
    void drawsWholeGroupsAndTellsRepeatsApart() {
        GroupBootstrap bootstrap = GroupBootstrap.of(DAYS, 4);
        boolean repeated = false;
        for (int number = 0; number < 20; number++) {
            GroupBootstrap.Draw draw = bootstrap.draw(number);
            assertEquals(5, Set.copyOf(draw.groups()).size());
            repeated |= draw.groups().stream().anyMatch(g -> g.endsWith("(2)"));
            assertFalse(Arrays.stream(draw.rows()).anyMatch(row -> row == 6));
            assertArrayEquals(draw.rows(), bootstrap.draw(number).rows());
        }
        assertTrue(repeated);
    }

    /** The standard error of a mean of independent groups is known; the percentile interval comes near it. */
    @Test
    void intervalOfAMeanIsAsWideAsTheoryGives() {
        SplittableRandom random = new SplittableRandom(3);
        double[] y = new double[600];
        Arrays.setAll(y, i -> random.nextGaussian());
        List<String> each = IntStream.range(0, 600).mapToObj(Integer::toString).toList();
        Interval interval = GroupBootstrap.of(each, 8)
                .interval(
                        1000,
                        0.90,
                        draw -> Arrays.stream(draw.rows())
                                .mapToDouble(row -> y[row])
                                .average()
                                .orElse(0));
        assertEquals(2 * 1.645 / Math.sqrt(600), interval.width(), 0.02);
    }
}
