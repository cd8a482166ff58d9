package parchment.drift;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import parchment.display.answer.FirstFew;
import parchment.drift.found.WeekCause;
import parchment.feature.Feature;
import parchment.feature.Features;
import parchment.quantity.TemperatureUnit;

/** Tells which numbers moved in one lot or several, and which lie to one side in several batches alike. */
final class WeekDrifts {
    /** So many batches that differ alike are one cause; common practice, no source. */
    static final int SEVERAL = 3;

    private final WeekSigns signs;
    private final int charts;
    private final TemperatureUnit reader;

    private WeekDrifts(WeekSigns signs, int charts, TemperatureUnit reader) {
        this.signs = signs;
        this.charts = charts;
        this.reader = reader;
    }

    /**
     * Returns a cause for each number, and takes the signs that it accounts for.
     *
     * @param charts how many numbers of lots were watched
     */
    static List<WeekCause> of(WeekSigns signs, int charts, TemperatureUnit reader) {
        return new WeekDrifts(signs, charts, reader).causes();
    }

    private List<WeekCause> causes() {
        Map<String, List<WatchedShift>> groups = new LinkedHashMap<>();
        for (WatchedShift shift : signs.shifts()) {
            groups.computeIfAbsent(shift.watch().feature().name() + shift.side(), key -> new ArrayList<>())
                    .add(shift);
        }
        List<WeekCause> causes = new ArrayList<>();
        for (List<WatchedShift> group : groups.values()) {
            causes.add(drift(group));
        }
        Map<String, List<WeekSign>> alike = new LinkedHashMap<>();
        signs.open()
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
        group.forEach(signs::take);
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
                SizeWords.range(off[0], off[off.length - 1], feature.unit(), reader) + ", batch by batch",
                group.size() + " of " + signs.batches().size()
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
        for (WeekSign sign : clear ? signs.odd() : List.<WeekSign>of()) {
            if (sign.feature().name().equals(feature.name())
                    && sign.side() == first.side()
                    && lots.contains(sign.usual().batch().lot().orElse(""))
                    && signs.take(sign)) {
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
                        : SizeWords.range(least, most, feature.unit(), reader) + ", lot by lot",
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
