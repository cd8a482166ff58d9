package parchment.evidence;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.Set;
import org.junit.jupiter.api.Test;
import parchment.evidence.finding.Verdict;
import parchment.logbook.Logbook;

/** Holds that no best is told where what stands against the slope stands against the place too, and what keeps one open at an end. */
class NoBestToldTest {
    private static KnownTruth hump(double gas) {
        KnownTruth truth = new KnownTruth();
        truth.slope = 0;
        truth.bend = -0.04;
        truth.days = 30;
        truth.batchSpread = 0.1;
        truth.cupSpread = 0.2;
        truth.gasWithDrop = gas;
        return truth;
    }

    private static Evidence ask(KnownTruth.Drawn drawn) {
        return new Question("sweetness", drawn.measure(), drawn.others(), EvidenceSettings.standard())
                .ask(drawn.logbook());
    }

    @Test
    void whatMovedAsOneWithTheGasHasNoBestOfAnyLotNorACompromise() {
        KnownTruth.Drawn drawn = hump(1).draw(4);
        Evidence evidence = ask(drawn);
        assertEquals(Verdict.CANNOT_TELL, evidence.verdict());
        assertEquals(Peak.Answer.CANNOT_TELL, evidence.peak().orElseThrow().answer());
        assertTrue(evidence.bests().isEmpty());
        assertTrue(
                evidence.text()
                        .contains(
                                "Where sweetness is best cannot be told, for the same reason as the verdict; nor can it for any one lot."),
                evidence.text());
        assertFalse(evidence.text().contains("was highest at"), evidence.text());
        assertFalse(evidence.text().contains("where the best may lie"), evidence.text());
        assertTrue(
                assertThrows(IllegalStateException.class, () -> evidence.best("Lot A"))
                        .getMessage()
                        .startsWith(
                                "No best place can be told of any lot: inside lots the drop temperature cannot be told from gas"),
                "the lot's name is not to blame");
        TradeOff trade = trade(drawn);
        assertEquals(Verdict.CANNOT_TELL, trade.verdict());
        assertTrue(Double.isNaN(trade.compromise().lower()), trade.text());
        assertTrue(trade.text().contains("So no compromise can be told."), trade.text());
        assertFalse(trade.text().contains("The compromise\n"), trade.text());

        KnownTruth.Drawn apart = hump(0).draw(4);
        Evidence told = ask(apart);
        assertEquals(Peak.Answer.INSIDE, told.peak().orElseThrow().answer());
        assertTrue(told.text().contains("where the best may lie"), told.text());
        assertEquals(3, told.bests().orElseThrow().lots().size());
        assertFalse(Double.isNaN(trade(apart).compromise().lower()));
    }

    private static TradeOff trade(KnownTruth.Drawn drawn) {
        Logbook both = KnownTruth.twice(drawn.logbook(), "body");
        return TradeOff.of(
                List.of("sweetness", "body"), drawn.measure(), drawn.others(), both, EvidenceSettings.standard());
    }

    @Test
    void oneReasonStandsAgainstThePlaceAndAnotherDoesNot() {
        assertTrue(NextBatches.Kind.AFRESH.holdsForPlaces());
        assertTrue(NextBatches.Kind.MOVE_APART.holdsForPlaces());
        assertTrue(NextBatches.Kind.MOVE_IT.holdsForPlaces());
        assertFalse(NextBatches.Kind.MORE.holdsForPlaces());
        assertFalse(NextBatches.Kind.BEND.holdsForPlaces());
        assertFalse(NextBatches.Kind.TOO_MANY.holdsForPlaces());
    }

    @Test
    void aCompromiseAtAnEndOfWhatWasTriedIsOpenThere() {
        Measure drop = hump(0).draw(1).measure();
        TriedRange range = new TriedRange(195, 215, 200, 210, 205);
        assertEquals("at the low end of what was tried, 200.0 °C, or below", where(drop, 200, 200.05, range));
        assertEquals("from the low end of what was tried, or below, to 201.0 °C", where(drop, 200, 201, range));
        assertEquals("at the high end of what was tried, 210.0 °C, or above", where(drop, 210, 210, range));
        assertEquals("from 207.0 °C to the high end of what was tried, or above", where(drop, 207, 209.95, range));
        assertEquals("at 203.0 to 205.0 °C", where(drop, 203, 205, range));
    }

    private static String where(Measure drop, double low, double high, TriedRange range) {
        return TradeOffPage.where(drop, new parchment.stats.Interval(low, high, 0.9), range);
    }

    /** The second attribute was not scored before the probe moved a first time, so its errors are of the later period only. */
    @Test
    void errorsThatAPeriodSharesGoByThePeriodsName() {
        KnownTruth.Drawn drawn = hump(0).draw(3);
        Map<String, ModelFrames.Reading> readings = new LinkedHashMap<>();
        drawn.measure().readings().forEach((name, read) -> {
            int number = Integer.parseInt(name.substring(1));
            readings.put(
                    name,
                    number <= 40
                            ? read.onTodaysProbe(read.value() + 3, 0.5, "first")
                            : number <= 80
                                    ? read.onTodaysProbe(read.value() - 2, 0.5, "second")
                                    : read.onTodaysProbe(read.value(), 0, "today"));
        });
        ModelFrame all = ModelFrames.of("sweetness", drawn.logbook(), readings);
        ModelFrame later = all.only(batch -> Integer.parseInt(batch.name().substring(1)) > 40);
        assertEquals(Set.of("first", "second"), changes(all));
        assertEquals(Set.of("second"), changes(later));
    }

    private static Set<String> changes(ModelFrame material) {
        return TodaysCourse.of(material, FittedScores.of(material, ModelForm.STANDARD))
                .line()
                .sharedChanges(ScoreDesign.FEATURE)
                .keySet();
    }

    /** Targets were meant for the probe of their day; its move by -4 °C moves them as it moves the readings. */
    @Test
    void targetsDrawnByChanceAreBroughtToTodaysProbe() {
        KnownTruth truth = hump(0);
        truth.byChance = true;
        truth.probeMovedOnDay = 15;
        truth.probeShift = -4;
        truth.shiftError = 0.2;
        KnownTruth.Drawn drawn = truth.draw(3);
        Map<String, Double> planned = new LinkedHashMap<>();
        drawn.measure()
                .planned()
                .forEach((name, target) -> planned.put(name, before(name) ? target : target + truth.probeShift));
        Measure was = drawn.measure();
        Measure drop = new Measure(was.name(), was.unit(), was.reader(), was.readings(), planned);
        Evidence evidence =
                new Question("sweetness", drop, List.of(), EvidenceSettings.standard()).ask(drawn.logbook());
        Analysis effect = evidence.drawn().orElseThrow();
        assertEquals(TodaysCourse.Places.READINGS, effect.places());
        for (TastedBatch batch : effect.todays().batches()) {
            double target = planned.getOrDefault(batch.name(), Double.NaN);
            assertEquals(before(batch.name()) ? target - 4 : target, batch.measure(), 1, batch.name());
            assertEquals(before(batch.name()) ? 0.2 : 0, batch.today().sharedError());
        }
        assertEquals(201, effect.peak().best(), 1);
    }

    private static boolean before(String batch) {
        return Integer.parseInt(batch.substring(1)) <= 60;
    }

    @Test
    void underTenRoastDaysNoGainIsGiven() {
        assertTrue(gain(9).isEmpty());
        assertTrue(gain(10).isPresent());
    }

    private static OptionalDouble gain(int days) {
        KnownTruth truth = new KnownTruth();
        truth.days = days;
        ModelFrame material = KnownTruth.material(truth.draw(1));
        PredictiveSkill gain = PredictiveSkill.of(
                ScoreDesign.of(material, ModelForm.STANDARD),
                ScoreDesign.of(material, ModelForm.STANDARD.with(ModelForm.Shape.ABSENT)),
                EvidenceSettings.standard().withParts(2));
        return gain.known() ? OptionalDouble.of(gain.overSameModel()) : OptionalDouble.empty();
    }
}
