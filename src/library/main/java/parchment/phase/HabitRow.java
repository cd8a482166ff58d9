package parchment.phase;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import parchment.calendar.machine.WrittenPeriods;
import parchment.logbook.Batch;
import parchment.logbook.Logbook;
import parchment.quantity.Mass;

/**
 * One row of what a roaster's habit is learnt from: the climb and the surroundings of one batch.
 *
 * @param phases the marks of the batch
 * @param climb the rising part of its curve
 * @param day the roast day; a batch without a date is a day of its own
 * @param surroundings lot, probe period and roaster, in the order of {@link #TERMS}
 * @param kilograms the green mass; NaN if it was not written
 */
record HabitRow(Phases phases, Optional<RisingPart> climb, String day, List<String> surroundings, double kilograms) {
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
        WrittenPeriods periods = WrittenPeriods.of(logbook);
        List<HabitRow> rows = new ArrayList<>();
        for (Phases phases : all) {
            rows.add(of(phases, period(periods, phases.batch())));
        }
        return rows;
    }

    /** Measures one batch, in a stretch of calendar between two changes of the probe. */
    static HabitRow of(Phases phases, String period) {
        Batch batch = phases.batch();
        return new HabitRow(
                phases,
                RisingPart.of(phases),
                batch.roastDay().map(LocalDate::toString).orElse("batch " + batch.name()),
                List.of(batch.lot().orElse(""), period, batch.operator().orElse("")),
                batch.conditions().greenMass().map(Mass::kilograms).orElse(Double.NaN));
    }

    /** A stretch of calendar between two written changes of the machine's bean probe; a batch without a date is in one of its own. */
    private static String period(WrittenPeriods periods, Batch batch) {
        OptionalInt number = periods.number(batch);
        String machine = batch.machine().orElse("");
        return number.isPresent() ? machine + " " + number.getAsInt() : machine;
    }
}
