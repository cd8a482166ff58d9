package parchment.stats.ordinal;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import parchment.stats.linear.SmallSolve;
import parchment.stats.linear.Vectors;
import parchment.stats.mixed.MixedDesign;
import parchment.stats.mixed.RandomTerm;

/** Holds the factor kept by its envelope beside the dense one, and that the order of rows does not matter. */
class EnvelopeFactorTest {
    private static MixedDesign design(long seed, boolean shuffled) {
        Random random = new Random(seed);
        List<Integer> rows = new ArrayList<>();
        for (int i = 0; i < 200; i++) {
            rows.add(i);
        }
        if (shuffled) {
            Collections.shuffle(rows, new Random(7));
        }
        double[] latent = random.doubles(200, -2, 2).toArray();
        double[] y = new double[200];
        double[] x = new double[200];
        List<String> batches = new ArrayList<>();
        List<String> days = new ArrayList<>();
        List<String> cuppers = new ArrayList<>();
        for (int i = 0; i < 200; i++) {
            int row = rows.get(i);
            batches.add("b" + row / 4);
            days.add("d" + (row + 3) / 9);
            cuppers.add("c" + row % 4);
            x[i] = Math.sin(row);
            y[i] = Math.rint(latent[row] + x[i] + 0.5 * Math.cos(row / 9));
        }
        return MixedDesign.of("score", y)
                .withCovariate("x", x)
                .withRandom(RandomTerm.intercept("batch", batches))
                .withRandom(RandomTerm.intercept("day", days))
                .withRandom(RandomTerm.intercept("cupper", cuppers));
    }

    @Test
    void solvesInvertsAndMeasuresAsTheDenseFactorDoes() {
        OrdinalRows data = OrdinalRows.of(design(5, true));
        int[] first = {0, 50, 73, 77};
        OrdinalPattern pattern = OrdinalPattern.of(data, first);
        double[] deviations = {0.7, 1.3, 0.4};
        OrdinalSystem system = new OrdinalSystem(data, first, pattern, deviations);
        double[] weight = new Random(3).doubles(200, 0.1, 1).toArray();
        assertTrue(system.factor(weight));
        double[][] dense = new double[77][77];
        for (int e = 0; e < 77; e++) {
            dense[e][e] = 1;
        }
        for (int i = 0; i < 200; i++) {
            for (int t = 0; t < 3; t++) {
                for (int s = 0; s < 3; s++) {
                    dense[first[t] + data.blocks.get(t).group[i]][first[s] + data.blocks.get(s).group[i]] +=
                            deviations[t] * deviations[s] * weight[i];
                }
            }
        }
        double[][] inverse = SmallSolve.inverse(dense).orElseThrow();
        double[] right = new Random(4).doubles(77, -1, 1).toArray();
        double[] solved = system.solve(right);
        double[] expected = Vectors.times(inverse, right);
        double[] diagonal = system.inverseDiagonal();
        double determinant = 0;
        double[][] lower = SmallSolve.cholesky(dense).orElseThrow();
        for (int e = 0; e < 77; e++) {
            assertEquals(expected[e], solved[e], 1e-10);
            assertEquals(inverse[e][e], diagonal[e], 1e-10);
            determinant += 2 * Math.log(lower[e][e]);
        }
        assertEquals(determinant, system.logDeterminant(), 1e-10);
        double[] leverages = system.leverages();
        for (int i = 0; i < 200; i++) {
            double sum = 0;
            for (int t = 0; t < 3; t++) {
                for (int s = 0; s < 3; s++) {
                    sum += deviations[t]
                            * deviations[s]
                            * inverse[first[t] + data.blocks.get(t).group[i]][first[s] + data.blocks.get(s).group[i]];
                }
            }
            assertEquals(sum, leverages[i], 1e-10);
        }
    }

    /** Neighbouring batches and days make a narrow band, whatever the order of the rows: a fraction of the whole triangle is kept. */
    @Test
    void keepsABandWhereGroupsFollowOneAnother() {
        for (boolean shuffled : new boolean[] {false, true}) {
            OrdinalPattern pattern = OrdinalPattern.of(OrdinalRows.of(design(5, shuffled)), new int[] {0, 50, 73, 77});
            int kept = 0;
            for (int i = 0; i < 77; i++) {
                kept += i - pattern.first[i];
            }
            assertTrue(kept < 700, kept + " of " + 77 * 76 / 2);
        }
    }

    @Test
    @Tag("holds-for-any")
    void theOrderOfRowsDoesNotMatter() {
        OrdinalMixedModel one = OrdinalMixedModel.fit(design(6, false));
        OrdinalMixedModel other = OrdinalMixedModel.fit(design(6, true));
        assertEquals(one.logLikelihood(), other.logLikelihood(), 1e-8);
        assertEquals(one.term("x").estimate(), other.term("x").estimate(), 1e-6);
        assertEquals(one.term("x").standardError(), other.term("x").standardError(), 1e-6);
    }

    @Test
    void aMatrixThatIsNotPositiveGivesNoFactor() {
        OrdinalRows data = OrdinalRows.of(design(5, false));
        int[] first = {0, 50, 73, 77};
        OrdinalSystem system =
                new OrdinalSystem(data, first, OrdinalPattern.of(data, first), new double[] {0.7, 1.3, 0.4});
        double[] weight = new double[200];
        Arrays.fill(weight, -10);
        assertFalse(system.factor(weight));
        assertTrue(Double.isNaN(system.logDeterminant()));
        assertTrue(Double.isNaN(system.solve(new double[77])[3]));
        assertTrue(Double.isNaN(system.leverages()[3]));
    }
}
