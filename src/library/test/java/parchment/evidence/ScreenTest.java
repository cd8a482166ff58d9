package parchment.evidence;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.stream.LongStream;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import parchment.quantity.TemperatureUnit;
import parchment.quantity.Unit;

@Tag("holds-for-any")
class ScreenTest {
    /** Returns the drop temperature and seven numbers that mean nothing. */
    private static List<Measure> measures(KnownTruth.Drawn drawn, long seed) {
        Random random = new Random(seed);
        List<Measure> measures = new ArrayList<>(List.of(drawn.measure()));
        for (int k = 1; k <= 7; k++) {
            Map<String, ModelFrames.Reading> readings = new LinkedHashMap<>();
            drawn.logbook()
                    .batches()
                    .forEach(batch ->
                            readings.put(batch.name(), new ModelFrames.Reading(random.nextGaussian(), Double.NaN)));
            measures.add(new Measure("number " + k, Unit.NONE, TemperatureUnit.CELSIUS, readings));
        }
        return measures;
    }

    static Screen screen(KnownTruth truth, long seed) {
        KnownTruth.Drawn drawn = truth.draw(seed);
        return ScreenRun.of(drawn.logbook(), measures(drawn, seed), 99, seed).screen();
    }

    @Test
    void findsTheFeatureThatWentWithTheScore() {
        Screen screen = screen(new KnownTruth(), 1);
        assertEquals(8, screen.looks().size());
        assertEquals("drop temperature", screen.looks().get(0).feature());
        assertEquals("drop temperature", screen.aboveTheLine().get(0).feature());
        assertEquals(0.15, screen.looks().get(0).perStep(), 0.06);
        assertTrue(screen.text().contains("at 80 batches"), screen.text());
    }

    @Test
    void callsAFindingInAtMostOneOfTwentyLogbooksWithoutAnEffect() {
        KnownTruth truth = new KnownTruth();
        truth.slope = 0;
        truth.drift = 1;
        truth.driftOfDrop = 3;
        int logbooks = 120;
        long findings = LongStream.range(5000, 5000 + logbooks)
                .parallel()
                .filter(seed -> !screen(truth, seed).aboveTheLine().isEmpty())
                .count();
        double share = (double) findings / logbooks;
        double bound = 0.05 + 3 * Math.sqrt(0.05 * 0.95 / logbooks);
        assertTrue(share <= bound, share + " of " + logbooks + " logbooks; at most " + bound);
    }

    @Test
    void shufflesWholeDaysWhereADayHasOneBatchAndSaysThatItIsAHintOnly() {
        KnownTruth truth = new KnownTruth();
        truth.batchesPerDay = 1;
        truth.days = 40;
        Screen screen = screen(truth, 3);
        assertEquals(Screen.Shuffled.WHOLE_DAYS, screen.shuffled());
        assertTrue(screen.text().contains("a hint only"), screen.text());
    }

    @Test
    void sameSeedGivesTheSameLine() {
        assertEquals(
                screen(new KnownTruth(), 4).text(), screen(new KnownTruth(), 4).text());
    }

    @Test
    void saysHowManyScoredBatchesItNeeds() {
        KnownTruth truth = new KnownTruth();
        truth.days = 3;
        IllegalArgumentException refusal = assertThrows(IllegalArgumentException.class, () -> screen(truth, 1));
        assertTrue(refusal.getMessage().contains("at least 20 scored batches"), refusal.getMessage());
    }

    @Test
    void aLogbookWithFewScoresIsAnsweredWithCannotTell() {
        KnownTruth truth = new KnownTruth();
        truth.days = 3;
        Screen screen = Screen.of(truth.draw(1).logbook());
        assertTrue(screen.text().contains("Cannot tell what goes with what"), screen.text());
        assertTrue(screen.looks().isEmpty());
        assertTrue(screen.svg().isPresent());
    }

    @Test
    void theLuckLineIsInThePicture() {
        Screen screen = screen(new KnownTruth(), 1);
        assertTrue(screen.picture().svg().orElseThrow().contains("within luck"));
        assertTrue(screen.text().contains("8 looks (1 attribute, 8 features) at 80 batches"), screen.text());
    }
}
