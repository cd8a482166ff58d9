package parchment.stats.warp;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

class FunctionalComponentsTest {
    @Test
    @Tag("agrees-with")
    void orthonormalShapesAreRecoveredWithTheirVariances() {
        // Curves a sqrt(2) cos(pi t) + b sqrt(2) cos(2 pi t): the shapes are orthonormal on 0..1, so they are the
        // components and
        // the variances are those of a and b (up to their small sample correlation, removed here by construction).
        double[] a = {3, -3, 3, -3, 0, 0};
        double[] b = {1, 1, -1, -1, 0, 0};
        double[] grid = new double[401];
        List<double[]> curves = new ArrayList<>();
        for (int i = 0; i < 6; i++) {
            double[] curve = new double[401];
            for (int k = 0; k <= 400; k++) {
                grid[k] = k / 400.0;
                curve[k] = 5
                        + Math.sqrt(2) * (a[i] * Math.cos(Math.PI * grid[k]) + b[i] * Math.cos(2 * Math.PI * grid[k]));
            }
            curves.add(curve);
        }
        FunctionalComponents components = FunctionalComponents.of(grid, curves);
        assertEquals(2, components.size());
        assertEquals(36 / 5.0, components.variance(0), 1e-9);
        assertEquals(4 / 5.0, components.variance(1), 1e-9);
        assertEquals(0.9, components.share(0), 1e-9);
        for (int i = 0; i < 6; i++) {
            assertEquals(a[i], Math.signum(components.shape(0)[0]) * components.score(i, 0), 1e-9);
            assertArrayEquals(curves.get(i), components.rebuilt(i, 2), 1e-9);
        }
        assertEquals(Math.sqrt(2), Math.abs(components.shape(0)[0]), 1e-9);
        assertTrue(components.toString().contains("90.0 %, 10.0 %"), components.toString());
    }

    @Test
    @Tag("holds-for-any")
    void unevenGridsWeighByTheirSpacing() {
        // The same smooth curves on an even and on a crowded grid have nearly the same components.
        double[] even = new double[301];
        double[] crowded = new double[301];
        List<double[]> onEven = new ArrayList<>();
        List<double[]> onCrowded = new ArrayList<>();
        for (int k = 0; k <= 300; k++) {
            even[k] = k / 300.0;
            crowded[k] = Math.pow(k / 300.0, 2);
        }
        SplittableRandom random = new SplittableRandom(5);
        for (int i = 0; i < 8; i++) {
            double a = random.nextGaussian();
            double b = random.nextGaussian();
            double[] x = new double[301];
            double[] y = new double[301];
            for (int k = 0; k <= 300; k++) {
                x[k] = a * even[k] + b * Math.sin(3 * even[k]);
                y[k] = a * crowded[k] + b * Math.sin(3 * crowded[k]);
            }
            onEven.add(x);
            onCrowded.add(y);
        }
        FunctionalComponents one = FunctionalComponents.of(even, onEven);
        FunctionalComponents two = FunctionalComponents.of(crowded, onCrowded);
        assertEquals(one.variance(0), two.variance(0), 1e-4 * one.variance(0));
        assertEquals(one.score(3, 1), two.score(3, 1), 1e-3 * Math.sqrt(one.variance(1)));
    }

    @Test
    void equalCurvesHaveNoComponents() {
        double[] grid = {0, 1, 2};
        FunctionalComponents none =
                FunctionalComponents.of(grid, List.of(new double[] {1, 2, 3}, new double[] {1, 2, 3}));
        assertEquals(0, none.size());
        assertEquals("functional components: the curves do not differ", none.toString());
    }
}
