package parchment.gather;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** What is taken for a charge: a row for each threshold, one on each side. The numbers are common practice, no source. */
class ChargeFallTest {
    private static final int CHARGE = 60;

    /** One reading a second: a minute of an empty drum, an even fall, an even rise of five minutes. */
    private static List<Double> charges(double hot, double fall, int fallSeconds, double rise) {
        int turning = CHARGE + fallSeconds;
        double[] seconds = new double[turning + 301];
        double[] celsius = new double[seconds.length];
        for (int i = 0; i < seconds.length; i++) {
            seconds[i] = i;
            celsius[i] = i <= CHARGE
                    ? hot
                    : i <= turning ? hot - fall * (i - CHARGE) / fallSeconds : hot - fall + rise * (i - turning) / 300;
        }
        return ChargeFinder.charges(seconds, celsius);
    }

    @ParameterizedTest
    @CsvSource({
        // An empty drum is above 120 °C.
        "121, 60, 60, 100, true",
        "119, 60, 60, 100, false",
        // The reading falls by 45 °C or more within 100 s.
        "200, 46, 60, 100, true",
        "200, 44, 60, 100, false",
        "200, 92, 200, 100, true",
        "200, 88, 200, 100, false",
        // It climbs past 150 °C.
        "200, 110, 60, 62, true",
        "200, 110, 60, 58, false",
        // It may turn as late as four minutes after the charge.
        "220, 120, 200, 90, true",
        "220, 120, 230, 90, true",
    })
    void aChargeIsAFallOfAHotDrumThatRisesAgain(
            double hot, double fall, int fallSeconds, double rise, boolean isCharge) {
        assertEquals(isCharge ? 1 : 0, charges(hot, fall, fallSeconds, rise).size());
    }

    @Test
    void theChargeIsWhereTheFallBegins() {
        assertEquals(List.of((double) CHARGE), charges(200, 120, 60, 100));
    }
}
