package parchment.align;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Random;
import java.util.Set;
import parchment.curve.Curve;
import parchment.logbook.Batch;
import parchment.logbook.Logbook;
import parchment.logbook.Quantity;
import parchment.logbook.written.BatchConditions;
import parchment.quantity.Temperature;
import parchment.virtual.Scenario;
import parchment.virtual.VirtualRoastery;

/**
 * Counts how often {@link Unusual} finds what was planted into virtual logbooks, and how often it lists a batch where nothing was.
 * {@code main(number of logbooks a row, first seed)} prints the table of docs/measurements/drift.md.
 */
final class UnusualStudy {
    private static final int BATCHES = 80;

    /** What is planted into one batch each. */
    enum Plant {
        PROBE_HIGH("7 °C higher"),
        PROBE_LOW("7 °C lower"),
        CHARGE_HIGH("45 °C hotter than the curve bears out"),
        CHARGE_LOW("45 °C colder than the curve bears out");

        /** How the answer must read, but for two degrees more or less. */
        private final String expected;

        Plant(String expected) {
            this.expected = expected;
        }

        Batch into(Batch batch) {
            return switch (this) {
                case PROBE_HIGH -> probe(batch, 7);
                case PROBE_LOW -> probe(batch, -7);
                case CHARGE_HIGH -> charge(batch, 45);
                case CHARGE_LOW -> charge(batch, -45);
            };
        }

        boolean found(List<String> reasons) {
            String all = String.join("; ", reasons);
            for (int more = -2; more <= 2; more++) {
                String[] parts = expected.split(" ", 2);
                if (all.contains(" " + (Integer.parseInt(parts[0]) + more) + " " + parts[1])) {
                    return true;
                }
            }
            return false;
        }
    }

    private UnusualStudy() {}

    /** What came out of one logbook. */
    record Count(
            int ordinary,
            int listed,
            int byReadings,
            int byNothingElse,
            Map<Plant, Boolean> found,
            int listedBesidePlants) {}

    public static void main(String[] arguments) {
        int logbooks = Integer.parseInt(arguments[0]);
        long first = arguments.length > 1 ? Long.parseLong(arguments[1]) : 1;
        for (String scenario : List.of("steady-hand", "harbour", "curve-chaser")) {
            int ordinary = 0;
            int listed = 0;
            int byReadings = 0;
            int byNothingElse = 0;
            int beside = 0;
            Map<Plant, Integer> found = new LinkedHashMap<>();
            for (long seed = first; seed < first + logbooks; seed++) {
                Count count = counted(scenario, seed);
                ordinary += count.ordinary;
                listed += count.listed;
                byReadings += count.byReadings;
                byNothingElse += count.byNothingElse;
                beside += count.listedBesidePlants;
                count.found.forEach((plant, yes) -> found.merge(plant, yes ? 1 : 0, Integer::sum));
            }
            System.out.println(String.format(
                    Locale.ROOT,
                    "| %s | %d | %d | %d | %.2f | %d | %d | %.2f | %s |",
                    scenario,
                    logbooks,
                    ordinary,
                    listed,
                    100.0 * listed / ordinary,
                    byReadings,
                    byNothingElse,
                    100.0 * beside / (ordinary - Plant.values().length * logbooks),
                    String.join(
                            " | ", found.values().stream().map(String::valueOf).toList())));
        }
    }

    static Count counted(String scenario, long seed) {
        Logbook plain = VirtualRoastery.of(Scenario.named(scenario))
                .withSeed(seed)
                .withBatches(BATCHES)
                .run()
                .opened();
        List<Unusual.Found> before = Unusual.of(plain).list();
        int byReadings = (int) before.stream()
                .filter(one -> one.reasons().stream().anyMatch(UnusualStudy::ofReadings))
                .count();
        int byNothingElse = (int) before.stream()
                .filter(one ->
                        one.reasons().stream().allMatch(reason -> ofReadings(reason) || reason.startsWith("charged ")))
                .count();
        Random random = new Random(seed);
        List<Batch> batches = new ArrayList<>(plain.batches());
        Map<Plant, String> planted = new LinkedHashMap<>();
        Set<Integer> chosen = new LinkedHashSet<>();
        for (Plant plant : Plant.values()) {
            int at = random.nextInt(batches.size());
            while (!chosen.add(at)) {
                at = random.nextInt(batches.size());
            }
            batches.set(at, plant.into(batches.get(at)));
            planted.put(plant, batches.get(at).name());
        }
        Unusual after = Unusual.of(
                Logbook.of(plain.contents().toBuilder().batches(batches).build()));
        Map<Plant, Boolean> found = new LinkedHashMap<>();
        planted.forEach((plant, batch) -> found.put(
                plant, after.find(batch).map(one -> plant.found(one.reasons())).orElse(false)));
        int beside = (int) after.list().stream()
                .filter(one -> !planted.containsValue(one.batch().name()))
                .count();
        return new Count(plain.batches().size(), before.size(), byReadings, byNothingElse, found, beside);
    }

    private static boolean ofReadings(String reason) {
        return reason.contains("all the way") || reason.contains("bears out");
    }

    /** Adds degrees to every reading of the bean probe. */
    static Batch probe(Batch batch, double celsius) {
        Curve curve = batch.beanTemperature().orElseThrow();
        double[] values = curve.values();
        for (int i = 0; i < values.length; i++) {
            values[i] += celsius;
        }
        return batch.toBuilder()
                .curve(Quantity.BEAN_TEMPERATURE, Curve.of(curve.name(), curve.unit(), curve.seconds(), values))
                .build();
    }

    /** Adds degrees to the charge temperature as written; nothing is changed where none was written. */
    static Batch charge(Batch batch, double celsius) {
        BatchConditions old = batch.conditions();
        return batch.toBuilder()
                .conditions(new BatchConditions(
                        old.greenMass(),
                        old.roastedMass(),
                        old.chargeTemperature().map(at -> Temperature.celsius(at.celsius() + celsius)),
                        old.greenTemperature(),
                        old.roomTemperature(),
                        old.roomHumidity(),
                        old.roomPressure(),
                        old.warmUp()))
                .build();
    }
}
