package parchment.evidence;

import java.util.Comparator;
import java.util.List;
import java.util.stream.IntStream;
import parchment.stats.Robust;

/**
 * Holds the range of the feature that was tried, on the scale on which lots are brought to one level: each batch's distance from the
 * mean of its lot and probe period, plus the mean over all batches. With one lot this is the feature itself.
 *
 * @param lowest the lowest value tried
 * @param highest the highest value tried
 * @param low the 10th percentile
 * @param high the 90th percentile
 * @param center the mean over all batches, which stands for a lot's own mean
 */
public record TriedRange(double lowest, double highest, double low, double high, double center) {

    static TriedRange of(ScoreDesign design) {
        double[] own = design.centered();
        double center = design.material().center();
        return new TriedRange(
                center + Robust.quantile(own, 0),
                center + Robust.quantile(own, 1),
                center + Robust.quantile(own, 0.1),
                center + Robust.quantile(own, 0.9),
                center);
    }

    /** Says whether a value was tried: between the lowest and the highest batch. */
    public boolean holds(double value) {
        return value >= lowest && value <= highest;
    }

    /** Returns the width of the middle 80 % of the batches, the spread over which a difference is told. */
    public double width() {
        return high - low;
    }

    /** Returns the names of the batches nearest to a value on this scale, the nearest first. */
    List<TastedBatch> nearest(ScoreDesign design, double value, int count) {
        double[] own = design.centered();
        return IntStream.range(0, own.length)
                .boxed()
                .sorted(Comparator.comparingDouble(i -> Math.abs(center + own[i] - value)))
                .limit(count)
                .map(i -> design.material().batches().get(i))
                .toList();
    }
}
