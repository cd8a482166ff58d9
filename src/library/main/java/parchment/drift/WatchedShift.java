package parchment.drift;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import parchment.logbook.Batch;
import parchment.stats.Estimate;
import parchment.stats.series.Signal.Side;

/**
 * Dates and measures a shift that a watch signals: it began with the first batch after the sum of what lay to its side was last zero, and is
 * as large as the batches since lie off the stretch, days that wander reckoned with.
 *
 * <p>The batches that gave the signal also give the size, so it is likely somewhat too large.
 *
 * @param watch the watch
 * @param signal its signal
 * @param from the first batch of the shift
 * @param batches how many there are since, the first included
 * @param size by how much, in the unit of the feature
 */
record WatchedShift(Watch watch, Watch.Signal signal, Batch from, int batches, Estimate size) {

    /** A number has moved when so many batches say so; what one or two do is theirs; common practice, no source. */
    private static final int FEWEST = 3;

    /** Returns the shift that was signalled at one of some batches and is still there; empty if there is none. */
    static Optional<WatchedShift> of(Watch watch, Set<String> names) {
        return watch.shifts().stream()
                .filter(signal -> names.contains(signal.batch().name()))
                .filter(watch::stillThere)
                .reduce((earlier, later) -> later)
                .map(signal -> of(watch, signal))
                .filter(shift -> shift.batches() >= FEWEST);
    }

    private static WatchedShift of(Watch watch, Watch.Signal signal) {
        EstimatedLimits limits = watch.limits().orElseThrow();
        double[] sum = signal.side() == Side.ABOVE ? limits.sumAbove() : limits.sumBelow();
        List<Batch> watched = watch.watched();
        int first = watched.indexOf(signal.batch());
        while (first > 0 && sum[first - 1] > 0) {
            first--;
        }
        return new WatchedShift(
                watch,
                signal,
                watched.get(first),
                watched.size() - first,
                watch.rows().step(watch.feature().name(), first));
    }

    int side() {
        return signal.side() == Side.ABOVE ? 1 : -1;
    }

    /** Tells whether the size leaves no doubt about the side. */
    boolean isClear() {
        return !size.interval(SizeWords.LEVEL).contains(0) && Double.isFinite(size.estimate());
    }

    LocalDate since() {
        return from.roastDay().orElseThrow();
    }

    /** Tells whether more than half of its batches were roasted on a day or after it. */
    boolean isMostlySince(LocalDate day) {
        List<Batch> watched = watch.watched();
        long after = watched.subList(watched.size() - batches, watched.size()).stream()
                .filter(batch -> !batch.roastDay().orElseThrow().isBefore(day))
                .count();
        return 2 * after > batches;
    }

    /** Returns the size in the reader's unit. */
    String sizeWords() {
        return SizeWords.of(size, watch.feature().unit(), watch.logbook().readerUnit());
    }

    /** Says of one lot since when and by how much. */
    String words() {
        return watch.feature().name() + " of " + watch.of() + ": " + sizeWords()
                + (side() > 0 ? " above" : " below") + " what was usual in the "
                + watch.stable().size()
                + " batches to " + watch.stable().get(watch.stable().size() - 1).name() + ", since batch " + from.name()
                + " of " + since() + " (" + batches + (batches == 1 ? " batch" : " batches") + ")";
    }
}
