package parchment.logbook;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Locale;
import java.util.SplittableRandom;
import org.junit.jupiter.api.RepeatedTest;
import org.junit.jupiter.api.RepetitionInfo;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import parchment.sheet.Numbers;
import parchment.sheet.Numbers.Decimal;

class NumbersTest {
    @RepeatedTest(20)
    void agreesWithTheLibraryOnRandomNumbers(RepetitionInfo repetition) {
        SplittableRandom random = new SplittableRandom(repetition.getCurrentRepetition());
        for (int i = 0; i < 2000; i++) {
            double magnitude = Math.pow(10, random.nextInt(-12, 13));
            double value = (random.nextDouble() - 0.5) * magnitude;
            String text = i % 3 == 0
                    ? String.format(Locale.ROOT, "%." + random.nextInt(0, 12) + "f", value)
                    : Double.toString(value);
            assertEquals(Double.parseDouble(text), Numbers.parse(text, Decimal.POINT), text);
            assertEquals(Double.parseDouble(text), Numbers.parse(text.replace('.', ','), Decimal.COMMA), text);
        }
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "",
                " ",
                "-",
                ".",
                "1.2.3",
                "1,2",
                "12a",
                "0x10",
                "NaN",
                "Infinity",
                "1e999",
                "1d",
                "--1",
                "1 2",
                "e5",
                "12345678901234567890123x"
            })
    void givesNoNumberForWhatIsNone(String text) {
        assertTrue(Double.isNaN(Numbers.parse(text, Decimal.POINT)), text);
    }

    @Test
    void readsWhatASpreadsheetMayWrite() {
        assertEquals(204.5, Numbers.parse(" 204.5 ", Decimal.POINT));
        assertEquals(204.5, Numbers.parse("204,5", Decimal.EITHER));
        assertEquals(204.5, Numbers.parse("204.5", Decimal.EITHER));
        assertEquals(-0.5, Numbers.parse("-.5", Decimal.POINT));
        assertEquals(5, Numbers.parse("+5.", Decimal.POINT));
        assertEquals(1.5e-7, Numbers.parse("1.5E-07", Decimal.POINT));
        assertTrue(Double.isNaN(Numbers.parse("1.204,5", Decimal.EITHER)));
    }
}
