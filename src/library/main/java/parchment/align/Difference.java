package parchment.align;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;
import parchment.chart.Plot;
import parchment.display.Showable;
import parchment.display.answer.InShort;
import parchment.display.answer.Report;
import parchment.display.answer.ShownAs;
import parchment.logbook.Batch;
import parchment.logbook.Logbook;
import parchment.phase.Phases;
import parchment.quantity.TemperatureUnit;
import parchment.stats.warp.CurveGroup;
import parchment.stats.warp.SimultaneousBand;

/**
 * Compares two groups of batches along one clock, with a band that is meant to hold the whole true difference at once.
 *
 * <p>Unless told otherwise the rate of rise is compared at equal bean temperature. Chance is counted in roast days, and a day on which
 * both groups were roasted helps both; the band asks for five days in each group. Batches that do not reach over the common stretch are
 * left out and counted. Where the groups were read by different probes the page says so, since then a difference may be the probe's.
 *
 * <pre>{@code
 * Difference.betweenLots(logbook)
 * Difference.of(logbook.ofLot("Cinder Ridge"), logbook.ofLot("Salt Meadow")).on(Clock.SINCE_CHARGE)
 * }</pre>
 *
 * @see SimultaneousBand
 */
public final class Difference implements ShownAs {
    private final Side first;
    private final Side second;
    private final Clock clock;
    private final TemperatureUnit reader;
    private final List<String> notes;
    private final OneClock together;
    private final Optional<SimultaneousBand> band;

    /** One group: its name, and the names of its batches. */
    private record Side(String name, List<Phases> members) {
        Set<String> names() {
            return new HashSet<>(members.stream().map(p -> p.batch().name()).toList());
        }
    }

    private Difference(Side first, Side second, Clock clock, TemperatureUnit reader, List<String> notes) {
        this.first = first;
        this.second = second;
        this.clock = clock;
        this.reader = reader;
        this.notes = List.copyOf(notes);
        List<Phases> all =
                Stream.concat(first.members.stream(), second.members.stream()).toList();
        this.together = OneClock.of(all, clock, reader, all.size(), List.of());
        Set<String> ofFirst = first.names();
        List<OneClock.Laid> one = together.whole().stream()
                .filter(laid -> ofFirst.contains(laid.name()))
                .toList();
        List<OneClock.Laid> other = together.whole().stream()
                .filter(laid -> !ofFirst.contains(laid.name()))
                .toList();
        this.band = one.isEmpty() || other.isEmpty()
                ? Optional.empty()
                : Optional.of(SimultaneousBand.of(group(one), group(other)));
    }

    private CurveGroup group(List<OneClock.Laid> laid) {
        return CurveGroup.of(
                laid.stream().map(together::values).toList(),
                laid.stream().map(one -> OneClock.day(one.phases().batch())).toList());
    }

    /** Compares the batches of two logbooks, such as {@code logbook.ofLot(...)} or {@code logbook.between(...)}: first minus second. */
    public static Difference of(Logbook first, Logbook second) {
        String one = GroupNames.of(first.batches(), "first group");
        String other = GroupNames.of(second.batches(), "second group");
        boolean same = one.equals(other);
        return compare(
                new Side(same ? "first group" : one, Phases.of(first)),
                new Side(same ? "second group" : other, Phases.of(second)),
                first.readerUnit(),
                probes(first, second));
    }

    /** Compares two lists of batches: first minus second. Whether one probe read them all is not known here. */
    public static Difference of(List<Batch> first, List<Batch> second) {
        TemperatureUnit reader = Stream.concat(first.stream(), second.stream())
                .findFirst()
                .map(Batch::readerUnit)
                .orElse(TemperatureUnit.CELSIUS);
        return compare(
                new Side("first group", first.stream().map(Phases::of).toList()),
                new Side("second group", second.stream().map(Phases::of).toList()),
                reader,
                List.of());
    }

    private static Difference compare(Side first, Side second, TemperatureUnit reader, List<String> notes) {
        Set<String> names = first.names();
        // A batch that is in both groups says nothing about their difference.
        List<Phases> others = second.members.stream()
                .filter(phases -> !names.contains(phases.batch().name()))
                .toList();
        int shared = second.members.size() - others.size();
        List<String> said = new ArrayList<>(notes);
        if (shared > 0) {
            said.add(shared + (shared == 1 ? " batch is" : " batches are")
                    + " in both groups and counted in the first only.");
        }
        return new Difference(first, new Side(second.name, others), Clock.BY_BEAN_TEMPERATURE, reader, said);
    }

    private static List<String> probes(Logbook first, Logbook second) {
        Set<String> one = GroupNames.probes(first);
        Set<String> other = GroupNames.probes(second);
        if (one.size() <= 1 && one.equals(other)) {
            return List.of();
        }
        Set<String> all = new HashSet<>(one);
        all.addAll(other);
        return all.size() <= 1
                ? List.of()
                : List.of(
                        "These batches were not all read by one probe: a difference seen here may be the probe's, not the"
                                + " roast's.");
    }

    /** Compares the two lots with the most batches on the latest probe. */
    public static Difference betweenLots(Logbook logbook) {
        OneProbe probe = OneProbe.of(logbook);
        Map<String, List<Phases>> lots = new LinkedHashMap<>();
        for (Phases phases : probe.phases()) {
            phases.batch()
                    .lot()
                    .filter(lot -> phases.bean().isPresent())
                    .ifPresent(lot ->
                            lots.computeIfAbsent(lot, k -> new ArrayList<>()).add(phases));
        }
        List<Side> sides = lots.entrySet().stream()
                .map(lot -> new Side("lot " + lot.getKey(), lot.getValue()))
                .sorted(Comparator.comparingInt((Side side) -> -side.members.size()))
                .toList();
        return compare(
                sides.isEmpty() ? new Side("first lot", List.of()) : sides.get(0),
                sides.size() < 2 ? new Side("second lot", List.of()) : sides.get(1),
                logbook.readerUnit(),
                probe.notes());
    }

    /** Compares the later half of the roast days on the latest probe with the earlier half. */
    public static Difference betweenHalves(Logbook logbook) {
        OneProbe probe = OneProbe.of(logbook);
        List<LocalDate> days = probe.phases().stream()
                .flatMap(phases -> phases.batch().roastDay().stream())
                .distinct()
                .sorted()
                .toList();
        Optional<LocalDate> middle = days.isEmpty() ? Optional.empty() : Optional.of(days.get(days.size() / 2));
        List<Phases> early = new ArrayList<>();
        List<Phases> late = new ArrayList<>();
        for (Phases phases : probe.phases()) {
            phases.batch()
                    .roastDay()
                    .ifPresent(own -> middle.ifPresent(day -> (own.isBefore(day) ? early : late).add(phases)));
        }
        String from = middle.map(LocalDate::toString).orElse("the middle");
        return compare(
                new Side("from " + from + " on", late),
                new Side("before " + from, early),
                logbook.readerUnit(),
                probe.notes());
    }

    /** Returns the same two groups compared on another clock. */
    public Difference on(Clock other) {
        return new Difference(first, second, other, reader, notes);
    }

    /** Returns the same difference with the groups named. */
    public Difference named(String firstName, String secondName) {
        return new Difference(
                new Side(firstName, first.members), new Side(secondName, second.members), clock, reader, notes);
    }

    /** Returns the difference with its band over {@link #positions()}; nothing if a group has no batch there. */
    public Optional<SimultaneousBand> band() {
        return band;
    }

    /** Returns the positions that are compared: degrees Celsius, or seconds on the clock. */
    public double[] positions() {
        return together.positions();
    }

    String firstName() {
        return first.name;
    }

    String secondName() {
        return second.name;
    }

    OneClock together() {
        return together;
    }

    List<String> notes() {
        return notes;
    }

    int[] sizes() {
        return new int[] {first.members.size(), second.members.size()};
    }

    int[] used() {
        Set<String> ofFirst = first.names();
        int one = (int) together.whole().stream()
                .filter(laid -> ofFirst.contains(laid.name()))
                .count();
        return new int[] {one, together.whole().size() - one};
    }

    /** Returns what is drawn. */
    public Plot plot() {
        return DifferencePicture.plot(this);
    }

    /** Returns the answer in three sentences: where they differ most, how sure that is, what to do next. */
    public InShort inShort() {
        return DifferencePicture.inShort(this);
    }

    @Override
    public Showable shownAs() {
        return Report.titled("How two groups of batches differ").add(inShort()).add(plot());
    }

    @Override
    public Optional<String> svg() {
        return plot().svg();
    }

    @Override
    public String toString() {
        return first.name + " minus " + second.name + ": " + DifferencePicture.sentence(this);
    }
}
