package parchment.curve;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.List;
import java.util.Random;
import java.util.function.DoubleUnaryOperator;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import parchment.StatedPage;
import parchment.curve.measured.Cleaning;
import parchment.curve.measured.Gap;
import parchment.curve.measured.LeftOut;
import parchment.quantity.TemperatureUnit;
import parchment.quantity.Unit;

class CleanCurveTest {
    /** Charge at 0: the probe falls from 180 °C and the beans pull it up again. */
    private static final DoubleUnaryOperator ROAST =
            t -> t < 0 ? 180 : 100 * Math.exp(-t / 25) + 80 + 120 * (1 - Math.exp(-t / 400));

    static Curve sampled(DoubleUnaryOperator truth, double from, double to, double every, double step) {
        int n = (int) Math.floor((to - from) / every + 1e-9) + 1;
        double[] x = new double[n];
        double[] y = new double[n];
        for (int i = 0; i < n; i++) {
            x[i] = from + i * every;
            y[i] = truth.applyAsDouble(x[i]);
            y[i] = step > 0 ? Math.rint(y[i] / step) * step : y[i];
        }
        return Curve.of("bean temperature", Unit.TEMPERATURE, x, y);
    }

    private static Curve changed(Curve curve, int reading, double value) {
        double[] y = curve.values();
        y[reading] = value;
        return Curve.of(curve.name(), curve.unit(), curve.seconds(), y);
    }

    private static Curve without(Curve curve, double fromSeconds, double toSeconds) {
        double[] x = Arrays.stream(curve.seconds())
                .filter(t -> t <= fromSeconds || t >= toSeconds)
                .toArray();
        double[] y = Arrays.stream(x).map(t -> curve.valueAt(curve.position(t))).toArray();
        return Curve.of(curve.name(), curve.unit(), x, y);
    }

    @Test
    void keepsACleanCurveWhole() {
        Curve curve = sampled(ROAST, -40, 700, 2, 0.1);
        CleanCurve clean = CleanCurve.of(curve);
        assertEquals(curve, clean.kept());
        assertTrue(clean.leftOut().isEmpty());
        assertTrue(clean.gaps().isEmpty());
        assertEquals(2, clean.interval(), 1e-12);
    }

    @ParameterizedTest
    @ValueSource(doubles = {1, 2, 3, 5})
    void doesNotTakeTheFallAtChargeForASpike(double every) {
        assertTrue(CleanCurve.of(sampled(ROAST, -40, 700, every, 0.1)).leftOut().isEmpty());
    }

    @ParameterizedTest
    @ValueSource(ints = {30, 60, 200, 350})
    void leavesASpikeOutAndSaysWhy(int reading) {
        Curve curve = sampled(ROAST, -40, 700, 2, 0.1);
        CleanCurve clean = CleanCurve.of(changed(curve, reading, curve.valueAt(reading) + 12));
        assertEquals(1, clean.leftOut().size());
        assertEquals(LeftOut.Reason.SPIKE, clean.leftOut().get(0).reason());
        assertEquals(curve.secondsAt(reading), clean.leftOut().get(0).seconds());
        assertTrue(clean.toString().contains("370 of 371 readings kept, 1 spike left out"), clean.toString());
    }

    @Test
    void leavesOutASpikeOfTwoReadings() {
        Curve curve = sampled(ROAST, -40, 700, 2, 0.1);
        curve = changed(curve, 200, curve.valueAt(200) - 30);
        curve = changed(curve, 201, curve.valueAt(201) - 25);
        assertEquals(2, CleanCurve.of(curve).leftOut(LeftOut.Reason.SPIKE));
    }

    @Test
    void seesAProbeThatStuck() {
        Curve curve = sampled(t -> 100 + 0.15 * t, 0, 600, 2, 0.1);
        for (int i = 151; i < 160; i++) {
            curve = changed(curve, i, curve.valueAt(150));
        }
        CleanCurve clean = CleanCurve.of(curve);
        assertEquals(9, clean.leftOut(LeftOut.Reason.STUCK));
        assertEquals(1, clean.gaps().size());
        assertEquals(new Gap(300, 320), clean.gaps().get(0));
    }

    @Test
    void doesNotCallACoarseStepStuck() {
        // A logger of whole degrees repeats a reading for as long as the beans need for a degree: 12 s at 5 °C/min.
        CleanCurve clean = CleanCurve.of(sampled(t -> 180 + t / 12, 0, 240, 1, 1));
        assertTrue(clean.leftOut().isEmpty(), clean.leftOut().toString());
        assertEquals(1, clean.step());
    }

    @Test
    void doesNotCallAnIdleDrumStuck() {
        CleanCurve clean = CleanCurve.of(sampled(ROAST, -120, 700, 2, 1));
        assertTrue(clean.leftOut().isEmpty(), clean.leftOut().toString());
    }

    @Test
    void findsTheStepOfTheLoggerInAnyUnit() {
        assertEquals(0.1, CleanCurve.of(sampled(ROAST, 0, 700, 2, 0.1)).step(), 1e-6);
        assertEquals(0.5, CleanCurve.of(sampled(ROAST, 0, 700, 2, 0.5)).step(), 1e-6);
        Curve fahrenheit = sampled(t -> TemperatureUnit.FAHRENHEIT.fromCelsius(ROAST.applyAsDouble(t)), 0, 700, 2, 1);
        double[] celsius = Arrays.stream(fahrenheit.values())
                .map(TemperatureUnit.FAHRENHEIT::toCelsius)
                .toArray();
        CleanCurve clean = CleanCurve.of(Curve.of("bean temperature", Unit.TEMPERATURE, fahrenheit.seconds(), celsius));
        assertEquals(5.0 / 9, clean.step(), 1e-5);
        assertTrue(
                clean.in(TemperatureUnit.FAHRENHEIT).toString().contains("rounded to 1 °F"),
                clean.in(TemperatureUnit.FAHRENHEIT).toString());
        assertEquals(0, CleanCurve.of(sampled(ROAST, 0, 700, 2, 0)).step());
    }

    @Test
    void listsGapsAndSplitsTheCurveThere() {
        CleanCurve clean = CleanCurve.of(without(sampled(ROAST, 0, 700, 2, 0.1), 362, 376));
        assertEquals(List.of(new Gap(362, 376)), clean.gaps());
        assertEquals(2, clean.pieces().size());
        assertEquals(376, clean.pieces().get(1).secondsAt(0));
        assertTrue(clean.text().contains("Gap of 14 s from 6:02 to 6:16; nothing is said inside."), clean.text());
    }

    @Test
    void countsShorterHoles() {
        CleanCurve clean = CleanCurve.of(without(sampled(ROAST, 0, 700, 2, 0.1), 362, 368));
        assertTrue(clean.gaps().isEmpty());
        assertTrue(clean.text().contains("1 shorter hole of up to 6 s"), clean.text());
    }

    /** A reading every 2 s but for one pause: up to 3 s nothing is said, up to 10 s it is a hole, above a gap. */
    @ParameterizedTest
    @CsvSource({
        "2, 3, 0, 0",
        "2, 3.5, 1, 0",
        "2, 10, 1, 0",
        "2, 10.5, 0, 1",
        "5, 7.5, 0, 0",
        "5, 15, 1, 0",
        "5, 15.5, 0, 1"
    })
    void tellsHolesFromGapsByTheUsualInterval(double every, double pause, int holes, int gaps) {
        double[] x = new double[40];
        for (int i = 1; i < x.length; i++) {
            x[i] = x[i - 1] + (i == 20 ? pause : every);
        }
        double[] y = Arrays.stream(x).map(t -> 100 + 0.0625 * t).toArray();
        CleanCurve clean = CleanCurve.of(Curve.of("bean temperature", Unit.TEMPERATURE, x, y));
        Gap between = new Gap(x[19], x[20]);
        assertEquals(holes == 1 ? List.of(between) : List.of(), clean.holes());
        assertEquals(gaps == 1 ? List.of(between) : List.of(), clean.gaps());
        assertEquals(every, clean.interval());
        assertEquals(gaps + 1, clean.pieces().size());
        assertEquals(
                gaps == 1 || holes == 1 ? 1 : 0,
                CleanCurve.of(clean.kept(), Cleaning.STANDARD.withLongestHole(1000))
                        .holes()
                        .size());
    }

    @Test
    void saysInWholeSentencesWhatWasLeftOut() {
        Curve curve = sampled(t -> 100 + 0.125 * t, 0, 600, 2, 0.1);
        assertEquals(
                "bean temperature: 301 of 301 readings kept; a reading every 2 s, rounded to 0.1 °C.",
                CleanCurve.of(curve).toString());
        Curve spoilt = changed(changed(curve, 50, 300), 250, 10);
        for (int i = 151; i < 160; i++) {
            spoilt = changed(spoilt, i, spoilt.valueAt(150));
        }
        CleanCurve clean = CleanCurve.of(without(without(spoilt, 80, 86), 200, 208));
        assertEquals(
                "bean temperature: 285 of 296 readings kept, 2 spikes left out, 9 stuck readings left out; a reading every "
                        + "2 s, rounded to 0.1 °C. Gap of 20 s from 5:00 to 5:20; nothing is said inside. 4 shorter holes of up "
                        + "to 8 s, which a smooth passes over. Whether the log was smoothed before it was saved cannot be told.",
                clean.text());
        assertEquals(
                List.of(100.0, 302.0, 304.0, 306.0, 308.0, 310.0, 312.0, 314.0, 316.0, 318.0, 500.0),
                clean.leftOut().stream().map(LeftOut::seconds).toList());
        CleanCurve twice = CleanCurve.of(without(without(curve, 100, 120), 300, 330));
        assertTrue(
                twice.text()
                        .contains(" Gaps of 20 s from 1:40 to 2:00, 30 s from 5:00 to 5:30; nothing is said inside."),
                twice.text());
        assertEquals(
                "bean temperature: 0 of 0 readings kept, no rounding seen.",
                CleanCurve.of(curve.between(-9, -1)).toString());
    }

    @Test
    void theThreeAnswersOfSmoothingAreThreeSentences() {
        Curve rough = sampled(ROAST, 0, 700, 2, 0);
        double[] y = rough.values();
        double[] mean = rough.values();
        Random random = new Random(3);
        double[] noise = new double[y.length + 5];
        for (int i = 0; i < noise.length; i++) {
            noise[i] = 0.15 * random.nextGaussian();
        }
        for (int i = 0; i < y.length; i++) {
            y[i] += noise[i];
            mean[i] += (noise[i] + noise[i + 1] + noise[i + 2] + noise[i + 3] + noise[i + 4]) / 5;
        }
        String asRead = CleanCurve.of(Curve.of(rough.name(), rough.unit(), rough.seconds(), y))
                .text();
        assertTrue(asRead.endsWith(", no rounding seen."), asRead);
        String smoothed = CleanCurve.of(Curve.of(rough.name(), rough.unit(), rough.seconds(), mean))
                .text();
        assertTrue(
                smoothed.endsWith(
                        " The log looks as if it had been smoothed before it was saved: rates of rise lag, and look calmer than they were."),
                smoothed);
        String hidden = CleanCurve.of(sampled(ROAST, 0, 700, 2, 1)).text();
        assertTrue(hidden.endsWith(" Whether the log was smoothed before it was saved cannot be told."), hidden);
    }

    @Test
    void cutsAndMovesWithAllThatItKnows() {
        Curve curve = sampled(t -> 100 + 0.125 * t, 0, 600, 2, 0.1);
        CleanCurve clean =
                CleanCurve.of(without(without(changed(changed(curve, 50, 300), 250, 10), 150, 170), 400, 408));
        CleanCurve part = clean.between(100, 400);
        assertEquals(1, part.leftOut().size());
        assertEquals(100, part.leftOut().get(0).seconds());
        assertEquals(List.of(new Gap(150, 170)), part.gaps());
        assertEquals(List.of(), part.holes());
        assertEquals(102, part.kept().secondsAt(0));
        assertEquals(400, part.kept().secondsAt(part.kept().size() - 1));
        assertEquals(List.of(new Gap(400, 408)), clean.between(400, 408).holes());
        // Where the spike was is a hole of its own.
        assertEquals(List.of(new Gap(498, 502)), clean.between(401, 600).holes());
        assertEquals(List.of(), clean.between(401, 501).holes());
        assertEquals(List.of(), clean.between(151, 600).gaps());
        assertEquals(List.of(), clean.between(0, 169).gaps());
        assertEquals(1, clean.between(500, 600).leftOut().size());
        assertEquals(0, clean.between(501, 600).leftOut().size());
        assertEquals(1, clean.between(0, 100).leftOut().size());
        CleanCurve moved = clean.withZeroAt(100);
        assertEquals(0, moved.leftOut().get(0).seconds());
        assertEquals(300, moved.leftOut().get(0).value());
        assertEquals(LeftOut.Reason.SPIKE, moved.leftOut().get(0).reason());
        assertEquals(List.of(new Gap(50, 70)), moved.gaps());
        assertEquals(List.of(new Gap(-2, 2), new Gap(300, 308), new Gap(398, 402)), moved.holes());
        assertEquals(-100, moved.kept().secondsAt(0));
        for (CleanCurve same : List.of(part, moved, clean.in(TemperatureUnit.FAHRENHEIT))) {
            assertEquals(0.1, same.step(), 1e-9);
            assertEquals(2, same.interval());
            assertEquals(clean.smoothing(), same.smoothing());
        }
        assertEquals(2, clean.leftOut(LeftOut.Reason.SPIKE));
        assertEquals(0, clean.leftOut(LeftOut.Reason.STUCK));
    }

    @Test
    void piecesMeetAtTheGaps() {
        CleanCurve clean = CleanCurve.of(without(without(sampled(ROAST, 0, 700, 2, 0.1), 200, 220), 500, 530));
        List<Curve> pieces = clean.pieces();
        assertEquals(3, pieces.size());
        double[][] ends = {{0, 200}, {220, 500}, {530, 700}};
        for (int k = 0; k < 3; k++) {
            assertEquals(ends[k][0], pieces.get(k).secondsAt(0));
            assertEquals(ends[k][1], pieces.get(k).secondsAt(pieces.get(k).size() - 1));
        }
        assertEquals(List.of(), CleanCurve.of(sampled(ROAST, 0, -2, 2, 0.1)).pieces());
    }

    @Test
    void tellsALogThatWasSmoothedFromOneThatWasNot() {
        int seen = 0;
        int invented = 0;
        for (int seed = 0; seed < 100; seed++) {
            seen += verdict(seed, 5) == CleanCurve.Smoothing.LOOKS_SMOOTHED ? 1 : 0;
            invented += verdict(seed, 1) == CleanCurve.Smoothing.LOOKS_SMOOTHED ? 1 : 0;
        }
        assertTrue(seen >= 95, "means of five readings seen in " + seen + " of 100");
        assertTrue(invented <= 6, "smoothing invented in " + invented + " of 100");
    }

    @Test
    void theShareOfNoiseThatMakesALogSmoothedIsTheOneThatThePageStates() {
        assertTrue(StatedPage.of("marks-and-phases.md")
                .says("neighbouring readings that share three quarters of their noise"));
        assertEquals(0.75, CleanCurve.LOOKS_SMOOTHED_FROM);
    }

    private static CleanCurve.Smoothing verdict(int seed, int readings) {
        Random random = new Random(seed);
        double[] noise = new double[400];
        for (int i = 0; i < noise.length; i++) {
            noise[i] = 0.15 * random.nextGaussian();
        }
        Curve smooth = sampled(ROAST, 0, 700, 2, 0);
        double[] y = smooth.values();
        for (int i = 0; i < y.length; i++) {
            for (int k = 0; k < readings; k++) {
                y[i] += noise[i + k] / readings;
            }
        }
        return CleanCurve.of(Curve.of("bean temperature", Unit.TEMPERATURE, smooth.seconds(), y))
                .smoothing();
    }

    @Test
    void saysThatRoundingHidesWhetherALogWasSmoothed() {
        CleanCurve clean = CleanCurve.of(sampled(ROAST, 0, 700, 2, 1));
        assertEquals(CleanCurve.Smoothing.CANNOT_TELL, clean.smoothing());
        assertTrue(clean.text().contains("cannot be told"), clean.text());
    }

    @Test
    void meetsCurvesWithoutReadings() {
        for (int n = 0; n < 4; n++) {
            Curve tiny = Curve.of(
                    "bean temperature",
                    Unit.TEMPERATURE,
                    Arrays.copyOf(new double[] {0, 2, 4}, n > 3 ? 3 : n),
                    Arrays.copyOf(new double[] {180, 179, 170}, n > 3 ? 3 : n));
            CleanCurve clean = CleanCurve.of(tiny);
            assertEquals(n, clean.kept().size());
            assertFalse(clean.text().isBlank());
        }
    }

    @Test
    void refusesSettingsThatMeanNothing() {
        IllegalArgumentException refused =
                assertThrows(IllegalArgumentException.class, () -> Cleaning.STANDARD.withSpikeThreshold(Double.NaN));
        assertEquals("Cleaning a curve needs a spike threshold above 0; it was given NaN.", refused.getMessage());
    }
}
