package parchment.stats.warp;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Objects;
import java.util.SplittableRandom;
import java.util.function.DoubleUnaryOperator;
import org.junit.jupiter.api.RepeatedTest;
import org.junit.jupiter.api.RepetitionInfo;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class ElasticAlignmentTest {
    private static final double[] T = grid(801);
    private static final DoubleUnaryOperator WAVE =
            t -> Math.sin(2 * Math.PI * t) + 0.4 * Math.cos(5 * Math.PI * t) + t;

    /** Closed forms of Srivastava and Klassen 2016, Functional and Shape Data Analysis, section 4: acos of the integral of sqrt(slope). */
    private enum Known {
        SQUARE(t -> t * t, 0.339836909454122),
        EXPONENTIAL_1(t -> Math.expm1(t) / Math.expm1(1), 0.143054428679061),
        EXPONENTIAL_2(t -> Math.expm1(2 * t) / Math.expm1(2), 0.278855638417920);

        private final DoubleUnaryOperator warp;
        private final double phase;

        Known(DoubleUnaryOperator warp, double phase) {
            this.warp = warp;
            this.phase = phase;
        }
    }

    @ParameterizedTest
    @ValueSource(ints = {100, 200, 400})
    @Tag("agrees-with")
    void recoversKnownWarpsAndTheirClosedPhaseDistances(int cells) {
        for (Known known : List.of(Known.EXPONENTIAL_1, Known.EXPONENTIAL_2)) {
            ElasticMatch match = ElasticAlignment.of(cells).align(T, values(known.warp.andThen(WAVE)), values(WAVE));
            // The grid resolves a clock to about a cell, so the tolerance is a cell's width and falls as the grid is
            // refined.
            assertEquals(known.phase, match.phaseDistance(), 0.5 / cells, known + " on " + cells);
            for (double t = 0.1; t < 1; t += 0.1) {
                assertEquals(known.warp.applyAsDouble(t), match.warp().at(t), 1.5 / cells, known + " at " + t);
            }
            assertTrue(match.amplitudeDistance() < 0.06 * match.distanceBefore(), match.toString());
        }
    }

    @Test
    @Tag("agrees-with")
    void aClockThatStandsStillIsReachedAsTheLargestSlopeGrows() {
        // t^2 starts at slope 0. A clock no slower than 1/s that then follows t^2 has an integral of sqrt(slope) of
        // s^-1.5 + 2 sqrt(2) / 3 (1 - s^-1.5); the best one inside the limits lies between that angle and somewhat
        // below it.
        double[] away = new double[2];
        int[] slopes = {7, 11};
        for (int k = 0; k < 2; k++) {
            double limited = Math.pow(slopes[k], -1.5);
            double reachable = Math.acos(limited + 2 * Math.sqrt(2) / 3 * (1 - limited));
            double found = ElasticAlignment.of(200)
                    .withLargestSlope(slopes[k])
                    .align(T, values(Known.SQUARE.warp.andThen(WAVE)), values(WAVE))
                    .phaseDistance();
            assertEquals(reachable, found, 0.008);
            away[k] = Known.SQUARE.phase - found;
        }
        assertTrue(away[1] > 0 && away[1] < 0.75 * away[0], Arrays.toString(away));
    }

    @Test
    @Tag("agrees-with")
    void amplitudeErrorFallsWithTheGrid() {
        double[] warped = values(Known.EXPONENTIAL_2.warp.andThen(WAVE));
        double[] error = new double[3];
        for (int k = 0; k < 3; k++) {
            error[k] = ElasticAlignment.of(50 << (2 * k))
                    .align(T, warped, values(WAVE))
                    .amplitudeDistance();
        }
        assertTrue(error[1] < 0.4 * error[0] && error[2] < 0.6 * error[1], Arrays.toString(error));
    }

    @Test
    @Tag("agrees-with")
    void theDistanceBeforeMatchingMeetsItsClosedForm() {
        // f = t^2, g = sqrt(t): |q_f - q_g|^2 = 1 + 1 - 2 int t^(1/4) dt = 0.4; against 1 - g the product changes sign:
        // 3.6.
        double[] fine = grid(20001);
        double[] f = Arrays.stream(fine).map(t -> t * t).toArray();
        double[] g = Arrays.stream(fine).map(Math::sqrt).toArray();
        double[] turned = Arrays.stream(fine).map(t -> 1 - Math.sqrt(t)).toArray();
        ElasticAlignment alignment = ElasticAlignment.of(1000).withLargestSlope(1);
        assertEquals(Math.sqrt(0.4), alignment.align(fine, f, g).distanceBefore(), 1e-3);
        assertEquals(Math.sqrt(3.6), alignment.align(fine, f, turned).distanceBefore(), 1e-3);
    }

    @RepeatedTest(8)
    @Tag("holds-for-any")
    void doesNotCareWhichCurveComesFirst(RepetitionInfo repetition) {
        SplittableRandom random = new SplittableRandom(repetition.getCurrentRepetition());
        double[] a = values(bumps(random));
        double[] b = values(bumps(random));
        ElasticAlignment alignment = ElasticAlignment.of(80);
        ElasticMatch there = alignment.align(T, a, b);
        ElasticMatch back = alignment.align(T, b, a);
        assertEquals(there.amplitudeDistance(), back.amplitudeDistance(), 1e-9);
        assertEquals(there.phaseDistance(), back.phaseDistance(), 1e-9);
        assertTrue(there.amplitudeDistance() <= there.distanceBefore() + 1e-12);
    }

    @RepeatedTest(8)
    @Tag("holds-for-any")
    void aCommonWarpLeavesTheAmplitudeDistance(RepetitionInfo repetition) {
        SplittableRandom random = new SplittableRandom(40 + repetition.getCurrentRepetition());
        DoubleUnaryOperator a = bumps(random);
        DoubleUnaryOperator b = bumps(random);
        double bend = 1.5 * (random.nextDouble() - 0.5);
        DoubleUnaryOperator common = t -> Math.expm1(bend * t) / Math.expm1(bend);
        ElasticAlignment alignment = ElasticAlignment.of(200);
        double plain = alignment.align(T, values(a), values(b)).amplitudeDistance();
        double warped = alignment
                .align(T, values(common.andThen(a)), values(common.andThen(b)))
                .amplitudeDistance();
        assertEquals(plain, warped, 0.02 * plain);
    }

    @Test
    @Tag("holds-for-any")
    void aCurveIsAtNoDistanceFromItselfWhateverItsLevel() {
        double[] raised = Arrays.stream(values(WAVE)).map(v -> v + 90).toArray();
        ElasticMatch match = ElasticAlignment.of(100).align(T, values(WAVE), raised);
        assertEquals(0, match.amplitudeDistance(), 1e-6);
        assertEquals(0, match.phaseDistance(), 1e-9);
    }

    @Test
    void clocksKeepTheirOwnUnits() {
        double[] seconds = Arrays.stream(T).map(t -> 30 + 600 * t).toArray();
        double[] minutes = Arrays.stream(T).map(t -> 12 * t).toArray();
        ElasticMatch match = ElasticAlignment.of(200)
                .align(seconds, values(Known.EXPONENTIAL_1.warp.andThen(WAVE)), minutes, values(WAVE));
        assertEquals(30, match.warp().from(), 1e-9);
        assertEquals(12, match.warp().imageTo(), 1e-9);
        assertEquals(
                12 * Known.EXPONENTIAL_1.warp.applyAsDouble(0.5), match.warp().at(330), 12 * 1.5 / 200);
    }

    @Test
    void theMeanOfWarpedCopiesIsTheCurveItself() {
        List<double[]> curves = new ArrayList<>();
        for (double bend : new double[] {-1.2, -0.6, 0.6, 1.2}) {
            curves.add(values(t -> WAVE.applyAsDouble(Math.expm1(bend * t) / Math.expm1(bend))));
        }
        KarcherMean mean = ElasticAlignment.of(120).mean(T, curves);
        assertTrue(mean.settled(), mean.toString());
        double worst = 0;
        double[] times = mean.times();
        for (int k = 0; k < times.length; k++) {
            worst = Math.max(worst, Math.abs(mean.mean()[k] - WAVE.applyAsDouble(times[k])));
        }
        // The bends are balanced, so their mean clock is close to equal speed, though not exactly.
        assertTrue(worst < 0.12, "worst " + worst);
        assertTrue(mean.varianceAfter() < 0.02 * mean.varianceBefore(), mean.toString());
        assertTrue(mean.phaseVariance() > 0.01);
    }

    @Test
    @Tag("agrees-with")
    void theMeanOfTwoWarpsLiesHalfwayBetweenThem() {
        // Halfway along the arc from psi to the constant 1: the angle is halved.
        int cells = 2000;
        double[] square = new double[cells + 1];
        double[] equal = new double[cells + 1];
        for (int k = 0; k <= cells; k++) {
            equal[k] = (double) k / cells;
            square[k] = equal[k] * equal[k];
        }
        double[] mean = WarpMean.of(new double[][] {square, equal});
        assertEquals(0.339836909454122 / 2, Warp.linear(equal, mean).phaseDistance(), 1e-4);
        assertEquals(0.339836909454122 / 2, Warp.linear(equal, mean).phaseDistance(Warp.linear(equal, square)), 1e-4);
    }

    @Test
    void saysWhichSampleIsMissingAndWhatGridIsNeeded() {
        double[] gap = values(WAVE);
        gap[4] = Double.NaN;
        assertEquals(
                "Elastic alignment needs every sample of the second curve, but sample 5 is missing."
                        + " Fill the gap or cut the curve there first.",
                message(() -> ElasticAlignment.of(50).align(T, values(WAVE), gap)));
        assertEquals(
                "The number of cells of an elastic alignment must be 14 or more, but it is 5.",
                message(() -> ElasticAlignment.of(5)));
    }

    private static DoubleUnaryOperator bumps(SplittableRandom random) {
        double a = 1 + random.nextDouble();
        double b = 1 + random.nextDouble();
        double first = 0.2 + 0.2 * random.nextDouble();
        double second = 0.6 + 0.2 * random.nextDouble();
        return t -> a * Math.exp(-80 * (t - first) * (t - first))
                + b * Math.exp(-60 * (t - second) * (t - second))
                + 0.2 * t;
    }

    private static double[] values(DoubleUnaryOperator f) {
        return Arrays.stream(T).map(f).toArray();
    }

    private static double[] grid(int points) {
        double[] t = new double[points];
        for (int k = 0; k < points; k++) {
            t[k] = (double) k / (points - 1);
        }
        return t;
    }

    private static String message(org.junit.jupiter.api.function.Executable job) {
        return Objects.requireNonNull(
                assertThrows(IllegalArgumentException.class, job).getMessage());
    }
}
