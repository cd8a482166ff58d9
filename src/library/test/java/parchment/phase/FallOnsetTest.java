package parchment.phase;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.Optional;
import java.util.Random;
import java.util.function.DoubleUnaryOperator;
import org.hipparchus.linear.LUDecomposition;
import org.hipparchus.linear.MatrixUtils;
import org.hipparchus.linear.QRDecomposition;
import org.hipparchus.linear.RealMatrix;
import org.hipparchus.linear.RealVector;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import parchment.curve.CleanCurve;
import parchment.curve.Curve;
import parchment.phase.FallOnset.Cause;
import parchment.quantity.Unit;

/** Falls of which the onset is known, and the same sums written out plainly on a wide grid. */
class FallOnsetTest {
    private static double fallen(double u, double p, double q) {
        return u <= 0 ? 0 : 1 - (p * Math.exp(-u / p) - (q == 0 ? 0 : q * Math.exp(-u / q))) / (p - q);
    }

    private static DoubleUnaryOperator dropAt(double onset, double p, double q) {
        return t -> 180 + 0.2 * t - 80 * fallen(t - onset, p, q);
    }

    private static CleanCurve logged(DoubleUnaryOperator course, double every, double noise, long seed) {
        Random random = new Random(seed);
        return CleanCurve.of(ExampleRoast.curve(
                "bean temperature",
                Unit.TEMPERATURE,
                t -> course.applyAsDouble(t) + noise * random.nextGaussian(),
                0,
                160,
                every));
    }

    private static Optional<OnCurve.Found> drop(CleanCurve clean) {
        return FallOnset.between(clean, Cause.DROP, 85, 110, 40, 20);
    }

    @ParameterizedTest
    @CsvSource({"100, 12, 0", "101.1, 12, 0", "100.4, 40, 0", "100.7, 20, 5", "99.3, 25, 10", "97, 8, 4", "104.5, 30, 2"
    })
    void theOnsetOfACalmFallIsFoundToAFractionOfASecond(double onset, double p, double q) {
        OnCurve.Found found = drop(logged(dropAt(onset, p, q), 1, 0.01, 1)).orElseThrow();
        assertEquals(onset, found.seconds(), q == 0 ? 0.06 : 0.3);
        // Never surer than the shape of the fall allows.
        assertTrue(found.standardError() >= 0.08 && found.standardError() < (q == 0 ? 0.25 : 0.7), found.toString());
    }

    @Test
    void theErrorGrowsWithTheNoiseAndTheInterval() {
        double before = 0;
        for (double noise : new double[] {0.05, 0.2, 0.8}) {
            double error = drop(logged(dropAt(100.4, 20, 5), 2, noise, 7))
                    .orElseThrow()
                    .standardError();
            assertTrue(error > 1.02 * before, noise + ": " + error);
            before = error;
        }
        assertTrue(drop(logged(dropAt(100.4, 20, 5), 8, 0.2, 7)).orElseThrow().standardError()
                > drop(logged(dropAt(100.4, 20, 5), 2, 0.2, 7)).orElseThrow().standardError());
    }

    /** 120 falls of two kinds: 90 % intervals hold the onset in 82 to 97 % (three Monte-Carlo errors), and hardly lean to a side. */
    @Test
    void theIntervalsHoldTheOnset() {
        int held = 0;
        double mean = 0;
        for (int i = 0; i < 120; i++) {
            double onset = 99 + 0.017 * i;
            OnCurve.Found found = drop(logged(dropAt(onset, 18, i % 2 == 0 ? 0 : 6), 2, 0.3, 500 + i))
                    .orElseThrow();
            held += Math.abs(found.seconds() - onset) <= 1.645 * found.standardError() ? 1 : 0;
            mean += (found.seconds() - onset) / 120;
        }
        assertTrue(held >= 98 && held <= 117, held + " of 120");
        assertEquals(0, mean, 0.25);
    }

    @Test
    void sixReadingsOrNoTimeBetweenTellNothing() {
        CleanCurve curve = logged(dropAt(100, 12, 0), 2, 0, 1);
        assertTrue(FallOnset.between(curve, Cause.DROP, 100, 100, 40, 20).isEmpty());
        assertTrue(FallOnset.between(curve, Cause.DROP, 101, 100, 40, 20).isEmpty());
        // From 96 to 106 s there are six readings, to 108 s seven.
        assertTrue(FallOnset.between(curve, Cause.DROP, 98, 102, 2, 4).isEmpty());
        assertTrue(FallOnset.between(curve, Cause.DROP, 98, 102, 2, 6).isPresent());
    }

    /** Where the clock starts and how warm it was change nothing. */
    @Test
    void movesWithTheClockAndNotWithTheLine() {
        CleanCurve here = logged(dropAt(100.4, 20, 5), 2, 0.3, 3);
        OnCurve.Found found = drop(here).orElseThrow();
        CleanCurve there = here.withZeroAt(-1000);
        OnCurve.Found later =
                FallOnset.between(there, Cause.DROP, 1085, 1110, 40, 20).orElseThrow();
        assertEquals(found.seconds() + 1000, later.seconds(), 1e-6);
        assertEquals(found.standardError(), later.standardError(), 1e-6);
        OnCurve.Found warmer = drop(logged(t -> dropAt(100.4, 20, 5).applyAsDouble(t) + 20 - 0.1 * t, 2, 0.3, 3))
                .orElseThrow();
        assertEquals(found.seconds(), warmer.seconds(), 0.01);
        assertEquals(found.standardError(), warmer.standardError(), 0.01);
    }

    /** At charge what the probe sees warms, with a time constant of 120 s: the onset is found all the same. */
    @ParameterizedTest
    @CsvSource({"100.3, 15, 0", "100.8, 20, 8"})
    void beansThatWarmDoNotHideTheCharge(double onset, double p, double q) {
        DoubleUnaryOperator course = t -> {
            double u = t - onset;
            double ramp = u <= 0 ? 0 : integral(u, p, q);
            return 190 - 100 * fallen(u, p, q) + 100 * ramp / 120;
        };
        OnCurve.Found found = FallOnset.between(logged(course, 1, 0.02, 2), Cause.CHARGE, 88, 106, 30, 20)
                .orElseThrow();
        assertEquals(onset, found.seconds(), 0.4);
        assertTrue(found.standardError() < 0.6, found.toString());
    }

    /** What a ramp that begins at 0 has come to after two lags, by adding up the answer to a step. */
    private static double integral(double u, double p, double q) {
        double sum = 0;
        int n = 40;
        for (int i = 0; i < n; i++) {
            sum += fallen((i + 0.5) * u / n, p, q) * u / n;
        }
        return sum;
    }

    private static final int LAGS = 18;
    private static final int SHARES = 8;
    private static final int ONSETS = 60;

    /** The logarithm of |X'X|. */
    private static double logDeterminant(double[][] columns) {
        RealMatrix design = MatrixUtils.createRealMatrix(columns);
        return Math.log(new LUDecomposition(design.transposeMultiply(design)).getDeterminant());
    }

    private static double[][] withoutTheFall(double[][] columns) {
        return Arrays.stream(columns)
                .map(row -> row.length == 4 ? new double[] {row[0], row[1], row[3]} : new double[] {row[0], row[1]})
                .toArray(double[][]::new);
    }

    /** The sums of the class comment, plainly: every lag, share and onset of a wide grid, each fitted by a library's least squares. */
    private static double[] plainly(
            CleanCurve clean, double from, double to, double before, double after, Model model) {
        Curve part = clean.kept().between(from - before, to + after);
        int n = part.size();
        double r = Double.isNaN(clean.noiseCorrelation()) ? 0 : clean.noiseCorrelation();
        double noise = Double.isNaN(clean.noise()) ? 0 : clean.noise();
        double prior = 4 * (noise * noise + clean.step() * clean.step() / 12 + 1e-4);
        double[] sums = new double[3];
        double best = Double.NaN;
        double ofTheLine = Double.NaN;
        for (int i = 0; i < LAGS; i++) {
            double p = 2 * Math.pow(37.5, (i + 0.5) / LAGS);
            for (int j = -1; j < SHARES; j++) {
                double share = j < 0 ? 0 : (j + 0.5) / SHARES;
                for (int k = 0; k < ONSETS; k++) {
                    double onset = from + (k + 0.5) * (to - from) / ONSETS;
                    double[][] columns = new double[n][model == Model.BENT ? 4 : 3];
                    double[] y = new double[n];
                    for (int row = 0; row < n; row++) {
                        double t = part.secondsAt(row);
                        double[] c = columns[row];
                        double u = t - onset;
                        c[0] = 1;
                        c[1] = (t - 100) / 60;
                        c[2] = -fallen(u, p, share * p)
                                + (model == Model.WARMING && u > 0 ? integral(u, p, share * p) / 120 : 0);
                        if (model == Model.BENT) {
                            c[3] = c[1] * c[1];
                        }
                        y[row] = part.valueAt(row) - 180;
                    }
                    for (int row = n - 1; row >= 0; row--) {
                        for (int c = 0; row > 0 && c < columns[row].length; c++) {
                            columns[row][c] = (columns[row][c] - r * columns[row - 1][c]) / Math.sqrt(1 - r * r);
                        }
                        y[row] = row == 0 ? y[0] : (y[row] - r * y[row - 1]) / Math.sqrt(1 - r * r);
                    }
                    RealVector fitted = new QRDecomposition(MatrixUtils.createRealMatrix(columns))
                            .getSolver()
                            .solve(MatrixUtils.createRealVector(y));
                    if (fitted.getEntry(2) <= 0) {
                        continue;
                    }
                    double left = MatrixUtils.createRealMatrix(columns)
                            .operate(fitted)
                            .subtract(MatrixUtils.createRealVector(y))
                            .getNorm();
                    int coefficients = columns[0].length;
                    // Coefficients flat, standard deviation as 1 / σ: what is left of the integral is the determinant
                    // of all columns
                    // and the sum of squares. Flat is not the depth but the depth times how far its column stands off
                    // the line.
                    ofTheLine = Double.isNaN(ofTheLine) ? logDeterminant(withoutTheFall(columns)) : ofTheLine;
                    double ofAll = logDeterminant(columns);
                    double standsOff = ofAll - ofTheLine;
                    double log = -0.5 * (n - coefficients + 4) * Math.log(left * left + prior)
                            - 0.5 * ofAll
                            + 0.5 * standsOff
                            + (j < 0 ? 0 : Math.log(1.0 / SHARES));
                    best = Double.isNaN(best) ? log : best;
                    double weight = Math.exp(log - best);
                    sums[0] += weight;
                    sums[1] += weight * onset;
                    sums[2] += weight * onset * onset;
                }
            }
        }
        double mean = sums[1] / sums[0];
        return new double[] {mean, Math.sqrt(sums[2] / sums[0] - mean * mean)};
    }

    private enum Model {
        STRAIGHT,
        BENT,
        WARMING
    }

    /** Where noise is large the two grids agree closely; a narrow peak falls between the points of the plain one. */
    @ParameterizedTest
    @CsvSource({
        "DROP, 1, 0.8, 18, 6, 0.1",
        "DROP, 2, 1.5, 12, 0, 0.1",
        "CHARGE, 2, 1.5, 15, 5, 0.013",
        "DROP, 5, 2, 18, 6, 0.013",
        "CHARGE, 5, 3, 18, 6, 0.013"
    })
    void agreesWithTheSameSumsWrittenOutPlainly(
            Cause cause, double every, double noise, double p, double q, double shareOfTheError) {
        CleanCurve clean = logged(dropAt(100.4, p, q), every, noise, 11);
        OnCurve.Found found = FallOnset.between(clean, cause, 94, 107, 30, 20).orElseThrow();
        double[] one = plainly(clean, 94, 107, 30, 20, Model.STRAIGHT);
        double[] other = plainly(clean, 94, 107, 30, 20, cause == Cause.DROP ? Model.BENT : Model.WARMING);
        double half = 0.5 * (one[0] - other[0]);
        double error = Math.sqrt(0.08 * 0.08 + 0.5 * (one[1] * one[1] + other[1] * other[1]) + half * half / 3);
        assertEquals(other[0] + half, found.seconds(), shareOfTheError * error);
        assertEquals(error, found.standardError(), shareOfTheError * error);
    }
}
