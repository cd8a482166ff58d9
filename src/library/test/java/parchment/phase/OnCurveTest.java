package parchment.phase;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.Optional;
import java.util.Random;
import java.util.function.DoubleUnaryOperator;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import parchment.curve.CleanCurve;
import parchment.curve.Curve;
import parchment.quantity.Unit;

/** Curves on each side of each border of what counts as charge and drop. */
class OnCurveTest {
    private static CleanCurve clean(DoubleUnaryOperator course, double from, double to, double every) {
        return CleanCurve.of(ExampleRoast.curve("bean temperature", Unit.TEMPERATURE, course, from, to, every));
    }

    /** Rises by 0.2 °C/s to 200 °C at 600 s, then goes on as given. */
    private static Optional<OnCurve.Found> drop(DoubleUnaryOperator after, double until) {
        return OnCurve.drop(clean(t -> t <= 600 ? 80 + 0.2 * t : after.applyAsDouble(t - 600), 0, until, 2), 60);
    }

    @ParameterizedTest
    @CsvSource({
        "5.95, 660, false",
        "6, 660, true",
        "6.05, 660, true",
        "5.95, 700, false",
        "6.05, 700, true",
        "6.05, 630, true"
    })
    void aDropLosesSixDegreesAMinute(double perMinute, double until, boolean isDrop) {
        Optional<OnCurve.Found> found = drop(u -> 200 - perMinute / 60 * u, until);
        assertEquals(isDrop, found.isPresent());
        // A fall along a straight line is none of a probe's: its onset is a few seconds exact.
        found.ifPresent(at -> assertEquals(600, at.seconds(), 4));
    }

    @ParameterizedTest
    @CsvSource({"1.45, false", "1.5, true", "1.55, true"})
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
        for (int level : new int[] {40, 120}) {
            OnCurve.Found found = drop(u -> u <= level ? 200 : 200 - 1.5 * (u - level), 640 + level)
                    .orElseThrow();
            assertEquals(600 + level, found.seconds(), 4);
        }
    }

    @Test
    void aLogThatEndsBeforeTheEarliestDropHasNone() {
        assertTrue(OnCurve.drop(clean(t -> 200 - t, 0, 50, 2), 60).isEmpty());
    }

    /** Where only the last reading has fallen, the beans may have left at any time up to half an interval before it. */
    @Test
    void aDropLiesAtLeastHalfAnIntervalBeforeTheLastReading() {
        OnCurve.Found found = drop(u -> 200 - 10 * u, 602).orElseThrow();
        assertTrue(found.seconds() > 599.5 && found.seconds() < 601, found.toString());
        assertTrue(found.standardError() > 0.2, found.toString());
    }

    /** Loggers of all paces: the onset lies where it was within half an interval, and the error says so. */
    @ParameterizedTest
    @CsvSource({"1, 600.4", "5, 601", "10, 603", "10, 608", "20, 606", "20, 617"})
    void theDropOfASlowLoggerIsKnownToAPartOfItsInterval(double every, double onset) {
        DoubleUnaryOperator course = t -> 80 + 0.2 * t - (t <= onset ? 0 : 120 * (1 - Math.exp((onset - t) / 20)));
        OnCurve.Found found = OnCurve.drop(clean(course, 0, 760, every), 60).orElseThrow();
        assertEquals(onset, found.seconds(), 0.5 * every);
        assertTrue(found.standardError() < 0.5 * every, found.toString());
    }

    /** Rates over the next 4 s; the first of half the steepest one counts, if it comes within 90 s. */
    @ParameterizedTest
    @CsvSource({"0.49, 20, 618", "0.51, 20, 602", "0.125, 88, 686", "0.125, 90, 688", "0.125, 92, 690", "0.125, 94, 600"
    })
    void theSteepFallBeginsWhereHalfTheSteepestRateIsReached(double share, double slowSeconds, double begin) {
        // Slowly from 602 on, so that the rate over the 4 s from 600 on is half of the slow one.
        DoubleUnaryOperator course = t -> 200
                - 2 * share * Math.max(0, Math.min(t - 602, slowSeconds - 2))
                - 2 * Math.max(0, t - 600 - slowSeconds);
        assertEquals(
                begin,
                OnCurve.steepFall(
                        ExampleRoast.curve("bean temperature", Unit.TEMPERATURE, course, 500, 760, 2), 50, 4));
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

    /** Nothing is logged from 604 to 620 s: the curve loses 8 °C there, slowly, and only then falls by 2 °C/s. */
    @Test
    void whatWasLostInAGapCountsByItsRate() {
        double[] seconds = IntStream.rangeClosed(290, 330)
                .map(k -> 2 * k)
                .filter(t -> t <= 604 || t >= 620)
                .asDoubleStream()
                .toArray();
        double[] values = Arrays.stream(seconds)
                .map(t -> 200 - 0.5 * Math.max(0, t - 604) - 1.5 * Math.max(0, t - 620))
                .toArray();
        assertEquals(620, OnCurve.steepFall(Curve.of("bean temperature", Unit.TEMPERATURE, seconds, values), 0, 4));
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
    @CsvSource({
        "14.9, 100, false",
        "15, 100, true",
        "15.1, 100, true",
        "60, 29.9, false",
        "60, 30, true",
        "60, 30.1, true"
    })
    void aChargeCoolsTheProbeByFifteenDegreesAndItWarmsByThirty(double deep, double up, boolean isCharge) {
        CleanCurve curve = charged(150, deep, up);
        assertEquals(isCharge, OnCurve.atCharge(curve).isPresent());
        Optional<OnCurve.Found> found = OnCurve.charge(curve);
        assertEquals(isCharge, found.isPresent());
        assertEquals(isCharge ? Optional.of(300.0) : Optional.empty(), OnCurve.atCharge(curve));
        found.ifPresent(at -> assertEquals(300, at.seconds(), 4));
    }

    /** A level that rises counts as in the middle of its last 20 s: here 5 °C under the reading from which the fall goes. */
    @ParameterizedTest
    @CsvSource({"19.8, false", "20.2, true"})
    void theLevelBeforeTheChargeIsTheMiddleOfItsLastTwentySeconds(double deep, boolean isCharge) {
        DoubleUnaryOperator course =
                t -> t <= 300 ? 30 + 0.5 * t : t <= 340 ? 180 - deep * (t - 300) / 40 : 180 - deep + 0.3 * (t - 340);
        assertEquals(isCharge, OnCurve.atCharge(clean(course, 200, 900, 2)).isPresent());
    }

    /** Two readings within 20 s before the fall show a level: a logger that reads every 12 s shows none. */
    @ParameterizedTest
    @CsvSource({"10, true", "12, false"})
    void aLoggerSlowerThanTenSecondsShowsNoLevel(double every, boolean isCharge) {
        DoubleUnaryOperator course =
                t -> t <= 300 ? 180 + 0.01 * t : t <= 360 ? 183 - 1.5 * (t - 300) : 93 + 0.2 * (t - 360);
        assertEquals(isCharge, OnCurve.atCharge(clean(course, 180, 900, every)).isPresent());
    }

    /** The level needs two readings before the one at which the fall begins. */
    @ParameterizedTest
    @CsvSource({"310, false", "300, false", "298, false", "296, true", "280, true"})
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

    /** A bare wire falls from one reading to the next, and goes on falling slowly or rises at once. */
    @ParameterizedTest
    @CsvSource({"0.01, 300.5", "0.05, 301", "0.05, 301.9"})
    void aFallWithinOneReadingIsACharge(double perSecond, double onset) {
        DoubleUnaryOperator course = t -> t <= onset
                ? 147 + 0.01 * t
                : t <= 400 ? 90 - perSecond * (t - onset) : 90 - perSecond * (400 - onset) + 0.3 * (t - 400);
        CleanCurve curve = clean(course, 200, 900, 2);
        assertEquals(Optional.of(300.0), OnCurve.atCharge(curve));
        // No wire is without any lag, so the onset is told a little early.
        assertEquals(onset, OnCurve.charge(curve).orElseThrow().seconds(), 2.5);
    }

    @Test
    void aFallWithinOneReadingThatTurnsAtOnceIsACharge() {
        CleanCurve curve = clean(t -> t <= 301 ? 147 + 0.01 * t : 90 + 0.3 * (t - 301), 200, 900, 2);
        assertEquals(Optional.of(300.0), OnCurve.atCharge(curve));
    }

    @ParameterizedTest
    @CsvSource({"1, 300.3", "2, 301.9", "5, 304", "10, 303", "10, 308"})
    void theChargeIsKnownToAPartOfTheLoggersInterval(double every, double onset) {
        DoubleUnaryOperator course = t -> t <= onset ? 180 : 80 + 0.2 * (t - onset) + 100 * Math.exp((onset - t) / 25);
        OnCurve.Found found = OnCurve.charge(clean(course, 200, 900, every)).orElseThrow();
        assertEquals(onset, found.seconds(), 0.3 * every);
        assertTrue(found.standardError() < 0.5 * every, found.toString());
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
}
