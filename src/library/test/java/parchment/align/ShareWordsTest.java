package parchment.align;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import parchment.stats.Interval;

@Tag("says")
class ShareWordsTest {
    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "0.63 | 63 %",
                "0 | 0 %",
                "-0.004 | 0 %",
                "-0.006 | made up for others",
                "1 | 100 %",
                "1.004 | 100 %",
                "1.006 | all, and more",
                "NaN | cannot tell",
            })
    void aShareIsNeverAnImpossiblePercentage(double share, String words) {
        assertEquals(words, ShareWords.of(share));
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "0.12 | 0.63 | 12 to 63 %",
                "-0.08 | 0.3 | none to 30 %",
                "0.7 | 1.08 | 70 % to all",
                "-0.08 | 1.08 | none to all",
                "-0.2 | -0.1 | made up for others",
                "1.02 | 1.3 | all, and more",
                "-0.004 | 0.3 | 0 to 30 %",
                "NaN | NaN | cannot tell",
            })
    void neitherAreTheEndsOfAnInterval(double low, double high, String words) {
        assertEquals(words, ShareWords.of(new Interval(low, high, 0.9)));
    }

    @Test
    void theDropIsToldWithItsDirection() {
        assertEquals(
                "63 % of its variance is pace (how long they took to 205 °C), 37 % is that they were dropped hotter or colder"
                        + " than that",
                ShareWords.ofDrop(0.63, "205 °C"));
        assertEquals(
                "All of its variance is pace (how long they took to 205 °C), and more: slower batches were dropped colder or"
                        + " faster ones hotter than that, which made up for a part",
                ShareWords.ofDrop(1.08, "205 °C"));
        assertEquals(
                "All of its variance is that they were dropped hotter or colder than 205 °C, and more: their pace (how long"
                        + " they took there) made up for a part",
                ShareWords.ofDrop(-0.08, "205 °C"));
    }
}
