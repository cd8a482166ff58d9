package parchment.phase;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.TreeSet;
import parchment.logbook.Batch;
import parchment.logbook.Logbook;
import parchment.logbook.Upkeep;
import parchment.quantity.Mass;

/**
 * Holds what the habit of a roaster is learnt from in one batch: its climb and its surroundings.
 *
 * @param phases the marks of the batch
 * @param climb the rising part of its curve
 * @param day the roast day; a batch without a date is a day of its own
 * @param surroundings lot, probe period and roaster, in the order of {@link #TERMS}
 * @param kilograms the green mass; NaN if it was not written
 */
record HabitRow(Phases phases, Optional<Climb> climb, String day, List<String> surroundings, double kilograms) {
    /** What batches share beside their day. */
    static final List<String> TERMS = List.of("lot", "probe period", "roaster");

    HabitRow {
        surroundings = List.copyOf(surroundings);
    }

    String name() {
        return phases.batch().name();
    }

    /** Measures every batch of a logbook once. */
    static List<HabitRow> of(Logbook logbook, List<Phases> all) {
        Map<String, TreeSet<LocalDate>> moves = new TreeMap<>();
        for (Upkeep done : logbook.upkeep()) {
            if (done.what().toLowerCase(Locale.ROOT).contains("probe")) {
                moves.computeIfAbsent(done.machine(), key -> new TreeSet<>()).add(done.doneOn());
            }
        }
        List<HabitRow> rows = new ArrayList<>();
        for (Phases phases : all) {
            Batch batch = phases.batch();
            Optional<LocalDate> day = batch.roastedAt().map(at -> at.toLocalDate());
            rows.add(new HabitRow(
                    phases,
                    Climb.of(phases),
                    day.map(LocalDate::toString).orElse("batch " + batch.name()),
                    List.of(
                            batch.lot().orElse(""),
                            period(moves, batch.machine().orElse(""), day),
                            batch.operator().orElse("")),
                    batch.conditions().greenMass().map(Mass::kilograms).orElse(Double.NaN)));
        }
        return rows;
    }

    /** A stretch of calendar between two written works on the machine's probe; an unwritten machine follows every one of them. */
    private static String period(Map<String, TreeSet<LocalDate>> moves, String machine, Optional<LocalDate> day) {
        if (day.isEmpty()) {
            return machine;
        }
        TreeSet<LocalDate> dates = new TreeSet<>();
        moves.forEach((of, days) -> {
            if (machine.isEmpty() || of.equals(machine)) {
                dates.addAll(days);
            }
        });
        return machine + " " + dates.headSet(day.get(), true).size();
    }
}
