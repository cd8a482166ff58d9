package parchment.drift;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.Arrays;
import java.util.List;
import java.util.stream.IntStream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** A design looked at from the page's side: the series it was drawn from are watched as if a roaster had brought them. */
class WatchDesignTest {
    private static final int STRETCH = 10;
    private static final int SERIES = 220;

    private WatchDesign design;
    private DrawnKinds drawn;

    private static RowsInTime rows(int n) {
        int[] day = IntStream.range(0, n).map(i -> i / 2).toArray();
        return new RowsInTime(day, IntStream.range(0, n).mapToDouble(d -> 4 * d).toArray(), STRETCH);
    }

    private static List<double[]> columns(int n) {
        double[] level = new double[n];
        Arrays.fill(level, 1);
        double[] aim = IntStream.range(0, n).mapToDouble(i -> (i * 7) % 5 - 2).toArray();
        return List.of(level, aim);
    }

    @BeforeEach
    void draw() {
        design = design(32);
        drawn = new DrawnKinds(design.kinds, SERIES);
    }

    private static WatchDesign design(int rows) {
        return new WatchDesign(columns(rows), rows(rows), SERIES);
    }

    /** A drawn series that moves by some of its standard deviations right after the stretch. */
    private double[] series(int r, double shift) {
        double[] y = design.kinds.drawn(drawn.kind(r), drawn.normals(r, 32));
        drawn.weigh(r, y);
        for (int i = STRETCH; i < y.length; i++) {
            y[i] += shift * design.kinds.spread(drawn.kind(r));
        }
        return y;
    }

    private static boolean leaves(double[] chart, double[] limits, int within) {
        return IntStream.range(0, within).anyMatch(i -> Math.abs(chart[i]) > limits[i] * (1 - 1e-9));
    }

    private boolean[] showing(double shift, int within) {
        boolean[] shown = new boolean[SERIES];
        for (int r = 0; r < SERIES; r++) {
            EstimatedLimits limits = EstimatedLimits.of(series(r, shift), design, STRETCH);
            shown[r] = leaves(limits.weightedMean(), limits.weightedMeanLimits(), within)
                    || leaves(limits.sumAbove(), limits.sumLimits(), within)
                    || leaves(limits.sumBelow(), limits.sumLimits(), within);
        }
        return shown;
    }

    private static double share(boolean[] happened) {
        return (double) IntStream.range(0, happened.length)
                        .filter(r -> happened[r])
                        .count()
                / happened.length;
    }

    @Test
    void statesTheShareOfItsSeriesWhosePageWouldSignal() {
        assertEquals(share(showing(0, 22)), design.shift.falseSignals(), 1e-12);
        boolean[] single = new boolean[SERIES];
        for (int r = 0; r < SERIES; r++) {
            EstimatedLimits limits = EstimatedLimits.of(series(r, 0), design, STRETCH);
            single[r] = leaves(limits.standard(), limits.singleStandardLimits(), 22);
        }
        assertEquals(share(single), design.single().falseSignals(), 1e-12);
    }

    @ParameterizedTest
    @CsvSource({"1", "1.5", "2", "3", "4", "6"})
    void promisesWhatThePagesOfItsSeriesShowOfAShift(double shift) {
        boolean[] shown = showing(shift, 20);
        double[] likely = drawn.likely(7);
        double rate = drawn.rate(shown).rate(likely);
        assertEquals(shift, design.leastSeen(rate, likely), 1e-9, "rate " + rate);
        if (shift == 1) {
            assertEquals(rate, design.seenSoon(likely), 1e-12);
        }
    }

    @Test
    void betweenTwoShiftsTheRateIsThatOfTheStraightLine() {
        boolean[] shown = showing(1, 20);
        double[] likely = drawn.likely(7);
        double one = drawn.rate(shown).rate(likely);
        double two = drawn.rate(showing(2, 20)).rate(likely);
        double half = drawn.rate(showing(1.5, 20)).rate(likely);
        assertEquals(0.5, design.leastSeen(one / 2, likely), 1e-9);
        assertEquals(1.25, design.leastSeen((one + half) / 2, likely), 1e-9);
        assertEquals(1.9, design.leastSeen(0.2 * half + 0.8 * two, likely), 1e-9);
        assertEquals(0, design.leastSeen(0, likely));
        assertEquals(Double.POSITIVE_INFINITY, design.leastSeen(1.0001, likely));
    }

    @ParameterizedTest
    @CsvSource({"11,1", "29,19", "30,20", "31,20"})
    void aShiftIsLookedForInTwentyRowsOrAllIfFewer(int rows, int soon) {
        assertEquals(soon, design(rows).soon());
    }

    @Test
    void limitsOfEarlierRowsStayAsTheyAreWhenRowsAreAdded() {
        double[] likely = design.kinds.weights(series(0, 0));
        WatchDesign longer = design(45);
        for (int chart = 0; chart < 2; chart++) {
            assertArrayEquals(design.shift.limits(chart, likely, 20), longer.shift.limits(chart, likely, 20), 1e-12);
        }
        assertArrayEquals(design.single().limits(0, likely, 20), longer.single().limits(0, likely, 20), 1e-12);
    }

    /** Kinds are set apart in a future of sixty rows like the stretch: where just these are watched, the one is the other. */
    @Test
    void aFutureLikeTheStretchIsForetoldAsTheWatchedRowsAre() {
        double[] level = new double[STRETCH + 60];
        Arrays.fill(level, 1);
        WatchDesign going = new WatchDesign(List.of(level), rows(STRETCH + 60), SERIES);
        DrawnKinds same = new DrawnKinds(going.kinds, SERIES);
        double[][][] charts = new double[SERIES][][];
        for (int r = 0; r < SERIES; r++) {
            double[] y = going.kinds.drawn(same.kind(r), same.normals(r, STRETCH + 60));
            same.weigh(r, y);
            charts[r] = Charted.single(EstimatedLimits.of(y, going, STRETCH).standard());
        }
        ChartLimits expected = new ChartLimits(same, charts, charts, 60);
        for (int kind = 0; kind < same.kinds(); kind++) {
            double[] surely = new double[same.kinds()];
            surely[kind] = 1;
            assertArrayEquals(expected.limits(0, surely, 60), going.single().limits(0, surely, 60), 1e-9);
        }
    }

    @Test
    void limitsDoNotHangOnTheUnitOfWhatRowsAreComparedAtLike() {
        List<double[]> other = List.of(
                columns(32).get(0),
                Arrays.stream(columns(32).get(1)).map(v -> 1.8 * v).toArray());
        WatchDesign same = new WatchDesign(other, rows(32), SERIES);
        double[] likely = design.kinds.weights(series(3, 0));
        assertArrayEquals(design.shift.limits(0, likely, 22), same.shift.limits(0, likely, 22), 1e-9);
        assertArrayEquals(design.single().limits(0, likely, 22), same.single().limits(0, likely, 22), 1e-9);
    }
}
