package parchment.drift;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.hipparchus.distribution.continuous.TDistribution;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import parchment.curve.Curve;
import parchment.drift.found.WeekCause;
import parchment.feature.Features;
import parchment.logbook.Batch;
import parchment.logbook.Logbook;
import parchment.logbook.Quantity;
import parchment.logbook.contents.LogbookContents;
import parchment.logbook.written.Upkeep;
import parchment.quantity.Unit;
import parchment.stats.Estimate;

/** What is put down to a bean probe and what is not: by machine, day and side. */
class WeekAttributionTest {
    private static final LocalDate LAST = LocalDate.of(2025, 2, 5);

    private final List<Batch> batches = new ArrayList<>();
    private final List<Upkeep> upkeep = new ArrayList<>();

    /**
     * Adds a made-up batch that turns at about 85 °C and cracks at about 196 °C.
     *
     * @param off what the bean probe reads too high, °C
     * @param longer by how much development is longer, s
     */
    private void add(String machine, String lot, LocalDate day, double off, double longer) {
        int number = batches.size() + 1;
        batches.add(WeekCausesTest.batch(number, lot, day, off, longer).toBuilder()
                .machine(machine)
                .roastedAt(day.atTime(1, 0).plusMinutes(10L * number).atOffset(ZoneOffset.UTC))
                .build());
    }

    /** Ten batches each of two lots on a machine, on five days a week apart, the last of them before the week. */
    private void quiet(String machine) {
        for (int i = 0; i < 20; i++) {
            add(machine, lot(i), LocalDate.of(2025, 1, 1).plusDays(7L * (i / 4)), 0, 0);
        }
    }

    private static String lot(int i) {
        return i % 2 == 0 ? "one" : "two";
    }

    private Logbook logbook() {
        return Logbook.of(LogbookContents.ofBatches("built", batches).toBuilder()
                .upkeep(upkeep)
                .build());
    }

    private List<WeekCause> causes(WeekCause.Kind kind) {
        return Week.of(logbook()).causes().stream()
                .filter(cause -> cause.kind() == kind)
                .toList();
    }

    private WeekCause probe() {
        List<WeekCause> probes = causes(WeekCause.Kind.PROBE);
        assertEquals(1, probes.size(), Week.of(logbook()).causes().toString());
        return probes.get(0);
    }

    private void lastDay(double... off) {
        for (int i = 0; i < off.length; i++) {
            add("drum", lot(i), LAST, off[i], 0);
        }
    }

    /** A batch dropped a minute late four days before the probe moved: its drop is its own. */
    @ParameterizedTest
    @CsvSource({"60,12", "-60,-12"})
    void whatWasOddBeforeTheProbeMovedIsNotPutDownToIt(double longer, double off) {
        quiet("drum");
        add("drum", "one", LocalDate.of(2025, 2, 1), 0, longer);
        lastDay(off, off, off, off);
        WeekCause probe = probe();
        assertEquals(LAST, probe.since());
        assertEquals(
                "4 of 4 batches since show it; too few roast days to tell a moved probe from something else.",
                probe.howSure());
        assertFalse(
                probe.explains().toString().contains("batch B21:"),
                probe.explains().toString());
        List<WeekCause> odd = causes(WeekCause.Kind.BATCH);
        assertEquals(1, odd.size(), odd.toString());
        assertEquals("batch B21 of lot one was unlike the others", odd.get(0).what());
        assertTrue(odd.get(0).explains().toString().contains("drop"), odd.toString());
    }

    /** Readings on both sides of a change that is known are on one scale: a late drop after it stays the batch's own. */
    @Test
    void afterAKnownChangeOfTheProbeALateDropIsTheBatchsOwn() {
        LocalDate changed = LocalDate.of(2025, 2, 2);
        for (int i = 0; i < 60; i++) {
            LocalDate day = LocalDate.of(2025, 1, 10).plusDays(i / 2);
            boolean after = !day.isBefore(changed);
            add("drum", lot(i), day, after ? 12 : 0, i == 58 ? 60 : 0);
        }
        upkeep.add(new Upkeep("drum", changed, "probe moved", Optional.empty()));
        WeekCause change = causes(WeekCause.Kind.PROBE).get(0);
        assertEquals("the bean probe of drum was changed and reads higher", change.what());
        assertFalse(
                change.explains().toString().contains("batch B"),
                change.explains().toString());
        assertTrue(
                causes(WeekCause.Kind.BATCH).stream()
                        .filter(cause -> cause.what().startsWith("batch B59 "))
                        .anyMatch(cause -> cause.explains().toString().contains("drop")),
                Week.of(logbook()).causes().toString());
    }

    /** Three of four are three quarters and enough; two are not. */
    @Test
    void threeQuartersOfTheBatchesMustLieToTheSide() {
        quiet("drum");
        lastDay(12, 12, 12, -3);
        assertEquals(
                "3 of 4 batches since show it; too few roast days to tell a moved probe from something else.",
                probe().howSure());
    }

    @Test
    void halfOfTheBatchesAreNotEnough() {
        quiet("drum");
        lastDay(12, 12, -3, -3);
        assertEquals(List.of(), causes(WeekCause.Kind.PROBE));
    }

    @Test
    void theProbeMovedOnTheFirstOfTheDaysThatShowIt() {
        quiet("drum");
        for (int i = 0; i < 4; i++) {
            add("drum", lot(i), i < 2 ? LAST.minusDays(2) : LAST, 12, 0);
        }
        assertEquals(LAST.minusDays(2), probe().since());
        assertTrue(probe().howSure().startsWith("4 of 4 batches since"), probe().howSure());
    }

    /** One lot on each of two machines is no sign of one probe, and what another machine reads is not put down to it. */
    @Test
    void eachMachineHasItsOwnProbe() {
        quiet("drum");
        quiet("second drum");
        add("drum", "one", LAST, 12, 0);
        add("second drum", "two", LAST, 12, 0);
        assertEquals(List.of(), causes(WeekCause.Kind.PROBE));
    }

    @Test
    void whatAnotherMachineOrTheOtherSideReadsIsNotExplained() {
        quiet("drum");
        quiet("second drum");
        lastDay(12, 12, 12, -12);
        add("second drum", "one", LAST, 12, 0);
        WeekCause probe = probe();
        assertEquals("the bean probe of drum reads higher than is usual in 2 lots", probe.what());
        assertTrue(probe.howSure().startsWith("3 of 4 batches since"), probe.howSure());
        String explained = probe.explains().toString();
        assertTrue(explained.contains("batch B43: drop temperature"), explained);
        assertFalse(explained.contains("batch B44:"), explained);
        assertFalse(explained.contains("batch B45:"), explained);
    }

    /** The mean of four batches of one day, with the spread that the usual range has and its degrees of freedom. */
    @Test
    void theSizeHasTheErrorOfOneDay() {
        quiet("drum");
        lastDay(12, 12, 12, 12);
        List<Usual.Compared> crack = Week.of(logbook()).batches().stream()
                .flatMap(usual -> usual.compared().stream())
                .filter(one -> one.feature()
                        .name()
                        .equals(Features.firstCrackTemperature().name()))
                .toList();
        assertEquals(4, crack.size());
        double mean = 0;
        double variance = 0;
        int fewest = Integer.MAX_VALUE;
        for (Usual.Compared one : crack) {
            double t = new TDistribution(one.others() - 1.0)
                    .inverseCumulativeProbability((1 + one.range().level()) / 2);
            double spread = (one.range().upper() - one.range().lower()) / 2 / t;
            mean += (one.value() - one.usual()) / 4;
            variance += spread * spread / 4;
            fewest = Math.min(fewest, one.others());
        }
        Estimate size = new Estimate("size", mean, Math.sqrt(variance), fewest - 1.0);
        assertEquals(
                SizeWords.of(size, Unit.TEMPERATURE_STEP, logbook().readerUnit()) + " at first crack", probe().size());
    }

    @Test
    void aBatchIsHeldAgainstThoseOfItsOwnMachine() {
        quiet("drum");
        quiet("second drum");
        Usual usual = Usual.of(batches.get(0), logbook());
        assertEquals(9, usual.others().size());
        assertTrue(usual.others().stream()
                .allMatch(other -> other.machine().orElseThrow().equals("drum")));
    }

    /** A curve that stands apart from others of its probe is unlike although nothing of its lot can be held against it. */
    @Test
    void onlyWhatWasHeldAgainstItsLotIsCounted() {
        for (int i = 0; i < 20; i++) {
            add("drum", "lot " + i % 4, LocalDate.of(2025, 1, 1).plusDays(7L * (i / 4)), 0, 0);
        }
        add("drum", "new", LAST, 0, 0);
        Batch odd = batches.remove(batches.size() - 1);
        Curve plain = odd.curve(Quantity.BEAN_TEMPERATURE).orElseThrow();
        double[] seconds = plain.seconds();
        double[] values = plain.values();
        for (int i = 0; i < seconds.length; i++) {
            if (seconds[i] > 75) {
                // It climbs as the others did, but for a minute in which it hardly does.
                double s = seconds[i] < 175 ? seconds[i] : Math.max(175 + (seconds[i] - 175) / 50, seconds[i] - 60);
                values[i] = 85 + 165 * (1 - Math.exp(-(s - 75) / 420));
            }
        }
        batches.add(odd.toBuilder()
                .curve(Quantity.BEAN_TEMPERATURE, Curve.of("bean temperature", Unit.TEMPERATURE, seconds, values))
                .build());
        Week week = Week.of(logbook());
        assertEquals(1, week.odd().size(), week.batches().toString());
        assertEquals(
                "It has no eight others of its lot to be held against; the curve alone says so.",
                week.inShort().howSure());
        String svg = WeekPicture.of(week).chart().svg().orElseThrow();
        assertTrue(svg.contains("0 of 1 batch drawn; 1 cannot be held against eight others of its lot."), svg);
    }
}
