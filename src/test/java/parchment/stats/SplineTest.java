package parchment.stats;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.google.gson.JsonObject;
import java.util.Arrays;
import java.util.SplittableRandom;
import org.hipparchus.linear.Array2DRowRealMatrix;
import org.hipparchus.linear.EigenDecompositionSymmetric;
import org.hipparchus.linear.QRDecomposition;
import org.hipparchus.linear.RealMatrix;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

class SplineTest {

    private static PenalizedSpline motorcycle() {
        ReferenceData data = ReferenceData.table("r-datasets/mcycle.csv");
        return PenalizedSpline.fit(data.numbers("times"), data.numbers("accel"), 20);
    }

    /** mgcv 1.8-41: gam(accel ~ s(times, bs = "ps", k = 20, m = c(2, 2)), method = "REML"); data Silverman 1985. */
    @Test
    @Tag("agrees-with")
    void agreesWithMgcvOnMotorcycleData() {
        JsonObject expected = ReferenceData.expected("r-datasets", "gam_mcycle").getAsJsonObject("expected");
        double[] at = ReferenceData.numbers(expected.get("times"));
        JsonObject row = expected.getAsJsonObject("ps20_reml");
        double[] fit = ReferenceData.numbers(row.get("fit"));
        double[] errors = ReferenceData.numbers(row.get("se"));
        PenalizedSpline spline = motorcycle();
        assertEquals(row.get("edf").getAsDouble(), spline.effectiveDegreesOfFreedom(), 1e-3);
        assertEquals(row.get("scale").getAsDouble(), spline.residualVariance(), 1e-2);
        for (int i = 0; i < at.length; i++) {
            assertEquals(fit[i], spline.value(at[i]), 5e-3);
            assertEquals(errors[i], spline.standardError(at[i]), 2e-3);
        }
    }

    /**
     * mgcv's REML score 616.0269 from our variances: its formula (Wood 2011, JRSS B 73:3, eq. 4) over an intercept and 19 coefficients which
     * are orthonormal in the space of functions that add up to 0 over the data.
     */
    @Test
    @Tag("agrees-with")
    void reachesMgcvsScore() {
        ReferenceData data = ReferenceData.table("r-datasets/mcycle.csv");
        double[] x = data.numbers("times");
        double[] y = data.numbers("accel");
        PenalizedSpline spline = motorcycle();
        double sigma2 = Math.pow(spline.model().residualStandardDeviation(), 2);
        double lambda = sigma2 / spline.model().variance("smooth", "smooth");
        SplineBasis basis = SplineBasis.of(2.4, 57.6, 20);
        RealMatrix b = new Array2DRowRealMatrix(
                Arrays.stream(x).mapToObj(basis::values).toArray(double[][]::new));
        double[][] differences = new double[18][20];
        for (int i = 0; i < 18; i++) {
            differences[i][i] = 1;
            differences[i][i + 1] = -2;
            differences[i][i + 2] = 1;
        }
        double[] ones = new double[x.length];
        Arrays.fill(ones, 1);
        RealMatrix constraint = new Array2DRowRealMatrix(b.transpose().operate(ones));
        RealMatrix z = new QRDecomposition(constraint).getQ().getSubMatrix(0, 19, 1, 19);
        RealMatrix d = new Array2DRowRealMatrix(differences).multiply(z);
        RealMatrix penalty = d.transpose().multiply(d).scalarMultiply(lambda);
        RealMatrix design = new Array2DRowRealMatrix(x.length, 20);
        design.setColumn(0, ones);
        design.setSubMatrix(b.multiply(z).getData(), 0, 1);
        RealMatrix all = design.transpose().multiply(design);
        for (int i = 0; i < 19; i++) {
            for (int j = 0; j < 19; j++) {
                all.addToEntry(i + 1, j + 1, penalty.getEntry(i, j));
            }
        }
        double[] beta =
                SmallSolve.solve(all.getData(), design.transpose().operate(y)).orElseThrow();
        double[] fitted = design.operate(beta);
        double deviance = 0;
        for (int i = 0; i < y.length; i++) {
            deviance += Math.pow(y[i] - fitted[i], 2);
        }
        double[] wiggly = Arrays.copyOfRange(beta, 1, 20);
        deviance += FixedBasis.dot(wiggly, penalty.operate(wiggly));
        double logAll = 0;
        double[][] lower = SmallSolve.cholesky(all.getData()).orElseThrow();
        for (int i = 0; i < 20; i++) {
            logAll += 2 * Math.log(lower[i][i]);
        }
        double logPenalty = 0;
        EigenDecompositionSymmetric eigen = new EigenDecompositionSymmetric(penalty);
        for (int i = 0; i < 18; i++) {
            logPenalty += Math.log(eigen.getEigenvalue(i));
        }
        double score =
                0.5 * (deviance / sigma2 + (y.length - 2) * Math.log(2 * Math.PI * sigma2) + logAll - logPenalty);
        assertEquals(616.026928729629, score, 1e-5);
    }

    @Test
    void becomesAStraightLineWhereThereIsOne() {
        double[] x = new double[40];
        Arrays.setAll(x, i -> i);
        SplittableRandom random = new SplittableRandom(2);
        double[] y = Arrays.stream(x)
                .map(t -> 2 + 0.5 * t + ((int) t % 2 == 0 ? 0.1 : -0.1) + 1e-3 * random.nextGaussian())
                .toArray();
        PenalizedSpline spline = PenalizedSpline.fit(x, y, 12);
        assertEquals(2, spline.effectiveDegreesOfFreedom(), 0.01);
        assertEquals(12, spline.value(20), 0.05);
        assertTrue(Double.isNaN(spline.value(-1)) && Double.isNaN(spline.standardError(40)));
    }

    @Test
    void basisAddsUpToOneAndHoldsStraightLines() {
        SplineBasis basis = SplineBasis.of(10, 20, 9);
        for (double x = 10; x <= 20; x += 0.37) {
            assertEquals(1, Arrays.stream(basis.values(x)).sum(), 1e-14);
        }
    }

    /** R 4.2.2 splinefun(method = "natural"). */
    @Test
    @Tag("agrees-with")
    void naturalCubicAgreesWithR() {
        JsonObject expected =
                ReferenceData.expected("r-datasets", "spline_interp").getAsJsonObject("expected");
        CubicCurve curve =
                CubicCurve.natural(ReferenceData.numbers(expected.get("x")), ReferenceData.numbers(expected.get("y")));
        double[] at = ReferenceData.numbers(expected.get("at"));
        for (int i = 0; i < at.length; i++) {
            assertEquals(ReferenceData.numbers(expected.get("natural"))[i], curve.value(at[i]), 1e-12);
            assertEquals(ReferenceData.numbers(expected.get("natural_d1"))[i], curve.slope(at[i]), 1e-12);
        }
    }

    /** R 4.2.2 splinefun(method = "monoH.FC"), Fritsch and Carlson 1980. */
    @Test
    @Tag("agrees-with")
    void monotoneCubicAgreesWithR() {
        JsonObject expected =
                ReferenceData.expected("r-datasets", "spline_interp").getAsJsonObject("expected");
        CubicCurve curve = CubicCurve.monotone(
                ReferenceData.numbers(expected.get("mono_x")), ReferenceData.numbers(expected.get("mono_y")));
        double[] at = ReferenceData.numbers(expected.get("mono_at"));
        for (int i = 0; i < at.length; i++) {
            assertEquals(ReferenceData.numbers(expected.get("mono"))[i], curve.value(at[i]), 1e-12);
        }
        double[] slopes = ReferenceData.numbers(expected.get("mono_d1_knots"));
        for (int i = 0; i < slopes.length; i++) {
            assertEquals(slopes[i], curve.slope(i), 1e-12);
        }
    }

    @Test
    void monotoneCurvesNeverTurn() {
        SplittableRandom random = new SplittableRandom(6);
        for (int repeat = 0; repeat < 50; repeat++) {
            double[] x = random.doubles(12, 0, 10).sorted().toArray();
            double[] y = random.doubles(12, 0, 1)
                    .map(v -> v < 0.3 ? 0.3 : v)
                    .sorted()
                    .toArray();
            CubicCurve curve = CubicCurve.monotone(x, y);
            double last = y[0];
            for (double at = x[0]; at <= x[11]; at += 0.01) {
                assertTrue(curve.value(at) >= last - 1e-12);
                last = curve.value(at);
            }
        }
    }

    @Test
    void saysWhichPointIsOutOfOrder() {
        IllegalArgumentException e = assertThrows(
                IllegalArgumentException.class,
                () -> CubicCurve.monotone(new double[] {0, 2, 2}, new double[] {1, 2, 3}));
        assertEquals(
                "A curve through points needs them complete and in strictly increasing order, but position 3 is at 2 after 2.",
                e.getMessage());
    }
}
