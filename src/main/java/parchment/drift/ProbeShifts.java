package parchment.drift;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import parchment.display.Showable;
import parchment.display.ShownAs;
import parchment.feature.BatchTable;
import parchment.logbook.Batch;
import parchment.logbook.Logbook;
import parchment.quantity.TemperatureUnit;

/**
 * Finds the dates at which a machine's bean probe began to read differently for all lots, and holds them against the upkeep.
 *
 * <pre>{@code
 * ProbeShifts.of(logbook)
 * }</pre>
 *
 * <p>Looked at is what the beans should not move: the temperature of the turning point at like batch mass, charge temperature, green
 * temperature, batch of the day and time since the last drop; the temperature at the written first crack at like lot, mass, rate of
 * rise and operator; and the first reading of a cold machine against the room, where it was logged. At least two of these are needed.
 * A date is called a change only if chance alone, days that resemble their neighbours included, gains as much from a step in fewer
 * than one logbook of twenty, and if a slow change, the time of year or the room's temperature do not explain as much.
 *
 * <p>A probe that was moved also lags differently, so its offset differs along the temperature: it is given per indicator. Method:
 * {@code docs/drift.md}.
 *
 * @see "Killick, Fearnhead and Eckley 2012, J. Am. Stat. Assoc. 107:1590; Bai and Perron 2003, J. Appl. Econom. 18:1"
 */
public final class ProbeShifts implements ShownAs {
    static final long SEED = 20250611;

    private final Logbook logbook;
    private final List<MachineShifts> machines;

    private ProbeShifts(Logbook logbook, List<MachineShifts> machines) {
        this.logbook = logbook;
        this.machines = List.copyOf(machines);
    }

    /** Searches a logbook, machine by machine; what was found before is kept with the logbook. */
    public static ProbeShifts of(Logbook logbook) {
        return logbook.remembered(ProbeShifts.class, ProbeShifts::search);
    }

    private static ProbeShifts search(Logbook logbook) {
        BatchTable table = BatchTable.of(logbook, Indicators.read());
        List<MachineShifts> machines = new ArrayList<>();
        for (MachineDays days : MachineDays.of(table)) {
            machines.add(MachineShifts.of(table, days));
        }
        return new ProbeShifts(logbook, machines);
    }

    /** Returns the changes, written or found, machine by machine in order of time. */
    public List<ProbeChange> changes() {
        return machines.stream().flatMap(m -> m.changes().stream()).toList();
    }

    /** Returns what was found, in sentences. */
    public List<String> sentences() {
        return machines.stream().flatMap(m -> m.sentences().stream()).toList();
    }

    /** Returns the readings of all batches put on the scale of each machine's latest probe period. */
    public OneScale onOneScale() {
        return new OneScale(this);
    }

    /** Returns the number of the probe period a batch belongs to on its machine, from 1; empty if the batch has no date. */
    public Optional<Integer> period(Batch batch) {
        return machine(batch).flatMap(m -> m.period(batch, logbook));
    }

    /** Returns the picture of each machine's indicators through time. */
    public List<Showable> pictures() {
        return machines.stream()
                .<Showable>map(m -> ShiftsPicture.of(m, reader()))
                .toList();
    }

    Optional<MachineShifts> machine(Batch batch) {
        return machines.stream()
                .filter(m -> m.days().machine().equals(batch.machine().orElse("")))
                .findFirst();
    }

    List<MachineShifts> machines() {
        return machines;
    }

    Logbook logbook() {
        return logbook;
    }

    TemperatureUnit reader() {
        return logbook.readerUnit();
    }

    @Override
    public Showable shownAs() {
        return ShiftsPicture.page(this);
    }

    @Override
    public String toString() {
        List<ProbeChange> changes = changes();
        long periods = changes.stream().filter(c -> c.kind().separatesPeriods()).count();
        if (machines.isEmpty() || machines.stream().noneMatch(MachineShifts::searched)) {
            return "Cannot tell whether a probe changed: "
                    + (machines.isEmpty()
                            ? "no batch has a date"
                            : "too few batches have both a turning point and a written first crack")
                    + (changes.isEmpty() ? "" : "; the upkeep names " + changes.size() + " on a probe");
        }
        return String.format(
                Locale.ROOT,
                "%s of the probe on %s%s",
                changes.isEmpty() ? "no change" : changes.size() == 1 ? "1 change" : changes.size() + " changes",
                machines.size() == 1 ? machines.get(0).days().words() : machines.size() + " machines",
                changes.isEmpty()
                        ? ""
                        : ", which make " + (periods + machines.size()) + " probe periods: "
                                + String.join(
                                        ", ",
                                        changes.stream()
                                                .map(c ->
                                                        c.on() + " (" + c.kind().words() + ")")
                                                .toList()));
    }
}
