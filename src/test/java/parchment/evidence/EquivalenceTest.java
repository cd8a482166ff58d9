package parchment.evidence;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import parchment.logbook.Logbook;
import parchment.logbook.LogbookContents;
import parchment.quantity.TemperatureUnit;
import parchment.quantity.Unit;

/** Holds differences to the drawn course: over all of the tried range and with its bend. */
class EquivalenceTest {
    private static final SmallestDifference HALF = new SmallestDifference(0.5, "stated beforehand");
    private static final Measure DROP =
            new Measure("drop temperature", Unit.TEMPERATURE, TemperatureUnit.CELSIUS, Map.of());

    private static FittedScores fitted(double slope, double bend, ModelForm.Shape shape) {
        KnownTruth truth = new KnownTruth();
        truth.slope = slope;
        truth.bend = bend;
        truth.cupSpread = 0.1;
        truth.batchSpread = 0.05;
        truth.lots = 1;
        return FittedScores.of(KnownTruth.material(truth.draw(4)), ModelForm.STANDARD.with(shape));
    }

    private static Equivalence of(FittedScores fitted, Slope unseen) {
        TriedRange range = TriedRange.of(fitted.design());
        return Equivalence.of(FittedCurve.of(fitted, range, 0.9), fitted.slope(), unseen, range, HALF);
    }

    @Test
    void aLineDiffersMostFromEndToEnd() {
        FittedScores rising = fitted(0.15, 0, ModelForm.Shape.LINE);
        Equivalence found = of(rising, Slope.MISSING);
        TriedRange range = TriedRange.of(rising.design());
        double width = range.highest() - range.lowest();
        assertEquals(rising.slope().estimate() * width, found.difference().estimate(), 1e-9);
        assertEquals(range.lowest(), found.low());
        assertEquals(range.highest(), found.high());
        Equivalence falling = of(fitted(-0.15, 0, ModelForm.Shape.LINE), Slope.MISSING);
        assertTrue(falling.low() > falling.high());
        assertTrue(falling.difference().estimate() < 0);
    }

    /** A hump: its ends are as good as each other, so a slope says nothing, and the picture shows a large difference. */
    @Test
    void aHumpDiffersMostFromItsTopToAnEndThoughItsSlopeIsNone() {
        FittedScores bent = fitted(0, -0.03, ModelForm.Shape.BEND);
        Equivalence found = of(bent, Slope.MISSING);
        FittedCurve curve = FittedCurve.of(bent, TriedRange.of(bent.design()), 0.9);
        double highest = Double.NEGATIVE_INFINITY;
        double lowest = Double.POSITIVE_INFINITY;
        for (double place : curve.places()) {
            highest = Math.max(highest, curve.at(place));
            lowest = Math.min(lowest, curve.at(place));
        }
        assertEquals(highest - lowest, Math.abs(found.difference().estimate()), 1e-9);
        assertEquals(205, found.high(), 1);
        assertFalse(found.noneThatMatters());
        assertTrue(
                found.words(DROP).startsWith("Over the whole tried range the drawn course differs most between 205."));
        assertTrue(found.words(DROP)
                .contains(": the first scored " + Wording.points(highest - lowest)
                        + " points above the second (90 % interval +"));
        assertTrue(
                found.words(DROP).endsWith("The smallest difference that matters is 0.50 points (stated beforehand)."));
    }

    @Test
    void aDeepBendThatIsNotDrawnKeepsNothingFromBeingSaid() {
        FittedScores flat = fitted(0.01, 0, ModelForm.Shape.LINE);
        assertTrue(of(flat, Slope.MISSING).noneThatMatters());
        assertFalse(of(flat, Slope.MISSING).bendIsOpen());
        Equivalence open = of(flat, new Slope(0.002, 0.01, 20));
        assertTrue(open.bendIsOpen());
        assertFalse(open.noneThatMatters());
    }

    @Test
    void withoutASlopeNothingIsSaid() {
        Equivalence none = new Equivalence(
                0.5,
                "",
                0,
                1,
                Slope.MISSING,
                Slope.MISSING.interval(0.9),
                Slope.MISSING.interval(0.9),
                Slope.MISSING.interval(0.9));
        assertEquals(
                "Whether a difference is too small to matter cannot be said: there is no slope.", none.words(DROP));
        assertFalse(none.noneThatMatters());
    }

    private static SmallestDifference smallest(
            Map<String, Logbook.Scale> scales, double more, EvidenceSettings settings) {
        LogbookContents drawn = new KnownTruth().draw(1).logbook().contents();
        List<parchment.logbook.CupScores> cups = drawn.cups().stream()
                .map(cup -> new parchment.logbook.CupScores(
                        cup.cupping(),
                        cup.tastedOn(),
                        cup.cupper(),
                        cup.batch(),
                        cup.blindCode(),
                        cup.cup(),
                        cup.servingPosition(),
                        Map.of("sweetness", more * cup.score("sweetness")),
                        cup.note()))
                .toList();
        return SmallestDifference.of(
                "sweetness",
                Logbook.of(drawn.toBuilder().cups(cups).scales(scales).build()),
                settings);
    }

    @Test
    void theSmallestDifferenceThatMattersIsHalfAPointOfTenInProportionToTheScale() {
        EvidenceSettings standard = EvidenceSettings.standard();
        assertEquals(
                0.5,
                smallest(Map.of("sweetness", new Logbook.Scale(0, 10)), 1, standard)
                        .points(),
                1e-12);
        assertEquals(
                0.2,
                smallest(Map.of("sweetness", new Logbook.Scale(1, 5)), 0.5, standard)
                        .points(),
                1e-12);
        assertEquals(
                "a twentieth of the scale of sweetness, 1 to 5; state another beforehand if it matters more or less to you",
                smallest(Map.of("sweetness", new Logbook.Scale(1, 5)), 0.5, standard)
                        .source());
        assertEquals(0.5, smallest(Map.of(), 1, standard).points(), 1e-12);
        assertEquals(
                "half a point of a ten-point scale, which is assumed as none is written",
                smallest(Map.of(), 1, standard).source());
        assertEquals(5, smallest(Map.of(), 10, standard).points(), 1e-12);
        assertEquals(
                "a twentieth of a scale from 0 to 100, which is assumed as none is written; write scale.sweetness into"
                        + " logbook.properties",
                smallest(Map.of(), 10, standard).source());
        SmallestDifference stated =
                smallest(Map.of("sweetness", new Logbook.Scale(1, 5)), 0.5, standard.withSmallestDifference(0.3));
        assertEquals(new SmallestDifference(0.3, "stated beforehand"), stated);
    }

    /** A panel that scatters more earns no easier "nothing seen". */
    @Test
    void theMarginDoesNotGrowWithTheNoise() {
        KnownTruth calm = new KnownTruth();
        calm.slope = 0;
        KnownTruth noisy = new KnownTruth();
        noisy.slope = 0;
        noisy.cupSpread = 2;
        for (KnownTruth truth : List.of(calm, noisy)) {
            assertEquals(
                    0.5,
                    SmallestDifference.of("sweetness", truth.draw(1).logbook(), EvidenceSettings.standard())
                            .points());
        }
    }
}
