package parchment.drift;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.IntToDoubleFunction;
import java.util.stream.IntStream;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import parchment.feature.Feature;
import parchment.feature.Features;
import parchment.feature.kind.Family;
import parchment.feature.kind.Need;
import parchment.feature.path.BatchPath;
import parchment.feature.path.Measured;
import parchment.logbook.Logbook;
import parchment.logbook.MarkKind;
import parchment.logbook.written.Upkeep;
import parchment.quantity.Unit;
import parchment.stats.series.Signal;

class WatchTest {
    /** Without trend or resemblance to speak of: correlation of neighbours 0.05 over twenty. */
    private static final double[] QUIET = {
        0.3, -0.8, 0.5, 1.2, -0.4, -1.1, 0.9, 0.1, -0.6, 0.2, 1.0, -0.9, -0.2, 0.7, -1.3, 0.4, 0.6, -0.5, 0.8, -0.9
    };

    private static Watch masses(double... kilograms) {
        return Watch.of(
                BuiltBatch.logbook(
                        Arrays.stream(kilograms).mapToObj(BuiltBatch::of).toList()),
                Features.greenMass());
    }

    /** Twenty quiet batches around 2 kg, and what follows them in standard steps of 10 g. */
    private static double[] after(double... steps) {
        return IntStream.range(0, QUIET.length + steps.length)
                .mapToDouble(i -> 2 + 0.01 * (i < QUIET.length ? QUIET[i] : steps[i - QUIET.length]))
                .toArray();
    }

    private static double[] same(int times, double value) {
        double[] all = new double[times];
        Arrays.fill(all, value);
        return all;
    }

    @ParameterizedTest
    @CsvSource({"9,0", "10,10", "14,10", "15,15", "19,15", "20,20", "99,20", "100,40", "149,40", "150,60"})
    void theStretchGrowsWithTheChart(int batches, int stretch) {
        double[] values = IntStream.range(0, batches)
                .mapToDouble(i -> 2 + 0.01 * QUIET[(i * 7) % QUIET.length])
                .toArray();
        Watch watch = masses(values);
        assertEquals(stretch > 0, watch.hasLimits());
        assertEquals(stretch, watch.stable().size());
        assertEquals(batches, watch.batches().size());
        assertEquals(batches - stretch, watch.watched().size());
    }

    @Test
    void centerAndSpreadAreThoseOfTheStretch() {
        // NIST/SEMATECH e-Handbook of Statistical Methods, 6.3.2.2: ten flow rates with mean 50.81; their standard
        // deviation,
        // 2.10, by hand.
        double[] rates = {49.6, 47.6, 49.9, 51.3, 47.8, 51.2, 52.6, 52.4, 53.6, 52.1};
        EstimatedLimits limits = masses(rates).limits().orElseThrow();
        double squares =
                Arrays.stream(rates).map(r -> (r - 50.81) * (r - 50.81)).sum();
        assertEquals(Math.sqrt(squares / 9), limits.spread(), 1e-9);
        assertEquals(49.6 - 50.81, limits.deviations()[0], 1e-9);
    }

    @Test
    void aSingleBatchMayLieFartherOffThanWhereNeighboursAreKnownNotToResembleEachOther() {
        // Where they are known to be independent and normal: Student's t with 19 degrees of freedom, one in 1,000
        // (3.883 in
        // printed tables), times the square root of 1 + 1/20.
        Watch watch = masses(after(same(10, 0)));
        double known = 3.883 * Math.sqrt(1.05);
        double limit = watch.limits().orElseThrow().singleLimits()[0]
                / watch.limits().orElseThrow().spread();
        assertTrue(limit > 0.9 * known && limit < 2 * known, limit + " against " + known);
    }

    @ParameterizedTest
    @CsvSource({"1,1.0001,ABOVE", "1,0.9999,", "-1,1.0001,BELOW", "-1,0.9999,"})
    void aSingleBatchSignalsBeyondItsLimit(int side, double times, Signal.@Nullable Side expected) {
        EstimatedLimits limits = masses(after(0)).limits().orElseThrow();
        double mean = 2 + 0.01 * Arrays.stream(QUIET).average().orElse(0);
        double[] values = after(0);
        values[20] = mean + side * times * limits.singleLimits()[0];
        List<Watch.Signal> signals = masses(values).signals().stream()
                .filter(a -> a.kind() == Watch.Kind.SINGLE_BATCH)
                .toList();
        assertEquals(
                Optional.ofNullable(expected),
                signals.stream().map(Watch.Signal::side).findFirst());
    }

    @ParameterizedTest
    @CsvSource({
        "WEIGHTED_MEAN,1,1.0001,ABOVE",
        "WEIGHTED_MEAN,1,0.9999,",
        "WEIGHTED_MEAN,-1,1.0001,BELOW",
        "WEIGHTED_MEAN,-1,0.9999,",
        "CUMULATED_SUM,1,1.0001,ABOVE",
        "CUMULATED_SUM,1,0.9999,",
        "CUMULATED_SUM,-1,1.0001,BELOW",
        "CUMULATED_SUM,-1,0.9999,"
    })
    void aShiftThatStaysSignalsBeyondItsLimit(Watch.Kind kind, int side, double times, Signal.@Nullable Side expected) {
        int last = 9;
        EstimatedLimits limits = masses(after(same(last + 1, 0))).limits().orElseThrow();
        double mean = 2 + 0.01 * Arrays.stream(QUIET).average().orElse(0);
        double step = kind == Watch.Kind.WEIGHTED_MEAN
                ? limits.weightedMeanLimits()[last] / (1 - Math.pow(0.8, last + 1))
                : limits.sumLimits()[last] / (last + 1) + 0.5;
        double inKilograms = step * times * limits.spread() * Math.sqrt(1.05);
        double[] values = after(same(last + 1, 0));
        for (int i = 20; i < values.length; i++) {
            values[i] = mean + side * inKilograms;
        }
        List<Watch.Signal> signals =
                masses(values).signals().stream().filter(a -> a.kind() == kind).toList();
        Optional<Signal.Side> atTheLast = signals.stream()
                .filter(a -> a.batch().name().equals("B30"))
                .map(Watch.Signal::side)
                .findFirst();
        assertEquals(Optional.ofNullable(expected), atTheLast, signals.toString());
    }

    @Test
    void limitsStayAsTheyAreWhenBatchesAreAdded() {
        double[] short10 = masses(after(same(10, 0))).limits().orElseThrow().weightedMeanLimits();
        double[] long30 = masses(after(same(30, 0))).limits().orElseThrow().weightedMeanLimits();
        for (int i = 0; i < 10; i++) {
            assertEquals(short10[i], long30[i], 1e-12);
        }
    }

    @Test
    void saysWhereAShiftShowsAndToWhichSide() {
        Watch up = masses(after(same(20, 2.2)));
        Watch.Signal first = up.signals().get(0);
        assertEquals(
                "green mass of lot one: 0 of 20 single batches outside of the limits; a shift up shows since batch "
                        + first.batch().name() + " (" + first.batch().roastDay().orElseThrow() + ", weighted mean)",
                up.toString());
        assertEquals(
                "green mass of lot one: 0 of 20 single batches outside of the limits; a shift down shows since batch "
                        + first.batch().name() + " (" + first.batch().roastDay().orElseThrow() + ", weighted mean)",
                masses(after(same(20, -2.1))).toString());
        assertEquals(
                "green mass of lot one: 0 of 2 single batches outside of the limits; no shift that stays",
                masses(after(0.1, -0.3)).toString());
        assertEquals(
                "green mass of lot one: 1 of 3 single batches outside of the limits; no shift that stays",
                masses(after(-0.6, 3.3, -0.3)).toString());
    }

    @Test
    void eachChartHasItsWords() {
        assertEquals(
                List.of("single batch", "weighted mean", "cumulated sum"),
                Arrays.stream(Watch.Kind.values()).map(Watch.Kind::words).toList());
    }

    @ParameterizedTest
    @CsvSource({"2.2,2.2,true", "2.2,-1.5,false", "-2.2,-2.2,true", "-2.2,1.5,false"})
    void aShiftIsStillThereWhileTheLatestBatchesLieToItsSide(double shifted, double latest, boolean stillThere) {
        double[] steps = new double[30];
        Arrays.fill(steps, 0, 15, shifted);
        Arrays.fill(steps, 15, 30, latest);
        Watch watch = masses(after(steps));
        Watch.Signal first = watch.signals().get(0);
        assertEquals(shifted > 0 ? Signal.Side.ABOVE : Signal.Side.BELOW, first.side());
        assertEquals(stillThere, watch.stillThere(first));
        assertFalse(masses(after()).stillThere(first), "nothing is watched");
    }

    @Test
    void saysWhichLotIsWatched() {
        List<BuiltBatch> rows = losses(20, i -> 0);
        assertEquals("lot one", loss(rows).of());
        assertEquals(
                "batches without a lot",
                loss(rows.stream().map(b -> b.withLot("")).toList()).of());
        List<BuiltBatch> two = new ArrayList<>(rows);
        two.set(3, two.get(3).withLot("two"));
        two.set(4, two.get(4).withLot("two"));
        assertEquals("2 lots together", loss(two).of());
    }

    @Test
    void saysHowManyChartsSignalByChanceAndWhichShiftsAreTooSmall() {
        Watch watch = masses(after(IntStream.range(0, 50)
                .mapToDouble(i -> QUIET[(i * 7) % QUIET.length])
                .toArray()));
        EstimatedLimits limits = watch.limits().orElseThrow();
        // One in a hundred for ten batches: 1 - 0.99^5.
        assertEquals(0.049, watch.falseShifts(), 0.002);
        double least = limits.leastSeen();
        assertTrue(least > 1 && least < 4, "least " + least);
        assertEquals(
                String.format(
                        java.util.Locale.ROOT,
                        "If nothing changes, one chart in 20 of this length (50 batches after the stretch) shows a shift, and one in"
                                + " 20 a single batch outside. A shift of one standard deviation (about 0.008 kg) right after the"
                                + " stretch shows within 20 batches in %.0f of 100 charts. From 20 batches only a shift of more than"
                                + " about %.3f kg (%.1f standard deviations) is seen so soon in 8 of 10 charts.",
                        100 * limits.shiftSeenSoon(),
                        least * limits.spread(),
                        least),
                watch.rateWords());
        assertTrue(watch.text().replaceAll("\\s+", " ").contains(watch.rateWords()), watch.text());
        assertEquals(
                "No batch has been roasted after the stretch yet.",
                masses(after()).rateWords());
        assertEquals(
                "No batch has been roasted after the stretch yet.",
                masses(1, 2, 1).rateWords());
    }

    @Test
    void saysWhereNotEvenALargeShiftWouldShow() {
        // Ten batches on a slow wave, and one more.
        Watch one = masses(IntStream.range(0, 11)
                .mapToDouble(i -> 2 + 0.01 * Math.sin(i * 0.6))
                .toArray());
        EstimatedLimits limits = one.limits().orElseThrow();
        assertEquals(
                String.format(
                        java.util.Locale.ROOT,
                        "If nothing changes, one chart in 1000 of this length (1 batch after the stretch) shows a shift, and one in"
                                + " 1000 a single batch outside. A shift of one standard deviation (about %.3f kg) right after the"
                                + " stretch shows within 1 batch in %.0f of 100 charts. From 10 batches not even a shift of %.3f kg"
                                + " (6 standard deviations) is seen within 1 batch in 8 of 10 charts.",
                        limits.spread(),
                        100 * limits.shiftSeenSoon(),
                        6 * limits.spread()),
                one.rateWords());
    }

    /** Correlations of neighbours from clearly above to clearly below what chance gives twenty batches. */
    private static Watch mixed(double slow, double alternating) {
        return masses(IntStream.range(0, 20)
                .mapToDouble(i -> 2 + 0.01 * (slow * Math.sin(i * 0.6) + alternating * (i % 2 == 0 ? 1 : -1)))
                .toArray());
    }

    /** Finds the mixture at which the sentence changes, and returns the watches on both sides of it. */
    private static Watch[] around(IntToDoubleFunction slow, IntToDoubleFunction alternating, String from) {
        int low = 0;
        int high = 10_000;
        while (high - low > 1) {
            int middle = (low + high) / 2;
            boolean as = mixed(slow.applyAsDouble(middle), alternating.applyAsDouble(middle))
                    .neighbourWords()
                    .startsWith(from);
            low = as ? middle : low;
            high = as ? high : middle;
        }
        return new Watch[] {
            mixed(slow.applyAsDouble(low), alternating.applyAsDouble(low)),
            mixed(slow.applyAsDouble(high), alternating.applyAsDouble(high))
        };
    }

    @Test
    void saysWhetherNeighboursResembleEachOtherOrAlternate() {
        assertEquals(
                "Neighbouring batches of the stretch resemble each other (correlation 0.80); the limits are wider for it.",
                mixed(1, 0).neighbourWords());
        assertEquals(
                "Neighbouring batches of the stretch alternate (correlation -0.95); the limits do not reckon with that: shifts"
                        + " show by chance less often than stated and, from few batches, single ones more often.",
                mixed(0, 1).neighbourWords());
        assertEquals(
                "Neighbouring batches of the stretch do not clearly resemble each other; the limits still allow for it, as far as"
                        + " so few batches leave it open.",
                masses(after()).neighbourWords());
        double clear = 2 / Math.sqrt(20);
        Watch[] alike = around(k -> 1, k -> k / 10_000.0, "Neighbouring batches of the stretch resemble");
        assertEquals(clear, alike[0].neighbourCorrelation(), 1e-3);
        assertEquals(clear, alike[1].neighbourCorrelation(), 1e-3);
        assertTrue(alike[0].neighbourCorrelation() > clear && alike[1].neighbourCorrelation() <= clear);
        Watch[] apart = around(k -> k / 10_000.0, k -> 1, "Neighbouring batches of the stretch alternate");
        assertEquals(-clear, apart[0].neighbourCorrelation(), 1e-3);
        assertTrue(apart[0].neighbourCorrelation() < -clear && apart[1].neighbourCorrelation() >= -clear);
    }

    @Test
    void resemblanceMakesLimitsWider() {
        double[] apart = masses(after(same(10, 0))).limits().orElseThrow().weightedMeanLimits();
        double[] waves = IntStream.range(0, 30)
                .mapToDouble(i -> 2 + 0.01 * Math.sin(i * 0.6) + 0.003 * QUIET[i % 20])
                .toArray();
        double[] alike = masses(waves).limits().orElseThrow().weightedMeanLimits();
        assertTrue(alike[9] > 1.3 * apart[9], alike[9] + " against " + apart[9]);
    }

    private static List<BuiltBatch> losses(int batches, IntToDoubleFunction more) {
        return IntStream.range(0, batches)
                .mapToObj(i -> BuiltBatch.losing(0.14 + 0.002 * QUIET[(i * 7) % 20] + more.applyAsDouble(i)))
                .toList();
    }

    private static Watch loss(List<BuiltBatch> rows) {
        return Watch.of(BuiltBatch.logbook(rows), Features.massLoss());
    }

    @Test
    void comparesAtLikeMassAndAim() {
        List<BuiltBatch> rows = new ArrayList<>();
        List<BuiltBatch> unwritten = new ArrayList<>();
        List<BuiltBatch> drawn = losses(40, i -> 0);
        for (int i = 0; i < 40; i++) {
            double aim = i < 20 ? 203 + i % 5 : 211;
            double mass = i < 20 ? 2 + 0.1 * (i % 3) : 2.2;
            double loss = 0.14 + 0.002 * QUIET[(i * 7) % 20] + 0.003 * (aim - 205) - 0.02 * (mass - 2);
            BuiltBatch batch = BuiltBatch.losing(loss).withGreen(mass);
            rows.add(batch.withAim(aim));
            unwritten.add(batch);
        }
        Watch watch = loss(rows);
        assertEquals(
                "Compared at like green mass, planned drop temperature.",
                watch.rows().likeWords());
        assertTrue(watch.toString().endsWith("no shift that stays"), watch.toString());
        assertTrue(
                loss(unwritten).toString().contains("a shift up shows"),
                loss(unwritten).toString());
        assertEquals("Batches are compared as they are.", loss(drawn).rows().likeWords());
    }

    @Test
    void otherLotsAreComparedAtLikeLotOrLeftOut() {
        List<BuiltBatch> rows = new ArrayList<>();
        for (int i = 0; i < 40; i++) {
            boolean second = i % 2 == 0 && i < 20 || i > 30;
            rows.add(BuiltBatch.losing(0.14 + 0.002 * QUIET[(i * 7) % 20] + (second ? 0.02 : 0))
                    .withLot(second ? "second" : "first"));
        }
        rows.add(BuiltBatch.losing(0.14).withLot("third"));
        Watch watch = loss(rows);
        assertTrue(watch.toString().startsWith("mass loss of 2 lots together"), watch.toString());
        assertEquals("Compared at like lot.", watch.rows().likeWords());
        assertTrue(watch.toString().endsWith("no shift that stays"), watch.toString());
        assertEquals(
                "40 batches watched, left out: 1 of a lot, mass or aim that the stretch does not hold.",
                watch.rows().leftOutWords());
        List<BuiltBatch> many = new ArrayList<>();
        for (int i = 0; i < 40; i++) {
            many.add(losses(40, k -> 0).get(i).withLot("lot " + i % 5));
        }
        assertEquals(
                "Cannot set limits for mass loss: the batches are of 5 lots and machines; watch one lot, as in"
                        + " logbook.ofLot(...)",
                loss(many).toString());
    }

    @Test
    void setsNoLimitsFromNineBatchesOrFromBatchesThatDoNotDiffer() {
        Watch nine = masses(1, 2, 1, 2, 1, 2, 1, 2, 1);
        assertFalse(nine.hasLimits());
        assertEquals("Cannot set limits for green mass: there are 9 batches, and 10 are needed", nine.toString());
        assertTrue(nine.signals().isEmpty() && Double.isNaN(nine.neighbourCorrelation()));
        assertEquals(
                "Cannot set limits for green mass: the batches do not differ",
                masses(same(30, 2)).toString());
    }

    @Test
    void workOnTheProbeCutsOnlyWhatItsOwnMachineReadAndOnlyWhereSomethingWasReadAfterIt() {
        List<BuiltBatch> rows = IntStream.range(0, 24)
                .mapToObj(i -> BuiltBatch.of(2)
                        .withMachine(i % 2 == 0 ? "north" : "south")
                        .withCharge(200 + QUIET[i % 20]))
                .toList();
        Logbook logbook = BuiltBatch.logbook(rows);
        assertEquals(24, charged(logbook, List.of()).batches().size());
        Upkeep moved = new Upkeep("north", LocalDate.of(2025, 1, 13), "probe moved", Optional.empty());
        Watch watch = charged(logbook, List.of(moved));
        assertEquals(12 + 6, watch.batches().size());
        assertTrue(
                watch.rows().leftOutWords().contains("6 read before its machine's probe last changed"),
                watch.rows().leftOutWords());
        Upkeep later = new Upkeep("north", LocalDate.of(2025, 1, 30), "probe moved", Optional.empty());
        assertEquals(24, charged(logbook, List.of(later)).batches().size());
        assertEquals(18, charged(logbook, List.of(moved, later)).batches().size());
        Watch noReading = Watch.of(
                Logbook.of(logbook.contents().toBuilder().upkeep(List.of(moved)).build()), Features.greenMass());
        assertEquals(24, noReading.batches().size());
    }

    @Test
    void watchesWhatHangsOnTheProbeWithinTheLatestPeriodToo() {
        List<BuiltBatch> rows = IntStream.range(0, 40)
                .mapToObj(i -> BuiltBatch.of(2)
                        .withMachine(i % 2 == 0 ? "north" : "south")
                        .withCharge(QUIET[i % 20] + (i % 2 == 0 && i >= 12 ? 190 : 200)))
                .toList();
        Upkeep moved = new Upkeep("north", LocalDate.of(2025, 1, 13), "probe moved", Optional.empty());
        Watch watch = Watch.of(
                Logbook.of(BuiltBatch.logbook(rows).contents().toBuilder()
                        .upkeep(List.of(moved))
                        .build()),
                Features.chargeTemperature());
        assertEquals(20 + 14, watch.batches().size());
        assertTrue(watch.toString().endsWith("no shift that stays"), watch.toString());
    }

    private static Watch charged(Logbook logbook, List<Upkeep> upkeep) {
        return Watch.of(Logbook.of(logbook.contents().toBuilder().upkeep(upkeep).build()), new ReadAtTheCharge());
    }

    /** The written charge temperature, as if the bean probe had read it. */
    private record ReadAtTheCharge() implements Feature {
        @Override
        public String name() {
            return "read at the charge";
        }

        @Override
        public Unit unit() {
            return Unit.TEMPERATURE;
        }

        @Override
        public String definition() {
            return "the written charge temperature";
        }

        @Override
        public Set<Need> needs() {
            return Set.of();
        }

        @Override
        public Family family() {
            return Family.OTHER;
        }

        @Override
        public Set<MarkKind> marksUsed() {
            return Set.of();
        }

        @Override
        public Measured measure(BatchPath path) {
            return Features.chargeTemperature().measure(path);
        }

        @Override
        public boolean readsBeanProbe() {
            return true;
        }
    }
}
