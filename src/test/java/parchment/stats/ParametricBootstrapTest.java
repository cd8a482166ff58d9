package parchment.stats;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

class ParametricBootstrapTest {

    /** lme4's simulate and refit, 400 draws: 0.2344, itself with a standard error of 0.021; the chi-squared distribution says 0.417. */
    @Test
    @Tag("agrees-with")
    void agreesWithRefitsByLme4() {
        LinearMixedModel full = LinearMixedModelTest.pastes().fit();
        LinearMixedModel small =
                LinearMixedModelTest.pastes().withoutRandom("batch").fit();
        ParametricBootstrap bootstrap = ParametricBootstrap.of(small, full, 400, 3);
        double theirs = ReferenceFits.of("mixed-models").value("Pastes without batch", "bootstrap probability");
        // Three standard errors of the difference of two such shares.
        assertEquals(theirs, bootstrap.probability(), 3 * Math.sqrt(2 * 0.234 * 0.766 / 400));
        assertEquals(0.417, bootstrap.observed().probability(), 1e-3);
        assertEquals(400, bootstrap.simulated().length);
    }

    @Test
    void sameSeedGivesTheSameAnswer() {
        LinearMixedModel full = LinearMixedModelTest.dyestuff("Dyestuff").fit();
        LinearMixedModel small =
                LinearMixedModelTest.dyestuff("Dyestuff").withoutRandom("Batch").fit();
        assertArrayEquals(
                ParametricBootstrap.of(small, full, 20, 9).simulated(),
                ParametricBootstrap.of(small, full, 20, 9).simulated());
        assertThrows(IllegalArgumentException.class, () -> ParametricBootstrap.of(small, full, 0, 9));
    }

    /** Two models that both sit at a variance of 0 cannot be told apart, and the p-value must say so. */
    @Test
    void twoModelsOnTheBoundGiveAPValueOfOne() {
        LinearMixedModel full = LinearMixedModelTest.dyestuff("Dyestuff2").fit();
        LinearMixedModel small = LinearMixedModelTest.dyestuff("Dyestuff2")
                .withoutRandom("Batch")
                .fit();
        assertEquals(1, ParametricBootstrap.of(small, full, 50, 1).probability());
    }

    @Test
    void simulatedResponsesHaveTheModelsVariances() {
        LinearMixedModel model = LinearMixedModelTest.sleepstudy().fit();
        int draws = 200;
        double[] variance = new double[2];
        double[] days =
                LinearMixedModelTest.sleepstudy().fixed().get(1).columns().get(0);
        for (int r = 0; r < draws; r++) {
            double[] y = model.simulate(r);
            double[] average = model.predict(model.design(), Prediction.AVERAGE_GROUP);
            for (int i = 0; i < y.length; i++) {
                if (days[i] == 0 || days[i] == 9) {
                    variance[days[i] == 0 ? 0 : 1] += Math.pow(y[i] - average[i], 2) / (18.0 * draws);
                }
            }
        }
        double sigma2 = Math.pow(model.residualStandardDeviation(), 2);
        double intercept = model.variance("Subject", "(Intercept)");
        double slope = model.variance("Subject", "Days");
        double covariance = LinearMixedModelTest.covariance(model, "Subject", "(Intercept)", "Days");
        // 3,600 draws: a variance is known to 2.4 %.
        assertEquals(sigma2 + intercept, variance[0], 0.08 * variance[0]);
        assertEquals(sigma2 + intercept + 18 * covariance + 81 * slope, variance[1], 0.08 * variance[1]);
        assertTrue(Arrays.stream(model.simulate(1)).allMatch(Double::isFinite));
    }
}
