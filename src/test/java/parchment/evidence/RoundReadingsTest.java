package parchment.evidence;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.Map;
import org.junit.jupiter.api.Test;
import parchment.quantity.TemperatureUnit;
import parchment.quantity.Unit;

/** Holds places to readings that a roaster would say, never outside what they are rounded from. */
class RoundReadingsTest {
    private static RoundReadings readings(Unit unit, TemperatureUnit reader, double low, double high) {
        return RoundReadings.of(new Measure("feature", unit, reader, Map.of()), low, high);
    }

    @Test
    void aWidthIsToldInAtLeastFiveSteps() {
        assertEquals(
                "201 °C",
                readings(Unit.TEMPERATURE, TemperatureUnit.CELSIUS, 198.2, 205.4)
                        .words(200.6));
        assertEquals(
                "200.6 °C",
                readings(Unit.TEMPERATURE, TemperatureUnit.CELSIUS, 198.2, 203.1)
                        .words(200.6));
        assertEquals(
                "201 °C",
                readings(Unit.TEMPERATURE, TemperatureUnit.CELSIUS, 198.2, 203.3)
                        .words(200.6));
        assertEquals(
                "90 s", readings(Unit.SECONDS, TemperatureUnit.CELSIUS, 60, 160).words(94));
        assertEquals(
                "94 s", readings(Unit.SECONDS, TemperatureUnit.CELSIUS, 80, 110).words(94));
        assertEquals(
                "14 %",
                readings(Unit.SHARE, TemperatureUnit.CELSIUS, 0.10, 0.20).words(0.1449));
        assertEquals(
                "0 s", readings(Unit.SECONDS, TemperatureUnit.CELSIUS, -60, 160).words(-4));
    }

    @Test
    void aReadingIsRoundOnTheReadersOwnScale() {
        RoundReadings fahrenheit = readings(Unit.TEMPERATURE, TemperatureUnit.FAHRENHEIT, 197.8, 205.8);
        assertEquals("402 °F", fahrenheit.words(205.4));
        assertEquals((402 - 32) / 1.8, fahrenheit.nearest(205.4), 1e-9);
    }

    @Test
    void theEndsAreRoundedInwards() {
        RoundReadings celsius = readings(Unit.TEMPERATURE, TemperatureUnit.CELSIUS, 198.2, 205.4);
        assertEquals(199, celsius.from(198.2), 1e-9);
        assertEquals(205, celsius.to(205.4), 1e-9);
        assertEquals(198, celsius.from(198.0), 1e-9);
        assertEquals(205, celsius.to(205.0), 1e-9);
    }

    @Test
    void aWidthOfNothingStillHasAStep() {
        assertEquals(
                "200 °C",
                readings(Unit.TEMPERATURE, TemperatureUnit.CELSIUS, 200, 200).words(200.4));
    }
}
