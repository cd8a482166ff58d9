package parchment.launcher;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import parchment.quantity.MassUnit;

class WrittenMassTest {
    private static String refused(String typed) {
        return assertThrows(IllegalArgumentException.class, () -> WrittenMass.of("charge", "2.5kg", typed))
                .getMessage();
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "2.5kg|2.5|KILOGRAM",
                "2,5 KG|2.5|KILOGRAM",
                "250g|250|GRAM",
                "11 lb|11|POUND",
                "5lbs|5|POUND",
                "2.1 kilos|2.1|KILOGRAM",
                "1 kilo|1|KILOGRAM",
                "3 kgs|3|KILOGRAM",
                "10g|10|GRAM",
                "300kg|300|KILOGRAM",
                "8oz|8|OUNCE",
                "1000g|1000|GRAM",
                "1.0kg|1|KILOGRAM",
                "0,125kg|0.125|KILOGRAM",
                "12.5050kg|12.505|KILOGRAM"
            })
    void aChargeIsReadInItsUnit(String typed, double amount, MassUnit unit) {
        assertEquals(new WrittenMass(amount, unit), WrittenMass.of("charge", "2.5kg", typed));
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "1,000kg|1000 kg or 1.0 kg|1000kg|1.0kg",
                "1.250 lb|1250 lb or 1.25 lb|1250lb|1.25lb",
                "12.505kg|12505 kg or 12.505 kg|12505kg|12.5050kg"
            })
    void aChargeWithThreeDigitsAfterACommaOrAPointIsNotGuessed(String typed, String both, String first, String second) {
        assertEquals(
                "The charge '" + typed + "' can be read in two ways: " + both + ". Write the first as " + first
                        + ", the second as " + second + ".",
                refused(typed));
    }

    @ParameterizedTest
    @ValueSource(strings = {"0.0000001kg", "9.99g", "300.1kg", "99999999999999999999kg"})
    void aChargeThatNoRoasterTakesIsRefused(String typed) {
        assertEquals(
                "The charge '" + typed + "' is none of a roaster: those are from 10 g to 300 kg. Write it as in 2.5kg.",
                refused(typed));
    }

    @ParameterizedTest
    @ValueSource(strings = {"2.5", "kg", "0kg", "0.0g", "-3kg", "2.5 stone", "1,000,000kg", ""})
    void anythingElseIsToldHowToWriteIt(String typed) {
        assertEquals(
                "A charge is a mass above 0, as in 2.5kg (kg, g, lb or oz), but this one is '" + typed + "'.",
                refused(typed));
    }
}
