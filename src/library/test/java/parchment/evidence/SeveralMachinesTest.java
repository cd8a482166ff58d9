package parchment.evidence;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import parchment.feature.path.OnProbe;
import parchment.logbook.Batch;
import parchment.logbook.Logbook;
import parchment.logbook.written.Upkeep;

/** Holds lots of two machines apart, however they are named, and says of no place that it is one on two probes. */
class SeveralMachinesTest {
    private static final double APART = 9;

    private static KnownTruth hump() {
        KnownTruth truth = new KnownTruth();
        truth.slope = 0;
        truth.bend = -0.04;
        truth.days = 30;
        truth.batchSpread = 0.1;
        truth.cupSpread = 0.2;
        return truth;
    }

    /** Draws a logbook of which every other batch was roasted on a second machine, whose probe reads 9 °C more. */
    private static KnownTruth.Drawn onTwo(OnProbe onProbe) {
        KnownTruth.Drawn drawn = hump().draw(5);
        List<Batch> batches = new ArrayList<>();
        Map<String, ModelFrames.Reading> readings = new LinkedHashMap<>();
        for (Batch batch : drawn.logbook().batches()) {
            boolean second = batches.size() % 2 == 1;
            String machine = second ? "barrel" : "drum";
            batches.add(Batch.named(batch.name())
                    .roastedAt(batch.roastedAt().orElseThrow())
                    .lot(batch.lot().orElseThrow())
                    .machine(machine)
                    .conditions(batch.conditions())
                    .build());
            ModelFrames.Reading read = drawn.measure().readings().get(batch.name());
            boolean free = onProbe == OnProbe.FREE_OF_IT;
            double value = read.value() + (second && !free ? APART : 0);
            readings.put(
                    batch.name(),
                    new ModelFrames.Reading(value, read.error()).onTodaysProbe(value, 0, free ? "" : machine));
        }
        Measure was = drawn.measure();
        return new KnownTruth.Drawn(
                Logbook.of(
                        drawn.logbook().contents().toBuilder().batches(batches).build()),
                new Measure(was.name(), was.unit(), was.reader(), readings, Map.of(), onProbe),
                drawn.gas());
    }

    private static Evidence ask(KnownTruth.Drawn drawn) {
        return new Question("sweetness", drawn.measure(), List.of(), EvidenceSettings.standard()).ask(drawn.logbook());
    }

    @Test
    void twoProbesHaveNoCommonBestAndEachLotHasOneOnEachMachine() {
        Evidence evidence = ask(onTwo(OnProbe.READING));
        assertEquals(Peak.Answer.CANNOT_TELL, evidence.peak().orElseThrow().answer());
        Bests bests = evidence.bests().orElseThrow();
        assertEquals(
                List.of(
                        "Lot A on barrel",
                        "Lot A on drum",
                        "Lot B on barrel",
                        "Lot B on drum",
                        "Lot C on barrel",
                        "Lot C on drum"),
                bests.lots().stream().map(LotBest::lot).toList());
        for (LotBest lot : bests.lots()) {
            assertEquals(
                    lot.lot().endsWith("barrel") ? 205 + APART : 205, lot.best().best(), 1.2, lot.lot());
        }
        String page = evidence.text();
        assertTrue(
                page.contains(
                        "Where sweetness is best cannot be told for several machines at once: a place on one machine's probe is not the"
                                + " same on another's. Ask with the batches of one machine. Each lot on its machine is in the table."),
                page);
        assertFalse(page.contains("The lots differ"), page);
        assertFalse(page.contains("common course"), page);
        assertEquals("Lot A on barrel", evidence.best("Lot A on barrel").lot());
        assertEquals(
                "'Lot A' was roasted on several machines, and each has a best of its own. Name one: Lot A on barrel, Lot A on drum.",
                assertThrows(IllegalArgumentException.class, () -> evidence.best("Lot A"))
                        .getMessage());
    }

    @Test
    void whatIsNoMatterOfTheProbeHasOneCourseOverTwoMachinesAndThreeLotsStayThree() {
        Evidence evidence = ask(onTwo(OnProbe.FREE_OF_IT));
        assertEquals(205, evidence.peak().orElseThrow().best(), 1);
        assertTrue(evidence.text().contains("This is the common course of 3 lots on their machines,"), evidence.text());
    }

    @Test
    void aLotAndAMachineNeverFallTogetherWithAnotherLotOfThatName() {
        assertNotEquals(TastedBatch.lotKey("one, A", ""), TastedBatch.lotKey("one", "A"));
        KnownTruth.Drawn drawn = hump().draw(5);
        List<Batch> batches = new ArrayList<>();
        for (Batch batch : drawn.logbook().batches()) {
            boolean first = batches.size() % 2 == 0;
            Batch.Builder builder = Batch.named(batch.name())
                    .roastedAt(batch.roastedAt().orElseThrow())
                    .lot(first ? "one, A" : "one");
            batches.add(first ? builder.build() : builder.machine("A").build());
        }
        Logbook logbook = Logbook.of(
                drawn.logbook().contents().toBuilder().batches(batches).build());
        ModelFrame material =
                ModelFrames.of("sweetness", logbook, drawn.measure().readings());
        assertEquals(2, material.groupMeans().size());
        assertEquals(
                2, material.changed(TastedBatch::onTodaysProbe).groupMeans().size());
        assertEquals(
                List.of("one on A", "one, A (machine not written)"),
                material.batches().stream()
                        .map(batch -> TastedBatch.lotWords(batch.today().lot()))
                        .distinct()
                        .sorted()
                        .toList());
    }

    /** A change after the last roast: what today's probe reads is on no batch. */
    @Test
    void whatStandsAgainstReadingsOnTodaysProbeIsSaidBesideTheBest() {
        KnownTruth.Drawn drawn = hump().draw(5);
        LocalDate last = drawn.logbook().batches().stream()
                .flatMap(batch -> batch.roastDay().stream())
                .max(LocalDate::compareTo)
                .orElseThrow();
        Logbook logbook = Logbook.of(KnownTruth.twice(drawn.logbook(), "body").contents().toBuilder()
                .upkeep(List.of(new Upkeep("drum one", last.plusDays(3), "probe moved", Optional.empty())))
                .build());
        Measure was = drawn.measure();
        Map<String, ModelFrames.Reading> readings = new LinkedHashMap<>();
        was.readings().forEach((name, read) -> readings.put(name, read.onTodaysProbe(read.value(), 0, "drum one")));
        Measure drop = new Measure(was.name(), was.unit(), was.reader(), readings);
        Evidence evidence = new Question("sweetness", drop, List.of(), EvidenceSettings.standard()).ask(logbook);
        String doubt = last.plusDays(3).toString();
        assertTrue(evidence.text().contains(doubt), evidence.text());
        assertTrue(evidence.text().indexOf(doubt) < evidence.text().indexOf("How far it can be trusted"), doubt);
        TradeOff trade = TradeOff.of(List.of("sweetness", "body"), drop, logbook, EvidenceSettings.standard());
        assertTrue(trade.text().contains(doubt), trade.text());
        assertFalse(
                new Question("sweetness", was, List.of(), EvidenceSettings.standard())
                        .ask(logbook)
                        .text()
                        .contains(doubt),
                "a measure that no probe reads");
    }
}
