package parchment.drift;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import parchment.display.FirstFew;
import parchment.feature.Feature;
import parchment.feature.Features;
import parchment.logbook.Batch;
import parchment.logbook.Logbook;

/**
 * Finds what made the batches of a week differ and tells each cause once: recent changes of the bean probe first, then numbers that moved in
 * one lot or several, then single batches by what is left.
 */
final class WeekCauses {
    static final List<Feature> WATCHED = List.of(
            Features.dryingTime(),
            Features.browningTime(),
            Features.developmentTime(),
            Features.firstCrackTemperature(),
            Features.massLoss());

    /** So many batches that differ alike are one cause; common practice, no source. */
    private static final int SEVERAL = 3;

    private final Logbook logbook;
    private final List<Usual> batches;
    private final List<WeekSign> odd;
    private final List<WatchedShift> shifts = new ArrayList<>();
    private final List<String> notWatched = new ArrayList<>();
    private final Set<WeekSign> explained = new HashSet<>();
    /** The batches whose curves were perhaps read by a probe that the others were not read by. */
    private final Set<String> onAnotherProbe = new HashSet<>();

    private int charts;

    private WeekCauses(Logbook logbook, List<Usual> batches) {
        this.logbook = logbook;
        this.batches = batches;
        this.odd =
                batches.stream().flatMap(usual -> WeekSign.of(usual).stream()).toList();
    }

    /**
     * What was found.
     *
     * @param causes each cause once
     * @param charts how many numbers of lots were watched
     * @param notWatched which could not be, in sentences
     * @param ofBatches the causes that are one batch each, by its name
     */
    record Found(List<WeekCause> causes, int charts, List<String> notWatched, Map<String, WeekCause> ofBatches) {}

    static Found of(Logbook logbook, List<Usual> batches) {
        return new WeekCauses(logbook, batches).found();
    }

    private Found found() {
        watch();
        List<WeekCause> causes = new ArrayList<>();
        Map<String, WeekCause> ofBatches = new LinkedHashMap<>();
        List<Batch> week = batches.stream().map(Usual::batch).toList();
        for (WeekProbes.News news : WeekProbes.of(logbook, week)) {
            List<String> more = new ArrayList<>(news.cause().explains());
            if (news.apart() == WeekProbes.Apart.NOT_SURELY) {
                more.addAll(
                        takenByProbe(news.machine(), news.side(), news.cause().since()));
                onAnotherProbe(news.machine(), news.cause().since());
            }
            causes.add(with(news.cause(), more));
        }
        causes.addAll(perhapsTheProbe());
        causes.addAll(drifts());
        for (Usual usual : batches) {
            if (usual.verdict() == Usual.Verdict.UNLIKE_THE_OTHERS) {
                Set<String> taken = odd.stream()
                        .filter(sign -> sign.usual() == usual && explained.contains(sign))
                        .map(sign -> sign.feature().name())
                        .collect(Collectors.toSet());
                WeekOddBatch.of(
                                usual,
                                taken,
                                onAnotherProbe.contains(usual.batch().name())
                                        ? WeekOddBatch.Path.OF_THE_PROBE
                                        : WeekOddBatch.Path.ITS_OWN,
                                logbook)
                        .ifPresent(cause -> {
                            causes.add(cause);
                            ofBatches.put(usual.batch().name(), cause);
                        });
            }
        }
        List<WeekCause> weakLast = Stream.concat(
                        causes.stream().filter(cause -> cause.sure() != WeekCause.Sure.WEAK),
                        causes.stream().filter(cause -> cause.sure() == WeekCause.Sure.WEAK))
                .toList();
        return new Found(weakLast, charts, List.copyOf(notWatched), Map.copyOf(ofBatches));
    }

    private static WeekCause with(WeekCause cause, List<String> explains) {
        return new WeekCause(
                cause.kind(),
                cause.sure(),
                cause.what(),
                cause.since(),
                cause.size(),
                cause.howSure(),
                cause.next(),
                explains);
    }

    private void watch() {
        Set<String> names = batches.stream().map(u -> u.batch().name()).collect(Collectors.toSet());
        Set<String> lots = new TreeSet<>();
        batches.forEach(u -> u.batch().lot().ifPresent(lots::add));
        Map<String, List<String>> unwatched = new LinkedHashMap<>();
        for (String lot : lots) {
            List<String> without = new ArrayList<>();
            Logbook own = logbook.ofLot(lot);
            for (Feature feature : WATCHED) {
                Watch watch = Watch.of(own, feature);
                if (watch.hasLimits()) {
                    charts++;
                    WatchedShift.of(watch, names).ifPresent(shifts::add);
                } else {
                    without.add(feature.name());
                }
            }
            if (!without.isEmpty()) {
                unwatched
                        .computeIfAbsent(String.join(", ", without), numbers -> new ArrayList<>())
                        .add(lot);
            }
        }
        unwatched.forEach((numbers, of) -> notWatched.add("Not watched for " + (of.size() == 1 ? "lot " : "lots ")
                + String.join(", ", of) + ": " + numbers + " (that needs 10 batches on this probe that differ)."));
    }

    /**
     * Takes the readings of a machine that lie to one side since a day, for a change of its probe accounts for them; returns them in words. Of
     * what moved most must have been roasted since: a sum may begin to grow with a batch before.
     */
    private List<String> takenByProbe(String machine, int side, LocalDate since) {
        List<String> words = new ArrayList<>();
        for (WeekSign sign : odd) {
            if (sign.isReading()
                    && sign.side() == side
                    && sign.machine().equals(machine)
                    && !sign.day().isBefore(since)
                    && explained.add(sign)) {
                words.add(sign.words());
            }
        }
        for (WatchedShift shift : List.copyOf(shifts)) {
            if (WeekSign.isReading(shift.watch().feature())
                    && shift.side() == side
                    && shift.from().machine().orElse("").equals(machine)
                    && shift.isMostlySince(since)) {
                shifts.remove(shift);
                words.add(shift.words());
            }
        }
        return words;
    }

    /** A move of the probe that is too young to be found as one: what it reads lies to one side in several lots at once. */
    private List<WeekCause> perhapsTheProbe() {
        List<WeekCause> causes = new ArrayList<>();
        Set<String> machines = new LinkedHashSet<>();
        batches.forEach(u -> machines.add(u.batch().machine().orElse("")));
        for (String machine : machines) {
            for (int side : new int[] {-1, 1}) {
                WeekReadings.of(machine, side, odd, shifts, batches, logbook).ifPresent(readings -> {
                    WeekCause cause = readings.cause();
                    causes.add(with(cause, takenByProbe(machine, side, cause.since())));
                    onAnotherProbe(machine, cause.since());
                });
            }
        }
        return causes;
    }

    private void onAnotherProbe(String machine, LocalDate since) {
        batches.stream()
                .map(Usual::batch)
                .filter(batch -> batch.machine().orElse("").equals(machine))
                .filter(batch -> !batch.roastDay().orElseThrow().isBefore(since))
                .forEach(batch -> onAnotherProbe.add(batch.name()));
    }

    private List<WeekCause> drifts() {
        Map<String, List<WatchedShift>> groups = new LinkedHashMap<>();
        for (WatchedShift shift : shifts) {
            groups.computeIfAbsent(shift.watch().feature().name() + shift.side(), key -> new ArrayList<>())
                    .add(shift);
        }
        List<WeekCause> causes = new ArrayList<>();
        for (List<WatchedShift> group : groups.values()) {
            causes.add(drift(group));
        }
        Map<String, List<WeekSign>> alike = new LinkedHashMap<>();
        odd.stream()
                .filter(sign -> !explained.contains(sign))
                .forEach(sign -> alike.computeIfAbsent(sign.feature().name() + sign.side(), key -> new ArrayList<>())
                        .add(sign));
        alike.values().stream()
                .filter(group -> group.size() >= SEVERAL)
                .map(this::several)
                .forEach(causes::add);
        return causes;
    }

    /** Several batches of the week that are unlike the others of their lots in the same number and to the same side. */
    private WeekCause several(List<WeekSign> group) {
        explained.addAll(group);
        WeekSign first = group.get(0);
        Feature feature = first.feature();
        double[] off = group.stream()
                .mapToDouble(s -> Math.abs(s.compared().value() - s.compared().usual()))
                .sorted()
                .toArray();
        return new WeekCause(
                WeekCause.Kind.DRIFT,
                WeekCause.Sure.CLEAR,
                "the " + feature.name() + " of " + group.size() + " batches ("
                        + FirstFew.of(group.stream()
                                .map(s -> s.usual().batch().name())
                                .toList())
                        + ") lies " + (first.side() > 0 ? "above" : "below") + " what is usual for their lot",
                first.day(),
                SizeWords.range(off[0], off[off.length - 1], feature.unit(), logbook.readerUnit()) + ", batch by batch",
                group.size() + " of " + batches.size()
                        + " batches of the week show it; of 100 ordinary ones about five look odd.",
                next("Look", feature),
                group.stream().map(WeekSign::words).toList());
    }

    private WeekCause drift(List<WatchedShift> group) {
        WatchedShift first =
                group.stream().min(Comparator.comparing(WatchedShift::since)).orElseThrow();
        Feature feature = first.watch().feature();
        List<String> lots = group.stream().map(s -> s.from().lot().orElse("")).toList();
        boolean clear = group.stream().anyMatch(WatchedShift::isClear);
        List<String> explains =
                new ArrayList<>(group.stream().map(WatchedShift::words).toList());
        // What may be nothing accounts for nothing: a batch that is unlike stays told by itself.
        for (WeekSign sign : clear ? odd : List.<WeekSign>of()) {
            if (sign.feature().name().equals(feature.name())
                    && sign.side() == first.side()
                    && lots.contains(sign.usual().batch().lot().orElse(""))
                    && explained.add(sign)) {
                explains.add(sign.words());
            }
        }
        double least = group.stream()
                .mapToDouble(s -> Math.abs(s.size().estimate()))
                .min()
                .orElse(Double.NaN);
        double most = group.stream()
                .mapToDouble(s -> Math.abs(s.size().estimate()))
                .max()
                .orElse(Double.NaN);
        return new WeekCause(
                WeekCause.Kind.DRIFT,
                clear ? WeekCause.Sure.CLEAR : WeekCause.Sure.WEAK,
                "the " + feature.name() + " of "
                        + (lots.size() == 1 ? "lot " + lots.get(0) : lots.size() + " lots (" + FirstFew.of(lots) + ")")
                        + (clear ? " lies " : " may lie ")
                        + (first.side() > 0 ? "above" : "below") + " what was usual",
                first.since(),
                lots.size() == 1
                        ? first.sizeWords()
                        : SizeWords.range(least, most, feature.unit(), logbook.readerUnit()) + ", lot by lot",
                WatchInShort.chanceOf(
                                "such a shift",
                                group.stream()
                                        .mapToDouble(s -> s.watch().falseShifts())
                                        .max()
                                        .orElse(0))
                        .replaceFirst("\\.$", "; " + charts + (charts == 1 ? " was watched." : " were watched.")),
                next(clear ? "Look" : "If it goes on, look", feature),
                explains);
    }

    /**
     * Says where to look for what moved a number.
     *
     * @param look how the sentence begins, as in "Look"
     */
    private static String next(String look, Feature feature) {
        return look
                + (feature.name().equals(Features.massLoss().name())
                        ? " at the scales, and whether drop, batch size or the moisture of the green changed."
                        : feature.name().equals(Features.firstCrackTemperature().name())
                                ? " at the probe, the beans, and how first crack is marked."
                                : " at what changed about then: charge, gas, batch size, machine, weather or habit.");
    }
}
