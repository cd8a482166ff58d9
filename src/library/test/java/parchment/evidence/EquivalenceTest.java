package parchment.evidence;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import parchment.evidence.finding.Slope;
import parchment.evidence.finding.Wording;
import parchment.logbook.Logbook;
import parchment.logbook.contents.LogbookContents;
import parchment.logbook.written.CupScores;
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

    private static Equivalence of(FittedScores fitted, PairsOfPlaces bent) {
        TriedRange range = TriedRange.of(fitted.design());
        return Equivalence.of(FittedCurve.of(fitted, range, 0.9), fitted.slope(), bent, range, HALF);
    }

    @Test
    void aLineDiffersMostFromEndToEnd() {
        FittedScores rising = fitted(0.15, 0, ModelForm.Shape.LINE);
        Equivalence found = of(rising, PairsOfPlaces.UNKNOWN);
        TriedRange range = TriedRange.of(rising.design());
        double width = range.highest() - range.lowest();
        assertEquals(rising.slope().estimate() * width, found.difference().estimate(), 1e-9);
        assertEquals(range.lowest(), found.low());
        assertEquals(range.highest(), found.high());
        Equivalence falling = of(fitted(-0.15, 0, ModelForm.Shape.LINE), PairsOfPlaces.UNKNOWN);
        assertTrue(falling.low() > falling.high());
        assertTrue(falling.difference().estimate() < 0);
    }

    /** A hump: its ends are as good as each other, so a slope says nothing, and the picture shows a large difference. */
    @Test
    void aHumpDiffersMostFromItsTopToAnEndThoughItsSlopeIsNone() {
        FittedScores bent = fitted(0, -0.03, ModelForm.Shape.BEND);
        Equivalence found = of(bent, PairsOfPlaces.UNKNOWN);
        FittedCurve curve = FittedCurve.of(bent, TriedRange.of(bent.design()), 0.9);
        double highest = Double.NEGATIVE_INFINITY;
        double lowest = Double.POSITIVE_INFINITY;
        for (double place : curve.places()) {
            highest = Math.max(highest, curve.at(place));
            lowest = Math.min(lowest, curve.at(place));
        }
        assertEquals(highest - lowest, Math.abs(found.difference().estimate()), 1e-9);
        assertEquals(205, found.high(), 1);
        TriedRange range = TriedRange.of(bent.design());
        assertTrue(found.low() == range.lowest() || found.low() == range.highest(), found.toString());
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
    void aTroughDiffersMostFromAnEndToItsBottom() {
        FittedScores bent = fitted(0, 0.03, ModelForm.Shape.BEND);
        Equivalence found = of(bent, PairsOfPlaces.UNKNOWN);
        TriedRange range = TriedRange.of(bent.design());
        assertEquals(205, found.low(), 1);
        assertTrue(found.high() == range.lowest() || found.high() == range.highest(), found.toString());
    }

    /** What the 90 % intervals between any two places of the drawn bend hold, each pair asked by itself. */
    @Test
    void everyPairOfPlacesOfADrawnBendIsHeld() {
        FittedScores bent = fitted(0.05, -0.03, ModelForm.Shape.BEND);
        Equivalence found = of(bent, PairsOfPlaces.UNKNOWN);
        FittedCurve curve = FittedCurve.of(bent, TriedRange.of(bent.design()), 0.9);
        double lower = 0;
        double upper = 0;
        for (double from : curve.places()) {
            for (double to : curve.places()) {
                if (from < to) {
                    lower = Math.min(
                            lower, curve.between(from, to).interval(0.9).lower());
                    upper = Math.max(
                            upper, curve.between(from, to).interval(0.9).upper());
                }
            }
        }
        assertEquals(lower, found.everyInterval().lower(), 1e-9);
        assertEquals(upper, found.everyInterval().upper(), 1e-9);
        assertTrue(lower < -0.5 && upper > 0.5, lower + " " + upper);
    }

    @Test
    void ofALevelLineTheUpperEndIsNamedFirst() {
        FittedScores flat = fitted(0.01, 0, ModelForm.Shape.LINE);
        TriedRange range = new TriedRange(200, 210, 201, 209, 205);
        Equivalence found = Equivalence.of(
                FittedCurve.of(flat, range, 0.9), new Slope(0, 0.01, 1e6), PairsOfPlaces.UNKNOWN, range, HALF);
        assertEquals(200, found.low());
        assertEquals(210, found.high());
        assertEquals(
                "Over the whole tried range the drawn course differs most between 210.0 °C and 200.0 °C: the first scored 0.00 points above"
                        + " the second (90 % interval -0.16 to +0.16). The smallest difference that matters is 0.50 points (stated"
                        + " beforehand).",
                found.words(DROP));
    }

    /** The lower of the two ends comes second, whichever way the line goes, and the interval with the sign that goes with it. */
    @Test
    void theSentenceNamesTheBetterPlaceFirst() {
        FittedScores flat = fitted(0.01, 0, ModelForm.Shape.LINE);
        TriedRange range = new TriedRange(200, 210, 201, 209, 205);
        Equivalence falling = Equivalence.of(
                FittedCurve.of(flat, range, 0.9), new Slope(-0.03, 0.01, 1e6), PairsOfPlaces.UNKNOWN, range, HALF);
        assertEquals(
                "Over the whole tried range the drawn course differs most between 200.0 and 210.0: the first scored 0.30 points above the"
                        + " second (90 % interval +0.14 to +0.46). The smallest difference that matters is 0.50 points (stated"
                        + " beforehand).",
                falling.toString());
    }

    @Test
    void aDeepBendThatIsNotDrawnKeepsNothingFromBeingSaid() {
        FittedScores flat = fitted(0.01, 0, ModelForm.Shape.LINE);
        PairsOfPlaces bent = PairsOfPlaces.of(fitted(0.01, 0, ModelForm.Shape.BEND));
        assertTrue(of(flat, bent).noneThatMatters());
        assertFalse(of(flat, bent).bendIsOpen());
        assertTrue(of(flat, PairsOfPlaces.UNKNOWN).bendIsOpen());
        assertFalse(of(flat, PairsOfPlaces.UNKNOWN).noneThatMatters());
        Equivalence open = of(flat, new PairsOfPlaces(bent.line(), new Slope(0.002, 0.01, 20), 0));
        assertTrue(open.bendIsOpen());
        assertFalse(open.noneThatMatters());
    }

    /** Each by itself is inside the margin; from the top to an end they add up. */
    @Test
    void theLineAndTheBendThatIsNotDrawnAreHeldTogether() {
        FittedScores flat = fitted(0.01, 0, ModelForm.Shape.LINE);
        TriedRange range = new TriedRange(200, 210, 201, 209, 205);
        double width = range.highest() - range.lowest();
        Slope line = new Slope(0.3 / width, 0.01 / width, 60);
        FittedCurve curve = FittedCurve.of(flat, range, 0.9);
        Slope deep = new Slope(-4 * 0.4 / (width * width), 0.04 / (width * width), 60);
        Equivalence together = Equivalence.of(curve, line, new PairsOfPlaces(line, deep, 0), range, HALF);
        assertTrue(PairsOfPlaces.inside(together.bendInterval(), 0.5));
        assertTrue(PairsOfPlaces.inside(together.differenceInterval(), 0.5));
        assertFalse(together.noneThatMatters());
        assertTrue(together.bendIsOpen());
        Slope shallow = new Slope(-4 * 0.2 / (width * width), 0.04 / (width * width), 60);
        assertTrue(Equivalence.of(curve, line, new PairsOfPlaces(line, shallow, 0), range, HALF)
                .noneThatMatters());
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
        assertEquals("Whether a difference is too small to matter cannot be said: there is no slope.", none.toString());
        assertFalse(none.noneThatMatters());
    }

    private static SmallestDifference smallest(
            Map<String, Logbook.Scale> scales, double more, EvidenceSettings settings) {
        return SmallestDifference.of(
                "sweetness",
                Logbook.of(scored(more).contents().toBuilder().scales(scales).build()),
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
        assertEquals(1, smallest(Map.of(), 2, standard).points(), 1e-12);
        assertEquals(
                "a twentieth of a scale from 0 to 20, which is assumed as none is written; write scale.sweetness into"
                        + " logbook.properties",
                smallest(Map.of(), 2, standard).source());
        assertEquals(5, smallest(Map.of(), 10, standard).points(), 1e-12);
        assertEquals(
                "a twentieth of a scale from 0 to 100, which is assumed as none is written; write scale.sweetness into"
                        + " logbook.properties",
                smallest(Map.of(), 10, standard).source());
        assertEquals(0.25, smallest(Map.of(), 0.5, standard).points(), 1e-12);
        SmallestDifference stated =
                smallest(Map.of("sweetness", new Logbook.Scale(1, 5)), 0.5, standard.withSmallestDifference(0.3));
        assertEquals(new SmallestDifference(0.3, "stated beforehand"), stated);
    }

    /** Returns the margin of a logbook of 40 scores of 7, the first so many of them higher. */
    private static SmallestDifference oneOf40(int slips, double written) {
        LogbookContents drawn = new KnownTruth().draw(1).logbook().contents();
        List<CupScores> cups = new ArrayList<>();
        for (int i = 0; i < 40; i++) {
            CupScores cup = drawn.cups().get(i);
            cups.add(cup.withScores(Map.of("sweetness", i < slips ? written : 7)));
        }
        return SmallestDifference.of(
                "sweetness", Logbook.of(drawn.toBuilder().cups(cups).build()), EvidenceSettings.standard());
    }

    @Test
    void aSlipOfThePenMakesNoScaleAndIsNamed() {
        assertEquals(
                new SmallestDifference(
                        0.5,
                        "half a point of a ten-point scale, which is assumed as none is written; 1 score of 40 lies above it,"
                                + " which looks like a slip of the pen"),
                oneOf40(1, 72));
        assertEquals(
                new SmallestDifference(
                        0.5,
                        "half a point of a ten-point scale, which is assumed as none is written; 2 scores of 40 lie above it,"
                                + " which looks like a slip of the pen"),
                oneOf40(2, 72));
        assertEquals(5, oneOf40(3, 72).points(), "three of 40 are more than 5 in 100");
        assertEquals(1, oneOf40(3, 20).points());
        assertEquals(50, oneOf40(3, 101).points());
        assertEquals(0.5, oneOf40(40, 10).points(), "ten is on the scale");
        assertEquals(
                new SmallestDifference(
                        0.25,
                        "a twentieth of a scale from 0 to 5, which is assumed as none is written and no score lies above 4; write"
                                + " scale.sweetness into logbook.properties"),
                oneOf40(40, 4));
        assertEquals(0.25, oneOf40(40, 5).points(), "five is on the short scale");
        assertEquals(0.5, oneOf40(40, 5.25).points(), "a quarter above it is not");
    }

    /** The margin is fixed before anything is looked at, so no filter moves it. */
    @Test
    void theAssumedScaleHoldsAllScoresOfTheLogbookWhateverAFilterLeaves() {
        Logbook logbook = scored(2);
        String low = logbook.cups().stream()
                .collect(Collectors.groupingBy(
                        cup -> cup.batch(), Collectors.averagingDouble(cup -> cup.score("sweetness"))))
                .entrySet()
                .stream()
                .min(Map.Entry.comparingByValue())
                .orElseThrow()
                .getKey();
        Logbook one = logbook.only(low);
        assertTrue(one.cups().stream().allMatch(cup -> cup.score("sweetness") <= 10), "the filter leaves low scores");
        assertEquals(
                1,
                SmallestDifference.of("sweetness", one, EvidenceSettings.standard())
                        .points(),
                1e-12);
    }

    private static Logbook scored(double more) {
        LogbookContents drawn = new KnownTruth().draw(1).logbook().contents();
        return Logbook.of(drawn.toBuilder()
                .cups(drawn.cups().stream()
                        .map(cup -> cup.withScores(Map.of("sweetness", more * cup.score("sweetness"))))
                        .toList())
                .build());
    }

    /** A panel that scatters more earns no easier "nothing seen". */
    @Test
    void theMarginDoesNotGrowWithTheNoise() {
        KnownTruth calm = new KnownTruth();
        calm.slope = 0;
        KnownTruth noisy = new KnownTruth();
        noisy.slope = 0;
        noisy.cupSpread = 0.9;
        for (KnownTruth truth : List.of(calm, noisy)) {
            assertEquals(
                    0.5,
                    SmallestDifference.of("sweetness", truth.draw(1).logbook(), EvidenceSettings.standard())
                            .points());
        }
    }
}
