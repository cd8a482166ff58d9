package parchment.evidence.finding;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import parchment.stats.Interval;

class WordingTest {
    @ParameterizedTest
    @CsvSource({
        "0.31, 0.1, 0.5, +0.31, +0.10 to +0.50",
        "0.0112, 0.0098, 0.0126, +0.0112, +0.0098 to +0.0126",
        "-0.011, -0.02, -0.002, -0.0110, -0.0200 to -0.0020",
        "0.00001, -0.5, 0.5, 0.00, -0.50 to +0.50",
        "-0.001, -0.5, -0.001, 0.00, -0.50 to 0.00"
    })
    void pointsHaveTheDigitsThatTheirIntervalAsksForAndZeroHasNoSign(
            double points, double lower, double upper, String words, String ends) {
        Interval interval = new Interval(lower, upper, 0.9);
        assertEquals(words, Wording.signed(points, interval));
        assertEquals(ends, Wording.signed(interval));
    }
}
