package parchment.phase;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.Random;
import java.util.function.DoubleUnaryOperator;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import parchment.curve.CleanCurve;
import parchment.curve.Curve;
import parchment.curve.SmoothCurve;
import parchment.quantity.Unit;

/** Curves whose turn is known, and the rule by which two windows tell the bias of one. */
class TurningPointTest {
    private static CleanCurve clean(DoubleUnaryOperator course, double from, double to, double every) {
        return CleanCurve.of(ExampleRoast.curve("bean temperature", Unit.TEMPERATURE, course, from, to, every));
    }

    private static SmoothCurve smooth(DoubleUnaryOperator course, double to, double every) {
        return SmoothCurve.of(clean(course, 0, to, every));
    }

    /** A parabola has no bias: its lowest point is found exactly, wherever it lies between readings. */
    @ParameterizedTest
    @CsvSource({"70", "80.7", "121.3"})
    void theTurningPointOfAParabolaIsExact(double turn) {
        OnCurve.Found found = TurningPoint.of(smooth(t -> 90 + 0.002 * (t - turn) * (t - turn), 400, 2), 400)
                .orElseThrow();
        assertEquals(turn, found.seconds(), 1e-4);
        assertTrue(found.standardError() < 0.1, found.toString());
    }

    @ParameterizedTest
    @CsvSource({
        "290, 600, true",
        "298, 600, true",
        "304, 600, false",
        "310, 600, false",
        "200, 190, false",
        "200, 210, true"
    })
    void theTurningPointLiesBeforeTheDropAndWithinFiveMinutes(double turn, double drop, boolean isFound) {
        SmoothCurve curve = smooth(t -> 90 + 0.002 * (t - turn) * (t - turn), 600, 2);
        assertEquals(isFound, TurningPoint.of(curve, drop).isPresent());
    }

    @Test
    void aCurveThatOnlyRisesOrOnlyFallsDoesNotTurn() {
        assertTrue(TurningPoint.of(smooth(t -> 80 + 0.2 * t, 400, 2), 400).isEmpty());
        assertTrue(TurningPoint.of(smooth(t -> 300 - 0.2 * t, 400, 2), 400).isEmpty());
    }

    /** The turn is sharper to one side, so every window errs; the narrower and the wider one together show by how much. */
    @Test
    void theBiasOfTheWindowIsTakenAwayAndStated() {
        for (double every : new double[] {1, 2, 5}) {
            SmoothCurve curve = smooth(t -> ExampleRoast.BEAN.applyAsDouble(t + 1e-9), 740, every);
            OnCurve.Found found = TurningPoint.of(curve, 740).orElseThrow();
            assertEquals(ExampleRoast.TURNING_POINT_SECONDS, found.seconds(), every < 5 ? 0.3 : 1);
            assertTrue(
                    Math.abs(found.seconds() - ExampleRoast.TURNING_POINT_SECONDS) < 3 * found.standardError() + 0.1,
                    found.toString());
        }
    }

    /** With few readings in the window the logger's interval is in the error: 10 / √12 = 2.9 s. */
    @Test
    void aSlowLoggersIntervalIsInTheError() {
        SmoothCurve slow = smooth(t -> 90 + 0.002 * (t - 121) * (t - 121), 600, 10);
        OnCurve.Found found = TurningPoint.of(slow, 600).orElseThrow();
        assertTrue(found.standardError() >= 10 / Math.sqrt(12), found.toString());
        assertTrue(found.standardError() < 4, found.toString());
    }

    @Test
    void theTurnIsReadWithThreeQuartersOfTheUsualWindowOrTwoAndAHalfReadings() {
        SmoothCurve usual = smooth(t -> ExampleRoast.BEAN.applyAsDouble(t), 740, 1);
        assertEquals(0.75 * usual.bandwidthSeconds(), TurningPoint.narrow(usual).bandwidthSeconds(), 1e-9);
        SmoothCurve slow = smooth(t -> ExampleRoast.BEAN.applyAsDouble(t), 740, 20);
        assertEquals(50, TurningPoint.narrow(slow).bandwidthSeconds(), 1e-9);
        assertEquals(
                360,
                TurningPoint.narrow(usual)
                        .atReadings()
                        .get(TurningPoint.narrow(usual).atReadings().size() - 1)
                        .seconds());
    }

    /** The standard error of the turn is that of the slope over the curvature: 0.004 °C/s² here. */
    @Test
    void theErrorOfTheTurnIsTheSlopesErrorOverTheCurvature() {
        Random random = new Random(11);
        double[] noise = random.doubles(400, -0.05, 0.05).toArray();
        SmoothCurve curve = smooth(t -> 90 + 0.002 * (t - 120) * (t - 120) + noise[(int) (t / 2)], 400, 2);
        OnCurve.Found found = TurningPoint.of(curve, 400).orElseThrow();
        double slopeError = TurningPoint.narrow(curve).at(found.seconds()).slopeStandardError() / 60;
        assertEquals(slopeError / 0.004, found.standardError(), 0.1 * found.standardError());
        assertEquals(120, found.seconds(), 3 * found.standardError());
    }

    /** The beans leave no turn in the wider window: the narrower one is told, half its window exact. */
    @Test
    void aTurnThatOnlyTheNarrowerWindowSeesIsKnownToHalfThatWindow() {
        // A short dip that only just goes below the reading at charge.
        DoubleUnaryOperator dip = t -> 100 + 0.1 * t - 7.25 * Math.exp(-Math.pow((t - 60) / 12, 2));
        SmoothCurve curve = smooth(dip, 400, 2);
        OnCurve.Found found = TurningPoint.of(curve, 400).orElseThrow();
        double half = 0.5 * TurningPoint.narrow(curve).bandwidthSeconds();
        assertTrue(found.standardError() >= half && found.standardError() < 1.1 * half, found.toString());
        assertEquals(59, found.seconds(), 1);
    }

    /** Readings are missing around the turn: the last of them before it is told, or the first after. */
    @ParameterizedTest
    @CsvSource({"112, 100", "128, 140"})
    void aTurnInAGapIsToldAsTheReadingNextToIt(double turn, double told) {
        double[] seconds = IntStream.rangeClosed(0, 200)
                .map(k -> 2 * k)
                .filter(t -> t <= 100 || t >= 140)
                .asDoubleStream()
                .toArray();
        double[] values = Arrays.stream(seconds)
                .map(t -> 90 + 0.002 * (t - turn) * (t - turn))
                .toArray();
        SmoothCurve curve =
                SmoothCurve.of(CleanCurve.of(Curve.of("bean temperature", Unit.TEMPERATURE, seconds, values)));
        assertEquals(
                told, TurningPoint.of(curve, 400).map(OnCurve.Found::seconds).orElse(Double.NaN), 0.01);
    }

    /** Windows of 15 and 20 s: the bias grows with the square, so nine sixteenths of the wider one's are in the narrower. */
    @Test
    void aBiasThatStandsOutOfTheNoiseIsTakenAwayWhole() {
        for (double bias : new double[] {-4, 4}) {
            OnCurve.Found found = TurningPoint.withoutBias(80 + 0.5625 * bias, 80 + bias, 1e-6, 0.75);
            assertEquals(80, found.seconds(), 1e-6);
            assertEquals(0, found.standardError(), 1e-3);
        }
    }

    @Test
    void withoutADifferenceBetweenTheWindowsNothingIsTakenAwayAndTheErrorIsTheNoise() {
        assertEquals(new OnCurve.Found(80, 0.7), TurningPoint.withoutBias(80, 80, 0.7, 0.75));
    }

    /** Turns of two windows of which the wider holds the narrower: their noise is drawn, and what is told spreads as it is said. */
    @ParameterizedTest
    @CsvSource({"0.75", "0.5", "0.9"})
    void theErrorIsThatOfDrawnTurns(double ratio) {
        Random random = new Random(5);
        double noise = 0.01;
        double sharedSpread = noise * Math.pow(ratio, 1.5);
        double ownSpread = Math.sqrt(noise * noise - sharedSpread * sharedSpread);
        double bias = 8;
        int draws = 20_000;
        double squares = 0;
        double error = 0;
        for (int k = 0; k < draws; k++) {
            double wide = sharedSpread * random.nextGaussian();
            double narrow = wide + ownSpread * random.nextGaussian();
            OnCurve.Found found =
                    TurningPoint.withoutBias(80 + ratio * ratio * bias + narrow, 80 + bias + wide, noise, ratio);
            squares += Math.pow(found.seconds() - 80, 2) / draws;
            error += found.standardError() / draws;
        }
        assertEquals(Math.sqrt(squares), error, 0.03 * error);
    }

    /**
     * The difference has a variance of 1 - r³ by noise alone. Seen as twice that, half of it is bias: half is taken away, and a quarter of the
     * bias's square stays in the error beside the noise.
     */
    @Test
    void ofABiasThatStandsOutByHalfOneHalfIsTakenAway() {
        double ratio = 0.75;
        double left = 9.0 / 7;
        double byNoise = 1 - 27.0 / 64;
        double difference = Math.sqrt(2 * byNoise);
        OnCurve.Found found = TurningPoint.withoutBias(80 + difference, 80, 1, ratio);
        assertEquals(80 + difference + 0.5 * left * difference, found.seconds(), 1e-9);
        // The noise of narrow + 9/14 (narrow - wide): variances 1 and r³, covariance r³.
        double weight = 9.0 / 14;
        double noise = Math.pow(1 + weight, 2) + 27.0 / 64 * (weight * weight - 2 * weight * (1 + weight));
        double bias = left * left * byNoise;
        assertEquals(Math.sqrt(noise + 0.25 * bias), found.standardError(), 1e-9);
        // What noise alone makes is none.
        assertEquals(
                new OnCurve.Found(80.7, 1), TurningPoint.withoutBias(80.7, 80, 1, ratio), "0.49 is under " + byNoise);
    }

    /** Windows that hardly differ tell next to nothing of the bias: ten times their difference may be left. */
    @ParameterizedTest
    @CsvSource({"0.94, 7.591", "0.95, 10", "1, 10"})
    void windowsThatAreAlikeAreNotDividedByTheirDifference(double ratio, double left) {
        assertEquals(80 + left, TurningPoint.withoutBias(80, 79, 1e-6, ratio).seconds(), 1e-3);
    }
}
