package parchment.drift;

import java.util.List;
import java.util.Optional;
import parchment.display.Showable;
import parchment.display.answer.InShort;
import parchment.display.answer.ShownAs;
import parchment.drift.found.OneScale;
import parchment.logbook.Batch;
import parchment.logbook.Logbook;
import parchment.period.MachinePeriods;
import parchment.period.ProbeChange;
import parchment.period.ProbePeriods;
import parchment.quantity.TemperatureUnit;

/**
 * Reports the dates at which a machine's bean probe began to read differently for all lots, held against the upkeep.
 *
 * <pre>{@code
 * ProbeShifts.of(logbook)
 * }</pre>
 *
 * <p>The search itself is {@link ProbePeriods}; every answer of every room takes its readings from there. This is the page of it: the changes,
 * their sizes with intervals, and what each indicator read through time. Periods are those of the whole logbook, whatever a filter left out.
 */
public final class ProbeShifts implements ShownAs {
    private final Logbook logbook;
    private final ProbePeriods periods;

    private ProbeShifts(Logbook logbook, ProbePeriods periods) {
        this.logbook = logbook;
        this.periods = periods;
    }

    /** Searches a logbook, machine by machine; what was found before is kept with the logbook. */
    public static ProbeShifts of(Logbook logbook) {
        return new ProbeShifts(logbook, ProbePeriods.of(logbook));
    }

    /** Returns the changes, written or found, machine by machine in order of time. */
    public List<ProbeChange> changes() {
        return periods.changes();
    }

    /** Returns the answer in three sentences: the latest change that counts, how sure that is, what to do next. */
    public InShort inShort() {
        // Of a machine whose readings could not be searched nobody knows whether they went on as before.
        List<MachinePeriods> searched =
                periods.machines().stream().filter(MachinePeriods::searched).toList();
        return ShiftsInShort.of(
                searched.isEmpty()
                        ? changes()
                        : searched.stream().flatMap(m -> m.changes().stream()).toList(),
                periods.machines().isEmpty()
                        ? ShiftsInShort.Searched.NO_DATES
                        : searched.isEmpty() ? ShiftsInShort.Searched.TOO_FEW : ShiftsInShort.Searched.SEARCHED,
                periods.machines().size() > 1 ? ShiftsInShort.Machines.SEVERAL : ShiftsInShort.Machines.ONE,
                reader());
    }

    /** Returns what was found, in sentences. */
    public List<String> sentences() {
        return periods.sentences();
    }

    /** Returns the readings of all batches put on the scale of each machine's latest probe period. */
    public OneScale onOneScale() {
        return new OneScale(this);
    }

    /** Returns the number of the probe period a batch belongs to on its machine, from 1; empty if the batch has no date. */
    public Optional<Integer> period(Batch batch) {
        return periods.number(batch);
    }

    /** Returns the periods that are reported. */
    public ProbePeriods periods() {
        return periods;
    }

    /** Returns the picture of each machine's indicators through time. */
    public List<Showable> pictures() {
        return periods.machines().stream()
                .<Showable>map(m -> ShiftsPicture.of(m, reader()))
                .toList();
    }

    public Logbook logbook() {
        return logbook;
    }

    public TemperatureUnit reader() {
        return logbook.readerUnit();
    }

    @Override
    public Showable shownAs() {
        return ShiftsPicture.page(this);
    }

    @Override
    public String toString() {
        return periods.toString();
    }
}
