package parchment.drift;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.Random;
import java.util.function.IntFunction;
import java.util.function.IntPredicate;
import java.util.function.IntToDoubleFunction;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Series whose charts are written down, so that their limits can be counted off. */
class ChartLimitsTest {
    private static final int STRETCH = ShortStretch.ROWS;
    /** The first 110 of so many are of the kind without resemblance, 30 each of the eleven others. */
    private static final int SERIES = 440;

    private static DrawnKinds drawn(int series, IntFunction<double[]> stretch) {
        DrawnKinds drawn = new DrawnKinds(ShortStretch.kinds(), series);
        for (int r = 0; r < series; r++) {
            drawn.weigh(r, stretch.apply(r));
        }
        return drawn;
    }

    /** Series whose stretches all make the kinds equally likely: only their charts differ. */
    private static DrawnKinds alike(int series) {
        return drawn(series, r -> ShortStretch.waves());
    }

    /** One chart with one block of rows, in the unit of the chart. */
    private static double[][][] chart(int series, IntToDoubleFunction height) {
        return charts(series, r -> new double[][] {{height.applyAsDouble(r)}});
    }

    private static double[][][] charts(int series, IntFunction<double[][]> heights) {
        return IntStream.range(0, series)
                .mapToObj(heights)
                .map(of -> Arrays.stream(of)
                        .map(c -> Arrays.stream(c).map(Math::log).toArray())
                        .toArray(double[][]::new))
                .toArray(double[][][]::new);
    }

    /** The numbers 1, 2, 3 ... in an order that mixes the kinds. */
    private static int number(int series, int of) {
        return 1 + series * 7 % of;
    }

    private static double[] surely(int kind) {
        double[] likely = new double[12];
        likely[kind] = 1;
        return likely;
    }

    private static double limit(ChartLimits limits, int kind) {
        return limits.limits(0, surely(kind), 1)[0];
    }

    /** Of n series the k-th highest sets the limit, k the whole number next to one hundredth of n + 1 for ten rows, but the highest at least. */
    @ParameterizedTest
    @CsvSource({"440,10,4", "440,5,2", "440,4,2", "440,3,1", "148,10,1", "149,10,2", "44,10,1"})
    void oneInAHundredSeriesReachesTheLimitInTenRows(int series, int watched, int reach) {
        DrawnKinds drawn = alike(series);
        ChartLimits limits =
                new ChartLimits(drawn, chart(series, r -> 1), chart(series, r -> number(r, series)), watched);
        double[] expected = new double[watched];
        Arrays.fill(expected, series + 1 - reach);
        assertArrayEquals(expected, limits.limits(0, drawn.likely(0), watched), 1e-9 * series);
        assertEquals((double) reach / series, limits.falseSignals(), 1e-12);
    }

    @Test
    void laterLimitsAreSetByTheSeriesThatHaveNotSignalledBefore() {
        DrawnKinds drawn = alike(SERIES);
        double[][][] future = charts(SERIES, r -> {
            int n = number(r, SERIES);
            return new double[][] {{n, n, n}};
        });
        ChartLimits limits = new ChartLimits(drawn, chart(SERIES, r -> 1), future, 25);
        // Without 440 to 437: 436 to 433; without these, and for five rows: 432 and 431.
        double[] expected = new double[25];
        Arrays.fill(expected, 0, 10, 437);
        Arrays.fill(expected, 10, 20, 433);
        Arrays.fill(expected, 20, 25, 431);
        assertArrayEquals(expected, limits.limits(0, drawn.likely(0), 25), 1e-6);
        assertEquals(10.0 / 440, limits.falseSignals(), 1e-12);
    }

    @Test
    void aSeriesThatSignalledOnceStaysCounted() {
        DrawnKinds drawn = alike(SERIES);
        double[][][] future = charts(SERIES, r -> new double[][] {{number(r, SERIES), SERIES + 1 - number(r, SERIES)}});
        ChartLimits limits = new ChartLimits(drawn, chart(SERIES, r -> 1), future, 20);
        assertEquals(437, limits.limits(0, drawn.likely(0), 20)[10], 1e-6);
        assertEquals(8.0 / 440, limits.falseSignals(), 1e-12);
    }

    /** Series 1, 2, 3 stand out in the first chart, 4, 5, 6 in the second, whose values are ten times as high. */
    private static double[][] outstanding(int series) {
        return new double[][] {
            {series >= 1 && series <= 3 ? series + 1 : 1}, {series >= 4 && series <= 6 ? 10 * (series - 1.5) : 10}
        };
    }

    @Test
    void ofTwoChartsTheOneFartherBeyondItsUsualHeightCounts() {
        DrawnKinds drawn = alike(SERIES);
        ChartLimits limits = new ChartLimits(
                drawn,
                charts(SERIES, r -> new double[][] {{1}, {1}}),
                charts(SERIES, ChartLimitsTest::outstanding),
                10);
        // 2, 3, 4 and 2.5, 3.5, 4.5 times the usual: the fourth highest is 3.
        assertEquals(3, limits.limits(0, drawn.likely(0), 10)[9], 1e-9);
        assertEquals(30, limits.limits(1, drawn.likely(0), 10)[9], 1e-9);
        assertEquals(4.0 / 440, limits.falseSignals(), 1e-12);
    }

    @Test
    void aLimitIsCrossedByMoreThanItselfInAnyChartAndBlock() {
        DrawnKinds drawn = alike(SERIES);
        double[][][] future = charts(SERIES, r -> {
            double[][] one = outstanding(r);
            double[][] other = outstanding(r - 10);
            return new double[][] {{one[0][0], other[0][0]}, {one[1][0], other[1][0]}};
        });
        ChartLimits limits = new ChartLimits(drawn, charts(SERIES, r -> new double[][] {{1}, {1}}), future, 20);
        assertFalse(limits.crossed(2, future[2]), "the limit itself");
        assertFalse(limits.crossed(9, logarithms(1, 2.999, 10, 29.99)));
        assertTrue(limits.crossed(9, logarithms(3.001, 1, 10, 10)));
        assertTrue(limits.crossed(9, logarithms(1, 3.001, 10, 10)));
        assertTrue(limits.crossed(9, logarithms(1, 1, 30.01, 10)));
        assertTrue(limits.crossed(9, logarithms(1, 1, 10, 30.01)));
        double[][] first = {{Math.log(3.001)}, {0}};
        assertTrue(limits.crossed(9, first), "a chart that ends before the last block");
        first[0][0] = Math.log(2.999);
        assertFalse(limits.crossed(9, first));
    }

    private static double[][] logarithms(double first, double second, double otherFirst, double otherSecond) {
        return new double[][] {{Math.log(first), Math.log(second)}, {Math.log(otherFirst), Math.log(otherSecond)}};
    }

    /** The place of a series among those of its kind, mixed: 0 to 109 without resemblance, 0 to 29 of any other kind. */
    private static int place(int series) {
        return series < 110 ? series * 7 % 110 : (series - 110) * 7 % 30;
    }

    private static int kind(int series) {
        return series < 110 ? 0 : 1 + (series - 110) / 30;
    }

    @Test
    void limitsOfAKindAreInProportionToWhatThreeInThirtyOfItReach() {
        DrawnKinds drawn = alike(SERIES);
        double[][][] future = chart(SERIES, r -> (kind(r) + 1) * (1 + place(r) / 100.0));
        ChartLimits limits = new ChartLimits(drawn, chart(SERIES, r -> 1), future, 1);
        // The 28th of 30 is at 1.27, the 100th of 110 at 1.99.
        assertEquals(3.0 / 2, limit(limits, 2) / limit(limits, 1), 1e-9);
        assertEquals(12.0 / 2, limit(limits, 11) / limit(limits, 1), 1e-9);
        assertEquals(1.99 / (2 * 1.27), limit(limits, 0) / limit(limits, 1), 1e-9);
    }

    @Test
    void betweenTwoKindsTheLimitLiesAtTheirGeometricMean() {
        DrawnKinds drawn = alike(SERIES);
        double[][][] future = chart(SERIES, r -> (kind(r) + 1) * (1 + place(r) / 100.0));
        ChartLimits limits = new ChartLimits(drawn, outOfPlace(1), future, 1);
        double[] half = new double[12];
        half[1] = 0.5;
        half[9] = 0.5;
        assertEquals(Math.sqrt(limit(limits, 1) * limit(limits, 9)), limits.limits(0, half, 1)[0], 1e-9);
    }

    /** Fourteen stand out: five without resemblance, two of one kind, one each of kinds 2 to 8 and none of the last three; 1 and 2 may change places. */
    private static double[][][] outOfPlace(int twice) {
        return chart(SERIES, r -> outstands(twice).test(r) ? 2 : 1);
    }

    private static IntPredicate outstands(int twice) {
        return r -> {
            int kind = kind(r);
            int many = kind == 0 ? 5 : kind == twice ? 2 : kind <= 8 ? 1 : 0;
            return place(r) < many;
        };
    }

    @Test
    void aKindThatSignalsMoreOftenInAFutureLikeItsStretchGetsWiderLimits() {
        ChartLimits limits = new ChartLimits(alike(SERIES), outOfPlace(1), chart(SERIES, r -> 1), 1);
        // Fifteen steps of a tenth: a kind twice as frequent is 2 to the power of 1.5 wider.
        assertEquals(Math.pow(2, 1.5), limit(limits, 1) / limit(limits, 2), 1e-9);
        assertEquals(1, limit(limits, 8) / limit(limits, 2), 1e-9);
        assertEquals(Math.pow(5.0 / 110 * 30, 1.5), limit(limits, 0) / limit(limits, 2), 1e-9);
        assertEquals(Math.pow(0.1 * 0.03 * 30, 1.5), limit(limits, 9) / limit(limits, 2), 1e-9, "none: a tenth");
    }

    @Test
    void ratesAreThoseOfTheMeanOverBlocks() {
        IntPredicate first = outstands(1);
        IntPredicate second = outstands(2);
        double[][][] onward = charts(SERIES, r -> new double[][] {{first.test(r) ? 2 : 1, second.test(r) ? 8 : 4}});
        ChartLimits limits = new ChartLimits(alike(SERIES), onward, chart(SERIES, r -> 1), 1);
        assertEquals(1, limit(limits, 1) / limit(limits, 2), 1e-9);
        assertEquals(Math.pow(1.5, 1.5), limit(limits, 1) / limit(limits, 3), 1e-9);
        assertEquals(Math.pow(0.1 * 0.03 * 30, 1.5), limit(limits, 9) / limit(limits, 3), 1e-9);
    }

    /** Series of the kind without resemblance mostly alternate and vary little; the others mostly go in waves and vary much. */
    private static DrawnKinds told(int series, int mistaken) {
        return drawn(
                series,
                r -> (r < series / 4) == (r % 5 < mistaken) ? ShortStretch.waves() : ShortStretch.alternating());
    }

    private static double[][][] varying(int series, long seed) {
        Random random = new Random(seed);
        return IntStream.range(0, series)
                .mapToObj(r -> new double[][] {
                    random.doubles(3, 0, 1)
                            .map(p -> Math.log(-Math.log(p)) * (r < series / 4 ? 0.5 : 0.7))
                            .toArray()
                })
                .toArray(double[][][]::new);
    }

    @Test
    void ratesOfKindsThatAreMistakenComeFromMoreThanTenfoldToLessThanFourfold() {
        int series = 4400;
        DrawnKinds drawn = told(series, 1);
        double[][][] future = varying(series, 2);
        ChartLimits before = new ChartLimits(drawn, chart(series, r -> 1), future, 30);
        assertTrue(share(before, future, series / 4, series) > 10 * share(before, future, 0, series / 4));
        ChartLimits limits = new ChartLimits(drawn, varying(series, 1), future, 30);
        double without = share(limits, future, 0, series / 4);
        double with = share(limits, future, series / 4, series);
        assertTrue(with < 4 * without && without < with, "without " + without + ", with " + with);
        assertEquals(1 - Math.pow(0.99, 3), limits.falseSignals(), 1e-3);
    }

    private static double share(ChartLimits limits, double[][][] future, int from, int to) {
        return IntStream.range(from, to)
                .mapToDouble(r -> limits.crossed(r, future[r]) ? 1 : 0)
                .average()
                .orElse(0);
    }

    @Test
    void eachSeriesIsHeldAgainstTheLimitsOfItsOwnStretch() {
        DrawnKinds drawn = told(SERIES, 1);
        double[][][] future = varying(SERIES, 2);
        ChartLimits limits = new ChartLimits(drawn, varying(SERIES, 1), future, 30);
        double[] waves = limits.limits(0, drawn.likely(SERIES - 1), 30);
        assertTrue(waves[0] > 1.1 * limits.limits(0, drawn.likely(1), 30)[0], "waves " + waves[0]);
        int signals = 0;
        for (int r = 0; r < SERIES; r++) {
            double[] own = limits.limits(0, drawn.likely(r), 30);
            boolean reached = false;
            boolean crossed = false;
            for (int b = 0; b < 3; b++) {
                double over = Math.exp(future[r][0][b]) / own[10 * b] - 1;
                reached |= over > -1e-9;
                crossed |= over > 1e-9;
            }
            signals += reached ? 1 : 0;
            assertEquals(crossed, limits.crossed(r, future[r]), "series " + r);
        }
        assertEquals((double) signals / SERIES, limits.falseSignals(), 1e-12);
        assertTrue(signals >= 12 && signals <= 13, "signals " + signals);
    }
}
