package parchment.period;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import parchment.display.ShortSentences;
import parchment.quantity.TemperatureUnit;
import parchment.stats.Estimate;

/** A written change of a probe that shows as no step by itself: not seen is not "no difference". */
class UnseenChangeTest {
    private static Estimate at(String place, double celsius, double error) {
        return new Estimate(place, celsius, error, Double.POSITIVE_INFINITY);
    }

    /** 1.645 standard errors are to either side; the whole of it within 1 °C is no change that matters, one that leaves zero out may be one. */
    @ParameterizedTest
    @CsvSource(
            delimiter = ';',
            value = {
                "-3.3; 2.01; may read otherwise; Too few batches to see whether it reads differently; down by about 3 °C (0 to 7)",
                "3.3; 2.1; may read otherwise; Too few batches to see whether it reads differently; up by about 3 °C (0 to 7)",
                "-3.3; 2.00; may read lower; Too few batches to be sure that it reads differently; down by about 3 °C (0 to 7)",
                "3.3; 1.9; may read higher; Too few batches to be sure that it reads differently; up by about 3 °C (0 to 6)",
                "0.5; 0.30; reads as before to within 1.0 °C; No change that matters was seen; up by about 0.5 °C (0.0 to 1.0)",
                "0.5; 0.31; may read otherwise; Too few batches to see whether it reads differently; up by about 0.5 °C (0.0 to 1.0)",
            })
    void saysWhatIsKnownAndByHowMuchReadingsAreMoved(
            double celsius, double error, String does, String begin, String size) {
        UnseenChange change = UnseenChange.of(List.of(at("first crack", celsius, error)));
        assertEquals(does, change.does(TemperatureUnit.CELSIUS));
        String sentence = change.sentence(TemperatureUnit.CELSIUS);
        assertEquals(begin + "; readings at first crack are moved " + size + ".", sentence);
        assertEquals(!does.startsWith("reads as before"), change.matters());
        ShortSentences.keptBy(sentence);
    }

    @Test
    void tellsTheClearestOfWhatTheBeansShowInTheReadersDegrees() {
        UnseenChange change = UnseenChange.of(
                List.of(at("first crack", -1, 1), at("turning point", -10 / 3.0, 2), at("empty drum", -3, 0.1)));
        assertEquals(
                "Too few batches to be sure that it reads differently; readings at the turning point are moved down by about 6 °F (0 to"
                        + " 12).",
                change.sentence(TemperatureUnit.FAHRENHEIT));
    }

    @Test
    void whereNothingIsMeasuredItSaysSo() {
        for (List<Estimate> offsets : List.of(
                List.<Estimate>of(),
                List.of(at("first crack", Double.NaN, Double.NaN)),
                List.of(at("first crack", 0, 0)),
                List.of(at("empty drum", -3, 0.1)))) {
            UnseenChange change = UnseenChange.of(offsets);
            assertEquals("may read otherwise", change.does(TemperatureUnit.CELSIUS));
            assertEquals(
                    "Whether it reads differently cannot be told; readings before and after are kept apart.",
                    change.sentence(TemperatureUnit.CELSIUS));
        }
    }
}
