package parchment.period;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;
import parchment.calendar.RoastCalendar;
import parchment.calendar.machine.MachineDays;
import parchment.calendar.machine.WrittenPeriods;
import parchment.logbook.Batch;
import parchment.logbook.Logbook;
import parchment.logbook.written.Upkeep;
import parchment.logbook.written.UpkeepKind;
import parchment.phase.Phases;
import parchment.quantity.Temperature;
import parchment.quantity.TemperatureUnit;
import parchment.quantity.Unit;
import parchment.stats.Estimate;
import parchment.stats.Interval;
import parchment.stats.series.DayRegression;
import parchment.stats.series.WanderingDays;

/**
 * Finds the probe periods of one machine: changes found in its readings, written in its upkeep, and the two held against each other.
 *
 * <p>A period begins where the bean probe was changed, as far as is known; readings of two periods differ by an offset that is estimated per
 * indicator. See {@link ProbePeriods}.
 */
public final class MachinePeriods {
    /** Roast days by which a written day may miss the date set and still be the same change. */
    private static final int NEAR = 1;

    /** By the number of steps after the day. */
    private final Map<Integer, List<Estimate>> toLatest = new ConcurrentHashMap<>();

    private final MachineDays days;
    private final List<Indicator> indicators;
    private final List<ProbeChange> changes;
    /** The changes that have a step in the fits, in the order of {@link #firstDays}. */
    private final List<ProbeChange> cuts;

    private final List<Integer> firstDays;
    private final List<DayRegression> fits;
    private final List<String> notes;
    private final List<String> unseen;
    private final List<String> sinceLast;
    private final List<String> slow;

    private MachinePeriods(
            MachineDays days,
            List<Indicator> indicators,
            List<ProbeChange> changes,
            List<ProbeChange> cuts,
            List<Integer> firstDays,
            List<DayRegression> fits,
            List<String> slow,
            List<String> notes,
            List<String> unseen,
            List<String> sinceLast) {
        this.unseen = List.copyOf(unseen);
        this.days = days;
        this.indicators = List.copyOf(indicators);
        this.changes = List.copyOf(changes);
        this.cuts = List.copyOf(cuts);
        this.firstDays = List.copyOf(firstDays);
        this.fits = List.copyOf(fits);
        this.slow = List.copyOf(slow);
        this.notes = List.copyOf(notes);
        this.sinceLast = List.copyOf(sinceLast);
    }

    /** A boundary before it is measured. */
    private record Draft(
            int firstDay, ProbeChange.Kind kind, LocalDate on, List<Integer> dates, double chance, String about) {}

    static MachinePeriods of(Logbook logbook, List<Phases> phases, RoastCalendar calendar, MachineDays days) {
        List<Indicator> indicators = Indicators.of(
                days,
                phases,
                calendar,
                logbook.upkeep().stream()
                        .filter(work -> work.kind() == UpkeepKind.AIR_PROBE)
                        .filter(work -> WrittenPeriods.concerns(work, days.machine()))
                        .map(Upkeep::doneOn)
                        .distinct()
                        .toList());
        List<Draft> drafts = new ArrayList<>();
        List<Upkeep> settled = new ArrayList<>();
        List<String> slow = List.of();
        List<String> notes = new ArrayList<>();
        if (indicators.size() >= 2) {
            ChangeSearch.Result found = ChangeSearch.run(
                    indicators,
                    days.dayNumbers(),
                    days.epochDays(),
                    days.batches().stream()
                            .mapToDouble(batch -> batch.conditions()
                                    .roomTemperature()
                                    .map(Temperature::celsius)
                                    .orElse(Double.NaN))
                            .toArray(),
                    ProbePeriods.SEED);
            indicators = found.adjusted();
            slow = found.slow();
            drafts.addAll(drafts(found, days, logbook, settled));
        } else {
            notes.add(
                    "Cannot tell from the readings of " + days.words() + " whether its probe changed: that needs two of"
                            + " these, each on " + (2 * ChangeSearch.SHORTEST + 2)
                            + " roast days and 30 batches: turning point,"
                            + " temperature at a written first crack, first reading of a cold machine against the room, bean probe against air"
                            + " probe before charge. There "
                            + (indicators.isEmpty()
                                    ? "is none."
                                    : "is " + indicators.get(0).name() + " only."));
        }
        addWritten(drafts, days, logbook, settled);
        List<String> sinceLast = sinceTheLast(days, logbook);
        Comparator<Draft> inTime = Comparator.comparingInt(Draft::firstDay).thenComparing(Draft::on);
        drafts.sort(inTime);
        List<Draft> cutting =
                drafts.stream().filter(draft -> draft.kind.mayBeTheBeanProbe()).toList();
        List<Integer> firstDays = cutting.stream().map(Draft::firstDay).toList();
        List<DayRegression> fits = fits(indicators, days, firstDays);
        List<ProbeChange> cuts = new ArrayList<>();
        List<ProbeChange> changes = new ArrayList<>();
        for (Draft draft : drafts) {
            int k = cutting.indexOf(draft);
            // Work that moved nothing is measured by itself: a step for each cleaning would cost the changes their
            // precision.
            List<Integer> steps = new ArrayList<>(firstDays);
            if (k < 0) {
                steps.add(draft.firstDay);
            }
            List<DayRegression> measured = k < 0 ? fits(indicators, days, steps) : fits;
            ProbeChange change = change(
                    draft, offsets(indicators, measured, k < 0 ? steps.size() - 1 : k), days, logbook.readerUnit());
            changes.add(change);
            if (k >= 0) {
                cuts.add(change);
            }
        }
        return new MachinePeriods(
                days, indicators, changes, cuts, firstDays, fits, slow, notes, unseen(cuts, days, logbook), sinceLast);
    }

    /** Says of each written change that was not seen what is known of it, and by how much it moves readings all the same. */
    private static List<String> unseen(List<ProbeChange> cuts, MachineDays days, Logbook logbook) {
        return cuts.stream()
                .filter(change -> change.kind() == ProbeChange.Kind.WRITTEN_WITHOUT_CHANGE)
                .filter(change -> UnseenChange.of(change.offsets()).matters())
                .map(change -> {
                    UnseenChange known = UnseenChange.of(change.offsets());
                    return "The bean probe of " + days.words() + " was changed on " + change.on() + " and "
                            + known.does(logbook.readerUnit()) + ". " + known.sentence(logbook.readerUnit());
                })
                .toList();
    }

    private static List<DayRegression> fits(List<Indicator> indicators, MachineDays days, List<Integer> firstDays) {
        List<DayRegression> fits = new ArrayList<>();
        for (Indicator indicator : indicators) {
            List<double[]> columns = indicator.rawColumns();
            firstDays.forEach(day -> columns.add(ChangeSearch.step(indicator, days.dayNumbers(), day)));
            int[] dayOfRow = indicator.rows().stream()
                    .mapToInt(row -> days.dayOfBatch().get(row))
                    .toArray();
            fits.add(DayRegression.fit(
                    new WanderingDays(dayOfRow, days.epochDays()),
                    indicator.y().raw(),
                    columns,
                    DayRegression.By.RESTRICTED));
        }
        return fits;
    }

    private static List<Estimate> offsets(List<Indicator> indicators, List<DayRegression> fits, int step) {
        List<Estimate> offsets = new ArrayList<>();
        for (int j = 0; j < indicators.size(); j++) {
            Indicator indicator = indicators.get(j);
            offsets.add(fits.get(j).term(indicator.name(), indicator.columns().size() + step));
        }
        return offsets;
    }

    /**
     * Returns the found steps with what was written about them.
     *
     * @param settled takes the entries that a step was found for
     */
    private static List<Draft> drafts(
            ChangeSearch.Result found, MachineDays days, Logbook logbook, List<Upkeep> settled) {
        List<Draft> drafts = new ArrayList<>();
        List<Upkeep> work = onProbe(days, logbook);
        for (int k = 0; k < found.steps().size(); k++) {
            ChangeSearch.Step step = found.steps().get(k);
            int from = k == 0 ? 0 : found.steps().get(k - 1).firstDay();
            int to = k + 1 < found.steps().size()
                    ? found.steps().get(k + 1).firstDay()
                    : days.dates().size();
            int first = step.days().get(0) - NEAR;
            int last = step.days().get(step.days().size() - 1) + NEAR;
            Optional<Upkeep> entry = work.stream()
                    .filter(w -> {
                        int day = days.firstDayFrom(w.doneOn());
                        return day >= first && day <= last;
                    })
                    .min(Comparator.comparing((Upkeep w) -> !w.kind().changesTheBeanProbe())
                            .thenComparingInt(w -> Math.abs(days.firstDayFrom(w.doneOn()) - step.firstDay())));
            Set<String> across = lots(days, from, step.firstDay());
            across.retainAll(lots(days, step.firstDay(), to));
            ProbeChange.Kind unwritten = step.supporting() > 0 && step.inBeans() == 0
                    ? ProbeChange.Kind.NOT_IN_THE_BEANS
                    : across.size() < 2
                            ? ProbeChange.Kind.LOT_OR_PROBE
                            : step.supporting() < 2
                                    ? ProbeChange.Kind.ONE_PLACE_ONLY
                                    : step.shape() == ChangeSearch.Shape.STEP_OR_SLOW
                                            ? ProbeChange.Kind.STEP_OR_SLOW
                                            : ProbeChange.Kind.FOUND_WITHOUT_ENTRY;
            boolean changing = entry.filter(w -> w.kind().changesTheBeanProbe()).isPresent();
            ProbeChange.Kind kind = changing ? ProbeChange.Kind.FOUND_AND_WRITTEN : unwritten;
            int boundary = entry.map(w -> days.firstDayFrom(w.doneOn())).orElse(step.firstDay());
            LocalDate on = entry.map(Upkeep::doneOn).orElse(days.dates().get(step.firstDay()));
            String about = entry.map(w -> changing
                            ? ProbeWords.written(w, unwritten)
                            : ProbeWords.besideOtherWork(w, unwritten, step.rival()))
                    .orElseGet(() -> ProbeWords.unwritten(unwritten, step.rival(), otherWork(days, logbook, step)));
            drafts.add(new Draft(boundary, kind, on, step.days(), step.chance(), about));
            entry.filter(w -> changing).ifPresent(settled::add);
        }
        return drafts;
    }

    /** Names other work done within the date set, which could be the reason. */
    private static String otherWork(MachineDays days, Logbook logbook, ChangeSearch.Step step) {
        LocalDate from = before(days, step.days().get(0));
        LocalDate to = days.dates().get(step.days().get(step.days().size() - 1));
        List<String> other = logbook.upkeep().stream()
                .filter(w -> WrittenPeriods.concerns(w, days.machine()))
                .filter(w -> !w.doneOn().isBefore(from) && !w.doneOn().isAfter(to))
                .map(w -> w.what() + " on " + w.doneOn())
                .toList();
        return other.isEmpty() ? "" : ", but: " + String.join(", ", other);
    }

    private static LocalDate before(MachineDays days, int firstDay) {
        return days.dates().get(Math.max(0, firstDay - 1));
    }

    private static List<Upkeep> onProbe(MachineDays days, Logbook logbook) {
        return logbook.upkeep().stream()
                .filter(Upkeep::concernsTheBeanProbe)
                .filter(work -> WrittenPeriods.concerns(work, days.machine()))
                .sorted(Comparator.comparing(Upkeep::doneOn))
                .toList();
    }

    /** Adds the entries that no step was found for: every written change cuts, other work only where nothing else was near. */
    private static void addWritten(List<Draft> drafts, MachineDays days, Logbook logbook, List<Upkeep> settled) {
        List<Upkeep> work = new ArrayList<>(onProbe(days, logbook));
        work.sort(Comparator.comparing((Upkeep w) -> !w.kind().changesTheBeanProbe())
                .thenComparing(Upkeep::doneOn));
        for (Upkeep entry : work) {
            int day = days.firstDayFrom(entry.doneOn());
            if (day == 0 || day >= days.dates().size() || settled.contains(entry)) {
                continue; // Before the first or after the last batch there is nothing to compare.
            }
            boolean changing = entry.kind().changesTheBeanProbe();
            int near = changing ? 0 : NEAR;
            if (drafts.stream().noneMatch(d -> Math.abs(d.firstDay - day) <= near)) {
                ProbeChange.Kind kind =
                        changing ? ProbeChange.Kind.WRITTEN_WITHOUT_CHANGE : ProbeChange.Kind.OTHER_WORK;
                drafts.add(new Draft(
                        day, kind, entry.doneOn(), List.of(day), Double.NaN, ProbeWords.written(entry, kind)));
            }
        }
    }

    /** Says that the probe was changed after the last roast: what today's probe would read is not known then. */
    private static List<String> sinceTheLast(MachineDays days, Logbook logbook) {
        return WrittenPeriods.of(logbook).changes(days.machine()).stream()
                .filter(work -> !days.dates().isEmpty()
                        && days.firstDayFrom(work.doneOn()) >= days.dates().size())
                .map(work ->
                        "The upkeep says that the bean probe of " + days.words() + " was changed on " + work.doneOn()
                                + ", after the last roast written here: readings are told as the probe before it read them, and \"today's probe\" means"
                                + " that one. What the new one reads shows only once batches are roasted with it.")
                .toList();
    }

    private static Set<String> lots(MachineDays days, int from, int to) {
        Set<String> lots = new HashSet<>();
        for (int i = 0; i < days.batches().size(); i++) {
            int day = days.dayOfBatch().get(i);
            if (day >= from && day < to) {
                days.batches().get(i).lot().ifPresent(lots::add);
            }
        }
        return lots;
    }

    private static ProbeChange change(Draft draft, List<Estimate> offsets, MachineDays days, TemperatureUnit reader) {
        LocalDate earliest = days.dates().get(draft.dates.get(0));
        LocalDate latest = days.dates().get(draft.dates.get(draft.dates.size() - 1));
        boolean found = !Double.isNaN(draft.chance);
        List<String> parts = offsets.stream()
                .filter(o -> Double.isFinite(o.estimate()))
                .map(o -> o.name() + " " + step(o, reader))
                .toList();
        String words = (found
                        ? "readings stepped after " + before(days, draft.dates.get(0)) + " and by " + latest
                                + " (90 % date set). "
                        : draft.kind == ProbeChange.Kind.WRITTEN_WITHOUT_CHANGE
                                ? "no step is visible in the readings by themselves. "
                                        + UnseenChange.of(offsets).sentence(reader) + " "
                                : "no change is visible in the readings. ")
                + draft.about
                + (found ? "" : ProbeWords.differsAllTheSame(offsets))
                + (parts.isEmpty()
                        ? ""
                        : (found ? " What the probe reads changed by: " : " Readings since that day differ by: ")
                                + String.join(", ", parts) + ".");
        return new ProbeChange(
                days.machine(),
                draft.kind,
                draft.on,
                found ? earliest : draft.on,
                found ? latest : draft.on,
                offsets,
                draft.chance,
                words);
    }

    static String step(Estimate offset, TemperatureUnit reader) {
        if (ProbeChange.isExactlyAlike(offset)) {
            return "not at all (exactly alike before and after, which tells nothing of the probe)";
        }
        Interval interval = offset.interval(0.90);
        Unit unit = Unit.TEMPERATURE_STEP.withDigits(1).withDigitsFor(interval.width() / 2, reader);
        return unit.formatStep(offset.estimate(), reader) + " ("
                + unit.number(unit.shownStep(interval.lower(), reader)) + " to "
                + unit.number(unit.shownStep(interval.upper(), reader)) + ")";
    }

    /** Says whether the readings could be searched: two indicators are needed. */
    public boolean searched() {
        return indicators.size() >= 2;
    }

    /** Returns the machine and its roast days. */
    public MachineDays days() {
        return days;
    }

    /** Returns what each indicator read, day by day, freed of what else moves it. */
    public List<IndicatorByDay> byDay() {
        List<IndicatorByDay> all = new ArrayList<>();
        for (int j = 0; j < indicators.size(); j++) {
            all.add(IndicatorByDay.of(indicators.get(j), fits.get(j), days, firstDays));
        }
        return all;
    }

    List<Indicator> indicators() {
        return indicators;
    }

    /** Returns the changes in order of time. */
    public List<ProbeChange> changes() {
        return changes;
    }

    /** Returns the changes after a day of which it cannot be told whether the probe moved, or something else. */
    List<ProbeChange> unresolvedAfter(LocalDate day) {
        List<ProbeChange> out = new ArrayList<>();
        for (int k = 0; k < cuts.size(); k++) {
            if (!cuts.get(k).kind().separatesPeriods()
                    && day.isBefore(days.dates().get(firstDays.get(k)))) {
                out.add(cuts.get(k));
            }
        }
        return out;
    }

    /** Returns what stands against taking the readings of this machine as those of today's probe, in sentences. */
    List<String> doubts() {
        List<String> doubts = new ArrayList<>();
        for (ProbeChange change : cuts) {
            if (!change.kind().separatesPeriods()) {
                doubts.add(
                        "It cannot be told whether the bean probe of " + days.words() + " moved on " + change.on()
                                + " (" + change.kind().words()
                                + "). If it did, readings before that day are off by as much as they stepped, so places on today's"
                                + " probe are told from the batches since, if they are enough. Write in upkeep.csv what was done then.");
            }
        }
        doubts.addAll(unseen);
        doubts.addAll(sinceLast);
        return doubts;
    }

    /** Returns what was found and what could not be told, in sentences. */
    public List<String> sentences() {
        List<String> sentences = new ArrayList<>();
        changes.forEach(change -> sentences.add(change.toString()));
        if (searched() && changes.stream().noneMatch(c -> !Double.isNaN(c.chance()))) {
            sentences.add("No step of the readings of " + days.words() + " was found in "
                    + days.dates().size() + " roast days.");
        }
        slow.forEach(words -> sentences.add("Readings of " + days.words() + " followed " + words
                + ", which explains them better than a step does, so no date is given."));
        sentences.addAll(notes);
        sentences.addAll(sinceLast);
        return sentences;
    }

    Optional<Integer> period(Batch batch) {
        if (batch.roastedAt().isEmpty()) {
            return Optional.empty();
        }
        LocalDate day = batch.roastDay().orElseThrow();
        int before = 0;
        for (int k = 0; k < cuts.size(); k++) {
            if (cuts.get(k).kind().separatesPeriods()
                    && !day.isBefore(days.dates().get(firstDays.get(k)))) {
                before++;
            }
        }
        return Optional.of(1 + before);
    }

    /** Returns what must be added to readings of a day to bring them to the last period, one estimate per indicator. */
    List<Estimate> toLatest(LocalDate day) {
        // The same for all days between two steps, and asked for every reading of every batch.
        int later = (int) firstDays.stream()
                .filter(first -> day.isBefore(days.dates().get(first)))
                .count();
        return toLatest.computeIfAbsent(later, steps -> workedOut(day));
    }

    private List<Estimate> workedOut(LocalDate day) {
        List<Estimate> out = new ArrayList<>();
        for (int j = 0; j < indicators.size(); j++) {
            int first = indicators.get(j).columns().size();
            double[] multipliers = new double[first + firstDays.size()];
            boolean any = false;
            for (int k = 0; k < firstDays.size(); k++) {
                if (cuts.get(k).kind().separatesPeriods()
                        && day.isBefore(days.dates().get(firstDays.get(k)))) {
                    multipliers[first + k] = 1;
                    any = true;
                }
            }
            out.add(
                    any
                            ? fits.get(j).contrast(indicators.get(j).name(), multipliers)
                            : new Estimate(indicators.get(j).name(), 0, 0, Double.POSITIVE_INFINITY));
        }
        return out;
    }

    @Override
    public String toString() {
        long apart = changes.stream().filter(c -> c.kind().separatesPeriods()).count();
        return days.words() + ": " + (apart + 1) + (apart == 0 ? " probe period" : " probe periods") + " on "
                + days.dates().size() + " roast days";
    }
}
