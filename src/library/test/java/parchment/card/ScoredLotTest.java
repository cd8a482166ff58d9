package parchment.card;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Map;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import parchment.align.score.ShrunkenScores;
import parchment.logbook.Batch;
import parchment.logbook.Logbook;
import parchment.logbook.written.Cupping;

/** A record on each side of each rule of which batches of a lot scored as its best. */
class ScoredLotTest {
    /** The two standard errors together are 0.5 points, so 0.8225 points below the best are the edge. */
    @ParameterizedTest
    @CsvSource({"6.1776,true", "6.1774,false"})
    void aBatchIsAmongTheBestUpToTheReachOfTheTwoErrors(double own, boolean among) {
        ScoredLot lot = new ScoredLot(
                "liking",
                Cupping.Said.YES,
                Set.of(),
                Map.of(
                        "A", new ShrunkenScores.Score(6, 7.4, 7, 0.3),
                        "B", new ShrunkenScores.Score(4, 6, own, 0.4),
                        "C", new ShrunkenScores.Score(4, 4, 4, 0.4),
                        // One lucky cup: its mean is the highest, and what is to be expected of it is not.
                        "D", new ShrunkenScores.Score(1, 9.9, 6, 0.1)));
        assertTrue(lot.isAmongTheBest(Batch.named("A").build()));
        assertEquals(among, lot.isAmongTheBest(Batch.named("B").build()));
        assertEquals(false, lot.isAmongTheBest(Batch.named("C").build()));
        assertEquals(false, lot.isAmongTheBest(Batch.named("not scored").build()));
    }

    /** A batch whose cups were low is not among the best however near it lies, and is not the best that others are held against. */
    @Test
    void aBatchOfLowCupsIsNeverAmongTheBest() {
        ScoredLot lot = new ScoredLot(
                "liking",
                Cupping.Said.YES,
                Set.of("A"),
                Map.of(
                        "A", new ShrunkenScores.Score(6, 7, 7, 0.1),
                        "B", new ShrunkenScores.Score(6, 6, 6, 0.1),
                        "C", new ShrunkenScores.Score(6, 5, 5, 0.1)));
        assertEquals(false, lot.isAmongTheBest(Batch.named("A").build()));
        assertTrue(lot.isAmongTheBest(Batch.named("B").build()));
        assertEquals(false, lot.isAmongTheBest(Batch.named("C").build()));
    }

    /** Four batches of cups of 6 and of 7 points, and a fifth below, among or above them. */
    @Test
    void cupsClearlyBelowTheLotsOthersAreFoundToBeLow() {
        CardLogbook built = CardLogbook.of(5);
        for (int batch = 1; batch <= 4; batch++) {
            for (int times = 0; times < 3; times++) {
                built = built.cup("blind", "B" + batch, "liking", 6).cup("blind", "B" + batch, "liking", 7);
            }
        }
        assertEquals(Set.of("B5"), scored(built.cup("blind", "B5", "liking", 5)).low());
        assertEquals(Set.of(), scored(built.cup("blind", "B5", "liking", 6.5)).low());
        assertEquals(Set.of(), scored(built.cup("blind", "B5", "liking", 8)).low(), "high is not low");
    }

    /** Without any error the highest still counts among the best, and what scored the same as well. */
    @Test
    void theHighestIsAlwaysAmongTheBest() {
        ScoredLot lot = new ScoredLot(
                "liking",
                Cupping.Said.YES,
                Set.of(),
                Map.of(
                        "A", new ShrunkenScores.Score(6, 7, 7, 0),
                        "B", new ShrunkenScores.Score(6, 7, 7, 0),
                        "C", new ShrunkenScores.Score(6, 6.9, 6.9, 0)));
        assertTrue(lot.isAmongTheBest(Batch.named("A").build()));
        assertTrue(lot.isAmongTheBest(Batch.named("B").build()));
        assertEquals(false, lot.isAmongTheBest(Batch.named("C").build()));
    }

    private static ScoredLot scored(CardLogbook built) {
        Logbook logbook = built.logbook();
        return ScoredLot.of(logbook.ofLot("one").batches(), logbook).orElseThrow();
    }

    @ParameterizedTest
    @CsvSource({"3,YES,3", "2,NOT_WRITTEN,6"})
    void blindScoresCountWhereThreeBatchesOfTheLotHaveThem(int blind, Cupping.Said said, int scored) {
        CardLogbook built = CardLogbook.of(6).withOtherLot(6);
        for (int batch = 1; batch <= 6; batch++) {
            built = built.cup(batch <= blind ? "blind" : "open", "B" + batch, "liking", 5 + 0.3 * batch)
                    .cup("blind", "C" + batch, "liking", 5 + 0.2 * batch);
        }
        ScoredLot lot = scored(built);
        assertEquals(said, lot.blind());
        assertEquals(scored, lot.scores().size());
    }

    @Test
    void theAttributeIsOneOfWhichTheHighestIsTheBest() {
        CardLogbook built = CardLogbook.of(6);
        for (int batch = 1; batch <= 6; batch++) {
            built = built.cup("open", "B" + batch, "acidity", 8.0 - batch);
        }
        Logbook acid = built.logbook();
        assertTrue(ScoredLot.of(acid.batches(), acid).isEmpty(), "a high acidity is not a good cup");
        for (int batch = 1; batch <= 6; batch++) {
            built = built.cup("open", "B" + batch, "sweetness", 5 + 0.3 * batch);
        }
        assertEquals("sweetness", scored(built).attribute());
        for (int batch = 1; batch <= 6; batch++) {
            built = built.cup("open", "B" + batch, "liking", 5 + 0.3 * batch);
        }
        assertEquals("liking", scored(built).attribute());
        for (int batch = 1; batch <= 6; batch++) {
            built = built.cup("open", "B" + batch, "overall", 5 + 0.3 * batch);
        }
        assertEquals("overall", scored(built).attribute());
    }

    /** Of another lot overall was scored, of this one liking only; with two scored so, sweetness goes before. */
    @ParameterizedTest
    @CsvSource({"3,liking", "2,sweetness"})
    void theAttributeIsOneOfWhichThreeBatchesOfThisLotHaveScores(int liked, String attribute) {
        CardLogbook built = CardLogbook.of(6).withOtherLot(6);
        for (int batch = 1; batch <= 6; batch++) {
            built = built.cup("blind", "C" + batch, "overall", 5 + 0.2 * batch)
                    .cup("blind", "C" + batch, "liking", 5 + 0.2 * batch)
                    .cup("blind", "B" + batch, "sweetness", 5 + 0.3 * batch);
            built = batch <= liked ? built.cup("blind", "B" + batch, "liking", 5 + 0.3 * batch) : built;
        }
        assertEquals(attribute, scored(built).attribute());
    }

    /** Blind scores of a later attribute go before open ones of an earlier. */
    @Test
    void blindScoresGoBeforeWhateverTheAttribute() {
        CardLogbook built = CardLogbook.of(6);
        for (int batch = 1; batch <= 6; batch++) {
            built = built.cup("open", "B" + batch, "overall", 5 + 0.2 * batch)
                    .cup("blind", "B" + batch, "sweetness", 5 + 0.3 * batch);
        }
        assertEquals("sweetness", scored(built).attribute());
        assertEquals(Cupping.Said.YES, scored(built).blind());
    }

    /** A cupping that was not written down at all is not known to be blind. */
    @Test
    void aCuppingThatIsNotListedIsNotBlind() {
        CardLogbook built = CardLogbook.of(6);
        for (int batch = 1; batch <= 6; batch++) {
            built = built.cup("nowhere", "B" + batch, "liking", 5 + 0.3 * batch);
        }
        assertEquals(Cupping.Said.NOT_WRITTEN, scored(built).blind());
    }

    /** A filtered logbook is held against the cups of the whole. */
    @Test
    void theCupsOfTheWholeLogbookSayHowMuchIsLuck() {
        CardLogbook built = CardLogbook.of(6);
        for (int batch = 1; batch <= 6; batch++) {
            built = built.cup("blind", "B" + batch, "liking", 5 + 0.3 * batch);
        }
        Logbook whole = built.logbook();
        Logbook few = whole.only("B1");
        assertEquals(
                ScoredLot.of(whole.batches(), whole).orElseThrow(),
                ScoredLot.of(whole.batches(), few).orElseThrow());
    }

    @Test
    void tooFewScoresToTellBatchesApartCountAsNone() {
        Logbook logbook = CardLogbook.of(6)
                .cup("blind", "B1", "liking", 5)
                .cup("blind", "B2", "liking", 6)
                .cup("blind", "B3", "liking", 7)
                .logbook();
        assertEquals(
                List.of(), ScoredLot.of(logbook.batches(), logbook).stream().toList());
    }
}
