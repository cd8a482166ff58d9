package parchment.stats.resample;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import parchment.stats.linear.CannotFitException;
import parchment.stats.mixed.MixedDesign;
import parchment.stats.mixed.Prediction;

class GroupedFoldsTest {
    private static final List<String> DAYS = List.of("a", "b", "", "b", "a", "c", "b");

    @Test
    void leavesOneGroupOutAtATimeInTheOrderOfTheRows() {
        GroupedFolds folds = GroupedFolds.leaveOneOut(DAYS);
        assertEquals(3, folds.folds().size());
        int[][] test = {{0, 4}, {1, 3, 6}, {5}};
        int[][] train = {{1, 3, 5, 6}, {0, 4, 5}, {0, 1, 3, 4, 6}};
        for (int k = 0; k < 3; k++) {
            GroupedFolds.Fold fold = folds.folds().get(k);
            assertArrayEquals(test[k], fold.test());
            assertArrayEquals(train[k], fold.train());
            assertEquals(List.of("abc".substring(k, k + 1)), fold.groups());
        }
        assertEquals("3 parts of 6 rows, whole groups left out together; 1 rows without a group", folds.toString());
        assertEquals(
                "3 rows of b left out, 3 rows to learn from",
                folds.folds().get(1).toString());
    }

    @Test
    void handsOutCopiesOfItsRows() {
        GroupedFolds.Fold fold = GroupedFolds.leaveOneOut(DAYS).folds().get(0);
        fold.test()[0] = 99;
        fold.train()[0] = 99;
        assertArrayEquals(new int[] {0, 4}, fold.test());
        assertArrayEquals(new int[] {1, 3, 5, 6}, fold.train());
    }

    /** Sizes 5, 3, 3, 2, 2, 1: dealt to the part with fewest rows, no two parts lie further apart than the largest group. */
    @Test
    void dealsGroupsToThePartWithTheFewestRows() {
        List<String> groups = new ArrayList<>();
        int[] sizes = {5, 3, 3, 2, 2, 1};
        for (int g = 0; g < sizes.length; g++) {
            for (int i = 0; i < sizes[g]; i++) {
                groups.add("g" + g);
            }
        }
        for (long seed = 0; seed < 200; seed++) {
            GroupedFolds folds = GroupedFolds.of(groups, 3, seed);
            int[] rows = folds.folds().stream().mapToInt(f -> f.test().length).toArray();
            assertEquals(16, Arrays.stream(rows).sum());
            assertTrue(Arrays.stream(rows).max().orElseThrow()
                            - Arrays.stream(rows).min().orElseThrow()
                    <= 5);
            assertTrue(Arrays.stream(rows).min().orElseThrow() > 0, "no part is empty");
        }
    }

    /** Groups of one size fill the parts by turns: 4 groups in 2 parts are 2 and 2, and each pair shares a part in a third of the shuffles. */
    @Test
    void everyShuffleIsAsLikelyAsEveryOther() {
        List<String> groups = List.of("a", "b", "c", "d");
        Map<Set<String>, Integer> together = new HashMap<>();
        for (long seed = 0; seed < 3000; seed++) {
            for (GroupedFolds.Fold fold : GroupedFolds.of(groups, 2, seed).folds()) {
                assertEquals(2, fold.groups().size());
                together.merge(new HashSet<>(fold.groups()), 1, Integer::sum);
            }
        }
        assertEquals(6, together.size());
        // 1,000 expected, standard deviation 26.
        together.values().forEach(count -> assertEquals(1000, count, 105));
    }

    @Test
    void thePartsDependOnTheSeedAndNotOnTheOrderOfTheRows() {
        List<String> groups = List.of("a", "b", "c", "d", "e", "f", "a");
        List<String> other = List.of("f", "a", "e", "d", "a", "c", "b");
        Set<List<List<String>>> seen = new HashSet<>();
        for (long seed = 0; seed < 20; seed++) {
            List<List<String>> parts = parts(GroupedFolds.of(groups, 3, seed));
            assertEquals(parts, parts(GroupedFolds.of(groups, 3, seed)));
            assertEquals(parts, parts(GroupedFolds.of(other, 3, seed)));
            seen.add(parts);
        }
        assertTrue(seen.size() > 10, seen.size() + " different splits");
    }

    private static List<List<String>> parts(GroupedFolds folds) {
        return folds.folds().stream()
                .map(fold -> fold.groups().stream().sorted().toList())
                .toList();
    }

    @ParameterizedTest
    @CsvSource({"2, 2", "3, 3", "4, 3", "50, 3"})
    void thereAreNoMorePartsThanGroups(int asked, int parts) {
        assertEquals(parts, GroupedFolds.of(DAYS, asked, 1).folds().size());
    }

    @ParameterizedTest
    @CsvSource({"1", "0", "-3"})
    void saysThatOnePartIsNone(int asked) {
        assertEquals(
                "Cross-validation needs at least 2 parts, but was asked for " + asked + ".",
                assertThrows(IllegalArgumentException.class, () -> GroupedFolds.of(DAYS, asked, 1))
                        .getMessage());
    }

    @Test
    void saysWhichGroupIsAlone() {
        assertEquals(
                "Leaving out groups needs at least 2 of them, but there is only one: 'a'.",
                assertThrows(CannotFitException.class, () -> GroupedFolds.of(List.of("a", "", "a"), 4, 1))
                        .getMessage());
        assertEquals(
                "Leaving out groups needs at least 2 of them, but there is none.",
                assertThrows(CannotFitException.class, () -> GroupedFolds.of(List.of("", ""), 4, 1))
                        .getMessage());
    }

    @Test
    void predictsEachRowFromTheRowsOfOtherGroups() {
        double[] y = {10, 20, 999, 40, 30, 60, 60};
        double[] predicted = GroupedFolds.leaveOneOut(DAYS).predict((train, test) -> {
            double mean = Arrays.stream(train).mapToDouble(i -> y[i]).average().orElseThrow();
            return Arrays.stream(test).mapToDouble(i -> mean + i).toArray();
        });
        // Without a: (20 + 40 + 60 + 60) / 4 = 45; without b: 100 / 3; without c: 160 / 5 = 32.
        double[] expected = {45, 100 / 3.0 + 1, Double.NaN, 100 / 3.0 + 3, 49, 37, 100 / 3.0 + 6};
        assertArrayEquals(expected, predicted, 1e-12);
    }

    @Test
    void predictsADesignFromFitsToTheOtherGroups() {
        double[] y = {10, 20, 999, 40, 30, 60, 60};
        double[] predicted = GroupedFolds.leaveOneOut(DAYS).predict(MixedDesign.of("y", y), Prediction.AVERAGE_GROUP);
        assertArrayEquals(new double[] {45, 100 / 3.0, Double.NaN, 100 / 3.0, 45, 32, 100 / 3.0}, predicted, 1e-9);
    }

    @Test
    void saysWhichLengthsDoNotFit() {
        GroupedFolds folds = GroupedFolds.leaveOneOut(DAYS);
        assertEquals(
                "Cross-validation needs one value of the prediction per row: there are 2 rows but 1 values of the prediction.",
                assertThrows(IllegalArgumentException.class, () -> folds.predict((train, test) -> new double[1]))
                        .getMessage());
        String message = assertThrows(
                        IllegalArgumentException.class,
                        () -> folds.predict(MixedDesign.of("y", new double[3]), Prediction.AVERAGE_GROUP))
                .getMessage();
        assertEquals(
                "Cross-validation needs one value of the design per row: there are 7 rows but 3 values of the design.",
                message);
        assertNotEquals(0, folds.folds().size());
    }
}
