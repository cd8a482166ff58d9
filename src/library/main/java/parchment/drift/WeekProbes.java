package parchment.drift;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import parchment.calendar.machine.MachineDays;
import parchment.calendar.machine.WrittenPeriods;
import parchment.drift.found.WeekCause;
import parchment.logbook.Batch;
import parchment.logbook.Logbook;
import parchment.logbook.written.Upkeep;
import parchment.period.MachinePeriods;
import parchment.period.ProbeChange;
import parchment.period.ProbePeriods;

/** Tells the recent changes of the bean probes on which a week was roasted. */
final class WeekProbes {
    /** A change is news for so many roast days: one that nobody wrote is found only when four have passed; common practice, no source. */
    private static final int NEWS = 8;

    private WeekProbes() {}

    /**
     * A change that is news.
     *
     * @param side 1 if readings in beans rose, -1 if they fell, 0 if it cannot be told
     * @param apart whether batches before and after it are held apart
     */
    record News(String machine, int side, Apart apart, WeekCause cause) {}

    /** Whether batches before and after a change are held apart, so that what is odd in one is not the change's. */
    enum Apart {
        YES,
        NOT_SURELY
    }

    /** Returns the changes that are news to a week, machine by machine in order of time. */
    static List<News> of(Logbook logbook, List<Batch> week) {
        Set<String> roasted = week.stream().map(b -> b.machine().orElse("")).collect(Collectors.toSet());
        List<News> news = new ArrayList<>();
        for (MachinePeriods machine : ProbePeriods.of(logbook).machines()) {
            MachineDays days = machine.days();
            if (!roasted.contains(days.machine())) {
                continue;
            }
            for (ProbeChange change : machine.changes()) {
                if (isNews(change, days, week) && change.kind() != ProbeChange.Kind.OTHER_WORK) {
                    news.add(news(change, days, logbook));
                }
            }
            WrittenPeriods.of(logbook).changes(days.machine()).stream()
                    .filter(work ->
                            days.firstDayFrom(work.doneOn()) >= days.dates().size())
                    .min(Comparator.comparing(Upkeep::doneOn))
                    .ifPresent(work ->
                            news.add(new News(days.machine(), 0, Apart.YES, WeekProbeCause.afterTheLast(work, days))));
        }
        return news;
    }

    private static News news(ProbeChange change, MachineDays days, Logbook logbook) {
        boolean apart = change.kind().separatesPeriods() && !WeekProbeCause.mayBeLater(change, days);
        return new News(
                days.machine(),
                side(change),
                apart ? Apart.YES : Apart.NOT_SURELY,
                WeekProbeCause.of(change, days, logbook));
    }

    /**
     * Returns the latest change of each machine of a week that is no news and of which it cannot be told whether the probe moved: readings from
     * before it are no measure of those since.
     */
    static List<News> unresolved(Logbook logbook, List<Batch> week) {
        Set<String> roasted = week.stream().map(b -> b.machine().orElse("")).collect(Collectors.toSet());
        List<News> unresolved = new ArrayList<>();
        for (MachinePeriods machine : ProbePeriods.of(logbook).machines()) {
            MachineDays days = machine.days();
            machine.changes().stream()
                    .filter(change -> roasted.contains(days.machine()) && !isNews(change, days, week))
                    .filter(change -> mayHaveMoved(change.kind()) && side(change) != 0)
                    .reduce((earlier, later) -> later)
                    .ifPresent(change -> unresolved.add(news(change, days, logbook)));
        }
        return unresolved;
    }

    private static boolean mayHaveMoved(ProbeChange.Kind kind) {
        return switch (kind) {
            case LOT_OR_PROBE, ONE_PLACE_ONLY, STEP_OR_SLOW -> true;
            case FOUND_AND_WRITTEN, FOUND_WITHOUT_ENTRY, WRITTEN_WITHOUT_CHANGE, OTHER_WORK, NOT_IN_THE_BEANS -> false;
        };
    }

    /** Returns the changes that are not told as news of a week, machine by machine in order of time. */
    static List<ProbeChange> notNews(Logbook logbook, List<Batch> week) {
        Set<String> roasted = week.stream().map(b -> b.machine().orElse("")).collect(Collectors.toSet());
        List<ProbeChange> others = new ArrayList<>();
        for (MachinePeriods machine : ProbePeriods.of(logbook).machines()) {
            boolean used = roasted.contains(machine.days().machine());
            machine.changes().stream()
                    .filter(change -> !used || !isNews(change, machine.days(), week))
                    .forEach(others::add);
        }
        return others;
    }

    /** Returns the days of the changes that are no news to the week, those of machines that it did not use too. */
    static List<LocalDate> earlier(Logbook logbook, List<Batch> week) {
        return notNews(logbook, week).stream()
                .filter(change -> change.kind() != ProbeChange.Kind.OTHER_WORK)
                .filter(change -> WeekOldNumbers.of(change, week, logbook).isEmpty())
                .map(ProbeChange::on)
                .toList();
    }

    static boolean isNews(ProbeChange change, MachineDays days, List<Batch> week) {
        boolean inTheWeek = week.stream()
                .map(batch -> batch.roastDay().orElseThrow())
                .min(LocalDate::compareTo)
                .filter(first -> !change.latest().isBefore(first))
                .isPresent();
        return inTheWeek || days.dates().size() - days.firstDayFrom(change.on()) <= NEWS;
    }

    private static int side(ProbeChange change) {
        return change.kind() == ProbeChange.Kind.NOT_IN_THE_BEANS
                ? 0
                : WeekProbeCause.told(change).stream()
                        .mapToInt(offset -> (int) Math.signum(offset.estimate()))
                        .findFirst()
                        .orElse(0);
    }
}
