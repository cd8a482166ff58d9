package parchment.curve;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Locale;
import java.util.Random;
import org.junit.jupiter.api.RepeatedTest;
import org.junit.jupiter.api.RepetitionInfo;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import parchment.curve.measured.CurveEstimate;
import parchment.curve.measured.Passage;
import parchment.curve.measured.Smoothed;
import parchment.quantity.TemperatureUnit;
import parchment.quantity.Unit;
import parchment.stats.local.LocalFit.SlopeQuality;

class SmoothCurveTest {
    private static Curve of(double[] x, double[] y) {
        return Curve.of("bean temperature", Unit.TEMPERATURE, x, y);
    }

    @Test
    void reproducesAParabolaAndItsRateExactly() {
        // T = 60 + 0.3 t - 0.0001 t²; the rate is 60 (0.3 - 0.0002 t) °C/min.
        SmoothCurve smooth = SmoothCurve.of(CleanCurveTest.sampled(t -> 60 + 0.3 * t - 1e-4 * t * t, 0, 600, 2, 0));
        for (double t : new double[] {0, 1, 17.3, 300, 455.5, 599, 600}) {
            assertEquals(60 + 0.3 * t - 1e-4 * t * t, smooth.valueAt(t).value(), 1e-9);
            assertEquals(60 * (0.3 - 2e-4 * t), smooth.slopeAt(t).value(), 1e-8);
        }
    }

    @ParameterizedTest
    @ValueSource(doubles = {1, 2, 5})
    void followsACurveWithAKnownDerivative(double every) {
        // T = 200 - 120 exp(-t/250): rate 60 · 120/250 exp(-t/250). A local quadratic is off in slope by about h²
        // T'''/20 inside.
        SmoothCurve smooth =
                SmoothCurve.of(CleanCurveTest.sampled(t -> 200 - 120 * Math.exp(-t / 250), 0, 700, every, 0));
        for (double t = 30; t < 680; t += 13.7) {
            double rate = 60 * 120.0 / 250 * Math.exp(-t / 250);
            double bound = 60 * 400 * 120 / Math.pow(250, 3) / 6 * Math.exp(-(t - 20) / 250);
            assertEquals(rate, smooth.slopeAt(t).value(), bound + 1e-9);
        }
    }

    /** Noise of 0.15 °C that neighbours share by half, rounded to 0.1 °C: what a plain logger writes. */
    private static SmoothCurve noisy(int seed, double memory) {
        Random random = new Random(seed);
        int n = 351;
        double[] x = new double[n];
        double[] y = new double[n];
        double wander = 0.15 * random.nextGaussian();
        for (int i = 0; i < n; i++) {
            wander = memory * wander + Math.sqrt(1 - memory * memory) * 0.15 * random.nextGaussian();
            x[i] = 2 * i;
            y[i] = Math.rint((200 - 120 * Math.exp(-x[i] / 300) + wander) * 10) / 10;
        }
        return SmoothCurve.of(of(x, y));
    }

    @ParameterizedTest
    @ValueSource(doubles = {0, 0.5, 0.8})
    void intervalsOfTheRateHoldTheTruth(double memory) {
        // 200 curves at 5 times each; a nominal 90 % interval. Curves are independent, so the Monte-Carlo error is at
        // most
        // 0.3/√200 = 2.1 points even if the 5 times moved together. At memory 0.8 one curve is too short to know its
        // own noise well.
        int inside = 0;
        int all = 0;
        for (int seed = 0; seed < 200; seed++) {
            SmoothCurve smooth = noisy(seed, memory);
            for (double t : new double[] {100, 220, 340, 460, 580}) {
                CurveEstimate rate = smooth.slopeAt(t);
                double truth = 60 * 120.0 / 300 * Math.exp(-t / 300);
                inside += Math.abs(rate.value() - truth) <= 1.645 * rate.standardError() ? 1 : 0;
                all++;
            }
        }
        double share = 100.0 * inside / all;
        assertTrue(share > 83 && share < 96, "90 % intervals held the rate in " + share + " %");
    }

    @Test
    void saysNothingInsideAGap() {
        Curve whole = CleanCurveTest.sampled(t -> 100 + 0.1 * t, 0, 600, 2, 0.1);
        double[] x = java.util.Arrays.stream(whole.seconds())
                .filter(t -> t <= 300 || t >= 330)
                .toArray();
        double[] y = java.util.Arrays.stream(x).map(t -> 100 + 0.1 * t).toArray();
        SmoothCurve smooth = SmoothCurve.of(of(x, y));
        CurveEstimate inside = smooth.valueAt(310);
        assertTrue(inside.isMissing());
        assertEquals("5:10 lies in a gap of the bean temperature (30 s from 5:00 to 5:30).", inside.whyMissing());
        assertEquals(130, smooth.valueAt(300).value(), 1e-6);
        assertEquals(133, smooth.valueAt(330).value(), 1e-6);
    }

    @Test
    void saysNothingOutsideTheReadings() {
        SmoothCurve smooth = SmoothCurve.of(CleanCurveTest.sampled(t -> 100 + 0.1 * t, 0, 600, 2, 0.1));
        assertEquals(
                "10:05 lies outside the readings of the bean temperature (0:00 to 10:00).",
                smooth.slopeAt(605).whyMissing());
    }

    @Test
    void agreesAtAReadingWithWhatItSaysOfAllReadings() {
        SmoothCurve smooth = noisy(7, 0.5);
        for (Smoothed row : smooth.atReadings()) {
            Smoothed asked = smooth.at(row.seconds());
            assertEquals(row.value(), asked.value(), 1e-9);
            assertEquals(row.slope(), asked.slope(), 1e-8);
            assertEquals(row.slopeStandardError(), asked.slopeStandardError(), 1e-9);
        }
    }

    @RepeatedTest(5)
    void shiftsInTimeWithItsCurve(RepetitionInfo seed) {
        SmoothCurve smooth = noisy(seed.getCurrentRepetition(), 0.5);
        double by = 1000 * new Random(seed.getCurrentRepetition()).nextDouble();
        SmoothCurve moved = SmoothCurve.of(smooth.clean().kept().withZeroAt(by));
        for (double t : new double[] {50, 333, 650}) {
            assertEquals(smooth.valueAt(t).value(), moved.valueAt(t - by).value(), 1e-8);
            assertEquals(smooth.slopeAt(t).value(), moved.slopeAt(t - by).value(), 1e-7);
            assertEquals(
                    smooth.slopeAt(t).standardError(), moved.slopeAt(t - by).standardError(), 1e-6);
        }
    }

    @RepeatedTest(5)
    void followsAChangeOfUnit(RepetitionInfo seed) {
        SmoothCurve celsius = noisy(seed.getCurrentRepetition(), 0.5);
        Curve kept = celsius.clean().kept();
        double[] scaled = java.util.Arrays.stream(kept.values())
                .map(TemperatureUnit.FAHRENHEIT::fromCelsius)
                .toArray();
        SmoothCurve fahrenheit = SmoothCurve.of(of(kept.seconds(), scaled));
        for (double t : new double[] {50, 333, 650}) {
            assertEquals(1.8 * celsius.slopeAt(t).value(), fahrenheit.slopeAt(t).value(), 1e-7);
            assertEquals(
                    1.8 * celsius.slopeAt(t).standardError(),
                    fahrenheit.slopeAt(t).standardError(),
                    1e-4);
        }
    }

    @Test
    void admitsThatRoundingHidesASlowRise() {
        // 1 °C in 60 s with a logger of whole degrees: half the window may hold no change at all.
        SmoothCurve smooth =
                SmoothCurve.of(CleanCurveTest.sampled(t -> 150 + t / 60 + 20 * Math.sin(t / 2000), 0, 600, 2, 1));
        Smoothed there = smooth.at(300);
        assertEquals(SlopeQuality.BELOW_RESOLUTION, there.quality());
        assertTrue(there.slopeStandardError() >= 60 / (20 * Math.sqrt(12)) - 1e-9, there.toString());
    }

    @Test
    void givesASlowLoggerThreeIntervals() {
        SmoothCurve smooth = SmoothCurve.of(CleanCurveTest.sampled(t -> 100 + 0.1 * t, 0, 600, 15, 0.1));
        assertEquals(45, smooth.bandwidthSeconds());
        assertEquals(6, smooth.slopeAt(300).value(), 1e-6);
    }

    @Test
    void findsWhenAValueWasPassed() {
        // T = 60 + 0.2 t passes 150 at 450 s.
        SmoothCurve smooth = SmoothCurve.of(CleanCurveTest.sampled(t -> 60 + 0.2 * t, 0, 600, 2, 0.1));
        assertEquals(450, Passage.rising(smooth, 150).value(), 0.3);
        assertEquals(
                "the bean temperature never reached 200.0 °C.",
                Passage.rising(smooth, 200).whyMissing());
        assertEquals(
                "the bean temperature never was as low as 122.0 °F (lowest 140.0 °F).",
                Passage.rising(smooth, 50, TemperatureUnit.FAHRENHEIT).whyMissing());
    }

    /** A probe that always reads the same never passes anything, not even what it reads. */
    @Test
    void aCurveThatStaysAtAValueIsTooFlatToPassIt() {
        for (double always : new double[] {150, 180, 60}) {
            SmoothCurve still = SmoothCurve.of(CleanCurveTest.sampled(t -> always, 0, 600, 120, 0));
            assertEquals(
                    String.format(
                            Locale.ROOT, "the bean temperature is too flat at %.1f °C to say when it passed.", always),
                    Passage.rising(still, always).whyMissing());
        }
        SmoothCurve landing = SmoothCurve.of(CleanCurveTest.sampled(t -> Math.max(150, 190 - 0.4 * t), 0, 600, 60, 0));
        assertTrue(Double.isNaN(Passage.rising(landing, 150).value()));
    }

    @Test
    void theErrorOfAPassageIsThatOfTheHeightOverTheSlope() {
        SmoothCurve smooth = noisy(3, 0.5);
        CurveEstimate at = Passage.rising(smooth, 150);
        Smoothed there = smooth.at(at.value());
        assertEquals(150, there.value(), 1e-6);
        assertEquals(there.valueStandardError() / (there.slope() / 60), at.standardError(), 1e-9);
    }

    @Test
    void theRateOfRiseIsTheSlopePerMinute() {
        RateOfRise rate = RateOfRise.of(CleanCurveTest.sampled(t -> 60 + 0.2 * t, 0, 600, 2, 0));
        assertEquals(301, rate.values().length);
        assertEquals(12, rate.values()[150], 1e-8);
        assertEquals(12, rate.at(77).value(), 1e-8);
    }
}
