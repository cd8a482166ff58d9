package parchment.period;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import parchment.calendar.RoastCalendar;
import parchment.calendar.machine.MachineDays;
import parchment.calendar.machine.WrittenPeriods;
import parchment.display.Showable;
import parchment.logbook.Batch;
import parchment.logbook.Logbook;
import parchment.logbook.MarkKind;
import parchment.phase.Phases;
import parchment.phase.found.Mark;
import parchment.stats.Estimate;

/**
 * Finds the dates at which a machine's bean probe began to read differently for all lots, holds them against the upkeep, and brings readings of
 * earlier periods to the scale of today's probe.
 *
 * <pre>{@code
 * ProbePeriods.of(logbook)
 * }</pre>
 *
 * <p>Looked at is what the beans should not move: the temperature of the turning point at like batch mass, charge temperature, green
 * temperature, batch of the day and time since the last drop; the temperature at the written first crack at like lot, mass, rate of
 * rise and operator; and the first reading of a cold machine against the room, where it was logged. At least two of these are needed.
 * A date is called a change only if chance alone, days that resemble their neighbours included, gains as much from a step in fewer
 * than one logbook of twenty, and if a slow change, the time of year or the room's temperature do not explain as much.
 *
 * <p>Periods are a fact of the machine: they are searched for over all recorded batches, whatever a filter left out, and kept with the logbook.
 * Every later room takes them from here as one value. A probe that was moved also lags differently, so its offset differs along the temperature:
 * it is known where an indicator is read and taken as straight between them and as constant beyond. Method: {@code docs/drift.md}.
 *
 * @see "Killick, Fearnhead and Eckley 2012, J. Am. Stat. Assoc. 107:1590; Bai and Perron 2003, J. Appl. Econom. 18:1"
 */
public final class ProbePeriods implements Showable {
    static final long SEED = 20250611;

    private final List<MachinePeriods> machines;
    private final WrittenPeriods written;

    private ProbePeriods(List<MachinePeriods> machines, WrittenPeriods written) {
        this.machines = List.copyOf(machines);
        this.written = written;
    }

    /** Returns the probe periods of a logbook, machine by machine, those of batches that a filter left out included. */
    public static ProbePeriods of(Logbook logbook) {
        return logbook.whole().remembered(ProbePeriods.class, ProbePeriods::search);
    }

    private static ProbePeriods search(Logbook logbook) {
        List<Phases> phases = Phases.of(logbook);
        Map<String, Phases> byName = new HashMap<>();
        phases.forEach(one -> byName.put(one.batch().name(), one));
        RoastCalendar calendar = RoastCalendar.of(
                logbook,
                batch -> Optional.ofNullable(byName.get(batch.name()))
                        .flatMap(one -> one.mark(MarkKind.DROP))
                        .map(Mark::at));
        List<MachinePeriods> machines = new ArrayList<>();
        for (MachineDays days : MachineDays.of(logbook)) {
            machines.add(MachinePeriods.of(logbook, phases, calendar, days));
        }
        return new ProbePeriods(machines, WrittenPeriods.of(logbook));
    }

    /** Returns the periods of each machine. */
    public List<MachinePeriods> machines() {
        return machines;
    }

    /** Returns the changes, written or found, machine by machine in order of time. */
    public List<ProbeChange> changes() {
        return machines.stream().flatMap(m -> m.changes().stream()).toList();
    }

    /** Returns the changes of the machine that roasted a batch which separate periods, in order of time. */
    public List<ProbeChange> changes(Batch batch) {
        return machine(batch)
                .map(m -> m.changes().stream()
                        .filter(c -> c.kind().separatesPeriods())
                        .toList())
                .orElse(List.of());
    }

    /** Returns what was found, in sentences. */
    public List<String> sentences() {
        return machines.stream().flatMap(m -> m.sentences().stream()).toList();
    }

    /**
     * Returns the number of the probe period a batch belongs to on its machine, from 1. Empty for a batch without a date on a machine whose probe
     * was changed: it may be of any.
     */
    public Optional<Integer> number(Batch batch) {
        if (batch.roastDay().isEmpty()) {
            return changedSomewhere(batch) ? Optional.empty() : Optional.of(1);
        }
        return machine(batch).flatMap(m -> m.period(batch));
    }

    private boolean changedSomewhere(Batch batch) {
        String machine = batch.machine().orElse("");
        return !written.firstDays(machine).isEmpty()
                || changes().stream()
                        .anyMatch(c -> c.kind().separatesPeriods()
                                && (machine.isEmpty() || c.machine().equals(machine)));
    }

    /**
     * Returns a name for the period of a batch that no other period of any machine shares; batches of one name have readings on one scale, and one
     * shared error of {@link #toToday}.
     */
    public String key(Batch batch) {
        return batch.machine().orElse("") + "\n"
                + number(batch).map(n -> Integer.toString(n)).orElse("unknown");
    }

    /**
     * Returns a name for the batches that share the errors of {@link #toToday} and of {@link #doubt}: those of one period between two steps of which
     * it cannot be told whether the probe moved.
     */
    public String errorKey(Batch batch) {
        return key(batch) + "\n" + unresolved(batch).size();
    }

    /**
     * Returns by how much a reading of a batch may be off on today's probe because of later steps of which it cannot be told whether the probe moved:
     * the size of those steps in °C, the same for all batches of one {@link #errorKey}. 0 where there is no such step. If the probe did move, readings are
     * off by about as much; if it did not, by nothing.
     *
     * @param celsius where on the temperature scale the reading lies, °C
     */
    public double doubt(Batch batch, double celsius) {
        double squares = 0;
        for (ProbeChange change : unresolved(batch)) {
            List<Estimate> anchors = new ArrayList<>();
            List<Double> at = new ArrayList<>();
            List<Indicator> indicators = machine(batch).orElseThrow().indicators();
            for (int j = 0; j < change.offsets().size(); j++) {
                if (indicators.get(j).toldOfBeans()
                        && Double.isFinite(change.offsets().get(j).estimate())) {
                    anchors.add(change.offsets().get(j));
                    at.add(indicators.get(j).celsius());
                }
            }
            if (!anchors.isEmpty()) {
                double step = between(anchors, at, celsius).estimate();
                squares += step * step;
            }
        }
        return Math.sqrt(squares);
    }

    private List<ProbeChange> unresolved(Batch batch) {
        return batch.roastDay()
                .flatMap(day -> machine(batch).map(m -> m.unresolvedAfter(day)))
                .orElse(List.of());
    }

    /**
     * Returns what stands against telling some batches' readings as those of today's probe, in sentences: steps of which it cannot be told whether the
     * probe moved, and a change after the last roast. Empty if nothing does.
     */
    public List<String> doubts(List<Batch> batches) {
        return batches.stream()
                .flatMap(batch -> machine(batch).stream())
                .distinct()
                .flatMap(m -> m.doubts().stream())
                .toList();
    }

    /** Returns the period in words, as in "the probe of drum 1 from 2024-10-07 on". */
    public String words(Batch batch) {
        String machine = batch.machine().orElse("");
        String on = machine.isEmpty() ? "" : " of " + machine;
        List<ProbeChange> changes = changes(batch);
        Optional<Integer> number = number(batch);
        if (number.isEmpty()) {
            return "an unknown probe" + on + " (the batch has no date)";
        }
        int period = number.get();
        if (changes.isEmpty()) {
            return "the probe" + on;
        }
        if (period == 1) {
            return "the probe" + on + " until " + changes.get(0).on();
        }
        return "the probe" + on + " from " + changes.get(period - 2).on()
                + (period <= changes.size()
                        ? " until " + changes.get(period - 1).on()
                        : " on");
    }

    /** Says whether a batch was read by the probe that its machine has today. */
    public boolean isTodays(Batch batch) {
        return number(batch).filter(n -> n == changes(batch).size() + 1).isPresent();
    }

    /**
     * Says whether the probe is taken to have been changed after a batch, though no upkeep names a change since: that was inferred from the readings
     * alone, and something else may have moved them.
     */
    public boolean isInferredEarlier(Batch batch) {
        return number(batch)
                .map(n -> changes(batch).subList(n - 1, changes(batch).size()))
                .filter(since -> !since.isEmpty())
                .map(since -> since.stream().allMatch(c -> c.kind() == ProbeChange.Kind.FOUND_WITHOUT_ENTRY))
                .orElse(false);
    }

    /**
     * Returns what must be added to a reading of a batch to have it on the scale of the latest probe of its machine.
     *
     * @param celsius where on the temperature scale the reading lies, °C
     * @return in °C, with the error that all batches of the period share: it does not shrink with their number; 0 without error in the latest
     *     period, NaN if it is not known
     */
    public Estimate toToday(Batch batch, double celsius) {
        Estimate none = new Estimate("offset", 0, 0, Double.POSITIVE_INFINITY);
        Estimate unknown = new Estimate("offset", Double.NaN, Double.NaN, Double.NaN);
        Optional<MachinePeriods> machine = machine(batch);
        if (batch.roastDay().isEmpty() || machine.isEmpty()) {
            return changedSomewhere(batch) ? unknown : none;
        }
        if (isTodays(batch)) {
            return none;
        }
        List<Estimate> known = machine.get().toLatest(batch.roastDay().get());
        List<Estimate> anchors = new ArrayList<>();
        List<Double> at = new ArrayList<>();
        for (int j = 0; j < known.size(); j++) {
            if (machine.get().indicators().get(j).toldOfBeans()
                    && Double.isFinite(known.get(j).estimate())) {
                anchors.add(known.get(j));
                at.add(machine.get().indicators().get(j).celsius());
            }
        }
        return anchors.isEmpty() ? unknown : between(anchors, at, celsius);
    }

    private static Estimate between(List<Estimate> anchors, List<Double> at, double celsius) {
        int below = -1;
        int above = -1;
        for (int j = 0; j < at.size(); j++) {
            below = at.get(j) <= celsius && (below < 0 || at.get(j) > at.get(below)) ? j : below;
            above = at.get(j) > celsius && (above < 0 || at.get(j) < at.get(above)) ? j : above;
        }
        if (below < 0 || above < 0) {
            return anchors.get(Math.max(below, above));
        }
        double share = (celsius - at.get(below)) / (at.get(above) - at.get(below));
        Estimate low = anchors.get(below);
        Estimate high = anchors.get(above);
        return new Estimate(
                "offset",
                (1 - share) * low.estimate() + share * high.estimate(),
                Math.hypot((1 - share) * low.standardError(), share * high.standardError()),
                Math.min(low.degreesOfFreedom(), high.degreesOfFreedom()));
    }

    private Optional<MachinePeriods> machine(Batch batch) {
        return machines.stream()
                .filter(m -> m.days().machine().equals(batch.machine().orElse("")))
                .findFirst();
    }

    @Override
    public String toString() {
        List<ProbeChange> changes = changes();
        long periods = changes.stream().filter(c -> c.kind().separatesPeriods()).count();
        if (machines.isEmpty() || machines.stream().noneMatch(MachinePeriods::searched)) {
            return "Cannot tell whether a probe changed: "
                    + (machines.isEmpty()
                            ? "no batch has a date"
                            : "too few batches can be read at two places that the beans do not move")
                    + (changes.isEmpty() ? "" : "; the upkeep names " + changes.size() + " on a probe");
        }
        return String.format(
                Locale.ROOT,
                "%s of the probe on %s%s",
                changes.isEmpty() ? "no change" : changes.size() == 1 ? "1 change" : changes.size() + " changes",
                machines.size() == 1 ? machines.get(0).days().words() : machines.size() + " machines",
                changes.isEmpty()
                        ? ""
                        : (changes.size() == 1 ? ", which makes " : ", which make ")
                                + (periods + machines.size())
                                + (periods + machines.size() == 1 ? " probe period: " : " probe periods: ")
                                + String.join(
                                        ", ",
                                        changes.stream()
                                                .map(c ->
                                                        c.on() + " (" + c.kind().words() + ")")
                                                .toList()));
    }
}
