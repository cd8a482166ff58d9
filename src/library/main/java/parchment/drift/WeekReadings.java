package parchment.drift;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.stream.Stream;
import parchment.drift.found.WeekCause;
import parchment.feature.Feature;
import parchment.feature.Features;
import parchment.logbook.Logbook;
import parchment.stats.Estimate;

/**
 * What the bean probe of one machine read to one side of what is usual in the last days, where the beans decide what is read: in two lots or
 * more the probe may have moved, too few days ago to be found as a step; where only one lot was roasted since, the probe or the lot.
 */
final class WeekReadings {
    private static final int FEWEST_LOTS = 2;
    /** Share of the batches since that must lie to the same side, outside of their usual range or not; common practice, no source. */
    private static final double MOST_OF_THEM = 0.75;

    private static final List<Feature> OF_THE_BEANS =
            List.of(Features.firstCrackTemperature(), Features.turningPointTemperature());

    private final String machine;
    private final int side;
    private final List<WeekSign> odd;
    private final List<WatchedShift> moved;
    private final List<Usual> week;
    private final Logbook logbook;

    private WeekReadings(String machine, int side, WeekSigns signs, Logbook logbook) {
        this.machine = machine;
        this.side = side;
        this.odd = signs.open().stream()
                .filter(sign -> sign.side() == side && sign.machine().equals(machine))
                .filter(sign -> WeekSign.isOfTheBeans(sign.feature()))
                .toList();
        this.moved = signs.shifts().stream()
                .filter(shift -> shift.side() == side
                        && shift.from().machine().orElse("").equals(machine))
                .filter(shift -> WeekSign.isOfTheBeans(shift.watch().feature()))
                .toList();
        this.week = signs.batches().stream()
                .filter(usual -> usual.batch().machine().orElse("").equals(machine))
                .toList();
        this.logbook = logbook;
    }

    /**
     * Returns what may have happened to the probe as a cause; empty if too little speaks for it.
     *
     * @param side 1 for readings above what is usual, -1 for those below
     */
    static Optional<WeekCause> of(String machine, int side, WeekSigns signs, Logbook logbook) {
        return new WeekReadings(machine, side, signs, logbook).cause();
    }

    private Optional<WeekCause> cause() {
        Feature told = told();
        SortedMap<LocalDate, List<Usual.Compared>> days = days(told);
        Optional<LocalDate> first = Stream.concat(
                        odd.stream().map(WeekSign::day),
                        odd.isEmpty() ? moved.stream().map(WatchedShift::since) : Stream.of())
                .filter(day -> isOfMost(days.getOrDefault(day, List.of())))
                .min(Comparator.naturalOrder());
        if (first.isEmpty()) {
            return Optional.empty();
        }
        LocalDate since = first.get();
        Set<String> lots = lotsThatShowIt(since);
        List<Usual.Compared> all = since(days, since);
        if (!isOfMost(all) || lots.size() < FEWEST_LOTS && !isOfTheOneLot(since)) {
            return Optional.empty();
        }
        List<Integer> perDay =
                days.tailMap(since).values().stream().map(List::size).toList();
        Optional<Estimate> size = all.isEmpty() ? Optional.empty() : Optional.of(size(all, perDay));
        boolean holdsZero =
                size.filter(one -> one.interval(SizeWords.LEVEL).contains(0)).isPresent();
        boolean oneLot = lots.size() < FEWEST_LOTS;
        String probe = "the bean probe of " + (machine.isEmpty() ? "the machine" : machine);
        String direction = side > 0 ? "higher" : "lower";
        return Optional.of(new WeekCause(
                WeekCause.Kind.PROBE,
                holdsZero ? WeekCause.Sure.WEAK : WeekCause.Sure.PERHAPS,
                oneLot
                        ? probe + " may read " + direction + " (or it is lot "
                                + lots.iterator().next() + ")"
                        : probe + " reads " + direction + " than is usual in " + lots.size() + " lots",
                since,
                size.map(one -> SizeWords.of(one, told.unit(), logbook.readerUnit()) + " at "
                                + (told.name()
                                                .equals(Features.firstCrackTemperature()
                                                        .name())
                                        ? "first crack"
                                        : "the turning point"))
                        .orElse(""),
                String.format(
                        Locale.ROOT,
                        "%d of %d batches since show it; "
                                + (oneLot
                                        ? "with one lot nobody can tell a moved probe from other beans."
                                        : "too few roast days to tell a moved probe from something else."),
                        there(all),
                        all.size()),
                oneLot
                        ? WeekProbeCause.WITH_ONE_LOT
                        : "Look at the probe and its cable, and write into upkeep.csv what was done.",
                List.of()));
    }

    private Set<String> lotsThatShowIt(LocalDate since) {
        Set<String> lots = new LinkedHashSet<>();
        odd.stream()
                .filter(sign -> !sign.day().isBefore(since))
                .forEach(sign -> sign.usual().batch().lot().ifPresent(lots::add));
        moved.stream()
                .filter(shift -> shift.isMostlySince(since))
                .forEach(shift -> shift.from().lot().ifPresent(lots::add));
        return lots;
    }

    /**
     * Tells whether only one lot was roasted since, and several of its batches read otherwise wherever the beans decide: at one place alone a habit of
     * marking or of charging does it too.
     */
    private boolean isOfTheOneLot(LocalDate since) {
        long roasted = week.stream()
                .filter(usual -> !usual.batch().roastDay().orElseThrow().isBefore(since))
                .map(usual -> usual.batch().lot().orElse(""))
                .distinct()
                .count();
        return roasted == 1
                && OF_THE_BEANS.stream()
                        .allMatch(place -> isOfMost(since(days(place), since))
                                && odd.stream()
                                                .filter(sign -> !sign.day().isBefore(since))
                                                .filter(sign ->
                                                        sign.feature().name().equals(place.name()))
                                                .count()
                                        >= WeekDrifts.SEVERAL);
    }

    private static List<Usual.Compared> since(SortedMap<LocalDate, List<Usual.Compared>> days, LocalDate day) {
        return days.tailMap(day).values().stream().flatMap(List::stream).toList();
    }

    /** What one number of the week's batches on a machine is beside what is usual for them, day by day. */
    private SortedMap<LocalDate, List<Usual.Compared>> days(Feature told) {
        SortedMap<LocalDate, List<Usual.Compared>> days = new TreeMap<>();
        for (Usual usual : week) {
            usual.compared().stream()
                    .filter(one -> one.feature().name().equals(told.name()))
                    .filter(one -> Double.isFinite(one.value()) && Double.isFinite(one.usual()))
                    .forEach(one -> days.computeIfAbsent(
                                    usual.batch().roastDay().orElseThrow(), day -> new ArrayList<>())
                            .add(one));
        }
        return days;
    }

    private long there(List<Usual.Compared> batches) {
        return batches.stream()
                .filter(one -> Math.signum(one.value() - one.usual()) == side)
                .count();
    }

    private boolean isOfMost(List<Usual.Compared> batches) {
        return there(batches) >= MOST_OF_THEM * batches.size();
    }

    /** First crack where anything is known of it, for roasters know it best. */
    private Feature told() {
        String crack = Features.firstCrackTemperature().name();
        boolean atCrack = !moved.isEmpty()
                || odd.stream().anyMatch(sign -> sign.feature().name().equals(crack));
        return atCrack ? Features.firstCrackTemperature() : Features.turningPointTemperature();
    }

    /** The mean of how far the batches lie off; batches of one day count as one, for they share what that day was like. */
    private static Estimate size(List<Usual.Compared> all, List<Integer> perDay) {
        int batches = all.size();
        double mean = all.stream()
                .mapToDouble(one -> one.value() - one.usual())
                .average()
                .orElse(Double.NaN);
        double variance = all.stream()
                .mapToDouble(one -> Math.pow(WeekSign.spread(one), 2))
                .average()
                .orElse(Double.NaN);
        double shares = perDay.stream()
                .mapToDouble(n -> Math.pow((double) n / batches, 2))
                .sum();
        int others = all.stream().mapToInt(Usual.Compared::others).min().orElse(Usual.ENOUGH);
        return new Estimate("reading", mean, Math.sqrt(variance * shares), others - 1.0);
    }
}
