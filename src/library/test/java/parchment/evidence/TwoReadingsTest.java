package parchment.evidence;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Map;
import org.junit.jupiter.api.Test;
import parchment.evidence.finding.Slope;
import parchment.quantity.TemperatureUnit;
import parchment.quantity.Unit;

/** Holds between which two places of a bend an answer is told, from built coefficients. */
class TwoReadingsTest {
    private static final TriedRange RANGE = new TriedRange(198, 212, 200, 210, 205);
    private static final RoundReadings ROUND = RoundReadings.of(
            new Measure("drop temperature", Unit.TEMPERATURE, TemperatureUnit.CELSIUS, Map.of()), 200, 210);

    /** The places along a course of {@code line * x + square * x^2}, x counted from 205 °C. */
    private static TwoReadings.Ends ends(double line, double square) {
        Peak peak = Peak.of(new Slope(line, 0.001, 100), new Slope(square, 0.0001, 100), 0, RANGE, 0.90);
        return TwoReadings.ends(
                place -> line * (place - 205) + square * (place - 205) * (place - 205), peak, ROUND, 200, 210);
    }

    private static void between(double from, double to, TwoReadings.Ends ends) {
        assertEquals(from, ends.from(), 1e-9);
        assertEquals(to, ends.to(), 1e-9);
    }

    @Test
    void aTopInsideIsToldAgainstTheEndThatLiesLower() {
        // Tops at x = 1 and x = -1: the end on the other side lies lower.
        between(200, 206, ends(0.04, -0.02));
        between(210, 204, ends(-0.04, -0.02));
        assertTrue(ends(0.04, -0.02).atTheTop());
    }

    /** The top was tried, but hardly any batch lies beyond it: the ends of the middle 80 % are told. */
    @Test
    void aTopBeyondTheMiddleOfWhatWasTriedIsNoTop() {
        TwoReadings.Ends above = ends(0.24, -0.02);
        between(200, 210, above);
        assertFalse(above.atTheTop());
        TwoReadings.Ends below = ends(-0.24, -0.02);
        between(210, 200, below);
        assertFalse(below.atTheTop());
    }

    @Test
    void aTroughIsToldFromItsLowestPlace() {
        // Lowest at x = -1, so the far end is highest.
        between(204, 210, ends(0.04, 0.02));
        assertFalse(ends(0.04, 0.02).atTheTop());
        // Falling through the whole range: lowest at the high end.
        between(210, 200, ends(-0.4, 0.01));
    }
}
