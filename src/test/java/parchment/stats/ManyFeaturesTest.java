package parchment.stats;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/** Elastic net, partial least squares, Gaussian process and surface: what holds by itself; outside numbers are in {@link AgreementTest}. */
class ManyFeaturesTest {
    private static final List<String> NAMES = AgreementOfRegression.CAR_FEATURES;

    @Test
    @Tag("holds-for-any")
    void slopesFollowAChangeOfUnit() {
        List<double[]> features = AgreementOfRegression.carFeatures();
        double[] response = AgreementOfRegression.carResponse();
        ElasticNet one = ElasticNet.fit(NAMES, features, response, 0.5, 0.5);
        List<double[]> scaled = features.stream()
                .map(f -> Arrays.stream(f).map(v -> 40 * v - 7).toArray())
                .toList();
        double[] tenfold = Arrays.stream(response).map(v -> 10 * v + 3).toArray();
        ElasticNet other = ElasticNet.fit(NAMES, scaled, tenfold, 0.5, 5);
        for (String name : NAMES) {
            assertEquals(10 * one.slope(name), 40 * other.slope(name), 1e-8);
        }
    }

    /** Karush, Kuhn and Tucker: the pull of a slope in use equals its price, that of one at 0 stays below. */
    @Test
    void lassoMeetsTheConditionsOfItsOptimum() {
        List<double[]> features = AgreementOfRegression.carFeatures();
        double[] response = AgreementOfRegression.carResponse();
        ElasticNet fit = ElasticNet.fit(NAMES, features, response, ElasticNet.LASSO, 0.5);
        double[] predicted = fit.predict(features);
        int unused = 0;
        for (int k = 0; k < NAMES.size(); k++) {
            double[] f = features.get(k);
            double mean = Arrays.stream(f).average().orElseThrow();
            double deviation = Math.sqrt(
                    Arrays.stream(f).map(v -> (v - mean) * (v - mean)).average().orElseThrow());
            double pull = 0;
            for (int i = 0; i < f.length; i++) {
                pull += (f[i] - mean) / deviation * (response[i] - predicted[i]) / f.length;
            }
            double slope = fit.slopes()[k];
            if (slope == 0) {
                unused++;
                assertTrue(Math.abs(pull) <= 0.5 + 1e-9, NAMES.get(k));
            } else {
                assertEquals(Math.signum(slope) * 0.5, pull, 1e-9, NAMES.get(k));
            }
        }
        assertTrue(unused > 2);
    }

    private record Invented(List<String> names, List<double[]> features, double[] response, List<String> days) {}

    private static Invented invented() {
        SplittableRandom random = new SplittableRandom(4);
        List<String> names = new ArrayList<>();
        List<double[]> features = new ArrayList<>();
        for (int k = 0; k < 12; k++) {
            names.add("f" + k);
            features.add(random.doubles(120).map(v -> 4 * v).toArray());
        }
        double[] response = new double[120];
        List<String> days = new ArrayList<>();
        for (int i = 0; i < 120; i++) {
            response[i] = 2 * features.get(0)[i] - features.get(1)[i] + random.nextGaussian();
            days.add("day " + i / 6);
        }
        return new Invented(names, features, response, days);
    }

    @Test
    void penaltyChosenOnLeftOutDaysKeepsWhatIsThere() {
        Invented data = invented();
        ElasticNetChoice choice = ElasticNetChoice.of(
                data.names(), data.features(), data.response(), ElasticNet.LASSO, GroupedFolds.of(data.days(), 5, 1));
        assertEquals(2, choice.best().slope("f0"), 0.3);
        assertEquals(-1, choice.best().slope("f1"), 0.3);
        // Noise of 1 can at best be met; the mean alone errs by about 2.8.
        assertTrue(choice.errors().error(choice.errors().best()) < 1.3);
        assertTrue(choice.simplest().penalty() >= choice.best().penalty());
        assertTrue(Arrays.stream(choice.simplest().slopes()).filter(s -> s == 0).count() >= 6);
        assertTrue(choice.toString().contains("in 5 parts left out"), choice.toString());
    }

    @Test
    void componentsChosenOnLeftOutDaysKeepWhatIsThere() {
        Invented data = invented();
        HeldOutErrors errors = PartialLeastSquares.heldOut(
                data.names(), data.features(), data.response(), 6, GroupedFolds.of(data.days(), 5, 1));
        assertTrue(errors.error(0) > 2.4);
        assertTrue(errors.error(errors.best()) < 1.3);
        assertEquals(120, errors.rows());
    }

    /** With all components partial least squares is least squares. */
    @Test
    void allComponentsGiveLeastSquares() {
        List<double[]> features = AgreementOfRegression.carFeatures();
        double[] response = AgreementOfRegression.carResponse();
        MixedDesign design = MixedDesign.of("mpg", response);
        for (int k = 0; k < NAMES.size(); k++) {
            design = design.withCovariate(NAMES.get(k), features.get(k));
        }
        LinearModel least = LinearModel.fit(design);
        PartialLeastSquares partial = PartialLeastSquares.fit(NAMES, features, response, 10);
        for (int k = 0; k < NAMES.size(); k++) {
            assertEquals(least.term(NAMES.get(k)).estimate(), partial.slopes(10)[k], 1e-6);
        }
    }

    @Test
    void rowsWithMissingNumbersAreLeftOutAndCounted() {
        Invented data = invented();
        List<double[]> features = data.features().stream().map(double[]::clone).toList();
        features.get(3)[5] = Double.NaN;
        ElasticNet net = ElasticNet.fit(data.names(), features, data.response(), 0.5, 0.1);
        assertEquals(1, net.leftOut());
        assertTrue(Double.isNaN(net.predict(features)[5]));
        assertEquals(
                1,
                GaussianProcess.fit(
                                features.subList(3, 5).stream()
                                        .map(f -> Arrays.copyOf(f, 12))
                                        .toList(),
                                Arrays.copyOf(data.response(), 12),
                                ProcessShape.MATERN_FIVE_HALVES)
                        .leftOut());
    }

    @Test
    void processFindsTheSurfaceThatWasPutInAndKnowsLessFurtherAway() {
        SplittableRandom random = new SplittableRandom(8);
        double[] x = random.doubles(90).map(v -> 10 * v).toArray();
        double[] z = random.doubles(90).map(v -> 0.1 * v).toArray();
        double[] y = new double[90];
        for (int i = 0; i < y.length; i++) {
            y[i] = 80 + 3 * Math.sin(x[i]) + 40 * z[i] + 0.2 * random.nextGaussian();
        }
        GaussianProcess process = GaussianProcess.fit(List.of(x, z), y, ProcessShape.SQUARED_EXPONENTIAL);
        assertEquals(80 + 3 * Math.sin(4) + 2, process.value(4, 0.05), 0.35);
        assertEquals(0.2, process.noiseStandardDeviation(), 0.06);
        assertTrue(process.standardError(14, 0.05) > 3 * process.standardError(4, 0.05));
        PenalizedSurface surface = PenalizedSurface.fit(x, z, y, 8);
        assertEquals(80 + 3 * Math.sin(4) + 2, surface.value(4, 0.05), 0.5);
        assertTrue(Double.isNaN(surface.value(14, 0.05)));
    }

    @Test
    void processSaysWhenTheDataDoNotTellALength() {
        double[] x = {0, 1, 2, 3, 4, 5, 6, 7};
        double[] y = {1, -1, 1, -1, -1, 1, 1, -1};
        GaussianProcess process = GaussianProcess.fit(List.of(x), y, ProcessShape.MATERN_THREE_HALVES);
        assertFalse(Double.isNaN(process.value(3.5)));
        assertTrue(process.surfaceStandardDeviation() < 1.5);
    }

    @Test
    @Tag("says")
    void saysWhatIsMissing() {
        double[] x = {1, 2, 3, 4};
        assertTrue(assertThrows(IllegalArgumentException.class, () -> PenalizedSurface.fit(x, x, x, 6))
                .getMessage()
                .contains("at least 8 complete rows"));
        double[] line = new double[20];
        Arrays.setAll(line, i -> i);
        assertTrue(assertThrows(IllegalArgumentException.class, () -> PenalizedSurface.fit(line, line, line, 6))
                .getMessage()
                .contains("vary apart"));
        assertTrue(assertThrows(IllegalArgumentException.class, () -> ElasticNet.fit(List.of("a"), List.of(x), x, 2, 1))
                .getMessage()
                .contains("between 0 (ridge) and 1 (lasso)"));
    }
}
