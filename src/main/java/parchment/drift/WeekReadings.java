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
import parchment.feature.Feature;
import parchment.feature.Features;
import parchment.logbook.Logbook;
import parchment.stats.Estimate;

/**
 * What the bean probe of one machine read to one side of what is usual in the last days, where the beans decide what is read: in two lots or
 * more the probe may have moved, too few days ago to be found as a step.
 */
record WeekReadings(WeekCause cause) {
    private static final int FEWEST_LOTS = 2;
    /** Share of the batches since that must lie to the same side, outside of their usual range or not; common practice, no source. */
    private static final double MOST_OF_THEM = 0.75;

    static Optional<WeekReadings> of(
            String machine,
            int side,
            List<WeekSign> odd,
            List<WatchedShift> shifts,
            List<Usual> week,
            Logbook logbook) {
        List<WeekSign> signs = odd.stream()
                .filter(sign -> sign.side() == side && sign.machine().equals(machine))
                .filter(sign -> WeekSign.isOfTheBeans(sign.feature()))
                .toList();
        List<WatchedShift> moved = shifts.stream()
                .filter(shift -> shift.side() == side
                        && shift.from().machine().orElse("").equals(machine))
                .filter(shift -> WeekSign.isOfTheBeans(shift.watch().feature()))
                .toList();
        Feature told = told(signs, moved);
        SortedMap<LocalDate, List<Usual.Compared>> days = days(machine, told, week);
        Optional<LocalDate> since = Stream.concat(
                        signs.stream().map(WeekSign::day),
                        signs.isEmpty() ? moved.stream().map(WatchedShift::since) : Stream.of())
                .filter(day -> isOfMost(days.getOrDefault(day, List.of()), side))
                .min(Comparator.naturalOrder());
        if (since.isEmpty()) {
            return Optional.empty();
        }
        Set<String> lots = new LinkedHashSet<>();
        signs.stream()
                .filter(sign -> !sign.day().isBefore(since.get()))
                .forEach(sign -> sign.usual().batch().lot().ifPresent(lots::add));
        moved.stream()
                .filter(shift -> shift.isMostlySince(since.get()))
                .forEach(shift -> shift.from().lot().ifPresent(lots::add));
        List<Usual.Compared> all = days.tailMap(since.get()).values().stream()
                .flatMap(List::stream)
                .toList();
        if (lots.size() < FEWEST_LOTS || !isOfMost(all, side)) {
            return Optional.empty();
        }
        List<Integer> perDay =
                days.tailMap(since.get()).values().stream().map(List::size).toList();
        Optional<Estimate> size = all.isEmpty() ? Optional.empty() : Optional.of(size(all, perDay));
        boolean holdsZero =
                size.filter(one -> one.interval(SizeWords.LEVEL).contains(0)).isPresent();
        return Optional.of(new WeekReadings(new WeekCause(
                WeekCause.Kind.PROBE,
                holdsZero ? WeekCause.Sure.WEAK : WeekCause.Sure.PERHAPS,
                "the bean probe of " + (machine.isEmpty() ? "the machine" : machine) + " reads "
                        + (side > 0 ? "higher" : "lower") + " than is usual in " + lots.size() + " lots",
                since.get(),
                size.map(one -> SizeWords.of(one, told.unit(), logbook.readerUnit()) + " at "
                                + (told.name()
                                                .equals(Features.firstCrackTemperature()
                                                        .name())
                                        ? "first crack"
                                        : "the turning point"))
                        .orElse(""),
                String.format(
                        Locale.ROOT,
                        "%d of %d batches since show it; too few roast days to tell a moved probe from something else.",
                        there(all, side),
                        all.size()),
                "Look at the probe and its cable, and write into upkeep.csv what was done.",
                List.of())));
    }

    /** What one number of the week's batches on a machine is beside what is usual for them, day by day. */
    private static SortedMap<LocalDate, List<Usual.Compared>> days(String machine, Feature told, List<Usual> week) {
        SortedMap<LocalDate, List<Usual.Compared>> days = new TreeMap<>();
        for (Usual usual : week) {
            if (usual.batch().machine().orElse("").equals(machine)) {
                usual.compared().stream()
                        .filter(one -> one.feature().name().equals(told.name()))
                        .filter(one -> Double.isFinite(one.value()) && Double.isFinite(one.usual()))
                        .forEach(one -> days.computeIfAbsent(
                                        usual.batch().roastDay().orElseThrow(), day -> new ArrayList<>())
                                .add(one));
            }
        }
        return days;
    }

    private static long there(List<Usual.Compared> batches, int side) {
        return batches.stream()
                .filter(one -> Math.signum(one.value() - one.usual()) == side)
                .count();
    }

    private static boolean isOfMost(List<Usual.Compared> batches, int side) {
        return there(batches, side) >= MOST_OF_THEM * batches.size();
    }

    private static Feature told(List<WeekSign> signs, List<WatchedShift> moved) {
        String crack = Features.firstCrackTemperature().name();
        boolean atCrack = !moved.isEmpty()
                || signs.stream().anyMatch(sign -> sign.feature().name().equals(crack));
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
