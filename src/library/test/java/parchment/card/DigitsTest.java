package parchment.card;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import parchment.quantity.TemperatureUnit;
import parchment.quantity.Unit;

class DigitsTest {
    private static Digits of(double spread, TemperatureUnit reader) {
        return Digits.of(new double[] {200, 200 + spread, Double.NaN}, Unit.TEMPERATURE, 0, reader);
    }

    @ParameterizedTest
    @CsvSource({
        "2.001,CELSIUS,203 °C,200 to 202 °C",
        "1.999,CELSIUS,203.2 °C,200.0 to 202.0 °C",
        "1.112,FAHRENHEIT,398 °F,392 to 394 °F",
        "1.110,FAHRENHEIT,397.8 °F,392.0 to 394.0 °F"
    })
    void aDigitIsDroppedWhereTheNumbersDifferByTwoStepsOfTheOneBefore(
            double spread, TemperatureUnit reader, String one, String range) {
        Digits digits = of(spread, reader);
        assertEquals(one, digits.with(203.2));
        assertEquals(range, digits.range(200, 200 + spread));
    }

    @Test
    void numbersThatPrintAlikeAreNoRangeAndWhatIsMissingIsEmpty() {
        assertEquals("200.0 °C", of(0.02, TemperatureUnit.CELSIUS).range(200, 200.02));
        assertEquals("", of(1, TemperatureUnit.CELSIUS).with(Double.NaN));
    }

    @Test
    void timesAreInMinutesAndSecondsAndMassesKeepTheirLeast() {
        double[] seconds = {545, 580};
        assertEquals(
                "9:05 to 9:40",
                Digits.of(seconds, Unit.SECONDS, 0, TemperatureUnit.CELSIUS).range(545, 580));
        double[] kilograms = {1, 3};
        assertEquals(
                "1.00 to 3.00 kg",
                Digits.of(kilograms, Unit.KILOGRAMS, 2, TemperatureUnit.CELSIUS).range(1, 3));
    }
}
