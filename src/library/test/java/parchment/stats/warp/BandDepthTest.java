package parchment.stats.warp;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import org.junit.jupiter.api.RepeatedTest;
import org.junit.jupiter.api.RepetitionInfo;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

class BandDepthTest {
    /** Example of the documentation of scikit-fda (BSD licence), which prints depths 0.5, 0.83, 0.72, 0.67. */
    static final List<double[]> FOUR = List.of(
            new double[] {1, 1, 2, 3, 2.5, 2},
            new double[] {0.5, 0.5, 1, 2, 1.5, 1},
            new double[] {-1, -1, -0.5, 1, 1, 0.5},
            new double[] {-0.5, -0.5, -0.5, -1, -1, -1});

    @Test
    @Tag("agrees-with")
    void agreesWithAPrintedExample() {
        BandDepth depth = BandDepth.of(FOUR);
        assertEquals(0.5, depth.depth(0), 0.005);
        assertEquals(0.83, depth.depth(1), 0.005);
        // At the third point the last two curves tie; a tie counts as between, so both get 5/6 there, as printed.
        assertEquals(0.72, depth.depth(2), 0.005);
        assertEquals(0.67, depth.depth(3), 0.005);
        assertEquals(List.of(1, 2, 3, 0), depth.order());
    }

    @RepeatedTest(10)
    @Tag("holds-for-any")
    void agreesWithTheDefinitionCountedOut(RepetitionInfo repetition) {
        SplittableRandom random = new SplittableRandom(repetition.getCurrentRepetition());
        int n = 3 + random.nextInt(8);
        int points = 1 + random.nextInt(6);
        List<double[]> curves = new ArrayList<>();
        for (int i = 0; i < n; i++) {
            // Few levels, so that ties are common.
            curves.add(random.ints(points, 0, 5).asDoubleStream().toArray());
        }
        BandDepth depth = BandDepth.of(curves);
        for (int i = 0; i < n; i++) {
            double inside = 0;
            for (int a = 0; a < n; a++) {
                for (int b = a + 1; b < n; b++) {
                    for (int k = 0; k < points; k++) {
                        double low = Math.min(curves.get(a)[k], curves.get(b)[k]);
                        double high = Math.max(curves.get(a)[k], curves.get(b)[k]);
                        double value = curves.get(i)[k];
                        inside += low <= value && value <= high ? 1 : 0;
                    }
                }
            }
            assertEquals(inside / points / (n * (n - 1) / 2.0), depth.depth(i), 1e-12);
        }
    }

    @Test
    void leavesMissingValuesOut() {
        List<double[]> gap = new ArrayList<>(FOUR);
        gap.add(new double[] {Double.NaN, Double.NaN, Double.NaN, Double.NaN, Double.NaN, Double.NaN});
        BandDepth depth = BandDepth.of(gap);
        assertEquals(6, depth.missing());
        assertEquals(BandDepth.of(FOUR).depth(2), depth.depth(2), 1e-12);
        assertEquals(List.of(1, 2, 3, 0), depth.order());
    }

    @Test
    void saysHowManyCurvesItNeeds() {
        assertEquals(
                "Band depth needs at least 3 curves, but there are 2.",
                assertThrows(IllegalArgumentException.class, () -> BandDepth.of(FOUR.subList(0, 2)))
                        .getMessage());
        assertEquals(
                "Band depth needs all curves on one grid of 6 points, but curve 3 has 1.",
                assertThrows(
                                IllegalArgumentException.class,
                                () -> BandDepth.of(List.of(FOUR.get(0), FOUR.get(1), new double[] {1})))
                        .getMessage());
    }
}
