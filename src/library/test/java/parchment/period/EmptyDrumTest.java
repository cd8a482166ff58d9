package parchment.period;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import parchment.curve.Curve;
import parchment.logbook.Batch;
import parchment.logbook.Logbook;
import parchment.logbook.MarkKind;
import parchment.logbook.Quantity;
import parchment.logbook.contents.LogbookContents;
import parchment.phase.Phases;
import parchment.quantity.Elapsed;
import parchment.quantity.Unit;

/** Bean probe against air probe in the empty drum: where the charge is aimed at by the bean probe's reading, the only place beside first crack that shows a move. */
class EmptyDrumTest {
    private static final int MOVED = 10;
    private static final LocalDate DAY = BuiltProbe.day(MOVED);

    private static BuiltProbe hiddenAtTheTurningPoint(double crack) {
        return new BuiltProbe(22).stepAtFirstCrackOnly(MOVED, crack);
    }

    private static List<ProbeChange.Kind> kinds(ProbePeriods periods) {
        return periods.changes().stream().map(ProbeChange::kind).toList();
    }

    @Test
    void withoutTheEmptyDrumAMoveThatTheTurningPointHidesIsOnePlaceOnly() {
        assertEquals(
                List.of(ProbeChange.Kind.ONE_PLACE_ONLY),
                kinds(hiddenAtTheTurningPoint(-2.8).periods()));
    }

    @Test
    void theEmptyDrumMakesItTheProbes() {
        ProbePeriods periods =
                hiddenAtTheTurningPoint(-2.8).stepInTheEmptyDrum(MOVED, -2.8).periods();
        assertEquals(List.of(ProbeChange.Kind.FOUND_WITHOUT_ENTRY), kinds(periods));
        ProbeChange change = periods.changes().get(0);
        assertEquals(DAY, change.on());
        assertEquals(
                List.of("turning point", "first crack", "empty drum"),
                change.offsets().stream().map(offset -> offset.name()).toList());
        assertEquals(-2.8, change.offsets().get(2).estimate(), 0.3);
        assertTrue(change.words().contains("empty drum -2."), change.words());
    }

    @Test
    void readingsAreBroughtToTodayByWhatTheBeansShowAndNotByTheEmptyDrum() {
        Logbook logbook =
                hiddenAtTheTurningPoint(-2.8).stepInTheEmptyDrum(MOVED, -5).logbook();
        ProbePeriods periods = ProbePeriods.of(logbook);
        assertEquals(List.of(ProbeChange.Kind.FOUND_WITHOUT_ENTRY), kinds(periods));
        assertEquals(-2.8, periods.toToday(logbook.batch("B1"), 205).estimate(), 0.3);
    }

    @Test
    void aStepInTheEmptyDrumAloneIsNotTheBeanProbes() {
        BuiltProbe built = new BuiltProbe(22).stepInTheEmptyDrum(MOVED, -4);
        Logbook logbook = built.logbook();
        ProbePeriods periods = ProbePeriods.of(logbook);
        assertEquals(List.of(ProbeChange.Kind.NOT_IN_THE_BEANS), kinds(periods));
        assertEquals(List.of(), periods.doubts(logbook.batches()), "readings in the beans stand");
        assertEquals(0, periods.doubt(logbook.batch("B1"), 205));
        assertEquals(0, periods.toToday(logbook.batch("B1"), 205).estimate());
        assertEquals(Optional.of(1), periods.number(logbook.batch("B66")));
        String words = periods.changes().get(0).words();
        assertTrue(
                words.contains(
                        "It shows in the empty drum only, as the bean probe reads against the air probe: the air probe, or another"
                                + " way of heating the drum before charge, is the likelier reason. Readings in the beans are taken as they stand."),
                words);
    }

    @Test
    void workOnTheAirProbeExplainsAStepInTheEmptyDrum() {
        ProbePeriods periods = new BuiltProbe(22)
                .stepInTheEmptyDrum(MOVED, -4)
                .written("air probe replaced", DAY)
                .periods();
        assertEquals(List.of(), kinds(periods));
    }

    @Test
    void workOnTheAirProbeOfAnotherMachineExplainsNothing() {
        ProbePeriods periods = new BuiltProbe(22)
                .stepInTheEmptyDrum(MOVED, -4)
                .written("other drum", "air probe replaced", DAY)
                .periods();
        assertEquals(List.of(ProbeChange.Kind.NOT_IN_THE_BEANS), kinds(periods));
    }

    @Test
    void aWrittenMoveThatShowsInTheEmptyDrumOnlyCutsAndSaysWhatElseItMayBe() {
        ProbePeriods periods = new BuiltProbe(22)
                .stepInTheEmptyDrum(MOVED, -4)
                .written("bean probe moved", DAY)
                .periods();
        assertEquals(List.of(ProbeChange.Kind.FOUND_AND_WRITTEN), kinds(periods));
        String words = periods.changes().get(0).words();
        assertTrue(
                words.contains(
                        "But it shows in the empty drum only, against the air probe: the air probe, or another way of heating the drum"
                                + " before charge, could be the reason as well."),
                words);
    }

    @Test
    void readsTheMedianFromFortyToThreeSecondsBeforeCharge() {
        // At -41 and at -2 something else is read; the slip at -20 moves no median.
        double[] seconds = {-41, -40, -30, -20, -10, -3, -2, 0, 10, 20, 30};
        assertEquals(201, read(seconds, new double[] {0, 200, 201, 999, 201, 200, 0, 0, 0, 0, 0}));
    }

    @Test
    void twoReadingsAreTooFewAndThreeAreEnough() {
        assertEquals(Double.NaN, read(new double[] {-30, -20, 0, 5}, new double[] {200, 200, 190, 170}));
        assertEquals(200, read(new double[] {-30, -20, -10, 0, 5}, new double[] {200, 200, 200, 190, 170}));
    }

    @Test
    void withoutAnAirProbeNothingIsRead() {
        Logbook logbook = new BuiltProbe(1).logbook();
        double[] above = EmptyDrum.beanAboveAir(phases(logbook));
        assertTrue(IntStream.range(0, above.length).allMatch(i -> Double.isNaN(above[i])));
    }

    private static List<Phases> phases(Logbook logbook) {
        return logbook.batches().stream().map(Phases::of).toList();
    }

    private static double read(double[] seconds, double[] values) {
        Batch batch = Batch.named("one")
                .curve(Quantity.BEAN_TEMPERATURE, Curve.of("bean temperature", Unit.TEMPERATURE, seconds, values))
                .writtenMark(MarkKind.CHARGE, Elapsed.seconds(0))
                .build();
        Logbook logbook = Logbook.of(LogbookContents.ofBatches("one", List.of(batch)));
        return EmptyDrum.before(Quantity.BEAN_TEMPERATURE, phases(logbook))[0];
    }
}
