package parchment.logbook;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import parchment.logbook.written.BatchConditions;
import parchment.logbook.written.Machine;
import parchment.quantity.Mass;
import parchment.quantity.MassUnit;
import parchment.sheet.Words;
import parchment.stats.linear.Robust;

/**
 * Doubts green masses that a machine is hardly charged with: above the largest batch that machines.csv says of it, or far from all others of the same
 * machine, as where a point slipped or grams stand among kilograms.
 *
 * <p>A roasted mass that goes with it speaks for such a mass, and it is kept as written; without one it is set aside. Where more than a few batches of a
 * machine are so far from the others, it is charged in more than one size, and none of them is doubted for that. Where most are above the largest batch,
 * that is doubted and the masses stand. Batches of no named machine count as of one.
 */
final class OddMasses {
    /** How many times the usual charge, or what part of it, a charge of the same machine is doubted beyond: a slipped point makes ten; common practice, no source. */
    static final double FAR = 5;

    /** Up to how many times the largest batch a mass is not above it: it may have been rounded in another unit; common practice, no source. */
    static final double ROUNDED = 1.02;

    /** Fewest green masses of a machine that say what is usual on it, or that its largest batch is wrong. */
    static final int LEAST = 4;

    /** Slips are at most this share of a machine's masses; common practice, no source. */
    static final double MOST_SLIPS = 0.25;

    /** Above this share of a machine's masses its largest batch is wrong, not they; common practice, no source. */
    static final double MOST_ABOVE = 0.5;

    private static final String GREEN = "green mass";

    private final CsvTable table;
    private final MassUnit unit;
    private final Map<String, Mass> largest;
    private final Map<String, String> expected = new LinkedHashMap<>();
    private final Map<String, Row> rows = new LinkedHashMap<>();

    private OddMasses(CsvTable table, List<Machine> machines) {
        this.table = table;
        this.unit = table.massUnit(GREEN);
        this.largest = machines.stream()
                .filter(machine -> machine.largestBatch().isPresent())
                .collect(Collectors.toMap(
                        Machine::name, machine -> machine.largestBatch().orElseThrow()));
        for (Row row : table.rows()) {
            // Of two rows with one name the first is kept.
            row.text("batch").map(table.settings()::batchName).ifPresent(name -> rows.putIfAbsent(name, row));
        }
    }

    /**
     * Sets doubtful masses aside and says so.
     *
     * @param batches all batches of the table by name, changed in place
     * @param machines what machines.csv says
     */
    static void settle(Map<String, Batch> batches, CsvTable table, List<Machine> machines) {
        Map<Optional<String>, List<Batch>> byMachine = new LinkedHashMap<>();
        batches.values().stream()
                .filter(batch -> batch.conditions().greenMass().isPresent())
                .forEach(batch -> byMachine
                        .computeIfAbsent(batch.machine(), machine -> new ArrayList<>())
                        .add(batch));
        OddMasses odd = new OddMasses(table, machines);
        byMachine.forEach((machine, weighed) -> odd.far(machine, odd.notAbove(machine, weighed)));
        odd.rows.forEach((name, row) -> batches.computeIfPresent(name, (key, batch) -> odd.settled(batch, row)));
    }

    /** Doubts what is above the machine's largest batch and returns the rest; none where that batch is doubted instead. */
    private List<Batch> notAbove(Optional<String> machine, List<Batch> weighed) {
        Optional<Mass> most = machine.flatMap(name -> Optional.ofNullable(largest.get(name)));
        if (most.isEmpty()) {
            return weighed;
        }
        Map<Boolean, List<Batch>> above = weighed.stream()
                .collect(Collectors.partitioningBy(
                        batch -> kilograms(batch) > ROUNDED * most.get().kilograms() * (1 + 1e-9)));
        List<Batch> doubted = above.getOrDefault(true, List.of());
        String words = "at most " + most.get().words(unit) + ", the largest batch " + of(machine) + " in "
                + MachineFiles.MACHINES;
        if (weighed.size() >= LEAST && doubted.size() > MOST_ABOVE * weighed.size()) {
            Optional.ofNullable(rows.get(doubted.get(0).name()))
                    .ifPresent(row -> row.problem(
                            GREEN,
                            "more in " + doubted.size() + " of the " + weighed.size() + " batches " + of(machine),
                            words,
                            "all kept as written: correct the largest batch, or the unit in a heading"));
            return List.of();
        }
        doubted.forEach(batch -> expected.put(batch.name(), words));
        return above.getOrDefault(false, List.of());
    }

    private void far(Optional<String> machine, List<Batch> weighed) {
        if (weighed.size() < LEAST) {
            return;
        }
        double usual =
                Robust.median(weighed.stream().mapToDouble(OddMasses::kilograms).toArray());
        List<Batch> odd =
                weighed.stream().filter(batch -> isFar(kilograms(batch), usual)).toList();
        if (odd.size() <= MOST_SLIPS * weighed.size()) {
            odd.forEach(batch -> expected.put(
                    batch.name(),
                    "about " + Mass.kilograms(usual).words(unit) + ", the usual charge " + of(machine) + "; this is "
                            + (kilograms(batch) > usual ? "more than five times as much" : "less than a fifth of it")));
        }
    }

    private static String of(Optional<String> machine) {
        return machine.map(name -> "of " + Words.quote(name)).orElse("where no machine is named");
    }

    private Batch settled(Batch batch, Row row) {
        Optional<String> doubt = Optional.ofNullable(expected.get(batch.name()));
        if (doubt.isEmpty()) {
            return batch;
        }
        BatchConditions conditions = batch.conditions();
        boolean goesWithRoasted = conditions.roastedMass().isPresent();
        row.problem(
                GREEN,
                Words.quote(row.text(GREEN).orElse("")),
                doubt.get(),
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
