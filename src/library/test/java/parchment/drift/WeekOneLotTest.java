package parchment.drift;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;

import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.IntFunction;
import java.util.function.IntToDoubleFunction;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import parchment.calendar.machine.MachineDays;
import parchment.display.ShortSentences;
import parchment.drift.found.WeekCause;
import parchment.logbook.Batch;
import parchment.logbook.Logbook;
import parchment.logbook.MarkKind;
import parchment.logbook.contents.LogbookContents;
import parchment.logbook.written.Upkeep;
import parchment.period.ProbeChange;
import parchment.quantity.Elapsed;
import parchment.stats.Estimate;

/** One lot on one machine: the probe and the beans cannot be told apart, and are one finding all the same. */
class WeekOneLotTest {
    private static final int BATCHES = 60;
    private static final String NEXT =
            "Look at the probe and its cable, and roast a second lot beside it to tell the two apart.";

    private static Batch batch(int i, String lot, LocalDate day, double off) {
        return WeekCausesTest.batch(i + 1, lot, day, off, 0).toBuilder()
                .roastedAt(day.atTime(2, 0).plusMinutes(20L * i).atOffset(ZoneOffset.UTC))
                .build();
    }

    /** Sixty batches, so many a day from 2025-01-01 on. */
    private static Logbook logbook(int perDay, IntFunction<String> lot, IntToDoubleFunction off) {
        return Logbook.of(LogbookContents.ofBatches(
                "built",
                IntStream.range(0, BATCHES)
                        .mapToObj(i -> batch(
                                i, lot.apply(i), LocalDate.of(2025, 1, 1).plusDays(i / perDay), off.applyAsDouble(i)))
                        .toList()));
    }

    private static List<WeekCause> of(WeekCause.Kind kind, Week week) {
        return week.causes().stream().filter(cause -> cause.kind() == kind).toList();
    }

    /** The last ten batches read nine degrees off, on ten days to one: a step that is found and past the week, one in it, and one too young to be found. */
    @ParameterizedTest
    @CsvSource({
        "1, -9, lower, the lot",
        "2, -9, lower, the lot",
        "3, 9, higher, the lot",
        "5, 9, higher, lot one",
        "10, -9, lower, lot one"
    })
    void tenBatchesNineDegreesOffAreOneCause(int perDay, double off, String side, String orElse) {
        Week week = Week.of(logbook(perDay, i -> "one", i -> i < BATCHES - 10 ? 0 : off));
        List<WeekCause> probes = of(WeekCause.Kind.PROBE, week);
        assertEquals(1, probes.size(), week.causes().toString());
        assertEquals(List.of(), of(WeekCause.Kind.DRIFT, week));
        WeekCause probe = probes.get(0);
        assertEquals("the bean probe of drum may read " + side + " (or it is " + orElse + ")", probe.what());
        assertEquals(WeekCause.Sure.PERHAPS, probe.sure());
        assertEquals(NEXT, probe.next());
        assertEquals(Optional.of(probe), week.told());
        ShortSentences.keptBy(week.inShort());
        // A time that is odd is a batch's own; what the probe read is not told of it again.
        for (WeekCause batch : of(WeekCause.Kind.BATCH, week)) {
            assertFalse(batch.explains().toString().matches(".*(temperature|faster|slower).*"), batch.toString());
        }
    }

    @Test
    void saysThatWithOneLotTheTwoCannotBeToldApart() {
        Week week = Week.of(logbook(10, i -> "one", i -> i < BATCHES - 10 ? 0 : 9));
        assertEquals(
                "60 batches in the week to 2025-01-06: the bean probe of drum may read higher (or it is lot one), while batch B52 was unlike.\n"
                        + "10 of 10 batches since show it; with one lot nobody can tell a moved probe from other beans.\n"
                        + NEXT,
                week.inShort().text().strip());
        assertEquals(
                LocalDate.of(2025, 1, 6), of(WeekCause.Kind.PROBE, week).get(0).since());
        assertEquals(
                "9 °C (5 to 13) at first crack",
                of(WeekCause.Kind.PROBE, week).get(0).size());
    }

    /** What two batches do is theirs; three are told as one cause. */
    @ParameterizedTest
    @CsvSource({"2,0", "3,1"})
    void threeBatchesMustReadSo(int last, int probes) {
        List<Batch> batches = new ArrayList<>();
        for (int i = 0; i < 40 + last; i++) {
            batches.add(batch(i, "one", LocalDate.of(2025, 1, 1).plusDays(i < 40 ? i / 8 : 9), i < 40 ? 0 : 15));
        }
        assertEquals(
                probes,
                of(WeekCause.Kind.PROBE, Week.of(Logbook.of(LogbookContents.ofBatches("built", batches))))
                        .size());
    }

    /** First crack is written a minute later and the turning point stays: a habit of marking does that, and no probe. */
    @Test
    void atOnePlaceAloneItIsNoProbe() {
        List<Batch> late = new ArrayList<>();
        for (Batch batch : logbook(10, i -> "one", i -> 0).batches()) {
            late.add(
                    late.size() < BATCHES - 10
                            ? batch
                            : batch.toBuilder()
                                    .writtenMark(MarkKind.FIRST_CRACK_START, Elapsed.seconds(560))
                                    .build());
        }
        Week week = Week.of(Logbook.of(LogbookContents.ofBatches("built", late)));
        assertEquals(List.of(), of(WeekCause.Kind.PROBE, week));
        assertEquals(
                1,
                of(WeekCause.Kind.DRIFT, week).stream()
                        .filter(cause -> cause.what().contains("first crack temperature"))
                        .count(),
                week.causes().toString());
    }

    /** Eight of the last ten batches are of the one lot and read higher; two of another lot on the same day do not, so the probe did not move. */
    @Test
    void anotherLotThatReadsAsEverSpeaksAgainstTheProbe() {
        Week week = Week.of(logbook(10, i -> i % 5 == 4 ? "two" : "one", i -> i < BATCHES - 10 || i % 5 == 4 ? 0 : 9));
        assertEquals(List.of(), of(WeekCause.Kind.PROBE, week), week.causes().toString());
        assertFalse(of(WeekCause.Kind.DRIFT, week).isEmpty());
    }

    private static final Estimate ALIKE = new Estimate("turning point", 1e-14, 1e-15, 40);
    private static final Estimate CRACK = new Estimate("first crack", -2.8, 0.3, Double.POSITIVE_INFINITY);

    private static WeekCause written(List<Estimate> offsets) {
        LocalDate on = LocalDate.of(2025, 1, 4);
        Logbook logbook =
                Logbook.of(LogbookContents.ofBatches(
                                "built", logbook(10, i -> "one", i -> 0).batches())
                        .toBuilder()
                        .upkeep(List.of(new Upkeep("drum", on, "probe moved", Optional.empty())))
                        .build());
        ProbeChange change =
                new ProbeChange("drum", ProbeChange.Kind.WRITTEN_WITHOUT_CHANGE, on, on, on, offsets, Double.NaN, "");
        return WeekProbeCause.of(change, MachineDays.of(logbook).get(0), logbook);
    }

    @Test
    void readingsThatAreExactlyAlikeAreNoStepOfNothing() {
        assertEquals(
                "exactly alike before and after at the turning point",
                written(List.of(ALIKE)).size());
        WeekCause both = written(List.of(ALIKE, CRACK));
        assertEquals("2.8 °C (2.3 to 3.3) lower at first crack", both.size());
        assertEquals(
                List.of(
                        "turning point: exactly alike before and after, which tells nothing of the probe",
                        "first crack: 2.8 °C (2.3 to 3.3) lower"),
                both.explains().subList(0, 2));
    }

    /** 90 % of a normal distribution lie within 1.645 standard deviations (table): 1.645 times 0.003 is 0.0049, times 0.0031 is 0.0051. */
    @ParameterizedTest
    @CsvSource({"0,0.003,true", "0,0.0031,false", "0.004,0.0005,true", "0.0045,0.0005,false", "-0.0045,0.0005,false"})
    void alikeIsWhatCannotBeShownWithItsError(double step, double error, boolean alike) {
        assertEquals(
                alike,
                ProbeChange.isExactlyAlike(new Estimate("turning point", step, error, Double.POSITIVE_INFINITY)));
    }
}
