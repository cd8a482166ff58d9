package parchment.drift;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import parchment.curve.Curve;
import parchment.logbook.Batch;
import parchment.logbook.Logbook;
import parchment.logbook.MarkKind;
import parchment.logbook.Quantity;
import parchment.logbook.contents.LogbookContents;
import parchment.logbook.written.BatchConditions;
import parchment.quantity.Elapsed;
import parchment.quantity.Mass;
import parchment.quantity.Temperature;
import parchment.quantity.Unit;

/** Holds batches of the demo logbook against their lots' others, as they are and with faults planted. */
class UsualOfHarbourTest {
    private static final Logbook HARBOUR = Logbook.open(Path.of("..", "datasets", "harbour"));

    @Test
    void saysWhetherABatchIsLikeItsLotsOthers() {
        Usual usual = Usual.of(HARBOUR.batch("H240"), HARBOUR);
        assertEquals(Usual.Verdict.LIKE_THE_OTHERS, usual.verdict(), usual.toString());
        List<Batch> some =
                HARBOUR.batches().stream().filter(b -> b.name().endsWith("5")).toList();
        long odd = some.stream()
                .filter(b -> Usual.of(b, HARBOUR).compared().stream().anyMatch(Usual.Compared::unlike))
                .count();
        // All features of the next batch in 95 of 100 cases, if they are normal; some are not.
        assertTrue(odd <= 0.25 * some.size(), odd + " batches");
        Logbook hillside = Logbook.open(Path.of("..", "datasets", "hillside"));
        Usual few = Usual.of(hillside.batch("K040"), hillside);
        assertEquals(Usual.Verdict.CANNOT_TELL, few.verdict());
        assertTrue(few.toString().contains("8 are needed"), few.toString());
    }

    /** Two new lots of six batches each: a curve is held against those of both, numbers only against their own lot's. */
    @Test
    void saysWhatABatchOfALotOfFewIsUnlikeAndWhyItsNumbersCannotBeTold() {
        List<Batch> last = HARBOUR.batches()
                .subList(HARBOUR.batches().size() - 12, HARBOUR.batches().size());
        List<Batch> batches =
                new ArrayList<>(HARBOUR.batches().subList(0, HARBOUR.batches().size() - 12));
        for (Batch batch : last) {
            Batch.Builder changed = batch.toBuilder().lot(last.indexOf(batch) % 2 == 0 ? "hazel hill" : "low wood");
            if (batch.equals(last.get(0))) {
                changed.conditions(new BatchConditions(
                        batch.conditions().greenMass(),
                        batch.conditions().roastedMass(),
                        batch.conditions().chargeTemperature().map(t -> Temperature.celsius(t.celsius() + 40)),
                        Optional.empty(),
                        Optional.empty(),
                        OptionalDouble.empty(),
                        OptionalDouble.empty(),
                        Optional.empty()));
            }
            batches.add(changed.build());
        }
        Logbook logbook =
                Logbook.of(HARBOUR.contents().toBuilder().batches(batches).build());
        String unlike = Usual.of(logbook.batch(last.get(0).name()), logbook).toString();
        assertTrue(
                unlike.startsWith(
                        "batch " + last.get(0).name() + " is unlike 12 others (all lots with few batches on "),
                unlike);
        assertTrue(
                unlike.endsWith(
                        ". Its curve was held against those; its numbers cannot be held against its lot's: there are 5 others"
                                + " of lot hazel hill, and 8 are needed"),
                unlike);
        Usual cannot = Usual.of(logbook.batch(last.get(2).name()), logbook);
        assertEquals(
                "Cannot tell whether batch " + last.get(2).name()
                        + " is like the others: there are 5 others of lot hazel hill, and 8 are needed",
                cannot.toString());
        String page = Week.of(logbook).text();
        assertTrue(page.contains("Earlier changes of a bean probe, reckoned with and no news: 2024-10-07."), page);
    }

    @Test
    void anOutlierIsNamedWithItsUsual() {
        Logbook harbour = HARBOUR;
        Batch batch = harbour.batch("H200").toBuilder()
                .conditions(new BatchConditions(
                        harbour.batch("H200").conditions().greenMass(),
                        harbour.batch("H200").conditions().greenMass().map(m -> Mass.kilograms(0.6 * m.kilograms())),
                        harbour.batch("H200").conditions().chargeTemperature(),
                        Optional.empty(),
                        Optional.empty(),
                        OptionalDouble.empty(),
                        OptionalDouble.empty(),
                        Optional.empty()))
                .build();
        LogbookContents c = harbour.contents();
        List<Batch> batches = c.batches().stream()
                .map(b -> b.name().equals("H200") ? batch : b)
                .toList();
        Logbook changed = Logbook.of(c.toBuilder().batches(batches).build());
        Usual usual = Usual.of(batch, changed.ofLot(batch.lot().orElseThrow()));
        assertEquals(Usual.Verdict.UNLIKE_THE_OTHERS, usual.verdict());
        assertTrue(usual.toString().contains("mass loss"), usual.text());
    }

    /** Short version of the table in docs/measurements/drift.md, where the rule of before called 19 in 100. */
    @Test
    void anOrdinaryBatchIsSeldomCalledUnlikeTheOthers() {
        int batches = 0;
        int unlike = 0;
        int little = 0;
        for (long seed = 1; seed <= 3; seed++) {
            for (Map.Entry<String, UsualStudy.Count> group :
                    UsualStudy.counted("harbour", seed).entrySet()) {
                if (group.getKey().startsWith("ordinary")) {
                    batches += group.getValue().batches();
                    unlike += group.getValue().byFeature();
                    little += group.getValue().little();
                }
            }
        }
        assertTrue(batches > 150, batches + " batches");
        assertTrue(unlike <= 0.1 * batches, unlike + " of " + batches);
        // Stated: 6 to 10 of 100, give or take two standard errors of this sample.
        assertTrue(little >= 0.02 * batches && little <= 0.15 * batches, little + " of " + batches);
    }

    @Test
    void suggestsThatAFirstCrackWasMarkedLateOrEarlyButNotWhereTheProbeReadHigh() {
        Batch batch = HARBOUR.batch("H180");
        double at = batch.writtenMark(MarkKind.FIRST_CRACK_START).orElseThrow().seconds();
        assertTrue(
                markedAt(batch, at + 80).contains(" s too late: the development time is "), markedAt(batch, at + 80));
        assertTrue(
                markedAt(batch, at - 80).contains(" s too early: the development time is "), markedAt(batch, at - 80));
        Curve bean = batch.curve(Quantity.BEAN_TEMPERATURE).orElseThrow();
        String high = held(batch.toBuilder()
                .curve(
                        Quantity.BEAN_TEMPERATURE,
                        Curve.of(
                                bean.name(),
                                bean.unit(),
                                bean.seconds(),
                                Arrays.stream(bean.values()).map(v -> v + 9).toArray()))
                .build());
        assertTrue(high.contains("first crack temperature"), high);
        assertFalse(high.contains("perhaps first crack was marked"), high);
    }

    private static String markedAt(Batch batch, double seconds) {
        return held(batch.toBuilder()
                .writtenMark(MarkKind.FIRST_CRACK_START, Elapsed.seconds(seconds))
                .build());
    }

    private static String held(Batch changed) {
        Logbook logbook = Logbook.of(HARBOUR.contents().toBuilder()
                .batches(HARBOUR.batches().stream()
                        .map(b -> b.name().equals(changed.name()) ? changed : b)
                        .toList())
                .build());
        return Usual.of(changed, logbook).toString();
    }

    @Test
    void noRangeOfATimeReachesToNothing() {
        for (Batch batch : HARBOUR.batches().subList(0, 40)) {
            for (Usual.Compared one : Usual.of(batch, HARBOUR).compared()) {
                boolean time = one.feature().unit().equals(Unit.SECONDS);
                assertTrue(!time || !(one.range().lower() <= 0), batch.name() + " " + one);
            }
        }
    }

    @Test
    void findsAProbeThatReadHighAndAChargeThatWasWrittenWrong() {
        List<String> high = List.of("H050", "H090", "H150", "H210");
        List<String> wrong = List.of("H060", "H100", "H160", "H221");
        List<Batch> batches = new ArrayList<>();
        for (Batch batch : HARBOUR.batches()) {
            Batch.Builder changed = batch.toBuilder();
            if (high.contains(batch.name())) {
                Curve bean = batch.curve(Quantity.BEAN_TEMPERATURE).orElseThrow();
                double[] more = Arrays.stream(bean.values()).map(v -> v + 7).toArray();
                changed.curve(Quantity.BEAN_TEMPERATURE, Curve.of(bean.name(), bean.unit(), bean.seconds(), more));
            }
            if (wrong.contains(batch.name())) {
                BatchConditions c = batch.conditions();
                changed.conditions(new BatchConditions(
                        c.greenMass(),
                        c.roastedMass(),
                        c.chargeTemperature().map(t -> Temperature.celsius(t.celsius() + 45)),
                        c.greenTemperature(),
                        c.roomTemperature(),
                        c.roomHumidity(),
                        c.roomPressure(),
                        c.warmUp()));
            }
            batches.add(changed.build());
        }
        Logbook planted =
                Logbook.of(HARBOUR.contents().toBuilder().batches(batches).build());
        for (String name : high) {
            Usual usual = Usual.of(planted.batch(name), planted);
            assertTrue(
                    usual.toString().contains("crack temperature")
                            || usual.toString().contains("drop temperature"),
                    usual.toString());
        }
        for (String name : wrong) {
            Usual usual = Usual.of(planted.batch(name), planted);
            assertTrue(usual.toString().contains("charge temperature as written less as read"), usual.toString());
        }
    }
}
