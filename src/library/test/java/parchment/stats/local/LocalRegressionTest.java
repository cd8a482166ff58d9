package parchment.stats.local;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.google.gson.JsonObject;
import java.util.Arrays;
import java.util.Map;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import parchment.stats.Interval;
import parchment.stats.ReferenceData;

class LocalRegressionTest {

    /** Weights of the fit at one position of 0, 1, ..., n-1, seen by feeding unit impulses. */
    private static double[] weights(LocalRegression regression, int n, double at, boolean slope) {
        double[] x = new double[n];
        Arrays.setAll(x, i -> i);
        double[] weights = new double[n];
        for (int i = 0; i < n; i++) {
            double[] y = new double[n];
            y[i] = 1;
            LocalFit.Point point = regression.fit(x, y, new double[] {at}).point(0);
            weights[i] = slope ? point.slope() : point.value();
        }
        return weights;
    }

    /** Savitzky and Golay 1964, corrected by Steinier et al. 1972: tables of central weights. */
    @Test
    @Tag("agrees-with")
    void equalsTheCentralWeightsOfSavitzkyAndGolay() {
        JsonObject central = ReferenceData.expected("savitzky-golay", "savgol_coef")
                .getAsJsonObject("expected")
                .getAsJsonObject("central");
        int checked = 0;
        for (Map.Entry<String, com.google.gson.JsonElement> entry : central.entrySet()) {
            JsonObject row = entry.getValue().getAsJsonObject();
            int window = row.get("window").getAsInt();
            int degree = row.get("poly").getAsInt();
            int derivative = row.get("deriv").getAsInt();
            if (degree > 3 || derivative > 1) {
                continue;
            }
            double[] expected = ReferenceData.numbers(row.get("coef"));
            double norm = row.get("norm").getAsDouble();
            double half = (window - 1) / 2.0;
            double[] found = weights(
                    LocalRegression.of(half).withKernel(KernelShape.UNIFORM).withDegree(degree),
                    window,
                    half,
                    derivative == 1);
            for (int i = 0; i < window; i++) {
                assertEquals(expected[i] / norm, found[i], 1e-12, entry.getKey());
            }
            checked++;
        }
        assertEquals(9, checked);
    }

    /** Gorry 1990, Anal. Chem. 62:570: weights at every place of the window, ends included, for value and first derivative. */
    @Test
    @Tag("agrees-with")
    void equalsTheEndPointWeightsOfGorry() {
        JsonObject ends = ReferenceData.expected("savitzky-golay", "savgol_coef")
                .getAsJsonObject("expected")
                .getAsJsonObject("endpoints");
        for (Map.Entry<String, com.google.gson.JsonElement> entry : ends.entrySet()) {
            String[] key = entry.getKey().split("[_@]");
            int window = Integer.parseInt(key[0]);
            double half = (window - 1) / 2.0;
            double[] expected =
                    ReferenceData.numbers(entry.getValue().getAsJsonObject().get("num"));
            double norm = entry.getValue().getAsJsonObject().get("den").getAsDouble();
            double[] found = weights(
                    LocalRegression.of(half).withKernel(KernelShape.UNIFORM),
                    window,
                    half + Integer.parseInt(key[3]),
                    key[2].equals("1"));
            for (int i = 0; i < window; i++) {
                assertEquals(expected[i] / norm, found[i], 1e-12, entry.getKey());
            }
        }
    }

    /** A whole signal filtered by scipy 1.10.1's savgol_filter, window 11, cubic, edge mode "interp". */
    @Test
    @Tag("agrees-with")
    void equalsAWholeFilteredSignalWithItsEnds() {
        ReferenceData data = ReferenceData.table("savitzky-golay/savgol_signal.csv");
        double[] x = data.numbers("x");
        LocalFit fit = LocalRegression.of(0.5)
                .withKernel(KernelShape.UNIFORM)
                .withDegree(3)
                .fit(x, data.numbers("y"));
        assertArrayEquals(data.numbers("sm_11_3"), fit.values(), 1e-10);
        assertArrayEquals(data.numbers("d1_11_3"), fit.slopes(), 1e-9);
    }

    /**
     * R's loess(dist ~ speed, cars, span 0.75, degree 2, surface "direct"), tricube over the 37 nearest of 50; its standard error divided by
     * its s is the length of the weights.
     */
    @Test
    @Tag("agrees-with")
    void agreesWithLoessOnCars() {
        ReferenceData cars = ReferenceData.table("r-datasets/cars.csv");
        JsonObject expected = ReferenceData.expected("r-datasets", "loess_cars").getAsJsonObject("expected");
        double[] at = ReferenceData.numbers(expected.get("x"));
        double[] fit = ReferenceData.numbers(expected.get("fit_direct"));
        double[] errors = ReferenceData.numbers(expected.get("se_direct"));
        double s = expected.get("s").getAsDouble();
        double[] speed = cars.numbers("speed");
        for (int i = 0; i < at.length; i++) {
            double point = at[i];
            double[] distances =
                    Arrays.stream(speed).map(x -> Math.abs(x - point)).sorted().toArray();
            LocalFit.Point found = LocalRegression.of(distances[36])
                    .withEnds(Ends.KEEP_REACH)
                    .withAutocovariance(Autocovariance.independent(s * s))
                    .fit(speed, cars.numbers("dist"), new double[] {point})
                    .point(0);
            assertEquals(fit[i], found.value(), 1e-7 * fit[i]);
            assertEquals(errors[i], found.valueStandardError(), 1e-6 * errors[i]);
        }
    }

    @ParameterizedTest
    @ValueSource(ints = {1, 2, 3})
    void givesPolynomialsOfItsDegreeBackExactlyOnUnequalSpacing(int degree) {
        SplittableRandom random = new SplittableRandom(5);
        double[] x = random.doubles(80, 0, 40).sorted().toArray();
        double[] y = Arrays.stream(x)
                .map(t -> 3 + 2 * t - (degree > 1 ? 0.3 * t * t : 0) + (degree > 2 ? 0.02 * t * t * t : 0))
                .toArray();
        LocalFit fit = LocalRegression.of(8).withDegree(degree).fit(x, y);
        for (int i = 0; i < x.length; i++) {
            double slope = 2 - (degree > 1 ? 0.6 * x[i] : 0) + (degree > 2 ? 0.06 * x[i] * x[i] : 0);
            assertEquals(y[i], fit.point(i).value(), 1e-8);
            assertEquals(slope, fit.point(i).slope(), 1e-7);
        }
    }

    @Test
    void slopeOfASineComesWithinTheBiasThatTheoryGives() {
        double[] x = new double[601];
        Arrays.setAll(x, i -> i * 0.01);
        double[] y = Arrays.stream(x).map(Math::sin).toArray();
        LocalFit fit = LocalRegression.of(0.3).fit(x, y);
        double[] bias = fit.slopeBias();
        for (int i = 60; i < 540; i++) {
            double error = fit.point(i).slope() - Math.cos(x[i]);
            // h^2 / 6 of the third derivative bounds it; the comparison with half the window finds it to a few per
            // cent.
            assertTrue(Math.abs(error) <= 0.3 * 0.3 / 6);
            assertEquals(error, bias[i], 0.02 * 0.3 * 0.3 / 6 + 0.05 * Math.abs(error));
        }
    }

    /** Exact variances for known noise: the quadratic form is summed here in the plain way. */
    @Test
    void varianceIsTheQuadraticFormOfTheWeights() {
        double[] x = {0, 1, 2, 3.5, 4, 5, 7};
        Autocovariance noise = Autocovariance.of(0.5, 2, 1.5);
        LocalRegression regression =
                LocalRegression.of(20).withKernel(KernelShape.EPANECHNIKOV).withAutocovariance(noise);
        double[] w = new double[x.length];
        for (int i = 0; i < x.length; i++) {
            double[] y = new double[x.length];
            y[i] = 1;
            w[i] = regression.fit(x, y, new double[] {3}).point(0).slope();
        }
        double variance = 0;
        for (int i = 0; i < x.length; i++) {
            for (int j = 0; j < x.length; j++) {
                variance += w[i] * w[j] * (i == j ? 2.5 : 2 * Math.exp(-Math.abs(x[i] - x[j]) / 1.5));
            }
        }
        double found = regression
                .fit(x, new double[x.length], new double[] {3})
                .point(0)
                .slopeStandardError();
        assertEquals(Math.sqrt(variance), found, 1e-12);
    }

    /**
     * Share of 90 % slope intervals that hold the true slope, 100 curves of 400 samples, points 8 apart. A target of 87 to 93 %, with noise
     * of known kind; Monte-Carlo error under 1 point where neighbouring points are nearly independent.
     */
    @ParameterizedTest
    @ValueSource(doubles = {0, 0.4, 0.8})
    void intervalsOfSlopesCoverWhateverTheAutocorrelation(double correlation) {
        double share = coverage(correlation, null);
        assertTrue(share > 0.87 && share < 0.93, "coverage " + share);
        double known = coverage(correlation, Autocovariance.autoregressive(0.25, correlation, 1));
        assertTrue(known > 0.88 && known < 0.92, "coverage with known noise " + known);
    }

    @Test
    void intervalsThatIgnoreSharedNoiseAreFarTooNarrow() {
        assertTrue(coverage(0.8, Autocovariance.independent(0.25)) < 0.6);
    }

    private static double coverage(double correlation, Autocovariance known) {
        SplittableRandom random = new SplittableRandom(20);
        int covered = 0;
        int counted = 0;
        for (int curve = 0; curve < 100; curve++) {
            double[] x = new double[400];
            double[] y = new double[400];
            double noise = 0.5 * random.nextGaussian();
            for (int i = 0; i < x.length; i++) {
                x[i] = i;
                noise = correlation * noise + 0.5 * Math.sqrt(1 - correlation * correlation) * random.nextGaussian();
                y[i] = 200 - 120 * Math.exp(-i / 200.0) + noise;
            }
            LocalRegression regression = LocalRegression.of(20);
            LocalFit fit = (known == null ? regression : regression.withAutocovariance(known)).fit(x, y);
            for (int i = 0; i < x.length; i += 8) {
                covered += fit.slopeInterval(i, 0.90).contains(0.6 * Math.exp(-i / 200.0)) ? 1 : 0;
                counted++;
            }
        }
        return covered / (double) counted;
    }

    @Test
    void saysWhereASlopeIsBelowTheResolution() {
        double[] x = new double[60];
        double[] y = new double[60];
        for (int i = 0; i < 60; i++) {
            x[i] = i;
            y[i] = Math.round(i < 30 ? 0.01 * i : 2 * (i - 30));
        }
        LocalFit fit = LocalRegression.of(10).withResolution(1).fit(x, y);
        assertEquals(LocalFit.SlopeQuality.BELOW_RESOLUTION, fit.point(10).quality());
        assertEquals(LocalFit.SlopeQuality.SEEN, fit.point(50).quality());
        Interval bounds = fit.slopeInterval(10, 0.90);
        assertTrue(bounds.contains(0.01) && bounds.width() >= 0.1 - 1e-12);
    }

    @Test
    void leavesMissingReadingsOutAndSaysSo() {
        double[] x = {0, 1, 2, 3, 4, 5, 6, 7};
        double[] y = {0, 1, Double.NaN, 3, 4, 5, Double.NaN, 7};
        LocalFit fit = LocalRegression.of(3).withDegree(1).fit(x, y);
        assertEquals(6, fit.used());
        assertEquals(2, fit.leftOut());
        assertEquals(2, fit.point(2).value(), 1e-12);
    }

    @Test
    void givesNothingWhereTheWindowHoldsTooFewSamples() {
        double[] x = {0, 1, 2, 50, 51, 52, 53, 54, 55, 100};
        double[] y = {0, 1, 2, 50, 51, 52, 53, 54, 55, 100};
        LocalFit fit = LocalRegression.of(3).fit(x, y, new double[] {25, 52.5, -1, 101});
        assertTrue(Double.isNaN(fit.point(0).slope()));
        assertEquals(1, fit.point(1).slope(), 1e-9);
        assertTrue(
                Double.isNaN(fit.point(2).value()) && Double.isNaN(fit.point(3).value()));
        assertEquals(LocalFit.SlopeQuality.MISSING, fit.point(0).quality());
    }

    @Test
    void isNotMovedByAChangeOfOriginOrUnit() {
        SplittableRandom random = new SplittableRandom(9);
        double[] x = random.doubles(100, 0, 50).sorted().toArray();
        double[] y = Arrays.stream(x)
                .map(t -> Math.sin(t / 7) + 0.1 * random.nextGaussian())
                .toArray();
        LocalFit fit = LocalRegression.of(6).fit(x, y);
        double[] moved = Arrays.stream(x).map(t -> 1000 + 60 * t).toArray();
        double[] inFahrenheit = Arrays.stream(y).map(v -> 32 + 1.8 * v).toArray();
        LocalFit other = LocalRegression.of(360).fit(moved, inFahrenheit);
        for (int i = 0; i < x.length; i++) {
            assertEquals(32 + 1.8 * fit.point(i).value(), other.point(i).value(), 1e-7);
            assertEquals(
                    1.8 / 60 * fit.point(i).slopeStandardError(), other.point(i).slopeStandardError(), 1e-7);
        }
    }

    @Test
    void saysWhichPositionIsOutOfOrder() {
        IllegalArgumentException e = assertThrows(
                IllegalArgumentException.class, () -> LocalRegression.of(2).fit(new double[] {0, 2, 1}, new double[3]));
        assertEquals(
                "Positions for a local regression must be in increasing order without missing values, but position 3 holds 1 after 2.",
                e.getMessage());
    }
}
