package parchment.stats;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import parchment.stats.linear.Correlation;
import parchment.stats.linear.OrthonormalBasis;
import parchment.stats.mixed.LinearMixedModel;
import parchment.stats.mixed.LinearModel;
import parchment.stats.mixed.MixedDesign;
import parchment.stats.mixed.RandomTerm;
import parchment.stats.mixed.VarianceComponent;

class EvidenceMeasuresTest {

    /**
     * Darfur example of Cinelli and Hazlett 2020 (estimate 0.0973, standard error 0.0233, 783 degrees of freedom): partial R^2 2.19 %,
     * robustness value 13.9 %, 7.6 % at the 95 % interval. Published numbers from memory.
     */
    @Test
    @Tag("agrees-with")
    void agreesWithTheDarfurExample() {
        RobustnessValue hidden = RobustnessValue.of(new Estimate("directly harmed", 0.09731582, 0.02325654, 783));
        assertEquals(0.02187, hidden.partialRSquared(), 1e-5);
        assertEquals(0.13878, hidden.robustness(), 1e-5);
        assertEquals(0.07626, hidden.robustnessOfInterval(0.95), 1e-5);
    }

    /** What the robustness value means: a made cause of just that strength on both sides takes the slope to 0. */
    @Test
    void aCauseOfThatStrengthTakesTheSlopeToZero() {
        SplittableRandom random = new SplittableRandom(14);
        int n = 200;
        double[] x = new double[n];
        double[] y = new double[n];
        Arrays.setAll(x, i -> random.nextGaussian());
        Arrays.setAll(y, i -> 0.3 * x[i] + random.nextGaussian());
        LinearModel model = LinearModel.fit(MixedDesign.of("y", y).withCovariate("x", x));
        double strength = RobustnessValue.of(model.term("x")).robustness();
        // z = a rx + b ry + c rz, built from orthonormal parts so that its partial R^2 with x, and with y given x, are
        // both the strength.
        double[] noise = new double[n];
        Arrays.setAll(noise, i -> random.nextGaussian());
        double[] ones = new double[n];
        Arrays.fill(ones, 1);
        OrthonormalBasis basis = OrthonormalBasis.of(List.of("1", "x", "y", "z"), List.of(ones, x, y, noise));
        double[] z = new double[n];
        for (int i = 0; i < n; i++) {
            z[i] = Math.sqrt(strength) * basis.q.get(1)[i]
                    + Math.sqrt(1 - strength)
                            * (Math.sqrt(strength) * basis.q.get(2)[i]
                                    + Math.sqrt(1 - strength) * basis.q.get(3)[i]);
        }
        double adjusted = LinearModel.fit(
                        MixedDesign.of("y", y).withCovariate("x", x).withCovariate("z", z))
                .term("x")
                .estimate();
        assertEquals(0, adjusted, 1e-9);
    }

    /** Hand-computed ranks; Spearman for R's cars 0.8303568388 (computed in R 4.2.2). */
    @Test
    @Tag("agrees-with")
    void correlationsAgree() {
        ReferenceData cars = ReferenceData.table("r-datasets/cars.csv");
        assertEquals(0.8303568388, Correlation.spearman(cars.numbers("speed"), cars.numbers("dist")), 1e-9);
        double r = Correlation.pearson(cars.numbers("speed"), cars.numbers("dist"));
        // R^2 of dist on speed, 0.6510794, is printed by every R tutorial.
        assertEquals(0.6510794, r * r, 1e-6);
        assertEquals(
                List.of(1.0, 2.5, 4.0, 2.5),
                Arrays.stream(Correlation.ranks(new double[] {1, 5, 9, 5}))
                        .boxed()
                        .toList());
        assertTrue(Double.isNaN(Correlation.pearson(new double[] {1, 1, 1}, new double[] {1, 2, 3})));
    }

    /** Shrout and Fleiss 1979, Table 4: ICC(2,1) = .29 (0.28976378), which a balanced REML fit gives as a share of variance. */
    @Test
    @Tag("agrees-with")
    void shareOfVarianceAgreesWithShroutAndFleiss() {
        double[] y = {9, 2, 5, 8, 6, 1, 3, 2, 8, 4, 6, 8, 7, 1, 2, 6, 10, 5, 6, 9, 6, 2, 4, 7};
        List<String> target = new ArrayList<>();
        List<String> judge = new ArrayList<>();
        for (int i = 0; i < 24; i++) {
            target.add("target " + i / 4);
            judge.add("judge " + i % 4);
        }
        LinearMixedModel model = MixedDesign.of("rating", y)
                .withRandom(RandomTerm.intercept("target", target))
                .withRandom(RandomTerm.intercept("judge", judge))
                .fit();
        double total = model.varianceComponents().stream()
                .mapToDouble(VarianceComponent::variance)
                .sum();
        assertEquals(0.28976378, model.varianceComponents().get(0).variance() / total, 1e-6);
        assertEquals("target", model.varianceComponents().get(0).term());
    }

    /** Truth 2, reliability near 0.75: the plain slope is near 1.5, the correction comes back to near 2. */
    @Test
    void correctionsTakeErrorInTheFeatureOut() {
        SplittableRandom random = new SplittableRandom(77);
        int n = 4000;
        double[] measured = new double[n];
        double[] y = new double[n];
        for (int i = 0; i < n; i++) {
            double x = 3 * random.nextGaussian();
            measured[i] = 200 + x + Math.sqrt(3) * random.nextGaussian();
            y[i] = 2 * x + random.nextGaussian();
        }
        Estimate naive = LinearModel.fit(MixedDesign.of("y", y).withCovariate("x", measured))
                .term("x");
        MeasurementError error = MeasurementError.of(measured, Math.sqrt(3));
        assertEquals(0.75, error.reliability(), 0.02);
        assertEquals(1.5, naive.estimate(), 0.05);
        assertEquals(2, error.calibrated(naive).estimate(), 0.06);
    }

    @Test
    void aFeatureThatIsMostlyErrorIsNotCorrected() {
        double[] x = {1, 2, 3, 4, 5};
        MeasurementError error = MeasurementError.of(x, 1.3);
        assertFalse(error.canBeCorrected());
        assertTrue(Double.isNaN(error.calibrated(new Estimate("x", 1, 0.2, 10)).estimate()));
        assertTrue(error.toString().endsWith("too low to correct for, cannot tell"));
    }
}
