package parchment.launcher;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class OrderTextTest {
    /** A pound is 0.45359237 kg by definition (international yard and pound agreement, 1959); an ounce is its sixteenth. */
    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "Kela=12kg|Kela|12",
                "Kela, north = 1,5 kg|Kela, north|1.5",
                "A=B=2.25kg|A=B|2.25",
                "Kela=1 kilo|Kela|1",
                "Kela=3 kgs|Kela|3",
                "Kela=2 Kilos|Kela|2",
                "Kela=1500g|Kela|1.5",
                "Kela=1g|Kela|0.001",
                "Kela=20 lbs|Kela|9.0718474",
                "Kela=1lb|Kela|0.45359237",
                "Kela=16oz|Kela|0.45359237",
                "Kela=0,125kg|Kela|0.125",
                "Kela=1000.25kg|Kela|1000.25",
                "Kela=1000kg|Kela|1000"
            })
    void anOrderIsRead(String typed, String lot, double kilograms) {
        OrderText order = OrderText.of(typed);
        assertEquals(lot, order.lot());
        assertEquals(kilograms, order.roasted().kilograms(), 1e-9);
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "Kela=1,000kg|1000 kg or 1.0 kg|1000kg|1.0kg",
                "Kela=1.250 lb|1250 lb or 1.25 lb|1250lb|1.25lb",
                "Kela=12.505kg|12505 kg or 12.505 kg|12505kg|12.5050kg"
            })
    void threeDigitsAfterACommaOrAPointAreNotGuessed(String typed, String both, String first, String second) {
        assertEquals(
                "The order '" + typed + "' can be read in two ways: " + both + ". Write the first as " + first
                        + ", the second as " + second + ".",
                assertThrows(IllegalArgumentException.class, () -> OrderText.of(typed))
                        .getMessage());
    }

    @ParameterizedTest
    @CsvSource({"Kela=0kg", "Kela=0.0001g", "Kela=0.99g"})
    void lessThanAGramIsNoOrder(String typed) {
        assertEquals(
                "The order '" + typed
                        + "' is for less than a gram of coffee. Write what is to be delivered, as in --order"
                        + " \"Kela=12kg\".",
                assertThrows(IllegalArgumentException.class, () -> OrderText.of(typed))
                        .getMessage());
    }

    @ParameterizedTest
    @CsvSource({"Kela=100000.1kg", "Kela=9999999999999kg"})
    void moreThanAHundredTonnesIsNoOrder(String typed) {
        assertEquals(
                "The order '" + typed
                        + "' is for more than 100 tonnes of coffee. Write what is to be delivered, as in --order \"Kela=12kg\".",
                assertThrows(IllegalArgumentException.class, () -> OrderText.of(typed))
                        .getMessage());
    }

    @Test
    void anythingElseIsToldHowToWriteIt() {
        for (String typed : new String[] {"Kela", "Kela=", "Kela=12", "=12kg", "Kela=-3kg", "Kela=12 stone"}) {
            assertEquals(
                    "An order is a lot or a blend and the roasted mass, as in --order \"Cinder Ridge=12kg\" (kg, g, lb or"
                            + " oz), but this one is '" + typed + "'.",
                    assertThrows(IllegalArgumentException.class, () -> OrderText.of(typed))
                            .getMessage());
        }
    }
}
