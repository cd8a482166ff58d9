package parchment.stats.warp;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;

class FunctionalBoxplotTest {
    @Test
    void bandAndFencesFollowTheirDefinition() {
        // By hand from the depths 0.5, 0.83, 0.72, 0.67: the deeper half is curves 2 and 3.
        FunctionalBoxplot plot = FunctionalBoxplot.of(BandDepthTest.FOUR);
        assertArrayEquals(new double[] {0.5, 0.5, 1, 2, 1.5, 1}, plot.median());
        assertArrayEquals(new double[] {-1, -1, -0.5, 1, 1, 0.5}, plot.lower());
        assertArrayEquals(new double[] {0.5, 0.5, 1, 2, 1.5, 1}, plot.upper());
        assertArrayEquals(new double[] {2.75, 2.75, 3.25, 3.5, 2.25, 1.75}, plot.upperFence(), 1e-12);
        assertArrayEquals(new double[] {-3.25, -3.25, -2.75, -0.5, 0.25, -0.25}, plot.lowerFence(), 1e-12);
        assertEquals(List.of(0, 3), plot.outlyingCurves());
        assertEquals(
                new FunctionalBoxplot.Outlying(0, 4, 5, FunctionalBoxplot.Side.ABOVE, 0.25),
                plot.outlying().get(0));
        assertEquals(
                new FunctionalBoxplot.Outlying(3, 3, 5, FunctionalBoxplot.Side.BELOW, 1.25),
                plot.outlying().get(1));
    }

    @Test
    void aShortExcursionOfACentralCurveHidesBehindTheBandItWidens() {
        List<double[]> curves = new ArrayList<>();
        for (int i = 0; i < 11; i++) {
            double[] level = new double[50];
            java.util.Arrays.fill(level, i);
            curves.add(level);
        }
        curves.get(5)[20] = 100;
        // The stated limit of the method: curve 6 stays among the deeper half, and its excursion is inside its own
        // band.
        assertTrue(FunctionalBoxplot.of(curves).outlying().isEmpty());
    }

    @Test
    void findsTheOneCurveThatStraysAndWhere() {
        SplittableRandom random = new SplittableRandom(3);
        List<double[]> curves = new ArrayList<>();
        for (int i = 0; i < 30; i++) {
            double level = 2 * random.nextDouble() - 1;
            double[] curve = new double[100];
            for (int k = 0; k < 100; k++) {
                curve[k] = level + 0.01 * k + 0.1 * random.nextGaussian();
            }
            curves.add(curve);
        }
        for (int k = 40; k < 90; k++) {
            curves.get(7)[k] += 30;
        }
        FunctionalBoxplot plot = FunctionalBoxplot.of(curves);
        assertEquals(List.of(7), plot.outlyingCurves());
        assertEquals(40, plot.outlying().get(0).from());
        assertEquals(89, plot.outlying().get(0).to());
        assertTrue(plot.toString().endsWith("1 outlying"), plot.toString());
        assertTrue(FunctionalBoxplot.of(curves, 40).outlying().isEmpty());
    }
}
