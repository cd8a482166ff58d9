package parchment.period;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import parchment.logbook.Batch;
import parchment.logbook.Logbook;
import parchment.logbook.MarkKind;
import parchment.logbook.Quantity;
import parchment.logbook.contents.LogbookContents;
import parchment.logbook.written.Upkeep;
import parchment.otherroastery.OtherRoastery;
import parchment.otherroastery.PlantedFaults;
import parchment.otherroastery.Truth;
import parchment.quantity.TemperatureUnit;
import parchment.stats.Estimate;
import parchment.stats.series.DayRegression;
import parchment.stats.series.WanderingDays;

class ProbePeriodsTest {
    private static final Logbook HARBOUR = Logbook.open(Path.of("..", "datasets", "harbour"));

    /** The same logbook with other upkeep, few enough batches to be quick. */
    private static Logbook with(List<Upkeep> upkeep) {
        LogbookContents c = HARBOUR.contents();
        return Logbook.of(c.toBuilder().upkeep(upkeep).build());
    }

    private static Upkeep probe(LocalDate day) {
        return new Upkeep("drum on the quay", day, "probe moved", Optional.empty());
    }

    /** The same roast on another machine. */
    private static Batch copy(Batch batch) {
        Batch.Builder other = Batch.named(batch.name() + "-yard")
                .roastedAt(batch.roastedAt().orElseThrow())
                .machine("drum in the yard")
                .conditions(batch.conditions());
        batch.lot().ifPresent(other::lot);
        batch.operator().ifPresent(who -> other.label(Batch.Label.OPERATOR, who));
        for (MarkKind kind : MarkKind.values()) {
            batch.writtenMark(kind).ifPresent(at -> other.writtenMark(kind, at));
        }
        batch.beanTemperature().ifPresent(curve -> other.curve(Quantity.BEAN_TEMPERATURE, curve));
        return other.build();
    }

    @Test
    void findsTheMovedProbeOfTheDemoLogbookWithItsEntry() {
        ProbePeriods periods = ProbePeriods.of(HARBOUR);
        assertEquals(1, periods.changes().size(), periods.toString());
        ProbeChange change = periods.changes().get(0);
        assertEquals(ProbeChange.Kind.FOUND_AND_WRITTEN, change.kind());
        assertEquals(LocalDate.of(2024, 10, 7), change.on());
        assertTrue(!change.latest().isAfter(LocalDate.of(2024, 10, 15)), change.toString());
        // The story lowers the probe's reading by 2.2 °C and lets it lag 5 s less: about 0.7 °C at the pace of first
        // crack.
        change.offsets().forEach(o -> assertTrue(o.interval(0.90).upper() < 0, o.toString()));
        assertTrue(change.toString().contains("90 % date set"), change.toString());
    }

    @Test
    void saysThatAnEntryIsMissingAndThatAnEntryIsNotSeen() {
        ProbePeriods periods = ProbePeriods.of(with(List.of(probe(LocalDate.of(2024, 4, 2)))));
        assertEquals(
                List.of(ProbeChange.Kind.WRITTEN_WITHOUT_CHANGE, ProbeChange.Kind.FOUND_WITHOUT_ENTRY),
                periods.changes().stream().map(ProbeChange::kind).toList());
        String all = String.join("\n", periods.sentences());
        assertTrue(
                all.contains(
                        "no step is visible in the readings by themselves. No change that matters was seen; readings at first crack are moved"),
                all);
        assertTrue(all.contains("The upkeep names no work on a probe around then"), all);
        assertTrue(all.contains("write it down"), all);
    }

    @Test
    void putsReadingsOnTheScaleOfTheLatestProbeWithOneSharedError() {
        ProbePeriods scale = ProbePeriods.of(HARBOUR);
        Batch old = HARBOUR.batch("H001");
        Batch latest = HARBOUR.batch("H240");
        Estimate added = scale.toToday(old, 190);
        assertTrue(added.estimate() < -0.3 && added.standardError() > 0.05, added.toString());
        assertEquals(added, scale.toToday(HARBOUR.batch("H002"), 190), "one error for all batches of a period");
        assertEquals(0, scale.toToday(latest, 190).estimate());
    }

    @Test
    void cannotTellOnAShortLogbookAndSaysWhatIsNeeded() {
        ProbePeriods periods = ProbePeriods.of(Logbook.open(Path.of("..", "datasets", "hillside")));
        assertTrue(periods.toString().startsWith("Cannot tell whether a probe changed"), periods.toString());
        String all = String.join("\n", periods.sentences());
        assertTrue(all.contains("on 10 roast days and 30 batches"), all);
    }

    @Test
    void inventsNoPeriodWhereThereIsNone() {
        // Short version of the study: the full table and its command stand in docs/measurements/drift.md.
        ProbeStudy.Counts none = ProbeStudy.run(ProbeStudy.cell(0.5, 0, 0.8, 1.5), 8, 77);
        assertTrue(none.invented() <= 2, none.toString());
    }

    @Test
    void findsAMovedProbeWithinTwoRoastDays() {
        ProbeStudy.Counts moved = ProbeStudy.run(ProbeStudy.cell(0, 2.5, 0.8, 1.5), 3, 78);
        assertTrue(moved.near() >= 3, moved.toString());
        assertTrue(moved.held() >= 2, moved.toString());
    }

    @Test
    void lotsThatFollowEachOtherHideTheProbe() {
        KnownDays truth = ProbeStudy.cell(0, 2.5, 0.8, 1.5);
        truth.lots = 2;
        truth.overlap = 0;
        KnownDays.Drawn drawn = truth.draw(3);
        // The step lies where the lot changes: no regression can tell the two.
        Indicator first = drawn.indicators.get(0);
        List<double[]> columns = first.rawColumns();
        DayRegression fit = DayRegression.fit(
                new WanderingDays(drawn.dayOfRow, drawn.dates), first.y().raw(), columns);
        assertTrue(Double.isNaN(fit.criterionWith(ChangeSearch.step(first, drawn.dayOfRow, truth.days / 2))));
    }

    @Test
    void offsetsFollowTheReadersUnit() {
        ProbePeriods celsius = ProbePeriods.of(HARBOUR);
        ProbePeriods fahrenheit = ProbePeriods.of(HARBOUR.in(TemperatureUnit.FAHRENHEIT));
        assertEquals(
                celsius.changes().get(0).offsets().get(0).estimate(),
                fahrenheit.changes().get(0).offsets().get(0).estimate(),
                1e-9,
                "°C inside");
        String words = fahrenheit.changes().get(0).words();
        double shown = 1.8 * celsius.changes().get(0).offsets().get(0).estimate();
        assertTrue(words.contains(String.format(java.util.Locale.ROOT, "turning point %.1f °F", shown)), words);
    }

    @Test
    void theOrderOfBatchesInTheFilesDoesNotMatter() {
        LogbookContents c = HARBOUR.contents();
        List<Batch> turned = new ArrayList<>(c.batches());
        java.util.Collections.reverse(turned);
        Logbook reversed = Logbook.of(c.toBuilder().batches(turned).build());
        assertEquals(
                ProbePeriods.of(HARBOUR).changes().toString(),
                ProbePeriods.of(reversed).changes().toString());
    }

    @Test
    void aCleanedProbeIsMeasuredAndCutsNothing() {
        List<Upkeep> cleaned = List.of(
                new Upkeep("drum on the quay", LocalDate.of(2024, 4, 2), "probe cleaned", Optional.empty()),
                new Upkeep("drum on the quay", LocalDate.of(2024, 6, 3), "air probe replaced", Optional.empty()),
                probe(LocalDate.of(2024, 10, 7)));
        ProbePeriods periods = ProbePeriods.of(with(cleaned));
        assertEquals(
                List.of(ProbeChange.Kind.OTHER_WORK, ProbeChange.Kind.FOUND_AND_WRITTEN),
                periods.changes().stream().map(ProbeChange::kind).toList());
        assertEquals(Optional.of(1), periods.number(HARBOUR.batch("H001")));
        assertEquals(Optional.of(2), periods.number(HARBOUR.batch("H240")));
        assertEquals(
                ProbePeriods.of(HARBOUR).toToday(HARBOUR.batch("H001"), 190),
                periods.toToday(HARBOUR.batch("H001"), 190),
                "cleaning costs the change none of its precision");
    }

    @Test
    void aFilteredLogbookHasThePeriodsOfTheWhole() {
        Logbook one = HARBOUR.ofLot("Cinder Ridge");
        assertEquals(ProbePeriods.of(HARBOUR).changes(), ProbePeriods.of(one).changes());
        assertEquals(
                ProbePeriods.of(HARBOUR).changes(),
                ProbePeriods.of(HARBOUR.between(LocalDate.of(2024, 11, 1), LocalDate.of(2024, 12, 1)))
                        .changes());
    }

    @Test
    void saysWhichProbeReadABatch() {
        ProbePeriods periods = ProbePeriods.of(HARBOUR);
        assertEquals("the probe of drum on the quay until 2024-10-07", periods.words(HARBOUR.batch("H001")));
        assertEquals("the probe of drum on the quay from 2024-10-07 on", periods.words(HARBOUR.batch("H240")));
        assertTrue(periods.isTodays(HARBOUR.batch("H240")));
        assertTrue(!periods.isTodays(HARBOUR.batch("H001")));
        assertTrue(!periods.key(HARBOUR.batch("H001")).equals(periods.key(HARBOUR.batch("H240"))));
    }

    @Test
    void onlyTheMachineWhoseProbeMovedHasTwoPeriods() {
        LogbookContents c = HARBOUR.contents();
        List<Batch> two = new ArrayList<>();
        for (Batch batch : c.batches()) {
            two.add(batch);
            two.add(copy(batch));
        }
        Logbook logbook = Logbook.of(c.toBuilder()
                .batches(two)
                .upkeep(List.of(probe(LocalDate.of(2024, 4, 2))))
                .build());
        ProbePeriods periods = ProbePeriods.of(logbook);
        assertEquals(
                List.of("drum on the quay", "drum in the yard"),
                periods.machines().stream().map(m -> m.days().machine()).toList());
        assertEquals(
                List.of(ProbeChange.Kind.WRITTEN_WITHOUT_CHANGE, ProbeChange.Kind.FOUND_WITHOUT_ENTRY),
                periods.changes(logbook.batch("H001")).stream()
                        .map(ProbeChange::kind)
                        .toList());
        assertEquals(
                List.of(ProbeChange.Kind.FOUND_WITHOUT_ENTRY),
                periods.changes(logbook.batch("H001-yard")).stream()
                        .map(ProbeChange::kind)
                        .toList());
    }

    @Test
    void oneHotReadingAndOneSlipOfThePenMakeNoStepAndHideNone(@TempDir Path folder) throws IOException {
        Truth truth = OtherRoastery.ordinary()
                .withSeed(5101)
                .withFaults(PlantedFaults.none()
                        .withProbeMoved(-2.8, 0.55, 1.1, PlantedFaults.Entry.NOT_WRITTEN)
                        .withHotProbe(1)
                        .withWrongCharges(1))
                .writeTo(folder);
        ProbePeriods periods = ProbePeriods.of(Logbook.open(folder));
        assertEquals(
                List.of(truth.probeMovedOn().orElseThrow()),
                periods.changes().stream().map(ProbeChange::on).toList());
        Logbook logbook = Logbook.open(folder);
        Batch first = logbook.batches().get(0);
        assertTrue(
                Math.abs(periods.toToday(first, 200).estimate()) + periods.doubt(first, 200) > 2,
                "moved, or in the error of places: never passed over");
    }
}
