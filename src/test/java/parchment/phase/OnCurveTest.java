package parchment.phase;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Optional;
import java.util.Random;
import java.util.function.DoubleUnaryOperator;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import parchment.curve.CleanCurve;
import parchment.curve.SmoothCurve;
import parchment.quantity.Unit;

/** Curves on each side of each border of what counts as charge, turning point and drop. */
class OnCurveTest {
    private static CleanCurve clean(DoubleUnaryOperator course, double from, double to, double every) {
        return CleanCurve.of(ExampleRoast.curve("bean temperature", Unit.TEMPERATURE, course, from, to, every));
    }

    /** Rises by 0.2 °C/s to 200 °C at 600 s, then goes on as given. */
    private static Optional<OnCurve.Found> drop(DoubleUnaryOperator after, double until) {
        return OnCurve.drop(clean(t -> t <= 600 ? 80 + 0.2 * t : after.applyAsDouble(t - 600), 0, until, 2), 60);
    }

    @ParameterizedTest
    @CsvSource({"5.95, 660, false", "6.05, 660, true", "5.95, 700, false", "6.05, 700, true", "6.05, 630, true"})
    void aDropLosesSixDegreesAMinute(double perMinute, double until, boolean isDrop) {
        Optional<OnCurve.Found> found = drop(u -> 200 - perMinute / 60 * u, until);
        assertEquals(isDrop, found.isPresent());
        // A fall along a straight line is none of a probe's: its onset is a few seconds exact.
        found.ifPresent(at -> assertEquals(600, at.seconds(), 4));
    }

    @ParameterizedTest
    @CsvSource({"1.45, false", "1.55, true"})
    void aDropIsADegreeAndAHalfDeep(double deep, boolean isDrop) {
        assertEquals(isDrop, drop(u -> 200 - Math.min(deep, 0.5 * u), 610).isPresent());
    }

    /** The first minute after the highest reading counts; a fall that only begins later is another. */
    @ParameterizedTest
    @CsvSource({"50, true", "62, false"})
    void aDropBeginsWithinAMinuteOfTheHighestReading(double later, boolean isDrop) {
        assertEquals(
                isDrop,
                drop(u -> u <= later ? 200 - 0.01 * u : 200 - 1.5 * (u - later), 690)
                        .isPresent());
    }

    @ParameterizedTest
    @CsvSource({"1.4, false", "1.6, true"})
    void aDropStaysDown(double downAtTheEnd, boolean isDrop) {
        DoubleUnaryOperator andUp = u -> u < 40 ? 200 - u / 4 : 190 + (10 - downAtTheEnd) * (u - 40) / 60;
        assertEquals(isDrop, drop(andUp, 700).isPresent());
    }

    @ParameterizedTest
    @CsvSource({"2, false", "3, true"})
    void aDropIsThreeStepsOfTheLoggerDeep(double deep, boolean isDrop) {
        CleanCurve curve =
                clean(t -> Math.rint(t <= 600 ? 80 + 0.2 * t : 200 - Math.min(deep, 0.5 * (t - 600))), 0, 612, 2);
        assertEquals(1, curve.step());
        assertEquals(isDrop, OnCurve.drop(curve, 60).isPresent());
    }

    @ParameterizedTest
    @CsvSource({"4, false", "6, true"})
    void aDropIsFiveStandardDeviationsOfTheNoiseDeep(double deviations, boolean isDrop) {
        Random random = new Random(3);
        double[] noise = random.doubles(400, -1, 1).toArray();
        CleanCurve calm = clean(t -> 80 + 0.2 * t + noise[(int) (t / 2)], 0, 600, 2);
        double deep = deviations * calm.noise();
        assertTrue(calm.noise() > 0.3, "" + calm.noise());
        // The highest reading and those after it are given, so that only the depth differs.
        CleanCurve curve = clean(
                t -> t < 600 ? 80 + 0.2 * t - 1.5 + noise[(int) (t / 2)] : t == 600 ? 201 : 201 - deep, 0, 612, 2);
        assertEquals(isDrop, OnCurve.drop(curve, 60).isPresent(), "noise " + curve.noise());
    }

    @Test
    void aCurveThatOnlyRisesHasNoDropAndNoCharge() {
        CleanCurve rising = clean(t -> 80 + 0.2 * t, 0, 600, 2);
        assertTrue(OnCurve.drop(rising, 60).isEmpty());
        assertTrue(OnCurve.charge(rising).isEmpty());
    }

    @Test
    void theLastOfEqualHighestReadingsCounts() {
        OnCurve.Found found =
                drop(u -> u <= 40 ? 200 : 200 - 1.5 * (u - 40), 680).orElseThrow();
        assertEquals(640, found.seconds(), 4);
    }

    /** The probe read more before the charge than it ever does again. */
    @Test
    void readingsBeforeTheEarliestDropDoNotCount() {
        DoubleUnaryOperator course =
                t -> t < 50 ? 260 - 3 * t : t <= 600 ? 110 + 0.15 * (t - 50) : 192.5 - 1.5 * (t - 600);
        assertEquals(
                600, OnCurve.drop(clean(course, 0, 640, 2), 60).orElseThrow().seconds(), 4);
    }

    /** A slow fall first: the drop is where the fall reaches half its steepest rate, if that comes within 90 s of the top. */
    @ParameterizedTest
    @CsvSource({"40, 640", "80, 680", "100, 600"})
    void theSteepFallIsTheDropIfItComesSoonEnough(double slowSeconds, double drop) {
        OnCurve.Found found = drop(u -> 200 - 0.15 * u - 2.5 * Math.max(0, u - slowSeconds), 740)
                .orElseThrow();
        assertEquals(drop, found.seconds(), 5);
    }

    /** A probe in a sheath leaves the rise gently: its steep fall comes half a minute after the onset. */
    @Test
    void aGentleFallIsFollowedBackToItsOnset() {
        double p = 22;
        double q = 12;
        OnCurve.Found found = drop(
                        u -> 200 + 0.2 * u - 90 * (1 - (p * Math.exp(-u / p) - q * Math.exp(-u / q)) / (p - q)), 650)
                .orElseThrow();
        assertEquals(600, found.seconds(), 0.6);
        assertTrue(found.standardError() < 0.6, found.toString());
    }

    /** Level at 150 °C to 300 s, down by so much in 40 s, and up by so much. */
    private static CleanCurve charged(double level, double deep, double up) {
        return clean(
                t -> t <= 300
                        ? level
                        : t <= 340 ? level - deep * (t - 300) / 40 : level - deep + Math.min(up, 0.2 * (t - 340)),
                200,
                900,
                2);
    }

    @ParameterizedTest
    @CsvSource({"14.9, 100, false", "15.1, 100, true", "60, 29.9, false", "60, 30.1, true"})
    void aChargeCoolsTheProbeByFifteenDegreesAndItWarmsByThirty(double deep, double up, boolean isCharge) {
        CleanCurve curve = charged(150, deep, up);
        assertEquals(isCharge, OnCurve.atCharge(curve).isPresent());
        Optional<OnCurve.Found> found = OnCurve.charge(curve);
        assertEquals(isCharge, found.isPresent());
        assertEquals(isCharge ? Optional.of(300.0) : Optional.empty(), OnCurve.atCharge(curve));
        found.ifPresent(at -> assertEquals(300, at.seconds(), 4));
    }

    /** The level needs two readings before the one at which the fall begins. */
    @ParameterizedTest
    @CsvSource({"298, false", "296, true", "280, true"})
    void aLogThatStartsWithinTheFallHasNoCharge(double from, boolean isCharge) {
        CleanCurve curve =
                clean(t -> t <= 300 ? 180 : t <= 360 ? 180 - 1.5 * (t - 300) : 90 + 0.2 * (t - 360), from, 900, 2);
        assertEquals(isCharge, OnCurve.atCharge(curve).isPresent());
    }

    /** A fall of 10 °C, and slowly on: what it comes to within four minutes counts, not what it comes to in the end. */
    @ParameterizedTest
    @CsvSource({"0.021, false", "0.023, true"})
    void theFallOfFourMinutesCounts(double perSecond, boolean isCharge) {
        DoubleUnaryOperator course = t -> t <= 300
                ? 180
                : t <= 310
                        ? 180 - (t - 300)
                        : t <= 600 ? 170 - perSecond * (t - 310) : 170 - 290 * perSecond + 0.2 * (t - 600);
        assertEquals(isCharge ? Optional.of(300.0) : Optional.empty(), OnCurve.atCharge(clean(course, 200, 1000, 2)));
    }

    /** Back from the steepest fall while it is still faster than 15 % of it. */
    @ParameterizedTest
    @CsvSource({"0.14, 300", "0.16, 280"})
    void theFallBeginsWhereItIsFasterThanASeventhOfTheSteepest(double share, double onset) {
        DoubleUnaryOperator course = t -> t <= 280
                ? 180
                : t <= 300
                        ? 180 - 2 * share * (t - 280)
                        : t <= 340 ? 180 - 40 * share - 2 * (t - 300) : 100 - 40 * share + 0.2 * (t - 340);
        assertEquals(Optional.of(onset), OnCurve.atCharge(clean(course, 200, 900, 2)));
    }

    @Test
    void theChargeIsTheDeepestFallNotTheFirst() {
        DoubleUnaryOperator course = t -> t <= 240
                ? 200
                : t <= 250
                        ? 200 - 2 * (t - 240)
                        : t <= 400 ? 180 : t <= 450 ? 180 - 2.5 * (t - 400) : 55 + 0.2 * (t - 450);
        assertEquals(Optional.of(400.0), OnCurve.atCharge(clean(course, 100, 1000, 2)));
    }

    private static SmoothCurve smooth(DoubleUnaryOperator course, double to, double every) {
        return SmoothCurve.of(clean(course, 0, to, every));
    }

    /** A parabola has no bias: its lowest point is found exactly, wherever it lies between readings. */
    @ParameterizedTest
    @CsvSource({"70", "80.7", "121.3"})
    void theTurningPointOfAParabolaIsExact(double turn) {
        OnCurve.Found found = OnCurve.turningPoint(smooth(t -> 90 + 0.002 * (t - turn) * (t - turn), 400, 2), 400)
                .orElseThrow();
        assertEquals(turn, found.seconds(), 0.01);
        assertTrue(found.standardError() < 0.1, found.toString());
    }

    @ParameterizedTest
    @CsvSource({"290, 600, true", "310, 600, false", "200, 190, false", "200, 210, true"})
    void theTurningPointLiesBeforeTheDropAndWithinFiveMinutes(double turn, double drop, boolean isFound) {
        SmoothCurve curve = smooth(t -> 90 + 0.002 * (t - turn) * (t - turn), 600, 2);
        assertEquals(isFound, OnCurve.turningPoint(curve, drop).isPresent());
    }

    @Test
    void aCurveThatOnlyRisesOrOnlyFallsDoesNotTurn() {
        assertTrue(OnCurve.turningPoint(smooth(t -> 80 + 0.2 * t, 400, 2), 400).isEmpty());
        assertTrue(OnCurve.turningPoint(smooth(t -> 300 - 0.2 * t, 400, 2), 400).isEmpty());
    }

    /** The turn is sharper to one side, so every window errs; the narrower and the wider one together show by how much. */
    @Test
    void theBiasOfTheWindowIsTakenAwayAndStated() {
        for (double every : new double[] {1, 2, 5}) {
            SmoothCurve curve = smooth(t -> ExampleRoast.BEAN.applyAsDouble(t + 1e-9), 740, every);
            OnCurve.Found found = OnCurve.turningPoint(curve, 740).orElseThrow();
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
        OnCurve.Found found = OnCurve.turningPoint(slow, 600).orElseThrow();
        assertTrue(found.standardError() >= 10 / Math.sqrt(12), found.toString());
        assertTrue(found.standardError() < 4, found.toString());
    }

    @Test
    void theTurnIsReadWithThreeQuartersOfTheUsualWindowOrTwoAndAHalfReadings() {
        SmoothCurve usual = smooth(t -> ExampleRoast.BEAN.applyAsDouble(t), 740, 1);
        assertEquals(0.75 * usual.bandwidthSeconds(), OnCurve.narrow(usual).bandwidthSeconds(), 1e-9);
        SmoothCurve slow = smooth(t -> ExampleRoast.BEAN.applyAsDouble(t), 740, 20);
        assertEquals(50, OnCurve.narrow(slow).bandwidthSeconds(), 1e-9);
        assertEquals(
                360,
                OnCurve.narrow(usual)
                        .atReadings()
                        .get(OnCurve.narrow(usual).atReadings().size() - 1)
                        .seconds());
    }
}
