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
                "200.5 °C",
                readings(Unit.TEMPERATURE, TemperatureUnit.CELSIUS, 198.2, 203.1)
                        .words(200.6));
        assertEquals(
                "201 °C",
                readings(Unit.TEMPERATURE, TemperatureUnit.CELSIUS, 198.2, 203.3)
                        .words(200.6));
        assertEquals(
                "100 s",
                readings(Unit.SECONDS, TemperatureUnit.CELSIUS, 60, 160).words(94));
        assertEquals(
                "95 s", readings(Unit.SECONDS, TemperatureUnit.CELSIUS, 80, 110).words(94));
        assertEquals(
                "14 %",
                readings(Unit.SHARE, TemperatureUnit.CELSIUS, 0.10, 0.20).words(0.1449));
        assertEquals(
                "0 s", readings(Unit.SECONDS, TemperatureUnit.CELSIUS, -60, 160).words(-4));
    }

    @Test
    void daysAndCountsAreWhole() {
        assertEquals(
                "4 days",
                readings(Unit.DAYS.withNaturalStep(1), TemperatureUnit.CELSIUS, 3, 7)
                        .words(4.2));
        assertEquals("3", readings(Unit.COUNT, TemperatureUnit.CELSIUS, 1, 4).words(2.8));
        assertEquals(
                "40 days", readings(Unit.DAYS, TemperatureUnit.CELSIUS, 10, 90).words(42));
    }

    /** A reading that is round already is not moved a whole step by the last digit of the sum. */
    @Test
    void whatIsRoundAlreadyStays() {
        RoundReadings halves = readings(Unit.TEMPERATURE, TemperatureUnit.CELSIUS, 200.5, 203.5);
        assertEquals(200.5, halves.from(200.5 + 1e-12), 1e-9);
        assertEquals(203.5, halves.to(203.5 - 1e-12), 1e-9);
        assertEquals(201.0, halves.from(200.5 + 1e-8), 1e-7);
        assertEquals(203.0, halves.to(203.5 - 1e-8), 1e-7);
    }

    /** One row on each side of every change of step: 1, 2 and 5, a tenth of them, and ten times. */
    @Test
    void stepsAreOfOneTwoOrFive() {
        step(0.1, 0.99);
        step(0.2, 1.0);
        step(0.2, 2.49);
        step(0.5, 2.5);
        step(0.5, 4.99);
        step(1, 5);
        step(1, 9.99);
        step(2, 10);
        step(2, 24.9);
        step(5, 25);
        step(5, 49.9);
        step(10, 50);
        step(10, 99.9);
        step(20, 100);
    }

    private static void step(double expected, double width) {
        RoundReadings round = readings(Unit.TEMPERATURE, TemperatureUnit.CELSIUS, 0, width);
        assertEquals(expected, round.from(1e-6), 1e-9, "of a width of " + width);
    }

    @Test
    void daysHaveNoHalvesHoweverFewTheyAre() {
        RoundReadings days = readings(Unit.DAYS, TemperatureUnit.CELSIUS, 3, 5);
        assertEquals(4, days.from(3.2), 1e-9);
        assertEquals("4 days", days.words(3.6));
        assertEquals(
                "20 days", readings(Unit.DAYS, TemperatureUnit.CELSIUS, 10, 24).words(19.2));
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
