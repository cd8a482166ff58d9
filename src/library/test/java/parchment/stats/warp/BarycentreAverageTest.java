package parchment.stats.warp;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import org.junit.jupiter.api.RepeatedTest;
import org.junit.jupiter.api.RepetitionInfo;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

class BarycentreAverageTest {
    @Test
    @Tag("agrees-with")
    void agreesWithPrintedExamplesOfAnotherLibrary() {
        // Docstring of tslearn's dtw_barycenter_averaging_petitjean (BSD licence): starts at the pointwise mean, 5
        // rounds.
        assertArrayEquals(
                new double[] {1, 2, 3.5, 4.5},
                BarycentreAverage.of(
                                List.of(new double[] {1, 2, 3, 4}, new double[] {1, 2, 4, 5}),
                                Window.full(),
                                new double[] {1, 2, 3.5, 4.5},
                                5)
                        .values(),
                1e-12);
        assertArrayEquals(
                new double[] {1, 2, 3, 4, 4.5},
                BarycentreAverage.of(
                                List.of(new double[] {1, 2, 3, 4}, new double[] {1, 2, 3, 4, 5}),
                                Window.full(),
                                new double[] {1, 2, 3, 4, 5},
                                5)
                        .values(),
                1e-12);
    }

    @RepeatedTest(10)
    @Tag("holds-for-any")
    void theSpreadFallsFromRoundToRound(RepetitionInfo repetition) {
        SplittableRandom random = new SplittableRandom(repetition.getCurrentRepetition());
        List<double[]> curves = new ArrayList<>();
        for (int i = 0; i < 6; i++) {
            curves.add(bump(0.3 + 0.4 * random.nextDouble(), 50 + random.nextInt(20)));
        }
        BarycentreAverage average = BarycentreAverage.of(curves);
        double[] spread = average.spread();
        for (int k = 1; k < spread.length; k++) {
            assertTrue(spread[k] <= spread[k - 1]);
        }
        DynamicTimeWarping warping =
                DynamicTimeWarping.of(StepPattern.SYMMETRIC1).withCost(LocalCost.SQUARED);
        double sum = 0;
        for (double[] curve : curves) {
            sum += warping.distance(average.values(), curve);
        }
        assertEquals(sum, spread[spread.length - 1], 1e-9 * (1 + sum));
    }

    @Test
    void shiftedBumpsAverageToABumpOfFullHeight() {
        List<double[]> curves = List.of(bump(0.4, 101), bump(0.5, 101), bump(0.6, 101));
        double highest = 0;
        for (double value : BarycentreAverage.of(curves).values()) {
            highest = Math.max(highest, value);
        }
        // The pointwise mean of the three is only about 0.6 high.
        assertEquals(1, highest, 0.01);
    }

    @Test
    void saysThatOneCurveIsNoSet() {
        assertEquals(
                "A barycentre average needs at least 2 curves, but there are 1.",
                assertThrows(IllegalArgumentException.class, () -> BarycentreAverage.of(List.of(new double[] {1, 2})))
                        .getMessage());
    }

    private static double[] bump(double centre, int length) {
        double[] values = new double[length];
        for (int k = 0; k < length; k++) {
            double t = (double) k / (length - 1) - centre;
            values[k] = Math.exp(-200 * t * t);
        }
        return values;
    }
}
