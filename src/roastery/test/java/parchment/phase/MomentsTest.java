package parchment.phase;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import org.junit.jupiter.api.Test;
import parchment.curve.Curve;
import parchment.logbook.Batch;
import parchment.logbook.Logbook;
import parchment.logbook.MarkKind;
import parchment.logbook.Quantity;
import parchment.logbook.contents.LogbookContents;
import parchment.phase.found.Moment;
import parchment.quantity.Unit;
import parchment.virtual.VirtualRoastery;

/** Known truth: faults of known kind and time are written into logs of the virtual roastery, one batch in 21 for each kind. */
class MomentsTest {
    private static final int EVERY = 21;

    /** A batch's bean temperature at a second, changed. */
    private interface Change {
        double at(double second, double reading, double crack);
    }

    private static Batch with(Batch batch, Quantity quantity, Change change) {
        double crack =
                batch.writtenMark(MarkKind.FIRST_CRACK_START).orElseThrow().seconds();
        Curve curve = batch.curve(quantity).orElseThrow();
        double[] seconds = curve.seconds();
        double[] values = curve.values();
        for (int i = 0; i < values.length; i++) {
            values[i] = change.at(seconds[i], values[i], crack);
        }
        return batch.toBuilder()
                .curve(quantity, Curve.of(curve.name(), curve.unit(), seconds, values))
                .build();
    }

    /** Holds the curve where it is for a while before first crack: everything after comes later. */
    private static Batch stalled(Batch batch) {
        Curve curve = batch.curve(Quantity.BEAN_TEMPERATURE).orElseThrow();
        double from =
                batch.writtenMark(MarkKind.FIRST_CRACK_START).orElseThrow().seconds() - 100;
        double[] seconds = curve.seconds();
        double[] values = curve.values();
        double[] held = values.clone();
        for (int i = 0; i < values.length; i++) {
            double at = seconds[i] <= from ? seconds[i] : Math.max(from, seconds[i] - 60);
            held[i] = values[Math.min(values.length - 1, curve.position(at))];
        }
        return batch.toBuilder()
                .curve(Quantity.BEAN_TEMPERATURE, Curve.of(curve.name(), curve.unit(), seconds, held))
                .build();
    }

    private static final Map<String, Function<Batch, Batch>> FAULTS = new LinkedHashMap<>();

    static {
        FAULTS.put("stall", MomentsTest::stalled);
        // Six degrees lost over forty seconds: the rate falls by 9 °C/min there.
        FAULTS.put(
                "sudden loss of rate near first crack",
                batch -> with(
                        batch,
                        Quantity.BEAN_TEMPERATURE,
                        (s, v, crack) -> v - 6 * Math.max(0, Math.min(1, (s - crack - 5) / 40))));
        FAULTS.put(
                "sudden surge of rate near first crack",
                batch -> with(
                        batch,
                        Quantity.BEAN_TEMPERATURE,
                        (s, v, crack) -> v + 6 * Math.max(0, Math.min(1, (s - crack - 5) / 40))));
        FAULTS.put(
                "late first change of gas",
                batch -> with(batch, Quantity.GAS, (s, v, crack) -> s < crack - 20 ? 97 : v));
        FAULTS.put(
                "change of gas after first crack",
                batch -> with(batch, Quantity.GAS, (s, v, crack) -> s > crack + 40 ? v - 25 : v));
        FAULTS.put(
                "charge temperature",
                batch -> with(batch, Quantity.BEAN_TEMPERATURE, (s, v, crack) -> s < 0 ? v + 10 : v));
        FAULTS.put(
                "jump of the bean probe",
                batch -> with(batch, Quantity.BEAN_TEMPERATURE, (s, v, crack) -> s > crack - 150 ? v + 10 : v));
    }

    private static Logbook withBatches(Logbook logbook, List<Batch> batches) {
        LogbookContents was = logbook.contents();
        return Logbook.of(was.toBuilder().batches(batches).build());
    }

    @Test
    void listsMostFaultsAndFewOfTheOthers() {
        Logbook clean =
                VirtualRoastery.harbour().withSeed(31).withBatches(168).run().opened();
        List<String> kinds = List.copyOf(FAULTS.keySet());
        List<Batch> batches = new ArrayList<>();
        Map<String, String> faulty = new LinkedHashMap<>();
        for (int i = 0; i < clean.batches().size(); i++) {
            Batch batch = clean.batches().get(i);
            if (i % EVERY < kinds.size()
                    && batch.writtenMark(MarkKind.FIRST_CRACK_START).isPresent()) {
                faulty.put(batch.name(), kinds.get(i % EVERY));
                batch = FAULTS.get(kinds.get(i % EVERY)).apply(batch);
            }
            batches.add(batch);
        }
        Moments moments = Moments.of(withBatches(clean, batches));
        Map<String, Integer> hits = new LinkedHashMap<>();
        Map<String, Integer> falseAlarms = new LinkedHashMap<>();
        for (Batch batch : batches) {
            String fault = faulty.get(batch.name());
            for (Moment moment : moments.of(batch).list()) {
                if (fault == null) {
                    falseAlarms.merge(moment.detector().name(), 1, Integer::sum);
                } else if (moment.detector().name().equals(fault)) {
                    hits.merge(fault, 1, Integer::sum);
                }
            }
        }
        int sound = batches.size() - faulty.size();
        String figures = "hits " + hits + ", false alarms in " + sound + " sound batches " + falseAlarms;
        for (String kind : kinds) {
            long injected = faulty.values().stream().filter(kind::equals).count();
            assertTrue(hits.getOrDefault(kind, 0) >= 0.75 * injected, kind + " of " + injected + ": " + figures);
            assertTrue(falseAlarms.getOrDefault(kind, 0) <= 0.05 * sound, kind + ": " + figures);
        }
    }

    @Test
    void takesADetectorOfOnesOwn() {
        Logbook logbook = VirtualRoastery.harbour().withBatches(24).run().opened();
        MomentDetector lateDrop = new MomentDetector() {
            @Override
            public String name() {
                return "late drop";
            }

            @Override
            public Unit unit() {
                return Unit.SECONDS;
            }

            @Override
            public double noticeable() {
                return 1;
            }

            @Override
            public Side side() {
                return Side.HIGH;
            }

            @Override
            public String source() {
                return "my own";
            }

            @Override
            public Optional<Sighting> look(Phases phases) {
                return phases.mark(MarkKind.DROP)
                        .map(drop -> new Sighting(
                                drop.seconds(), phases.batch().name().endsWith("7") ? 900 : 600));
            }
        };
        Moments moments = Moments.of(logbook, List.of(lateDrop));
        assertEquals(
                List.of("H007", "H017"),
                moments.list().stream().map(Moment::batch).sorted().toList());
        assertTrue(moments.list().get(0).toString().contains("late drop, 900 s where 600 s is usual; the largest of "));
        assertFalse(moments.text().contains("NaN"));
    }
}
