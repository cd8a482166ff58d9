package parchment.drift;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import parchment.calendar.machine.MachineDays;
import parchment.drift.found.WeekCause;
import parchment.feature.Features;
import parchment.logbook.Batch;
import parchment.logbook.Logbook;
import parchment.logbook.contents.BlendPart;
import parchment.logbook.contents.BlendPart.Blended;
import parchment.logbook.contents.LogbookContents;
import parchment.logbook.contents.LogbookException;
import parchment.logbook.written.Upkeep;
import parchment.period.ProbeChange;
import parchment.quantity.Mass;
import parchment.stats.Estimate;

/** Machines, lots and days of a week beside each other; blends within blends. */
class WeekMachinesTest {
    private static final double[] QUIET = {0.3, -0.8, 0.5, 1.2, -0.4, -1.1, 0.9, 0.1, -0.6, 0.2};

    private static BuiltBatch quiet(int i) {
        return BuiltBatch.losing(0.14 + 0.002 * QUIET[(i * 7) % 10]);
    }

    /** So many batches a day apart on a machine, the last of them on 2025-01-31. */
    private static List<Batch> onDays(String machine, int number) {
        List<Batch> batches = new ArrayList<>();
        for (int i = 0; i < number; i++) {
            batches.add(Batch.named(machine + i)
                    .machine(machine)
                    .lot("one")
                    .roastedAt(LocalDate.of(2025, 1, 31)
                            .minusDays(number - 1L - i)
                            .atTime(12, 0)
                            .atOffset(ZoneOffset.UTC))
                    .build());
        }
        return batches;
    }

    private static Logbook logbook(List<Batch> batches, Upkeep... work) {
        return Logbook.of(LogbookContents.ofBatches("built", batches).toBuilder()
                .upkeep(List.of(work))
                .build());
    }

    private static Upkeep moved(String machine, LocalDate day) {
        return new Upkeep(machine, day, "probe moved", Optional.empty());
    }

    /** Both probes were changed on one day: ten roast days ago on the one machine, one on the other. */
    @Test
    void aChangeOfOneMachineDoesNotHideThatOfAnotherOnTheSameDay() {
        LocalDate day = LocalDate.of(2025, 1, 20);
        List<Batch> batches = new ArrayList<>(onDays("often", 25));
        batches.addAll(onDays("seldom", 1));
        for (int i = 0; i < 5; i++) {
            batches.add(Batch.named("early" + i)
                    .machine("seldom")
                    .lot("one")
                    .roastedAt(LocalDate.of(2025, 1, 10 + i).atTime(12, 0).atOffset(ZoneOffset.UTC))
                    .build());
        }
        Logbook logbook = logbook(batches, moved("often", day), moved("seldom", day));
        Week week = Week.of(logbook);
        assertEquals(
                List.of("often"),
                week.earlierSteps().stream().map(ProbeChange::machine).toList());
        List<WeekCause> told = week.causes().stream()
                .filter(cause -> cause.kind() == WeekCause.Kind.PROBE)
                .toList();
        assertEquals(1, told.size(), told.toString());
        assertTrue(told.get(0).what().contains("probe of seldom"), told.toString());
    }

    @Test
    void aMachineThatTheWeekDidNotUseIsNoNewsOfIt() {
        List<Batch> batches = new ArrayList<>(onDays("drum", 12));
        for (int i = 0; i < 12; i++) {
            batches.add(Batch.named("old" + i)
                    .machine("idle")
                    .lot("one")
                    .roastedAt(LocalDate.of(2024, 12, 1 + i).atTime(12, 0).atOffset(ZoneOffset.UTC))
                    .build());
        }
        Logbook logbook = logbook(batches, moved("idle", LocalDate.of(2024, 12, 9)));
        Week week = Week.of(logbook);
        assertEquals(List.of(), week.causes());
        assertEquals(
                List.of("idle"),
                week.earlierSteps().stream().map(ProbeChange::machine).toList());
        // The fourth roast day from its end: news to a week that used it, and otherwise reckoned with.
        assertEquals(List.of(LocalDate.of(2024, 12, 9)), WeekProbes.earlier(logbook, onDays("drum", 7)));
        assertTrue(
                week.text().contains("Earlier changes of a bean probe, reckoned with and no news: 2024-12-09."),
                week.text());
    }

    @Test
    void cleaningAProbeIsNoNews() {
        Logbook logbook = logbook(
                onDays("drum", 12),
                new Upkeep("drum", LocalDate.of(2025, 1, 28), "cleaned the bean probe", Optional.empty()));
        assertEquals(List.of(), Week.of(logbook).causes());
    }

    private static WeekCause cause(ProbeChange.Kind kind, int earliest, int on, int latest) {
        Logbook logbook = logbook(onDays("drum", 31));
        ProbeChange change = new ProbeChange(
                "drum",
                kind,
                LocalDate.of(2025, 1, on),
                LocalDate.of(2025, 1, earliest),
                LocalDate.of(2025, 1, latest),
                List.of(new Estimate("first crack", -2.8, 0.3, Double.POSITIVE_INFINITY)),
                0.005,
                "");
        return WeekProbeCause.of(change, MachineDays.of(logbook).get(0), logbook);
    }

    @Test
    void theDaysBetweenWhichReadingsSteppedAreTold() {
        assertEquals(
                "Readings stepped after 2025-01-09 and by 2025-01-12 (nine of ten such ranges hold the day)",
                cause(ProbeChange.Kind.FOUND_WITHOUT_ENTRY, 10, 11, 12)
                        .explains()
                        .get(0));
        assertEquals(
                "Readings stepped after 2025-01-01 and by 2025-01-12 (nine of ten such ranges hold the day)",
                cause(ProbeChange.Kind.FOUND_WITHOUT_ENTRY, 1, 11, 12)
                        .explains()
                        .get(0));
    }

    @ParameterizedTest
    @CsvSource({"FOUND_WITHOUT_ENTRY, true", "FOUND_AND_WRITTEN, false"})
    void aStepWithAWrittenDayDidNotComeLater(ProbeChange.Kind kind, boolean later) {
        assertEquals(
                "2.8 °C (2.3 to 3.3) lower at first crack" + (later ? "; it may have come later" : ""),
                cause(kind, 28, 28, 28).size());
    }

    /** Seven rows fill the seven days of the week. */
    @ParameterizedTest
    @CsvSource({"7,[new]", "8,[]"})
    void aLotBegunOnTheWeeksFirstDayIsNew(int rows, String fresh) {
        List<BuiltBatch> built = new ArrayList<>();
        for (int i = 0; i < 9 + rows; i++) {
            built.add(i < 9 ? quiet(i) : quiet(i).withLot("new"));
        }
        assertEquals(fresh, Week.of(BuiltBatch.logbook(built)).newLots().toString());
    }

    private static final int STRETCH = 20;

    /** Batches of lot one after a quiet stretch that lose so many parts in a hundred more. */
    private static List<BuiltBatch> after(double... more) {
        List<BuiltBatch> rows = new ArrayList<>();
        for (int i = 0; i < STRETCH + more.length; i++) {
            double off = i < STRETCH ? 0 : more[i - STRETCH] / 100;
            rows.add(BuiltBatch.losing(0.14 + 0.002 * QUIET[(i * 7) % 10] + off));
        }
        return rows;
    }

    private static double[] parts(double first, int howOften, double then, int howOftenThen) {
        double[] parts = new double[howOften + howOftenThen];
        Arrays.fill(parts, 0, howOften, first);
        Arrays.fill(parts, howOften, parts.length, then);
        return parts;
    }

    private static Optional<WatchedShift> shift(List<BuiltBatch> rows, Set<String> names) {
        Logbook logbook = BuiltBatch.logbook(rows);
        return WatchedShift.of(Watch.of(logbook, Features.massLoss()), names);
    }

    private static Set<String> all(int rows) {
        Set<String> names = new HashSet<>();
        for (int i = 1; i <= rows; i++) {
            names.add("B" + i);
        }
        return names;
    }

    @Test
    void theLatestShiftThatIsStillThereIsToldFromItsOwnBatchesAlone() {
        List<BuiltBatch> turned = after(parts(-3, 8, 3, 12));
        WatchedShift shift = shift(turned, all(40)).orElseThrow();
        assertEquals(1, shift.side());
        assertEquals("B29", shift.from().name());
        assertEquals(12, shift.batches());
        // The eight batches that lost less belong neither to the stretch nor to the shift.
        assertEquals(0.03, shift.size().estimate(), 0.002);
        assertEquals(Optional.empty(), shift(turned, Set.of("B1", "B20")));
    }

    @Test
    void aShiftThatWentBackIsNotTold() {
        assertEquals(Optional.empty(), shift(after(parts(3, 5, -0.4, 10)), all(25)));
    }

    /** What one far batch does is its own, on whichever chart it shows. */
    @ParameterizedTest
    @CsvSource({"2,false", "3,true"})
    void aShiftIsOfThreeBatches(int batches, boolean told) {
        assertEquals(
                told, shift(after(parts(3, batches, 0, 0)), all(20 + batches)).isPresent());
    }

    /** Lot one moved; the odd batch of lot two is its own. */
    @Test
    void aLotThatMovedDoesNotExplainABatchOfAnother() {
        List<BuiltBatch> rows = new ArrayList<>();
        for (int i = 0; i < 80; i++) {
            boolean one = i % 2 == 0;
            rows.add((i == 77
                            ? BuiltBatch.losing(0.25)
                            : BuiltBatch.losing(0.14 + 0.002 * QUIET[(i / 2 * 7) % 10] + (one && i >= 50 ? 0.01 : 0)))
                    .withLot(one ? "one" : "two"));
        }
        List<WeekCause> causes = Week.of(BuiltBatch.logbook(rows)).causes();
        assertEquals(
                List.of(WeekCause.Kind.DRIFT, WeekCause.Kind.BATCH),
                causes.stream().map(WeekCause::kind).toList(),
                causes.toString());
        assertEquals(
                "the mass loss of lot one lies above what was usual",
                causes.get(0).what());
        assertEquals("batch B78 of lot two was unlike the others", causes.get(1).what());
    }

    /** A longer chart shows more shifts by luck; that of the longest is told. */
    @Test
    void ofSeveralLotsTheHighestChanceIsTold() {
        List<BuiltBatch> rows = new ArrayList<>();
        for (int i = 0; i < 90; i++) {
            boolean two = i % 3 == 2;
            double more = i >= 75 ? 0.01 : 0;
            rows.add(
                    BuiltBatch.losing(0.14 + 0.002 * QUIET[(i * 7) % 10] + more).withLot(two ? "two" : "one"));
        }
        Logbook logbook = BuiltBatch.logbook(rows);
        double one = Watch.of(logbook.ofLot("one"), Features.massLoss()).falseShifts();
        double two = Watch.of(logbook.ofLot("two"), Features.massLoss()).falseShifts();
        assertTrue(one > two, one + " " + two);
        WeekCause cause = Week.of(logbook).causes().get(0);
        assertTrue(cause.what().startsWith("the mass loss of 2 lots"), cause.what());
        String chance = WatchInShort.chanceOf("such a shift", one);
        assertFalse(chance.equals(WatchInShort.chanceOf("such a shift", two)), chance);
        assertEquals(chance.replaceFirst("\\.$", "; 2 were watched."), cause.howSure());
    }

    private static Logbook blends(int underTheBlend, BlendPart... parts) {
        List<BuiltBatch> rows = new ArrayList<>();
        for (int i = 0; i < 12 + underTheBlend; i++) {
            rows.add(BuiltBatch.losing(i / 2 % 2 == 0 ? 0.15 : 0.16)
                    .withGreen(5)
                    .withLot(i >= 12 ? "House" : i % 2 == 0 ? "kela" : "low garden"));
        }
        Logbook logbook = BuiltBatch.logbook(rows);
        return Logbook.of(logbook.contents().toBuilder().blends(List.of(parts)).build());
    }

    private static BlendPart part(String blend, String lot, double share, Blended blended) {
        return new BlendPart(blend, lot, share, blended);
    }

    private static String refused(BlendPart... parts) {
        Week week = Week.of(blends(0, parts));
        return assertThrows(LogbookException.class, () -> week.withOrder("House", Mass.kilograms(5)))
                .getMessage();
    }

    /** What cannot be laid out is refused when it is ordered. */
    @Test
    void aBlendRoastedAsOneWithAPartThatCannotBeTakenApartIsRefusedAtOnce() {
        assertEquals(
                "The blend 'Inner' has no share for 'kela' in blends.csv, so an order of it cannot be taken apart. Write the share of"
                        + " each part in per cent there, as in 60.",
                refused(
                        part("House", "Inner", 1, Blended.BEFORE_ROASTING),
                        part("Inner", "kela", Double.NaN, Blended.BEFORE_ROASTING)));
        assertEquals(
                "The blend 'House' is a part of itself in blends.csv (House > Inner), so an order of it cannot be taken apart. Name its"
                        + " lots there.",
                refused(
                        part("House", "Inner", 1, Blended.BEFORE_ROASTING),
                        part("Inner", "House", 1, Blended.BEFORE_ROASTING)));
    }

    @Test
    void sharesOfGreenCoffeeAreTakenInProportion() {
        Orders orders = Orders.none(blends(
                        0,
                        part("House", "kela", 0.6, Blended.BEFORE_ROASTING),
                        part("House", "low garden", 0.3, Blended.BEFORE_ROASTING)))
                .with("House", Mass.kilograms(8));
        assertEquals(10 * 2 / 3.0, orders.green().get("kela"), 1e-9);
        assertEquals(10 / 3.0, orders.green().get("low garden"), 1e-9);
    }

    /** What is written goes before what was roasted under the name. */
    @Test
    void aBlendOfRoastedCoffeesIsTakenApartThoughABatchBearsItsName() {
        Orders orders = Orders.none(blends(
                        3,
                        part("House", "kela", 0.5, Blended.AFTER_ROASTING),
                        part("House", "low garden", 0.5, Blended.AFTER_ROASTING)))
                .with("House", Mass.kilograms(8));
        assertEquals(
                List.of("kela", "low garden"),
                orders.needed().stream().map(GreenNeeded::lot).toList());
        assertFalse(orders.hasBlendRoastedAsOne());
    }

    /** Shares that add up to the whole within half a per cent are not spoken of, and a blend ordered twice is told once. */
    @ParameterizedTest
    @CsvSource({"0.396,false", "0.39,true"})
    void sharesThatMissTheWholeByRoundingAreNotSpokenOf(double second, boolean said) {
        Orders orders = Orders.none(blends(
                        0,
                        part("House", "kela", 0.6, Blended.AFTER_ROASTING),
                        part("House", "low garden", second, Blended.AFTER_ROASTING),
                        part("Other", "kela", 1, Blended.AFTER_ROASTING)))
                .with("House", Mass.kilograms(2))
                .with("Other", Mass.kilograms(2))
                .with("House", Mass.kilograms(3));
        assertEquals(2, orders.blends().size(), orders.blends().toString());
        assertEquals(
                said,
                orders.blends().get(0).contains("in proportion"),
                orders.blends().toString());
    }

    /** Charges that give the order to the gram leave nothing over, and not "-0.00 kg". */
    @Test
    void whatIsLeftOverIsNeverLessThanNothing() {
        Logbook logbook = blends(0);
        double mean = 1 - 5 / GreenNeeded.of("kela", Mass.kilograms(5), logbook).kilograms();
        for (int charges = 1; charges <= 60; charges++) {
            for (double off : new double[] {-1e-12, 0, 1e-12}) {
                String words = GreenNeeded.of("kela", Mass.kilograms(5 * charges * (1 - mean) + off), logbook)
                        .inShort()
                        .next();
                assertFalse(words.contains("-0"), words);
            }
        }
    }
}
