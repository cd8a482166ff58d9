package parchment.calendar.machine;

import java.time.LocalDate;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalInt;
import parchment.display.Showable;
import parchment.logbook.Batch;
import parchment.logbook.Logbook;
import parchment.logbook.written.Upkeep;

/**
 * Cuts the calendar of each machine where the upkeep says that its bean probe was moved or replaced.
 *
 * <pre>{@code
 * WrittenPeriods.of(logbook)
 * }</pre>
 *
 * <p>Work on the probe in the air, cleaning, and work on another machine cut nothing. A batch whose machine was not written may be of any, so it
 * follows every written change. Changes that nobody wrote are searched for in the room {@code period}.
 */
public final class WrittenPeriods implements Showable {
    private final List<Upkeep> changes;

    private WrittenPeriods(List<Upkeep> changes) {
        this.changes = changes;
    }

    /** Returns the periods of a logbook, as written. */
    public static WrittenPeriods of(Logbook logbook) {
        return new WrittenPeriods(logbook.upkeep().stream()
                .filter(work -> work.kind().changesTheBeanProbe())
                .toList());
    }

    /**
     * Returns the work that changed the bean probe of a machine, oldest first; of every machine where none is named.
     *
     * @param machine the machine's name; blank where none was written
     */
    public List<Upkeep> changes(String machine) {
        return changes.stream().filter(work -> concerns(work, machine)).toList();
    }

    /**
     * Says whether a piece of work was done on a machine, or may have been because one of the two names none.
     *
     * @param machine the machine's name; blank where none was written
     */
    public static boolean concerns(Upkeep work, String machine) {
        return machine.isEmpty() || work.machine().isEmpty() || work.machine().equals(machine);
    }

    /** Returns the days on which a new period of a machine begins, the earliest first. */
    public List<LocalDate> firstDays(String machine) {
        return changes(machine).stream().map(Upkeep::doneOn).distinct().sorted().toList();
    }

    /**
     * Returns the number of the period that a batch belongs to on its machine, from 1; the day of the change is the first of the new period. Empty
     * for a batch without a date where there is more than one period: it may be of any.
     */
    public OptionalInt number(Batch batch) {
        List<LocalDate> days = firstDays(batch.machine().orElse(""));
        Optional<LocalDate> day = batch.roastDay();
        if (day.isEmpty()) {
            return days.isEmpty() ? OptionalInt.of(1) : OptionalInt.empty();
        }
        return OptionalInt.of(1
                + (int) days.stream()
                        .filter(first -> !day.get().isBefore(first))
                        .count());
    }

    @Override
    public String toString() {
        return changes.isEmpty()
                ? "the upkeep names no change of a bean probe"
                : String.format(
                        Locale.ROOT,
                        "the upkeep names %d %s of a bean probe: %s",
                        changes.size(),
                        changes.size() == 1 ? "change" : "changes",
                        String.join(
                                ", ",
                                changes.stream()
                                        .map(work -> work.doneOn() + ", " + work.machine() + ", " + work.words())
                                        .toList()));
    }
}
