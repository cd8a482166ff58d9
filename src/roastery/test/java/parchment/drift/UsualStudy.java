package parchment.drift;

import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;
import parchment.logbook.Batch;
import parchment.logbook.Logbook;
import parchment.quantity.Mass;
import parchment.virtual.Scenario;
import parchment.virtual.VirtualRoastery;

/**
 * Counts how often {@link Usual} calls a batch unlike its lot's others in virtual logbooks where nobody did anything unusual on purpose.
 * {@code main(number of logbooks a row)} prints the table of docs/measurements/drift.md.
 */
final class UsualStudy {
    private static final int BATCHES = 80;
    private static final int FEW = 15;
    private static final int SOME = 30;
    /** Batches of 1.4 kg are one in ten, those of 2.1 and 2.4 kg the others. */
    private static final double SMALL = 1.7;

    private UsualStudy() {}

    /** How many batches there were, how many were unlike by a feature, by their path, by either, and how many only a little. */
    record Count(int batches, int byFeature, int byPath, int either, int little) {
        private Count plus(Count other) {
            return new Count(
                    batches + other.batches,
                    byFeature + other.byFeature,
                    byPath + other.byPath,
                    either + other.either,
                    little + other.little);
        }
    }

    public static void main(String[] arguments) {
        int logbooks = Integer.parseInt(arguments[0]);
        for (String scenario : List.of("steady-hand", "harbour", "curve-chaser")) {
            Map<String, Count> counts = new TreeMap<>();
            for (long seed = 1; seed <= logbooks; seed++) {
                counted(scenario, seed).forEach((group, count) -> counts.merge(group, count, Count::plus));
            }
            counts.forEach((group, count) -> System.out.println(String.format(
                    Locale.ROOT,
                    "| %s | %s | %d | %.1f | %.1f | %.1f | %.1f |",
                    scenario,
                    group,
                    count.batches,
                    100.0 * count.byFeature / count.batches,
                    100.0 * count.byPath / count.batches,
                    100.0 * count.either / count.batches,
                    100.0 * count.little / count.batches)));
        }
    }

    /** Counts the batches of one logbook by their mass and by how many others they were held against. */
    static Map<String, Count> counted(String scenario, long seed) {
        Logbook logbook = VirtualRoastery.of(Scenario.named(scenario))
                .withSeed(seed)
                .withBatches(BATCHES)
                .run()
                .opened();
        Map<String, Count> counts = new TreeMap<>();
        for (Batch batch : logbook.batches()) {
            Usual usual = Usual.of(batch, logbook);
            if (usual.verdict() != Usual.Verdict.CANNOT_TELL) {
                long features =
                        usual.compared().stream().filter(Usual.Compared::unlike).count();
                boolean unlike = usual.verdict() == Usual.Verdict.UNLIKE_THE_OTHERS;
                boolean path = unlike && usual.reasons().size() > features;
                boolean little = usual.verdict() == Usual.Verdict.A_LITTLE_UNLIKE_THE_OTHERS;
                counts.merge(
                        group(batch, usual),
                        new Count(1, features > 0 ? 1 : 0, path ? 1 : 0, unlike ? 1 : 0, little ? 1 : 0),
                        Count::plus);
            }
        }
        return counts;
    }

    private static String group(Batch batch, Usual usual) {
        int others =
                usual.compared().stream().mapToInt(Usual.Compared::others).max().orElse(0);
        boolean small = batch.conditions()
                .greenMass()
                .map(Mass::kilograms)
                .filter(mass -> mass < SMALL)
                .isPresent();
        return (small ? "small" : "ordinary") + " | "
                + (others <= FEW ? "8 to 15" : others <= SOME ? "16 to 30" : "more");
    }
}
