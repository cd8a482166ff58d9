package parchment.drift;

import java.util.Optional;
import parchment.display.answer.InShort;
import parchment.display.answer.Sentence;
import parchment.logbook.Batch;
import parchment.stats.series.Signal.Side;

/** Puts a watch into three sentences. */
final class WatchInShort {
    /** Rarer than one in this many charts is told without a number. */
    private static final int MOST_CHARTS = 10_000;

    private WatchInShort() {}

    static InShort of(Watch watch) {
        String feature = watch.feature().name();
        if (!watch.hasLimits()) {
            return new InShort(
                    "Whether the " + feature + (many(feature) ? " have" : " has") + " moved cannot be told yet.",
                    Sentence.of(watch.rows().whyNone().replaceFirst(", as in .*", "")) + ".",
                    "Ask again with more batches of one lot, machine and batch size.");
        }
        Optional<Watch.Signal> shift = watch.signals().stream()
                .filter(signal -> signal.kind() != Watch.Kind.SINGLE_BATCH)
                .findFirst();
        long single = watch.signals().stream()
                .filter(signal -> signal.kind() == Watch.Kind.SINGLE_BATCH)
                .count();
        int watched = watch.watched().size();
        if (shift.isPresent()) {
            return shifted(watch, shift.get());
        }
        if (single > 0) {
            return new InShort(
                    "The " + feature + (many(feature) ? " have" : " has") + " not moved for good, but " + single
                            + " of " + watched + (single == 1 ? " batches was" : " batches were")
                            + " far from the others.",
                    chanceOf(
                            "a batch that far off", watch.limits().orElseThrow().falseSingles()),
                    "Look at the curve of " + far(watch) + " and at what was written that day.");
        }
        return watched == 0
                ? new InShort(
                        "Whether the " + feature + (many(feature) ? " have" : " has") + " moved cannot be told yet.",
                        "No batch has been roasted after those that say what is usual.",
                        "Look again after the next batches.")
                : notSeen(watch);
    }

    private static InShort notSeen(Watch watch) {
        EstimatedLimits limits = watch.limits().orElseThrow();
        int watched = watch.watched().size();
        double least = limits.leastSeen();
        String size = watch.feature()
                .unit()
                .formatStep(
                        (Double.isFinite(least) ? least : WatchDesign.LARGEST) * limits.spread(),
                        watch.logbook().readerUnit())
                .replaceFirst("%$", "percentage points");
        return new InShort(
                "No move of the " + watch.feature().name() + " was seen in " + watched
                        + (watched == 1 ? " batch." : " batches."),
                Double.isFinite(least)
                        ? "A move of more than about " + size + " would have shown soon, a smaller one perhaps not."
                        : "But these batches differ so much that even a move of " + size + " might not have shown.",
                "Nothing to do; look again after the next batches.");
    }

    private static InShort shifted(Watch watch, Watch.Signal shift) {
        boolean above = shift.side() == Side.ABOVE;
        String side = above ? "above" : "below";
        String feature = watch.feature().name();
        String since = name(shift.batch());
        boolean still = watch.stillThere(shift);
        return new InShort(
                still
                        ? "Since " + since + " the " + feature + (many(feature) ? " lie " : " lies ") + side
                                + " what was usual."
                        : "The " + feature + " lay " + side + " what was usual from " + since + " on and "
                                + (many(feature) ? "have" : "has") + " come back.",
                chanceOf("such a shift", watch.falseShifts()),
                "Look at what changed about then: beans, machine, weather, habit or probe.");
    }

    static String chanceOf(String what, double share) {
        if (!(share > 1.0 / MOST_CHARTS)) {
            return "Luck alone hardly ever shows " + what + " in a chart as long as this.";
        }
        long charts = Math.round(1 / share);
        return charts < 2
                ? "Luck alone shows " + what + " in most charts as long as this."
                : "Luck alone shows " + what + " in one of " + charts + " charts as long as this.";
    }

    /** Says whether a feature's name is a plural, as in "rest days". */
    private static boolean many(String feature) {
        return feature.matches("(minutes|.* ?days|days)( .*)?");
    }

    private static String far(Watch watch) {
        return watch.signals().stream()
                .filter(signal -> signal.kind() == Watch.Kind.SINGLE_BATCH)
                .reduce((first, second) -> second)
                .map(signal -> name(signal.batch()))
                .orElseThrow();
    }

    private static String name(Batch batch) {
        return "batch " + batch.name()
                + batch.roastDay().map(day -> " of " + day).orElse("");
    }
}
