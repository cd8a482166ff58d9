package parchment.logbook;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import parchment.quantity.Mass;
import parchment.quantity.MassUnit;
import parchment.sheet.Words;
import parchment.stats.Robust;

/**
 * Doubts green masses that are far from all that the same machine is charged with: a point in the wrong place, or grams among kilograms.
 *
 * <p>A roasted mass that goes with it speaks for such a mass, and it is kept as written; without one it is set aside. Where more than a few batches of a
 * machine are so far from the others, it is charged in more than one size, and nothing is doubted. Batches of no named machine count as of one.
 */
final class OddMasses {
    /** How many times the usual charge, or what part of it, a charge of the same machine is doubted beyond; common practice, no source. */
    static final double FAR = 10;

    /** Fewest green masses of a machine that say what is usual on it. */
    static final int LEAST = 4;

    /** Slips are at most this share of a machine's masses; common practice, no source. */
    static final double MOST_SLIPS = 0.25;

    private static final String GREEN = "green mass";

    private OddMasses() {}

    /**
     * Sets doubtful masses aside and says so.
     *
     * @param batches all batches of the table by name, changed in place
     */
    static void settle(Map<String, Batch> batches, CsvTable table) {
        MassUnit unit = table.massUnit(GREEN);
        Map<Optional<String>, List<Batch>> byMachine = new LinkedHashMap<>();
        batches.values().stream()
                .filter(batch -> batch.conditions().greenMass().isPresent())
                .forEach(batch -> byMachine
                        .computeIfAbsent(batch.machine(), machine -> new ArrayList<>())
                        .add(batch));
        Map<String, Double> usualOfOdd = new LinkedHashMap<>();
        for (List<Batch> weighed : byMachine.values()) {
            double usual = Robust.median(
                    weighed.stream().mapToDouble(OddMasses::kilograms).toArray());
            List<Batch> odd = weighed.stream()
                    .filter(batch -> isFar(kilograms(batch), usual))
                    .toList();
            if (weighed.size() >= LEAST && odd.size() <= MOST_SLIPS * weighed.size()) {
                odd.forEach(batch -> usualOfOdd.put(batch.name(), usual));
            }
        }
        if (usualOfOdd.isEmpty()) {
            return;
        }
        for (Row row : table.rows()) {
            // Of two rows with one name the first is kept, and only that one is asked about.
            Optional<String> name = row.text("batch").map(table.settings()::batchName);
            Optional<Double> usual = name.map(usualOfOdd::remove);
            if (name.isPresent() && usual.isPresent()) {
                batches.computeIfPresent(name.get(), (key, batch) -> doubted(batch, row, usual.get(), unit));
            }
        }
    }

    private static Batch doubted(Batch batch, Row row, double usual, MassUnit unit) {
        BatchConditions conditions = batch.conditions();
        boolean goesWithRoasted = conditions.roastedMass().isPresent();
        row.problem(
                GREEN,
                Words.quote(row.text(GREEN).orElse("")),
                "about " + Mass.kilograms(usual).words(unit) + ", the usual charge "
                        + batch.machine()
                                .map(machine -> "of " + Words.quote(machine))
                                .orElse("where no machine is named")
                        + "; this is "
                        + (kilograms(batch) > usual ? "more than ten times as much" : "less than a tenth of it"),
                goesWithRoasted
                        ? "kept as written, for the roasted mass goes with it: correct both if they are slips"
                        : "value treated as missing: correct it, or, if it is right, write its roasted mass too");
        return goesWithRoasted
                ? batch
                : batch.toBuilder()
                        .conditions(conditions.withMasses(Optional.empty(), conditions.roastedMass()))
                        .build();
    }

    private static boolean isFar(double mass, double usual) {
        return mass > FAR * usual * (1 + 1e-9) || mass < usual / FAR * (1 - 1e-9);
    }

    private static double kilograms(Batch batch) {
        return batch.conditions().greenMass().map(Mass::kilograms).orElse(Double.NaN);
    }
}
