package parchment.evidence;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Map;
import org.junit.jupiter.api.Test;
import parchment.evidence.finding.Slope;
import parchment.quantity.TemperatureUnit;
import parchment.quantity.Unit;

/** Holds what is said of the best place, branch by branch, from built coefficients. */
class PeakTest {
    private static final TriedRange RANGE = new TriedRange(198, 212, 200, 210, 205);
    private static final Measure DROP =
            new Measure("drop temperature", Unit.TEMPERATURE, TemperatureUnit.CELSIUS, Map.of());

    private static Peak peak(double line, double lineError, double square, double squareError) {
        return Peak.of(new Slope(line, lineError, 30), new Slope(square, squareError, 30), 0, RANGE, 0.90);
    }

    @Test
    void aDownwardBendWithItsTopInsideHasABest() {
        // The top of 0.04 x - 0.02 x^2 is at x = 1.
        Peak peak = peak(0.04, 0.01, -0.02, 0.002);
        assertEquals(Peak.Answer.INSIDE, peak.answer());
        assertEquals(206, peak.best(), 1e-9);
        assertTrue(
                peak.words("sweetness", DROP)
                        .startsWith(
                                "In this logbook sweetness was highest at a drop temperature of 206.0 °C (90 % Fieller set: 205."));
        assertTrue(peak.contains(206));
        assertFalse(peak.contains(209));
        assertFalse(peak.words("sweetness", DROP).contains("what was tried"));
        assertTrue(peak.toString().startsWith("best place: inside, between 205."), peak.toString());
        assertEquals("best place: cannot tell", Peak.unknown(RANGE).toString());
    }

    @Test
    void aTopOutsideWhatWasTriedIsNoBestUnlessTheWholeSetLiesThere() {
        assertEquals(Peak.Answer.CANNOT_TELL, peak(0.4, 0.15, -0.02, 0.005).answer());
        assertTrue(Double.isNaN(peak(0.4, 0.15, -0.02, 0.005).best()));
    }

    @Test
    void risingAndFallingThroughoutAreToldApart() {
        Peak rises = peak(0.4, 0.01, -0.01, 0.001);
        assertEquals(Peak.Answer.RISES_THROUGHOUT, rises.answer());
        assertTrue(rises.words("sweetness", DROP)
                .startsWith(
                        "No peak inside the tried range: sweetness rises with the drop temperature all through it, and what lies"
                                + " beyond was not tried ("));
        Peak falls = peak(-0.4, 0.01, -0.01, 0.001);
        assertEquals(Peak.Answer.FALLS_THROUGHOUT, falls.answer());
        assertTrue(falls.words("sweetness", DROP)
                .startsWith(
                        "No peak inside the tried range: sweetness falls with the drop temperature all through it, and what lies"
                                + " beyond was not tried ("));
        assertEquals(Peak.Answer.RISES_THROUGHOUT, peak(0.4, 0.01, 0.01, 0.001).answer());
        assertEquals("above what was tried", rises.shortWords(DROP));
        assertEquals("below what was tried", falls.shortWords(DROP));
        assertEquals(
                "sweetness may be expected to rise with the drop temperature over all that was tried.",
                rises.wordsForNext("sweetness", DROP));
        assertEquals(
                "sweetness may be expected to fall with the drop temperature over all that was tried.",
                falls.wordsForNext("sweetness", DROP));
    }

    @Test
    void anUpwardBendHasALowestPlaceAndNoBest() {
        Peak trough = peak(0.04, 0.01, 0.02, 0.002);
        assertEquals(Peak.Answer.TROUGH, trough.answer());
        assertTrue(Double.isNaN(trough.best()));
        assertTrue(
                trough.words("sweetness", DROP)
                        .startsWith(
                                "The fitted curve has a lowest place, not a highest, so no best drop temperature can be named ("));
        assertEquals("none: lowest inside, not highest", trough.shortWords(DROP));
    }

    @Test
    void aBendThatMayBeNoneTellsNothing() {
        Peak flat = peak(0.01, 0.05, -0.002, 0.005);
        assertEquals(Peak.Answer.CANNOT_TELL, flat.answer());
        assertEquals(
                "Where sweetness is best cannot be told: 90 % Fieller set: every drop temperature.",
                flat.words("sweetness", DROP));
        assertEquals("cannot tell", flat.shortWords(DROP));
        assertEquals(
                "where sweetness will be best cannot be told (90 % Fieller set: every drop temperature).",
                flat.wordsForNext("sweetness", DROP));
        Peak gap = peak(0.2, 0.01, -0.002, 0.005);
        assertTrue(
                gap.words("sweetness", DROP)
                        .matches(".*(RISES|rises|everything up to [0-9.]+ °C and from [0-9.]+ °C on).*"),
                gap.words("sweetness", DROP));
    }

    @Test
    void withoutACurveNothingIsRuledOut() {
        Peak unknown = Peak.unknown(RANGE);
        assertTrue(unknown.contains(500));
        assertEquals(
                "Where sweetness is best cannot be told: a curve could not be fitted.",
                unknown.words("sweetness", DROP));
    }

    @Test
    void aSetThatReachesBeyondTheBatchesSaysSo() {
        Peak wide = peak(0.2, 0.02, -0.02, 0.005);
        assertEquals(Peak.Answer.INSIDE, wide.answer());
        assertTrue(
                wide.words("sweetness", DROP)
                        .matches(".*90 % Fieller set: from [0-9.]+ °C to above what was tried[)][.]"),
                wide.toString());
    }

    @Test
    void aModelWithoutABendTellsNothingAndOneWithABendItsPlace() {
        KnownTruth truth = new KnownTruth();
        truth.slope = 0;
        truth.bend = -0.04;
        truth.lots = 1;
        ModelFrame material = KnownTruth.material(truth.draw(2));
        FittedScores line = FittedScores.of(material, ModelForm.STANDARD);
        assertTrue(Peak.of(line, RANGE, 0.9).set().isEmpty());
        FittedScores bent = FittedScores.of(material, ModelForm.STANDARD.with(ModelForm.Shape.BEND));
        assertEquals(205, Peak.of(bent, TriedRange.of(bent.design()), 0.9).best(), 1);
    }
}
