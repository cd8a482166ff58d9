package parchment.drift;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import org.hipparchus.distribution.continuous.TDistribution;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import parchment.curve.Curve;
import parchment.logbook.Batch;
import parchment.logbook.BatchConditions;
import parchment.logbook.Logbook;
import parchment.logbook.LogbookContents;
import parchment.logbook.Quantity;
import parchment.quantity.Mass;
import parchment.quantity.Temperature;
import parchment.quantity.Unit;

class UsualTest {
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
        for (long seed = 1; seed <= 3; seed++) {
            for (Map.Entry<String, UsualStudy.Count> group :
                    UsualStudy.counted("harbour", seed).entrySet()) {
                if (group.getKey().startsWith("ordinary")) {
                    batches += group.getValue().batches();
                    unlike += group.getValue().byFeature();
                }
            }
        }
        assertTrue(batches > 150, batches + " batches");
        assertTrue(unlike <= 0.1 * batches, unlike + " of " + batches);
    }

    /** Charge temperatures of the others; median 180, the furthest 4 °C away. */
    private static final double[] CHARGES = {178, 179, 179.5, 180, 180, 180.5, 181, 184};

    private static Usual charged(double own, double... others) {
        List<BuiltBatch> rows = new ArrayList<>();
        for (double charge : others) {
            rows.add(BuiltBatch.of(2).withCharge(charge));
        }
        rows.add(BuiltBatch.of(2).withCharge(own));
        Logbook logbook = BuiltBatch.logbook(rows);
        return Usual.of(logbook.batch("B" + rows.size()), logbook);
    }

    private static Usual.Compared of(Usual usual, String feature) {
        return usual.compared().stream()
                .filter(c -> c.feature().name().equals(feature))
                .findFirst()
                .orElseThrow();
    }

    /** Worked out again from the definition: the larger of two spreads, and Student's t at 0.05 over eleven features. */
    private static double halfWidth(double[] others, double median) {
        double[] away =
                Arrays.stream(others).map(v -> Math.abs(v - median)).sorted().toArray();
        double middle = (away[(away.length - 1) / 2] + away[away.length / 2]) / 2;
        double mean = Arrays.stream(away).average().orElse(0);
        double spread = Math.max(1.4826 * middle, Math.sqrt(Math.PI / 2) * mean);
        double t = new TDistribution(others.length - 1).inverseCumulativeProbability(1 - 0.05 / 11 / 2);
        return spread * t * Math.sqrt(1 + Math.PI / 2 / others.length);
    }

    @Test
    void theRangeIsThatOfTheStatedAlarm() {
        Usual.Compared charge = of(charged(181, CHARGES), "charge temperature");
        assertEquals(180, charge.usual(), 1e-9);
        assertEquals(8, charge.others());
        assertEquals(180 - halfWidth(CHARGES, 180), charge.range().lower(), 1e-6);
        assertEquals(180 + halfWidth(CHARGES, 180), charge.range().upper(), 1e-6);
        assertEquals(1 - 0.05 / 11, charge.range().level(), 1e-12);
        // Most are the same and one lies far off: the mean of the deviations is the spread.
        double[] most = {180, 180, 180, 180, 180, 180, 180, 180, 180, 180, 180, 180, 180, 180, 188};
        Usual.Compared same = of(charged(181, most), "charge temperature");
        double t = new TDistribution(14).inverseCumulativeProbability(1 - 0.05 / 11 / 2);
        assertEquals(
                180 + 8.0 / 15 * Math.sqrt(Math.PI / 2) * Math.sqrt(1 + Math.PI / 2 / 15) * t,
                same.range().upper(),
                1e-6);
    }

    @ParameterizedTest
    @CsvSource({
        "1,1.001,UNLIKE_THE_OTHERS",
        "1,0.999,LIKE_THE_OTHERS",
        "-1,1.001,UNLIKE_THE_OTHERS",
        "-1,0.999,LIKE_THE_OTHERS"
    })
    void isUnlikeBeyondTheRangeOnly(int side, double times, Usual.Verdict verdict) {
        double own = 180 + side * times * halfWidth(CHARGES, 180);
        assertEquals(verdict, charged(own, CHARGES).verdict());
    }

    @Test
    void saysHowFarAboveOrBelow() {
        assertEquals(
                "batch B9 is unlike 8 others of lot one, about the same mass: charge temperature 225.0 °C, which is 45.0 °C above"
                        + " the usual",
                charged(225, CHARGES).toString());
        assertEquals(
                "batch B9 is unlike 8 others of lot one, about the same mass: charge temperature 150.0 °C, which is 30.0 °C below"
                        + " the usual",
                charged(150, CHARGES).toString());
        assertEquals(
                "batch B9 is like 8 others of lot one, about the same mass",
                charged(181, CHARGES).toString());
        assertEquals(
                "Cannot tell whether batch B8 is like the others: there are 7 others of lot one, and 8 are needed",
                charged(181, Arrays.copyOf(CHARGES, 7)).toString());
        assertEquals(
                "Cannot tell whether batch B2 is like the others: there is 1 other of lot one, and 8 are needed",
                charged(181, 180).toString());
        assertEquals("Cannot tell whether batch B1 is like the others: no lot was written for it", noLot().toString());
        String page = charged(225, CHARGES).text();
        assertTrue(page.lines().anyMatch(l -> l.contains("charge temperature") && l.contains("unlike")), page);
        page = charged(181, CHARGES).text();
        assertTrue(page.lines().anyMatch(l -> l.contains("charge temperature") && l.contains("as usual")), page);
    }

    private static Usual noLot() {
        Logbook logbook = BuiltBatch.logbook(List.of(BuiltBatch.of(2).withLot("")));
        return Usual.of(logbook.batch("B1"), logbook);
    }

    @ParameterizedTest
    @CsvSource({"2.199,8", "2.201,16", "1.801,8", "1.799,16"})
    void heldAgainstThoseOfAboutTheSameMassWhereThereAreEnough(double mass, int others) {
        List<BuiltBatch> rows = new ArrayList<>();
        for (int i = 0; i < 16; i++) {
            rows.add(BuiltBatch.of(i < 8 ? mass : 3).withCharge(180 + i % 3));
        }
        rows.add(BuiltBatch.of(2).withCharge(181));
        Logbook logbook = BuiltBatch.logbook(rows);
        assertEquals(
                others,
                of(Usual.of(logbook.batch("B17"), logbook), "charge temperature")
                        .others());
        rows.set(0, rows.get(0).withGreen(3));
        Logbook seven = BuiltBatch.logbook(rows);
        assertEquals(
                16,
                of(Usual.of(seven.batch("B17"), seven), "charge temperature").others());
    }

    @Test
    void rangesNeverReachBeyondWhatIsPossible() {
        double[] losses = {0.14, 0.14, 0.141, 0.142, 0.139, 0.14, 0.15, 0.35};
        List<BuiltBatch> rows = new ArrayList<>();
        for (double loss : losses) {
            rows.add(BuiltBatch.losing(loss));
        }
        rows.add(BuiltBatch.losing(0.14));
        Logbook logbook = BuiltBatch.logbook(rows);
        Usual.Compared loss = of(Usual.of(logbook.batch("B9"), logbook), "mass loss");
        assertTrue(
                loss.range().lower() > 0.02
                        && loss.range().upper() > 0.2
                        && loss.range().upper() < 1,
                loss.toString());
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
            assertTrue(usual.toString().contains("written charge temperature less the curve's"), usual.toString());
        }
    }
}
