package parchment.card;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import parchment.display.ShortSentences;
import parchment.logbook.Batch;
import parchment.logbook.written.Cupping;
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
                "BLIND_SCORES | 5 | 29 | By blind scores none of the lot's 29 scored batches is better than another; these are the last of them.",
                "OTHER_SCORES | 5 | 29 | By scores none of the lot's 29 scored batches is better than another; these are the last of them."
            })
    void saysPlainlyHowTheBestWereChosen(GoodBatches.Ground ground, int shown, int good, String words) {
        GoodBatches chosen = new GoodBatches(
                "one",
                ground,
                FIVE.subList(0, shown),
                29,
                good,
                Optional.of(new ScoredLot("liking", Cupping.Said.YES, Set.of(), Map.of())),
                "",
                Optional.empty(),
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
                new BestPlace.Place("liking", 71, 203.2, set)
                        .words(new double[] {202.6, 203.0, 203.4, 203.8}, TemperatureUnit.CELSIUS));
        assertEquals(
                "All 71 scored batches of the lot together put the best drop for liking at 397.8 °F, as today's probe reads, but how far off"
                        + " that may be cannot be told; this one is what it looked like on the drum. It is the best seen in this logbook,"
                        + " not a setting to make.",
                new BestPlace.Place("liking", 71, 203.2, Optional.empty())
                        .words(new double[] {203}, TemperatureUnit.FAHRENHEIT));
    }

    /** The best may lie at 202.6 to 203.8 °C. What prints as an end of that lies within. */
    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "202.56 203.84 | : that is the surer number; these 2 are what it looked like on the drum.",
                "202.54 203.0 | ; of the 2 dropped here 1 lies within.",
                "203.86 203.0 203.1 | ; of the 3 dropped here 2 lie within.",
                "199.0 202.5 | . The two disagree: these 2 were dropped at 199.0 to 202.5 °C.",
                "203.9 NaN | . The two disagree: this one was dropped at 203.9 °C."
            })
    void theBestPlaceIsTheSurerNumberOnlyWhereTheBatchesOfTheCardLieInIt(String drops, String words) {
        BestPlace.Place place = new BestPlace.Place("liking", 71, 203.2, Optional.of(new Interval(202.6, 203.8, 0.9)));
        double[] dropped =
                Arrays.stream(drops.split(" ")).mapToDouble(Double::parseDouble).toArray();
        assertEquals(
                "All 71 scored batches of the lot together put the best drop for liking at 203.2 °C (202.6 to 203.8 °C), as today's probe"
                        + " reads" + words + " It is the best seen in this logbook, not a setting to make.",
                place.words(dropped, TemperatureUnit.CELSIUS));
        assertEquals(words.contains("disagree"), place.disagrees(dropped, TemperatureUnit.CELSIUS));
    }

    @Test
    void thatTheBestPlaceIsElsewhereIsOneShortSentence() {
        BestPlace.Place place = new BestPlace.Place("liking", 71, 203.2, Optional.of(new Interval(202.6, 203.8, 0.9)));
        assertEquals(
                "But all 71 scored batches together put the best drop at 203.2 °C, where none of these was: take neither as a target.",
                place.elsewhere(TemperatureUnit.CELSIUS));
        ShortSentences.keptBy(place.elsewhere(TemperatureUnit.CELSIUS));
    }
}
