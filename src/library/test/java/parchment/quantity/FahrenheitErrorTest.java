package parchment.quantity;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.api.Test;

class FahrenheitErrorTest {
    /** 200 °C are 392 °F and a difference of 1 °C is one of 1.8 °F, by the definition of the scales. */
    @Test
    void aTemperatureIsShiftedAndScaledAndItsErrorScaledOnly() {
        assertEquals("392.0 ± 1.8 °F", Unit.TEMPERATURE.formatWithError(200, 1, TemperatureUnit.FAHRENHEIT));
        assertEquals("18.0 ± 1.8 °F", Unit.TEMPERATURE.formatStepWithError(10, 1, TemperatureUnit.FAHRENHEIT));
    }
}
