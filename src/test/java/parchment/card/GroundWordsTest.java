package parchment.card;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import parchment.display.ShortSentences;
import parchment.logbook.Batch;
import parchment.logbook.Cupping;
import parchment.quantity.TemperatureUnit;
import parchment.stats.Interval;

/** How a card says by what its batches were chosen, and how its few belong to all that were scored. */
class GroundWordsTest {
    private static final List<Batch> FIVE = CardLogbook.of(5).batches();

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "BLIND_SCORES | 4 | 4 | Their cups scored highest in liking, blind: 4 of 29 lie within the luck of tasting of the very best.",
                "OTHER_SCORES | 4 | 4 | Their cups scored highest in liking: 4 of 29 lie within the luck of tasting of the very best.",
                "BLIND_SCORES | 5 | 6 | Their cups scored highest in liking, blind: 6 of 29 lie within the luck of tasting of the very best, here"
                        + " the last 5.",
                "BLIND_SCORES | 1 | 1 | Its cups scored highest in liking, blind: none of the other 28 lies within the luck of tasting of the very"
                        + " best.",
                "BLIND_SCORES | 5 | 29 | Blind scores do not part the lot's 29 scored batches; these are the last of them.",
                "OTHER_SCORES | 5 | 29 | Scores do not part the lot's 29 scored batches; these are the last of them."
            })
    void saysPlainlyHowTheBestWereChosen(GoodBatches.Ground ground, int shown, int good, String words) {
        GoodBatches chosen = new GoodBatches(
                "one",
                ground,
                FIVE.subList(0, shown),
                29,
                good,
                Optional.of(new ScoredLot("liking", Cupping.Said.YES, Map.of())),
                "",
                Optional.empty());
        assertEquals(words, GroundWords.howSure(chosen));
        ShortSentences.keptBy(words);
    }

    @Test
    void tiesTheBestPlaceOfAllScoredBatchesToTheFewOfTheCard() {
        Optional<Interval> set = Optional.of(new Interval(202.6, 203.8, 0.9));
        assertEquals(
                "All 71 scored batches of the lot together put the best drop for liking at 203.2 °C (202.6 to 203.8 °C), as today's probe"
                        + " reads: that is the surer number; these 4 are what it looked like on the drum. It is the best seen in this"
                        + " logbook, not a setting to make.",
                new BestPlace.Place("liking", 71, 203.2, set).words(4, TemperatureUnit.CELSIUS));
        assertEquals(
                "All 71 scored batches of the lot together put the best drop for liking at 397.8 °F, as today's probe reads, but how far off"
                        + " that may be cannot be told; this one is what it looked like on the drum. It is the best seen in this logbook,"
                        + " not a setting to make.",
                new BestPlace.Place("liking", 71, 203.2, Optional.empty()).words(1, TemperatureUnit.FAHRENHEIT));
    }
}
