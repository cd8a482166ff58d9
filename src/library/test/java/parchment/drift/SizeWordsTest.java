package parchment.drift;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import parchment.quantity.TemperatureUnit;
import parchment.quantity.Unit;
import parchment.stats.Estimate;

class SizeWordsTest {
    /** The interval is 1.645 standard errors to either side (normal table); its half gives one digit. */
    @ParameterizedTest
    @CsvSource(
            delimiter = ';',
            value = {
                "12; 5; 12 s (4 to 20)",
                "-12; 5; 12 s (4 to 20)",
                "12; 0.5; 12.0 s (11.2 to 12.8)",
                "12; 0.6; 12.0 s (11.0 to 13.0)",
                "12; 0.61; 12 s (11 to 13)",
                "3; 3; 3 s (-2 to 8)",
                "0; 5; 0 s (-8 to 8)",
                "12; NaN; 12.00 s",
                "12; Infinity; 12 s",
                "0.4; 0.01; 0.40 s (0.38 to 0.42)"
            })
    void digitsFollowTheInterval(double size, double error, String words) {
        Estimate estimate = new Estimate("size", size, error, Double.POSITIVE_INFINITY);
        assertEquals(words, SizeWords.of(estimate, Unit.SECONDS, TemperatureUnit.CELSIUS));
    }

    @Test
    void sharesAreToldInPercentagePointsAndDegreesInTheReadersUnit() {
        Estimate loss = new Estimate("size", 0.009, 0.003, Double.POSITIVE_INFINITY);
        assertEquals("0.9 percentage points (0.4 to 1.4)", SizeWords.of(loss, Unit.SHARE, TemperatureUnit.CELSIUS));
        Estimate step = new Estimate("size", 1, 0.3, Double.POSITIVE_INFINITY);
        assertEquals("1.8 °F (0.9 to 2.7)", SizeWords.of(step, Unit.TEMPERATURE_STEP, TemperatureUnit.FAHRENHEIT));
    }

    @Test
    void whatCannotBeToldIsSaidSo() {
        Estimate none = new Estimate("size", Double.NaN, Double.NaN, Double.NaN);
        assertEquals("by how much cannot be told", SizeWords.of(none, Unit.SECONDS, TemperatureUnit.CELSIUS));
        Estimate endless = new Estimate("size", Double.POSITIVE_INFINITY, 1, Double.POSITIVE_INFINITY);
        assertEquals("by how much cannot be told", SizeWords.of(endless, Unit.SECONDS, TemperatureUnit.CELSIUS));
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = ';',
            value = {"20; 35; 20 to 35 s", "20; 20; about 20 s", "20; 20.3; 20.0 to 20.3 s"})
    void aRangeHasTheDigitsOfItsWidth(double low, double high, String words) {
        assertEquals(words, SizeWords.range(low, high, Unit.SECONDS, TemperatureUnit.CELSIUS));
    }
}
