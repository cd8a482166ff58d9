package parchment.quantity;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.SplittableRandom;
import org.junit.jupiter.api.RepeatedTest;
import org.junit.jupiter.api.RepetitionInfo;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class UnitsTest {
    /**
     * Fixed points of the scales: water freezes at 0 °C = 32 °F = 273.15 K and the Celsius and Fahrenheit scales meet at -40. NIST
     * Special Publication 811 (2008), Appendix B.8: t/°C = (t/°F - 32)/1.8, T/K = t/°C + 273.15.
     */
    @Test
    void temperaturesAgreeWithNistSpecialPublication811() {
        assertEquals(0, Temperature.fahrenheit(32).celsius(), 0);
        assertEquals(-40, Temperature.fahrenheit(-40).celsius(), 1e-12);
        assertEquals(100, Temperature.of(373.15, TemperatureUnit.KELVIN).celsius(), 1e-12);
        assertEquals(392, Temperature.celsius(200).in(TemperatureUnit.FAHRENHEIT), 1e-12);
    }

    /** NIST Special Publication 811 (2008), Appendix B.8: pound (avoirdupois) 4.535924 E-01 kg, ounce 2.834952 E-02 kg. */
    @Test
    void massesAgreeWithNistSpecialPublication811() {
        assertEquals(0.4535924, Mass.of(1, MassUnit.POUND).kilograms(), 5e-8);
        assertEquals(0.02834952, Mass.of(1, MassUnit.OUNCE).kilograms(), 5e-9);
        assertEquals(16, Mass.of(1, MassUnit.POUND).in(MassUnit.OUNCE), 1e-12);
    }

    @RepeatedTest(20)
    void aReadingComesBackFromEveryScale(RepetitionInfo repetition) {
        SplittableRandom random = new SplittableRandom(repetition.getCurrentRepetition());
        for (TemperatureUnit unit : TemperatureUnit.values()) {
            double celsius = random.nextDouble(-50, 400);
            assertEquals(celsius, unit.toCelsius(unit.fromCelsius(celsius)), 1e-10);
        }
        for (MassUnit unit : MassUnit.values()) {
            double kilograms = random.nextDouble(0, 60);
            assertEquals(kilograms, unit.toKilograms(unit.fromKilograms(kilograms)), 1e-12);
        }
    }

    @Test
    void aDifferenceOfTemperaturesIsConvertedWithoutTheOffset() {
        assertEquals("1.8 °F", Unit.TEMPERATURE.formatStep(1, TemperatureUnit.FAHRENHEIT));
        assertEquals("33.8 °F", Unit.TEMPERATURE.format(1, TemperatureUnit.FAHRENHEIT));
        assertEquals("18.00 °F/min", Unit.RATE_OF_RISE.format(10, TemperatureUnit.FAHRENHEIT));
    }

    @Test
    void onlyATimeIsShownAsOnARoastClock() {
        assertEquals("10:02", Unit.SECONDS.formatOnClock(602, TemperatureUnit.CELSIUS));
        assertEquals("10:02", Unit.SECONDS.withDigits(1).formatOnClock(601.6, TemperatureUnit.CELSIUS));
        assertEquals("missing", Unit.SECONDS.formatOnClock(Double.NaN, TemperatureUnit.CELSIUS));
        assertEquals("203.3 °C", Unit.TEMPERATURE.formatOnClock(203.3, TemperatureUnit.CELSIUS));
        assertEquals("3 days", Unit.DAYS.formatOnClock(3, TemperatureUnit.CELSIUS));
    }

    @Test
    void whatRoundsToNothingHasNoMinus() {
        assertEquals("0 s", Unit.SECONDS.formatStep(-0.3, TemperatureUnit.CELSIUS));
        assertEquals("0.0 °F", Unit.TEMPERATURE_STEP.formatStep(-0.02, TemperatureUnit.FAHRENHEIT));
        assertEquals("-0.1 °C", Unit.TEMPERATURE_STEP.formatStep(-0.06, TemperatureUnit.CELSIUS));
    }

    @Test
    void aShareIsShownInPerCent() {
        assertEquals("17.5 %", Unit.SHARE.format(0.175, TemperatureUnit.CELSIUS));
    }

    @Test
    void aMissingNumberSaysSo() {
        assertEquals("missing", Unit.SECONDS.format(Double.NaN, TemperatureUnit.CELSIUS));
    }

    @Test
    void timesPrintAsARoastClock() {
        assertEquals("9:19", Elapsed.of(9, 19).toString());
        assertEquals("-0:30", Elapsed.seconds(-30).toString());
        assertEquals("0:00", Elapsed.seconds(-0.2).toString());
        assertEquals("10:00", Elapsed.seconds(599.7).toString());
    }

    @Test
    void saysWhatATemperatureOrAMassNeeds() {
        String tooCold = assertThrows(IllegalArgumentException.class, () -> Temperature.celsius(-300))
                .getMessage();
        assertTrue(tooCold.contains("-273.15") && tooCold.contains("-300"), tooCold);
        assertThrows(IllegalArgumentException.class, () -> Temperature.celsius(Double.NaN));
        assertThrows(IllegalArgumentException.class, () -> Mass.kilograms(-1));
        assertThrows(IllegalArgumentException.class, () -> Elapsed.seconds(Double.POSITIVE_INFINITY));
    }

    /** A unit's own decimals stand while they show two steps of the last one; otherwise the error shows two significant digits. */
    @ParameterizedTest
    @CsvSource({
        "48.8132, 0.2, 48.8 ± 0.2 °C",
        "48.8132, 12, 48.8 ± 12.0 °C",
        "48.8132, 0.199, 48.81 ± 0.20 °C",
        "48.8132, 0.04, 48.813 ± 0.040 °C",
        "48.8132, 0.000002, 48.813200 ± 0.000002 °C",
        "48.8132, 0.0000000001, 48.8 °C",
        "48.8132, 0, 48.8 °C",
        "48.8132, NaN, 48.8 °C",
        "-0.00001, 0.3, 0.0 ± 0.3 °C",
        "NaN, 0.3, missing ± 0.3 °C"
    })
    void digitsFollowTheError(double celsius, double error, String words) {
        assertEquals(words, Unit.TEMPERATURE.formatWithError(celsius, error, TemperatureUnit.CELSIUS));
    }

    @ParameterizedTest
    @CsvSource({
        "5, ' ± 5 s'",
        "1, ' ± 1 s'",
        "0.99, ' ± 1.0 s'",
        "0.82, ' ± 0.8 s'",
        "0.3, ' ± 0.3 s'",
        "0, ''",
        "NaN, ''"
    })
    void wholeSecondsStandUntilLessThanOneIsKnown(double seconds, String words) {
        assertEquals(words, Unit.SECONDS.formatError(seconds, TemperatureUnit.CELSIUS));
    }

    @Test
    void theErrorIsTakenInTheReadersUnit() {
        // 0.15 °C is 0.27 °F: one decimal is enough for the one and not for the other.
        assertEquals("0.15 ± 0.15 °C", Unit.TEMPERATURE_STEP.formatStepWithError(0.15, 0.15, TemperatureUnit.CELSIUS));
        assertEquals("0.3 ± 0.3 °F", Unit.TEMPERATURE_STEP.formatStepWithError(0.15, 0.15, TemperatureUnit.FAHRENHEIT));
        assertEquals("91.0 ± 2.0 %", Unit.SHARE.formatWithError(0.91, 0.02, TemperatureUnit.CELSIUS));
        assertEquals("48.800 ± 0.040 %", Unit.SHARE.formatWithError(0.488, 0.0004, TemperatureUnit.CELSIUS));
    }

    @ParameterizedTest
    @CsvSource({
        "12.5, KILOGRAM, 12.5 kg",
        "5, KILOGRAM, 5 kg",
        "1.234, KILOGRAM, 1.23 kg",
        "0.9994, KILOGRAM, 0.999 kg",
        "0.25, GRAM, 250 g",
        "4.53592370, POUND, 10 lb",
        "2.5, POUND, 5.51 lb",
        "0.45359237, OUNCE, 16 oz",
    })
    void aMassIsToldInAUnitWithoutZerosThatSayNothing(double kilograms, MassUnit unit, String words) {
        assertEquals(words, Mass.kilograms(kilograms).words(unit));
    }

    @ParameterizedTest
    @CsvSource({
        "KILOGRAM, 2.500 kg, '1.500 ± 0.100 kg'",
        "GRAM, 2500 g, '1500 ± 100 g'",
        "POUND, 5.51 lb, '3.31 ± 0.22 lb'",
        "OUNCE, 88.2 oz, '52.9 ± 3.5 oz'",
    })
    void aMassIsKeptInKilogramsAndShownInItsLogbooksUnit(MassUnit unit, String mass, String step) {
        Unit shown = Unit.KILOGRAMS.withMassesIn(unit);
        assertEquals(mass, shown.format(2.5, TemperatureUnit.FAHRENHEIT));
        assertEquals(step, shown.formatStepWithError(1.5, 0.1, TemperatureUnit.FAHRENHEIT));
        assertEquals(Unit.mass(unit), shown);
        assertEquals(Unit.SHARE, Unit.SHARE.withMassesIn(unit));
    }
}
