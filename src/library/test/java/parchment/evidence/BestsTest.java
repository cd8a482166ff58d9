package parchment.evidence;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.Collections;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import org.junit.jupiter.api.Test;
import parchment.evidence.finding.Slope;
import parchment.feature.path.OnProbe;
import parchment.logbook.Batch;
import parchment.logbook.Logbook;
import parchment.logbook.written.CupScores;
import parchment.quantity.TemperatureUnit;
import parchment.quantity.Unit;

/** Holds the best place of each lot, as a reading on today's probe, to what was drawn. */
class BestsTest {
    private static KnownTruth hump() {
        KnownTruth truth = new KnownTruth();
        truth.slope = 0;
        truth.bend = -0.04;
        truth.days = 30;
        truth.batchSpread = 0.1;
        truth.cupSpread = 0.2;
        return truth;
    }

    private static Evidence ask(KnownTruth.Drawn drawn) {
        return new Question("sweetness", drawn.measure(), List.of(), EvidenceSettings.standard()).ask(drawn.logbook());
    }

    private static Bests bests(KnownTruth truth, long seed) {
        ModelFrame material = KnownTruth.material(truth.draw(seed));
        TodaysCourse course = TodaysCourse.of(material, FittedScores.of(material, ModelForm.STANDARD));
        return Bests.of(
                course.line().design().material(), TriedRange.of(course.line().design()), 0.90);
    }

    @Test
    void placesAreReadingsOnTodaysProbeWhenItMoved() {
        KnownTruth truth = hump();
        truth.probeMovedOnDay = 15;
        truth.probeShift = -2.8;
        truth.shiftError = 0.1;
        Evidence evidence = ask(truth.draw(3));
        Peak peak = evidence.peak().orElseThrow();
        assertEquals(205 - 2.8, peak.best(), 0.5);
        assertTrue(peak.contains(205 - 2.8), peak.toString());
        assertFalse(peak.contains(205), peak.toString());
        for (LotBest lot : evidence.bests().orElseThrow().lots()) {
            assertEquals(205 - 2.8, lot.best().best(), 1);
        }
        assertTrue(evidence.text().contains("Places are readings as on today's probe."), evidence.text());
        assertFalse(evidence.text().contains("own mean;"), evidence.text());
    }

    /** A filter that leaves one lot of one earlier period must not leave its readings unconverted. */
    @Test
    void batchesOfOneEarlierPeriodAreBroughtToTodaysProbeToo() {
        KnownTruth truth = hump();
        truth.lots = 1;
        truth.probeMovedOnDay = 15;
        truth.probeShift = -6;
        truth.shiftError = 0.1;
        KnownTruth.Drawn drawn = truth.draw(3);
        Measure earlier = earlier(drawn.measure());
        Evidence evidence = ask(new KnownTruth.Drawn(drawn.logbook(), earlier, drawn.gas()));
        assertEquals(60, evidence.batches());
        assertEquals(199, evidence.peak().orElseThrow().best(), 0.7);
        assertTrue(evidence.text().contains("Places are readings as on today's probe."), evidence.text());
        assertTrue(evidence.svg().orElseThrow().contains("as read on today"), "axis");
        TradeOff trade = TradeOff.of(
                List.of("sweetness", "body"),
                earlier,
                KnownTruth.twice(drawn.logbook(), "body"),
                EvidenceSettings.standard());
        assertTrue(trade.compromise().contains(199), trade.text());

        truth.shiftError = Double.NaN;
        truth.probeShift = Double.NaN;
        KnownTruth.Drawn unknown = truth.draw(3);
        Evidence untold = ask(new KnownTruth.Drawn(unknown.logbook(), earlier(unknown.measure()), unknown.gas()));
        assertFalse(untold.text().contains("today's probe"), untold.text());
        assertTrue(
                untold.text()
                        .contains(
                                "Where sweetness is best cannot be told as a reading: the probe was changed since, and by how much"
                                        + " its readings differ is not known."),
                untold.text());
    }

    private static Measure earlier(Measure all) {
        Map<String, ModelFrames.Reading> readings = new HashMap<>(all.readings());
        readings.keySet().removeIf(name -> Integer.parseInt(name.substring(1)) > 60);
        return new Measure(all.name(), all.unit(), all.reader(), readings);
    }

    /** The development time is no reading of the probe, so no title may say that it was read on it. */
    @Test
    void whatIsNoReadingOfTheProbeIsNotSaidToBeReadOnIt() {
        KnownTruth.Drawn drawn = hump().draw(3);
        Measure read = drawn.measure();
        Evidence reading = ask(drawn);
        assertTrue(
                reading.text().contains("Best drop temperature of each lot, as read on today's probe"), reading.text());
        Measure time = new Measure(
                "development time", Unit.SECONDS, read.reader(), read.readings(), Map.of(), OnProbe.FREE_OF_IT);
        Evidence free = ask(new KnownTruth.Drawn(drawn.logbook(), time, drawn.gas()));
        assertTrue(free.text().contains("Best development time of each lot"), free.text());
        assertFalse(free.text().contains("today's probe"), free.text());
        Measure hangs =
                new Measure("rise before", Unit.SECONDS, read.reader(), read.readings(), Map.of(), OnProbe.HANGS_ON_IT);
        Evidence hanging = ask(new KnownTruth.Drawn(drawn.logbook(), hangs, drawn.gas()));
        assertTrue(
                hanging.text().contains("Best rise before of each lot, of batches roasted with today's probe"),
                hanging.text());
    }

    @Test
    void anUncertainMoveWidensTheSet() {
        KnownTruth truth = hump();
        truth.probeMovedOnDay = 15;
        truth.shiftError = 0;
        double known = width(bests(truth, 3).lots().get(0));
        truth.shiftError = 1.5;
        assertTrue(width(bests(truth, 3).lots().get(0)) > 1.2 * known);
    }

    private static double width(LotBest lot) {
        return lot.best().set().orElseThrow().upper()
                - lot.best().set().orElseThrow().lower();
    }

    @Test
    void aMoveOfUnknownSizeLeavesOnlyTodaysProbe() {
        KnownTruth truth = hump();
        truth.probeMovedOnDay = 15;
        KnownTruth.Drawn drawn = truth.draw(3);
        Map<String, ModelFrames.Reading> readings = new HashMap<>();
        drawn.measure().readings().forEach((name, reading) -> {
            boolean earlier = Integer.parseInt(name.substring(1)) <= 60;
            readings.put(
                    name,
                    earlier
                            ? reading.onTodaysProbe(Double.NaN, Double.NaN, "before")
                            : reading.onTodaysProbe(reading.value(), 0, "now"));
        });
        ModelFrame all = ModelFrames.of("sweetness", drawn.logbook(), readings);
        TodaysCourse course = TodaysCourse.of(all, FittedScores.of(all, ModelForm.STANDARD));
        assertEquals(TodaysCourse.Places.READINGS, course.places());
        assertEquals(60, course.line().design().material().batches().size());
        ModelFrame few = all.only(batch -> Integer.parseInt(batch.name().substring(1)) <= 65);
        TodaysCourse none = TodaysCourse.of(few, FittedScores.of(few, ModelForm.STANDARD));
        assertEquals(TodaysCourse.Places.FROM_LOTS_MEANS, none.places());
    }

    @Test
    void eachLotHasItsOwnBestAndLotsThatDifferAreNamed() {
        KnownTruth truth = hump();
        truth.lots = 2;
        truth.lotOffset = new double[] {0, 3};
        Bests bests = bests(truth, 5);
        assertEquals(205, bests.lots().get(0).best().best(), 1);
        assertEquals(208, bests.lots().get(1).best().best(), 1);
        assertTrue(bests.chanceOfDifference() < 0.05);
        Measure drop = truth.draw(5).measure();
        assertEquals(
                "The lots differ: how sweetness goes with the drop temperature is not the same in each, so look at the lot and not at"
                        + " all of them together. What to expect of the next lot cannot be told: at least 3 lots with a slope of their own are needed,"
                        + " and 2 have one.",
                bests.words("sweetness", drop));
    }

    @Test
    void ofTheNextLotSomethingIsSaidFromThreeLotsOn() {
        KnownTruth truth = hump();
        truth.lots = 3;
        assertTrue(bests(truth, 5).next().set().isPresent());
        truth.lots = 2;
        assertTrue(bests(truth, 5).next().set().isEmpty());
    }

    /** A fourth lot whose scores are noise: the other lots' slopes stay where they are, within a fifth of their error. */
    @Test
    void aLotOfPureNoiseHardlyMovesTheOthers() {
        KnownTruth truth = hump();
        ModelFrame with = KnownTruth.material(truth.draw(7));
        Random random = new Random(9);
        double[] scores = with.scores().stream()
                .mapToDouble(
                        score -> with.batchOf(score).lot().equals("Lot C") ? 6 + random.nextGaussian() : score.score())
                .toArray();
        ModelFrame noisy = with.withScores(scores);
        TriedRange range = TriedRange.of(ScoreDesign.of(with, ModelForm.STANDARD));
        Slope before = Bests.of(with, range, 0.9).lots().get(0).slope();
        Slope after = Bests.of(noisy, range, 0.9).lots().get(0).slope();
        assertEquals(before.estimate(), after.estimate(), Math.max(before.standardError(), after.standardError()));
    }

    @Test
    void aLotNeedsEightBatchesOnThreeDaysForASlopeOfItsOwn() {
        ModelFrame all = KnownTruth.material(hump().draw(5));
        TriedRange range = TriedRange.of(ScoreDesign.of(all, ModelForm.STANDARD));
        assertEquals(LotBest.Own.OWN, ofA(all, 8, range));
        assertEquals(LotBest.Own.SHARED, ofA(all, 7, range));
    }

    private static LotBest.Own ofA(ModelFrame all, int count, TriedRange range) {
        List<String> names = all.batches().stream()
                .filter(batch -> batch.lot().equals("Lot A"))
                .map(TastedBatch::name)
                .limit(count)
                .toList();
        ModelFrame fewer = all.only(batch -> !batch.lot().equals("Lot A") || names.contains(batch.name()));
        return Bests.of(fewer, range, 0.9).lots().get(0).own();
    }

    @Test
    void aLotThatIsNotThereIsAnsweredWithThoseThatAre() {
        Evidence evidence = ask(hump().draw(5));
        assertEquals("Lot B", evidence.best("Lot B").lot());
        assertEquals(
                "The best place of a lot needs scored batches of it; there are none of 'Lot X'. Lots: Lot A, Lot B, Lot C.",
                assertThrows(IllegalArgumentException.class, () -> evidence.best("Lot X"))
                        .getMessage());
    }

    /** Nothing depends on the order of rows or on the reader's unit. */
    @Test
    void neitherTheOrderOfRowsNorTheReadersUnitChangesAnAnswer() {
        KnownTruth truth = hump();
        KnownTruth.Drawn drawn = truth.draw(11);
        Evidence straight = ask(drawn);
        List<Batch> batches = new ArrayList<>(drawn.logbook().batches());
        List<CupScores> cups = new ArrayList<>(drawn.logbook().cups());
        Collections.shuffle(batches, new Random(1));
        Collections.shuffle(cups, new Random(2));
        Logbook shuffled = Logbook.of(drawn.logbook().contents().toBuilder()
                .batches(batches)
                .cups(cups)
                .build());
        Evidence mixed =
                new Question("sweetness", drawn.measure(), List.of(), EvidenceSettings.standard()).ask(shuffled);
        assertEquals(straight.verdict(), mixed.verdict());
        assertEquals(straight.reasons(), mixed.reasons());
        assertEquals(
                straight.association().slope().estimate(),
                mixed.association().slope().estimate(),
                1e-6);
        assertEquals(
                straight.peak().orElseThrow().best(), mixed.peak().orElseThrow().best(), 1e-4);
        truth.reader = TemperatureUnit.FAHRENHEIT;
        Evidence fahrenheit = ask(truth.draw(11));
        assertEquals(straight.verdict(), fahrenheit.verdict());
        assertEquals(straight.reasons(), fahrenheit.reasons());
        List<LotBest> lots = straight.bests().orElseThrow().lots();
        for (int i = 0; i < lots.size(); i++) {
            LotBest same = fahrenheit.bests().orElseThrow().lots().get(i);
            assertEquals(lots.get(i).lot(), same.lot());
            assertEquals(lots.get(i).best().best(), same.best().best(), 1e-9);
            assertTrue(lots.get(i).toString().contains(" °C ("), lots.get(i).toString());
            assertTrue(same.toString().contains(" °F ("), same.toString());
        }
        assertTrue(fahrenheit.peak().orElseThrow().toString().contains(" °F ("), "the reader's unit");
    }
}
