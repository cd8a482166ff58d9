package parchment.drift;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Random;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import parchment.curve.Curve;
import parchment.display.ShortSentences;
import parchment.drift.found.WeekCause;
import parchment.logbook.Batch;
import parchment.logbook.Logbook;
import parchment.logbook.MarkKind;
import parchment.logbook.Quantity;
import parchment.logbook.contents.LogbookContents;
import parchment.logbook.written.BatchConditions;
import parchment.quantity.Elapsed;
import parchment.quantity.Mass;
import parchment.quantity.Unit;

class WeekCausesTest {
    private static final double FAR = -7;
    private static final double HARDLY = -0.8;
    private static final double[] QUIET = {0.3, -0.8, 0.5, 1.2, -0.4, -1.1, 0.9, 0.1, -0.6, 0.2};

    /**
     * A made-up batch that turns at about 85 °C and cracks at about 196 °C.
     *
     * @param off what the bean probe reads too high, °C
     * @param longer by how much development is longer, s
     */
    static Batch batch(int number, String lot, LocalDate day, double off, double longer) {
        Random noise = new Random(900 + number);
        int drop = (int) (600 + longer + 4 * noise.nextGaussian());
        int size = (drop + 80) / 5;
        double[] seconds = new double[size];
        double[] values = new double[size];
        double level = noise.nextGaussian();
        for (int i = 0; i < size; i++) {
            double s = -60 + 5 * i;
            seconds[i] = s;
            values[i] = off
                    + level
                    + (s < 0 ? 190 : s < 75 ? 190 - 105 * s / 75 : 85 + 165 * (1 - Math.exp(-(s - 75) / 420)));
        }
        return Batch.named("B" + number)
                .lot(lot)
                .machine("drum")
                .roastedAt(day.atTime(9, 0).plusMinutes(20L * number).atOffset(ZoneOffset.UTC))
                .conditions(new BatchConditions(
                        Optional.of(Mass.kilograms(5)),
                        Optional.empty(),
                        Optional.empty(),
                        Optional.empty(),
                        Optional.empty(),
                        OptionalDouble.empty(),
                        OptionalDouble.empty(),
                        Optional.empty()))
                .writtenMark(MarkKind.FIRST_CRACK_START, Elapsed.seconds(500 + 3 * noise.nextGaussian()))
                .writtenMark(MarkKind.DROP, Elapsed.seconds(drop))
                .curve(Quantity.BEAN_TEMPERATURE, Curve.of("bean temperature", Unit.TEMPERATURE, seconds, values))
                .build();
    }

    /** 24 batches of the given lots, four on each sixth day: too few days to search for a step of the probe. */
    private static Logbook lastDayOff(List<String> lots, double off, double longer) {
        List<Batch> batches = new ArrayList<>();
        for (int i = 0; i < 24; i++) {
            batches.add(batch(
                    i + 1,
                    lots.get(i % lots.size()),
                    LocalDate.of(2025, 1, 1).plusDays(7L * (i / 4)),
                    i < 20 ? 0 : off,
                    i < 20 ? 0 : longer));
        }
        return Logbook.of(LogbookContents.ofBatches("built", batches));
    }

    /** First crack, turning point and drop of four batches of two lots read 12 °C lower: one cause, and no odd batch beside it. */
    @ParameterizedTest
    @CsvSource({"-12,lower", "12,higher"})
    void aProbeThatMovedOnTheLastDayIsOneCauseForEverySignOfEveryLot(double off, String side) {
        Week week = Week.of(lastDayOff(List.of("one", "two"), off, 0));
        assertEquals(1, week.causes().size(), week.causes().toString());
        WeekCause cause = week.causes().get(0);
        assertEquals(WeekCause.Kind.PROBE, cause.kind());
        assertEquals(WeekCause.Sure.PERHAPS, cause.sure());
        assertEquals("the bean probe of drum reads " + side + " than is usual in 2 lots", cause.what());
        assertEquals(LocalDate.of(2025, 2, 5), cause.since());
        assertTrue(cause.size().matches("1[0-4] °C \\(.*\\) at first crack"), cause.size());
        assertEquals(
                "4 of 4 batches since show it; too few roast days to tell a moved probe from something else.",
                cause.howSure());
        assertEquals("Look at the probe and its cable, and write into upkeep.csv what was done.", cause.next());
        String explained = String.join("; ", cause.explains());
        for (int i = 21; i <= 24; i++) {
            assertTrue(explained.contains("batch B" + i + ": first crack temperature"), explained);
            assertTrue(explained.contains("batch B" + i + ": drop temperature"), explained);
        }
        // What the probe explains is no reason to cup a batch.
        assertEquals(List.of(), week.worthCupping());
        ShortSentences.keptBy(week.inShort());
        assertTrue(
                week.inShort().found().endsWith(cause.what() + "."),
                week.inShort().found());
    }

    /** Where one lot alone was roasted, it is the probe or the lot; beside another lot that reads as ever it is the lot's own number. */
    @ParameterizedTest
    @CsvSource({
        "one,The bean probe of drum may read lower (or it is lot one)",
        "two,The first crack temperature of lot one lies below what was usual"
    })
    void inOneLotAloneTheProbeIsNotBlamedByItself(String other, String told) {
        List<Batch> batches = new ArrayList<>();
        for (int i = 0; i < 24; i++) {
            batches.add(batch(
                    i + 1,
                    i % 4 == 3 ? other : "one",
                    LocalDate.of(2025, 1, 1).plusDays(7L * (i / 4)),
                    i < 20 || other.equals("two") && i % 4 == 3 ? 0 : -12,
                    0));
        }
        List<WeekCause> causes =
                Week.of(Logbook.of(LogbookContents.ofBatches("built", batches))).causes();
        assertEquals(
                1,
                causes.stream()
                        .filter(cause -> cause.toString().startsWith(told + " since"))
                        .count(),
                causes.toString());
        assertEquals(
                other.equals("one") ? 1 : 0,
                causes.stream()
                        .filter(cause -> cause.kind() == WeekCause.Kind.PROBE)
                        .count(),
                causes.toString());
    }

    @Test
    void whatIsOddInSeveralBatchesAlikeIsToldOnce() {
        Week week = Week.of(lastDayOff(List.of("one", "two"), 0, 60));
        List<WeekCause> development = week.causes().stream()
                .filter(cause -> cause.what().contains("development time"))
                .toList();
        assertEquals(1, development.size(), week.causes().toString());
        assertEquals(
                "the development time of 4 batches (B21, B22, B23, B24) lies above what is usual for their lot",
                development.get(0).what());
        assertTrue(
                development.get(0).size().matches("\\d+ to \\d+ s, batch by batch"),
                development.get(0).size());
        assertEquals(
                "4 of 4 batches of the week show it; of 100 ordinary ones about five look odd.",
                development.get(0).howSure());
        assertTrue(
                week.causes().stream()
                        .noneMatch(cause ->
                                cause.sentence().contains("drop time 6") && cause.kind() == WeekCause.Kind.BATCH),
                week.causes().toString());
    }

    /** Two lots that lose more since the same day are one sentence, each with its own size under it. */
    @Test
    void lotsThatDriftTheSameWayAreOneSentence() {
        List<BuiltBatch> rows = new ArrayList<>();
        for (int i = 0; i < 120; i++) {
            double more = i < 40 ? 0 : i % 2 == 0 ? 4 : 6;
            rows.add(BuiltBatch.losing(0.14 + 0.002 * (QUIET[(i / 2 * 7) % 10] + more))
                    .withLot(i % 2 == 0 ? "one" : "two"));
        }
        List<WeekCause> causes = Week.of(BuiltBatch.logbook(rows)).causes();
        assertEquals(1, causes.size(), causes.toString());
        assertEquals(
                "The mass loss of 2 lots (one, two) lies above what was usual since 2025-02-10: 0.8 to 1.2 percentage points, lot by"
                        + " lot.",
                causes.get(0).sentence());
        assertEquals(2, causes.get(0).explains().size());
        assertTrue(
                causes.get(0)
                        .explains()
                        .get(1)
                        .matches(
                                "mass loss of lot two: 1\\.2 percentage points \\(.* to .*\\) above what was usual in the 20 batches to"
                                        + " B40, since batch B42 of 2025-02-11 \\(40 batches\\)"),
                causes.get(0).explains().toString());
    }

    private static List<String> kinds(List<BuiltBatch> rows) {
        return Week.of(BuiltBatch.logbook(rows)).causes().stream()
                .map(cause -> cause.kind().name())
                .toList();
    }

    /** What two batches do is theirs; with the third the number has moved. */
    @ParameterizedTest
    @CsvSource({"2,BATCH BATCH", "3,DRIFT"})
    void aNumberMovedWhenThreeBatchesSaySo(int last, String kinds) {
        List<BuiltBatch> rows = new ArrayList<>();
        for (int i = 0; i < 20 + last; i++) {
            rows.add(BuiltBatch.losing(i < 20 ? 0.14 + 0.002 * QUIET[(i * 7) % 10] : 0.17));
        }
        assertEquals(kinds, String.join(" ", kinds(rows)));
    }

    /** One batch each of two lots are two odd batches; of three lots they are one cause. */
    @ParameterizedTest
    @CsvSource({"2,BATCH BATCH", "3,DRIFT"})
    void threeBatchesThatAreOddAlikeAreOneCause(int last, String kinds) {
        List<BuiltBatch> rows = new ArrayList<>();
        for (int i = 0; i < 36 + last; i++) {
            rows.add(BuiltBatch.losing(i < 36 ? 0.14 + 0.002 * QUIET[(i / 3 * 7) % 10] : 0.17)
                    .withLot("lot " + i % 3));
        }
        assertEquals(kinds, String.join(" ", kinds(rows)));
    }

    @Test
    void aBatchIsToldWithWhatIsUsualAndOnceOnly() {
        List<BuiltBatch> rows = IntStream.range(0, 12)
                .mapToObj(i -> BuiltBatch.losing(0.14 + 0.002 * QUIET[(i * 7) % 10]))
                .collect(Collectors.toCollection(ArrayList::new));
        rows.add(BuiltBatch.losing(0.25));
        List<WeekCause> causes = Week.of(BuiltBatch.logbook(rows)).causes();
        assertEquals(1, causes.size(), causes.toString());
        assertTrue(
                causes.get(0)
                        .toString()
                        .matches(
                                "Batch B13 of lot one was unlike the others on 2025-01-13: mass loss 25\\.0 %, where 1[0-3]\\.\\d to"
                                        + " 1[4-6]\\.\\d % is usual\\. Cup it beside a usual batch before you decide: unlike is not bad\\."),
                causes.toString());
    }

    /** Two of eight batches of the last day read far lower and the others hardly: their mean may be nothing, and the probe is only a weak sign. */
    @Test
    void aProbeWhoseMoveMayBeNothingIsAWeakSignAndStandsLast() {
        List<Batch> batches = new ArrayList<>();
        for (int i = 0; i < 28; i++) {
            String lot = i % 2 == 0 ? "one" : "two";
            LocalDate day = LocalDate.of(2025, 1, 1).plusDays(7L * Math.min(5, i / 4));
            batches.add(batch(i + 1, lot, day, i < 20 ? 0 : i < 22 ? FAR : HARDLY, 0));
        }
        Week week = Week.of(Logbook.of(LogbookContents.ofBatches("built", batches)));
        List<WeekCause> probes = week.causes().stream()
                .filter(cause -> cause.kind() == WeekCause.Kind.PROBE)
                .toList();
        assertEquals(1, probes.size(), week.causes() + " " + week.batches());
        assertEquals(WeekCause.Sure.WEAK, probes.get(0).sure(), probes.get(0).size());
        assertEquals(probes.get(0), week.causes().get(week.causes().size() - 1));
        assertTrue(!week.inShort().text().contains("bean probe"), week.inShort().text());
    }
}
