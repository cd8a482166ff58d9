package parchment.evidence;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Random;
import java.util.TreeMap;
import org.junit.jupiter.api.Test;
import parchment.evidence.finding.Slope;
import parchment.logbook.Batch;
import parchment.logbook.Logbook;
import parchment.logbook.written.CupScores;
import parchment.stats.mixed.FTest;

/** Holds that no lot moves the answer of the others without a word, from built numbers and through the front door. */
class LotsApartTest {
    private static Bests.Own own(String lot, double slope, double error) {
        return new Bests.Own(lot, new Slope(slope, error, 30));
    }

    @Test
    void theLotFurthestFromTheOthersIsToldInItsOwnError() {
        Bests.Own near = own("A", 0.15, 0.02);
        assertEquals(
                "C",
                LotsApart.furthest(List.of(near, own("B", 0.14, 0.02), own("C", 0.05, 0.02)))
                        .lot());
        assertEquals(
                "C",
                LotsApart.furthest(List.of(near, own("B", 0.14, 0.02), own("C", 0.25, 0.02)))
                        .lot());
        // The last lies further away, but so unsurely that it tells less.
        assertEquals(
                "C",
                LotsApart.furthest(List.of(near, own("B", 0.14, 0.02), own("C", 0.05, 0.02), own("D", 0.45, 0.3)))
                        .lot());
    }

    /** Distances to the course with mean 0 and as many batches as said, as far out as said. */
    private static List<Double> distances(int batches, double size) {
        List<Double> all = new ArrayList<>();
        for (int i = 0; i < batches; i++) {
            all.add(i % 2 == 0 ? size : -size);
        }
        return all;
    }

    private static List<LotsApart.Scatter> scattering(double size, int batches) {
        Map<String, List<Double>> byLot = new TreeMap<>();
        byLot.put("A", distances(20, 0.2));
        byLot.put("B", distances(20, 0.2));
        byLot.put("C", distances(batches, size));
        return LotsApart.scattering(byLot);
    }

    @Test
    void aLotScattersAtOneInAHundredForAllLotsTogether() {
        // F of 19 and 38 degrees of freedom at 1/300, looked for by halving.
        double low = 1;
        double high = 9;
        for (int i = 0; i < 60; i++) {
            double middle = (low + high) / 2;
            if (new FTest("F", middle, 19, 38).probability() < 0.01 / 3) {
                high = middle;
            } else {
                low = middle;
            }
        }
        assertEquals(List.of(), scattering(0.2 * Math.sqrt(low) * 0.999, 20));
        LotsApart.Scatter found = scattering(0.2 * Math.sqrt(low) * 1.001, 20).get(0);
        assertEquals("C", found.lot());
        assertEquals(Math.sqrt(low), found.times(), 0.01);
        assertEquals(List.of(), scattering(0.02, 20));
    }

    @Test
    void aLotOfFewerThanEightBatchesIsNotAskedWhetherItScatters() {
        assertEquals(1, scattering(3, 8).size());
        assertEquals(0, scattering(3, 7).size());
    }

    /** Adds a fourth lot whose scores have nothing to do with the roast, cupped by people who cup nothing else. */
    static KnownTruth.Drawn withALotOfNoise(KnownTruth.Drawn drawn, double spread, long seed) {
        Random random = new Random(seed);
        List<Batch> batches = new ArrayList<>(drawn.logbook().batches());
        List<CupScores> cups = new ArrayList<>(drawn.logbook().cups());
        Map<String, ModelFrames.Reading> readings =
                new LinkedHashMap<>(drawn.measure().readings());
        for (int k = 0; k < 24; k++) {
            Batch like = drawn.logbook().batches().get(3 * k);
            String name = "N" + (k + 1);
            batches.add(Batch.named(name)
                    .roastedAt(OffsetDateTime.of(
                            like.roastedAt().orElseThrow().toLocalDate().atTime(16, 0), ZoneOffset.UTC))
                    .lot("Lot D")
                    .machine("drum one")
                    .build());
            readings.put(name, new ModelFrames.Reading(205 + 3 * random.nextGaussian(), 0.3));
            double batch = spread * random.nextGaussian();
            for (int cupper = 0; cupper < 3; cupper++) {
                cups.add(new CupScores(
                        "N" + k / 4,
                        like.roastedAt().orElseThrow().toLocalDate().plusDays(20),
                        "new cupper " + cupper,
                        name,
                        Optional.empty(),
                        Optional.empty(),
                        OptionalInt.empty(),
                        Map.of("sweetness", 6 + batch + 0.5 * random.nextGaussian()),
                        Optional.empty()));
            }
        }
        Logbook logbook = Logbook.of(drawn.logbook().contents().toBuilder()
                .batches(batches)
                .cups(cups)
                .build());
        Measure before = drawn.measure();
        return new KnownTruth.Drawn(
                logbook, new Measure(before.name(), before.unit(), before.reader(), readings), drawn.gas());
    }

    private static KnownTruth falling() {
        KnownTruth truth = new KnownTruth();
        truth.slope = -0.136;
        return truth;
    }

    /** The slope of each other lot stays where it was, give or take three quarters of its error (the bend is common), and the first lines name the lot that differs. */
    @Test
    void aLotOfPureNoiseIsNamedInTheFirstLinesAndLeavesTheOthersAlone() {
        for (long seed = 1; seed <= 2; seed++) {
            KnownTruth.Drawn drawn = falling().draw(seed);
            Evidence before = EvidenceFrontDoorTest.ask(drawn);
            Evidence after = EvidenceFrontDoorTest.ask(withALotOfNoise(drawn, 0.2, seed));
            for (String lot : List.of("Lot A", "Lot B", "Lot C")) {
                Slope own = before.best(lot).slope();
                assertEquals(
                        own.estimate(),
                        after.best(lot).slope().estimate(),
                        0.75 * own.standardError(),
                        lot + " " + seed);
            }
            LotsApart apart = after.lotsApart().orElseThrow();
            assertTrue(apart.differ(), after.toString());
            assertEquals(Optional.of("Lot D"), apart.furthest(), after.toString());
            assertEquals(
                    before.association().slope().estimate(), apart.without().estimate(), 0.01);
            String first = after.text().substring(0, after.text().indexOf("Behind it"));
            assertTrue(first.contains("The lots differ, so this one slope describes none of them: Lot A -0."), first);
            assertTrue(first.contains("Lot D lies furthest from the others; without it the slope would be -0."), first);
            assertTrue(
                    after.toString().contains("The lots' slopes differ, most of all that of Lot D."), after.toString());
        }
    }

    @Test
    void aLotThatScattersIsNamedInTheFirstLines() {
        Evidence after = EvidenceFrontDoorTest.ask(withALotOfNoise(falling().draw(2), 1.5, 2));
        assertEquals(List.of("Lot D"), after.lotsApart().orElseThrow().scattering());
        String first = after.text().substring(0, after.text().indexOf("Behind it"));
        assertTrue(first.contains("The batches of Lot D scatter "), first);
        assertTrue(
                first.contains(
                        " times as far around the course as those of the other lots, and every interval here is wider for it."),
                first);
    }

    @Test
    void lotsThatAgreeGetNoWord() {
        int words = 0;
        for (long seed = 1; seed <= 3; seed++) {
            Evidence evidence = EvidenceFrontDoorTest.ask(falling().draw(seed));
            LotsApart apart = evidence.lotsApart().orElseThrow();
            words += apart.differ() || !apart.scattering().isEmpty() ? 1 : 0;
            assertEquals(apart.differ(), evidence.text().contains("The lots differ"));
            assertFalse(apart.furthest().isPresent() && !apart.differ());
        }
        assertTrue(words <= 1, words + " of 3");
    }

    @Test
    void twoLotsThatDifferAreBothNamedAndNeitherIsTheOdd() {
        KnownTruth truth = falling();
        truth.lots = 2;
        truth.slope = 0;
        truth.bend = -0.04;
        truth.lotOffset = new double[] {0, 4};
        Evidence evidence = EvidenceFrontDoorTest.ask(truth.draw(5));
        LotsApart apart = evidence.lotsApart().orElseThrow();
        assertTrue(apart.differ());
        assertEquals(Optional.empty(), apart.furthest());
        assertEquals(Slope.MISSING, apart.without());
        assertEquals("The lots' slopes differ.", apart.toString());
    }
}
