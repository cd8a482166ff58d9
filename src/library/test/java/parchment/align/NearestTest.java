package parchment.align;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import org.junit.jupiter.api.Test;
import parchment.align.score.ShrunkenScores;
import parchment.logbook.Batch;
import parchment.logbook.Logbook;
import parchment.logbook.contents.LogbookException;
import parchment.logbook.written.CupScores;
import parchment.logbook.written.Upkeep;
import parchment.phase.Phases;

class NearestTest {
    private static List<Batch> batches() {
        List<Batch> batches = new ArrayList<>();
        double[] constants = {440, 460, 480, 500, 520, 540, 560, 501};
        for (int i = 0; i < constants.length; i++) {
            batches.add(InventedRoasts.roast("c" + i, constants[i], 300, 60 + i)
                    .lot(i == 2 ? "B" : "A")
                    .roastedAt(InventedRoasts.at(i, 0))
                    .build());
        }
        return batches;
    }

    private static CupScores cup(String batch, String cupper, double liking) {
        return new CupScores(
                "C1",
                InventedRoasts.day(30),
                cupper,
                batch,
                Optional.empty(),
                Optional.empty(),
                OptionalInt.empty(),
                Map.of("liking", liking),
                Optional.empty());
    }

    @Test
    void theTwinIsNearestAndTheOrderFollowsTheKnownTruth() {
        Logbook logbook = InventedRoasts.logbook(batches());
        List<String> order = Nearest.to(logbook.batch("c3"), logbook).list().stream()
                .map(one -> one.batch().name())
                .toList();
        assertEquals("c7", order.get(0));
        assertEquals(List.of("c2", "c4"), order.subList(1, 3).stream().sorted().toList());
        assertEquals("c0", order.get(6));
    }

    @Test
    void theSameLotStandsApartFromOthers() {
        Logbook logbook = InventedRoasts.logbook(batches());
        Nearest nearest = Nearest.to(logbook.batch("c3"), logbook);
        assertEquals(
                List.of("c2"),
                nearest.ofOtherLots().stream().map(one -> one.batch().name()).toList());
        assertEquals(5, nearest.ofSameLot().size());
        assertTrue(nearest.text().contains("None of these was cupped for"), nearest.text());
    }

    @Test
    void theDistanceIsADistance() {
        List<FirstPassages> climbs = batches().stream()
                .map(batch -> FirstPassages.of(Phases.of(batch)).orElseThrow())
                .toList();
        for (FirstPassages a : climbs) {
            assertEquals(0, Nearest.distance(a, a, 100));
            for (FirstPassages b : climbs) {
                assertEquals(Nearest.distance(a, b, 100), Nearest.distance(b, a, 100), 1e-9);
                for (FirstPassages c : climbs) {
                    assertTrue(Nearest.distance(a, c, 100)
                            <= Nearest.distance(a, b, 100) + Nearest.distance(b, c, 100) + 1e-9);
                }
            }
        }
    }

    @Test
    void scoresAreShrunkenTowardsTheMeanAndTheirNumberIsTold() {
        List<CupScores> cups = new ArrayList<>();
        double[] level = {5, 6, 4, 5.5, 7, 3, 5, 6};
        for (int i = 0; i < 8; i++) {
            for (int k = 0; k < 3; k++) {
                cups.add(cup("c" + i, "cupper " + k, level[i] + 0.8 * ((i + 2 * k) % 3 - 1)));
            }
        }
        Logbook logbook = InventedRoasts.logbook(batches(), cups, List.of());
        ShrunkenScores scores = ShrunkenScores.of(logbook, "liking");
        ShrunkenScores.Score best = scores.of("c4").orElseThrow();
        double mean =
                cups.stream().mapToDouble(c -> c.score("liking")).average().orElseThrow();
        assertEquals(3, best.scores());
        assertTrue(best.shrunken() < best.mean() && best.shrunken() > mean, best.toString());
        assertEquals("Mean scores of 8 batches, each drawn towards that of all", scores.toString());
        assertEquals(
                "Mean scores of 1 batch, too few to say how much of them is luck",
                ShrunkenScores.of(cups.subList(0, 3), "liking").toString());
        String text = Nearest.to(logbook.batch("c3"), logbook).text();
        assertTrue(
                text.contains("shrunken [points]")
                        && text.contains("The true number lies within its ± about two times in three"),
                text);
    }

    @Test
    void batchesOfAnotherProbeAreNotSearchedAndThePageSaysSo() {
        Logbook logbook = InventedRoasts.logbook(
                batches(),
                List.of(),
                List.of(new Upkeep("drum", InventedRoasts.day(4), "new bean probe", Optional.empty())));
        Nearest nearest = Nearest.to(logbook.batch("c7"), logbook);
        assertEquals(3, nearest.list().size());
        assertTrue(
                nearest.text()
                        .contains("4 batches were read by another probe, or before or after it was moved, and are not"),
                nearest.text());
    }

    @Test
    void aBatchWithoutACurveIsAnsweredInWords() {
        List<Batch> batches = new ArrayList<>(batches());
        batches.add(Batch.named("blank").machine("drum").build());
        Logbook logbook = InventedRoasts.logbook(batches);
        assertTrue(assertThrows(LogbookException.class, () -> Nearest.to(logbook.batch("blank"), logbook))
                .getMessage()
                .contains("has no bean temperature"));
    }
}
