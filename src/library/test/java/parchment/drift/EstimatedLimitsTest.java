package parchment.drift;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.List;
import java.util.Random;
import java.util.stream.IntStream;
import org.hipparchus.linear.Array2DRowRealMatrix;
import org.hipparchus.linear.CholeskyDecomposition;
import org.hipparchus.linear.LUDecomposition;
import org.hipparchus.linear.RealMatrix;
import org.junit.jupiter.api.Test;
import parchment.stats.series.WanderingDays;

class EstimatedLimitsTest {
    private static final int STRETCH = 20;

    private static RowsInTime rows(int n) {
        int[] day = IntStream.range(0, n).map(i -> i / 2).toArray();
        double[] dates = IntStream.rangeClosed(0, day[n - 1])
                .mapToDouble(d -> 5 * d + (d % 2))
                .toArray();
        return new RowsInTime(day, dates, STRETCH);
    }

    private static List<double[]> columns(int n) {
        double[] level = new double[n];
        Arrays.fill(level, 1);
        double[] aim = IntStream.range(0, n).mapToDouble(i -> (i * 7) % 5 - 2).toArray();
        return List.of(level, aim);
    }

    private static double[] drawn(int n, long seed) {
        return WanderingDays.normals(n, new Random(seed));
    }

    private static EstimatedLimits limits(double[] y) {
        return EstimatedLimits.of(y, new WatchDesign(columns(y.length), rows(y.length), 1200), STRETCH);
    }

    @Test
    void chartsAreThoseOfTheHandbook() {
        double[] y = drawn(50, 3);
        EstimatedLimits limits = limits(y);
        double[] u = limits.standard();
        assertEquals(30, u.length);
        double mean = 0;
        double above = 0;
        double below = 0;
        for (int i = 0; i < 30; i++) {
            mean = 0.2 * u[i] + 0.8 * mean;
            above = Math.max(0, above + u[i] - 0.5);
            below = Math.max(0, below - u[i] - 0.5);
            assertEquals(mean, limits.weightedMean()[i], 1e-12);
            assertEquals(above, limits.sumAbove()[i], 1e-12);
            assertEquals(below, limits.sumBelow()[i], 1e-12);
        }
    }

    @Test
    void aNewBatchIsHeldAgainstTheErrorOfForetellingItToo() {
        double[] y = drawn(50, 3);
        EstimatedLimits limits = limits(y);
        double[] aim = columns(50).get(1);
        double mean = Arrays.stream(aim, 0, STRETCH).average().orElse(0);
        double squares =
                Arrays.stream(aim, 0, STRETCH).map(a -> (a - mean) * (a - mean)).sum();
        for (int i = 0; i < 30; i++) {
            // Textbook's standard error of a prediction on a line.
            double error = limits.spread()
                    * Math.sqrt(1 + 1.0 / STRETCH + (aim[STRETCH + i] - mean) * (aim[STRETCH + i] - mean) / squares);
            assertEquals(limits.deviations()[STRETCH + i] / error, limits.standard()[i], 1e-9);
            assertEquals(limits.singleStandardLimits()[i] * error, limits.singleLimits()[i], 1e-9);
        }
    }

    @Test
    void everyTenBatchesShareALimitAndAHundredthOfTheCharts() {
        EstimatedLimits limits = limits(drawn(55, 4));
        for (double[] of : List.of(limits.singleStandardLimits(), limits.weightedMeanLimits(), limits.sumLimits())) {
            assertEquals(35, of.length);
            for (int i = 0; i < 35; i++) {
                assertEquals(of[i / 10 * 10], of[i]);
            }
        }
        assertEquals(1 - Math.pow(0.99, 3.5), limits.falseShifts(), 0.002);
        assertEquals(1 - Math.pow(0.99, 3.5), limits.falseSingles(), 0.002);
    }

    @Test
    void withoutABatchAfterTheStretchThereIsNothingToState() {
        EstimatedLimits none = EstimatedLimits.of(drawn(STRETCH, 5), columns(STRETCH), rows(STRETCH));
        assertEquals(0, none.singleStandardLimits().length);
        assertEquals(0, none.singleLimits().length);
        assertEquals(0, none.weightedMeanLimits().length);
        assertEquals(0, none.sumLimits().length);
        assertEquals(0, none.standard().length);
        assertEquals(0, none.falseShifts());
        assertEquals(0, none.falseSingles());
        assertTrue(Double.isNaN(none.shiftSeenSoon()) && Double.isNaN(none.leastSeen()));
        assertEquals(STRETCH, none.deviations().length);
        assertTrue(none.spread() > 0.5 && none.spread() < 2);
    }

    @Test
    void limitsFollowAChangeOfUnit() {
        double[] y = drawn(40, 6);
        double[] fahrenheit = Arrays.stream(y).map(v -> 1.8 * v + 32).toArray();
        EstimatedLimits one = limits(y);
        EstimatedLimits other = limits(fahrenheit);
        assertArrayEquals(one.weightedMeanLimits(), other.weightedMeanLimits(), 1e-9);
        assertArrayEquals(one.sumLimits(), other.sumLimits(), 1e-9);
        assertEquals(1.8 * one.singleLimits()[0], other.singleLimits()[0], 1e-9);
    }

    @Test
    void aShiftIsSeenTheMoreOftenTheMoreBatchesLimitsComeFrom() {
        WatchDesign twenty = new WatchDesign(columns(40), rows(40), 1200);
        double[] equal = new double[twenty.kinds.size()];
        for (int k = 0; k < equal.length; k++) {
            equal[k] = twenty.kinds.before(k);
        }
        assertEquals(1, Arrays.stream(equal).sum(), 1e-12);
        assertEquals(20, twenty.soon());
        double least = twenty.leastSeen(0.8, equal);
        assertTrue(least > 1.5 && least < 6, "least " + least);
        assertTrue(twenty.leastSeen(0.5, equal) < least);
        assertTrue(twenty.seenSoon(equal) > 0.05 && twenty.seenSoon(equal) < 0.5, "seen " + twenty.seenSoon(equal));
        double half = twenty.leastSeen(twenty.seenSoon(equal) / 2, equal);
        assertEquals(0.5, half, 1e-9, "between none and one standard deviation by the straight line");
        assertEquals(5, new WatchDesign(columns(25), rows(25), 240).soon());
        assertEquals(Double.POSITIVE_INFINITY, twenty.leastSeen(1.1, equal));
    }

    /** Weights of the kinds against densely computed restricted likelihoods: Patterson and Thompson 1971, Biometrika 58:545. */
    @Test
    void agreesWithTheDenseRestrictedLikelihood() {
        RowsInTime rows = rows(30);
        LikelyWandering kinds = new LikelyWandering(columns(30), rows, rows.goingOn(10));
        double[] y = new double[30];
        Random random = new Random(8);
        for (int i = 0; i < 30; i++) {
            y[i] = 0.6 * (i == 0 ? 0 : y[i - 1]) + random.nextGaussian();
        }
        double[] criteria = {
            dense(y, (i, j) -> 0), // independent
            dense(y, (i, j) -> Math.pow(0.15, j - i)),
            dense(y, (i, j) -> Math.pow(0.3, j - i)),
            dense(y, (i, j) -> Math.pow(0.45, j - i)),
            dense(y, (i, j) -> Math.pow(0.6, j - i)),
            dense(y, (i, j) -> Math.pow(0.75, j - i)),
            dense(y, (i, j) -> days(0.4, 0.3, i, j)),
            dense(y, (i, j) -> days(0.4, 0.6, i, j)),
            dense(y, (i, j) -> days(1, 0.3, i, j)),
            dense(y, (i, j) -> days(1, 0.6, i, j)),
            dense(y, (i, j) -> days(2.5, 0.3, i, j)),
            dense(y, (i, j) -> days(2.5, 0.6, i, j))
        };
        double[] expected = new double[criteria.length];
        for (int k = 0; k < expected.length; k++) {
            expected[k] = (k == 0 ? 0.25 : 0.75 / 11) * Math.exp(-(criteria[k] - criteria[0]) / 2);
        }
        double total = Arrays.stream(expected).sum();
        double[] found = kinds.weights(y);
        assertEquals(criteria.length, kinds.size());
        for (int k = 0; k < expected.length; k++) {
            assertEquals(expected[k] / total, found[k], 2e-3, "kind " + k);
        }
    }

    private interface Correlation {
        double of(int i, int j);
    }

    private static double days(double ratio, double alike, int i, int j) {
        RowsInTime rows = rows(STRETCH);
        double[] dates =
                IntStream.range(0, 10).mapToDouble(d -> 5 * d + (d % 2)).toArray();
        double gap = rows.days().usualGap();
        assertEquals((dates[9] - dates[0]) / 9, gap, 1e-12);
        return ratio / (1 + ratio) * Math.pow(alike, (dates[j / 2] - dates[i / 2]) / gap);
    }

    private static double dense(double[] y, Correlation alike) {
        RealMatrix covariance = new Array2DRowRealMatrix(STRETCH, STRETCH);
        for (int i = 0; i < STRETCH; i++) {
            for (int j = 0; j < STRETCH; j++) {
                covariance.setEntry(i, j, i == j ? 1 : alike.of(Math.min(i, j), Math.max(i, j)));
            }
        }
        CholeskyDecomposition v = new CholeskyDecomposition(covariance);
        RealMatrix x = new Array2DRowRealMatrix(STRETCH, 2);
        x.setColumn(0, Arrays.copyOf(columns(30).get(0), STRETCH));
        x.setColumn(1, Arrays.copyOf(columns(30).get(1), STRETCH));
        RealMatrix inner = x.transposeMultiply(v.getSolver().solve(x));
        RealMatrix head = new Array2DRowRealMatrix(Arrays.copyOf(y, STRETCH));
        RealMatrix beta = new LUDecomposition(inner)
                .getSolver()
                .solve(x.transposeMultiply(v.getSolver().solve(head)));
        RealMatrix rest = head.subtract(x.multiply(beta));
        double squares = rest.transposeMultiply(v.getSolver().solve(rest)).getEntry(0, 0);
        return (STRETCH - 2) * Math.log(squares)
                + Math.log(v.getDeterminant())
                + Math.log(new LUDecomposition(inner).getDeterminant());
    }
}
