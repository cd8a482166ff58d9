package parchment.evidence;

import java.util.Comparator;
import java.util.List;
import java.util.stream.IntStream;
import parchment.stats.linear.Robust;

/**
 * Keeps an answer inside what was tried: the range of the feature, as readings on today's probe.
 *
 * @param lowest the lowest value tried
 * @param highest the highest value tried
 * @param low the 10th percentile
 * @param high the 90th percentile
 * @param center the place from which the model counts the feature: the mean over all batches
 */
record TriedRange(double lowest, double highest, double low, double high, double center) {

    static TriedRange of(ScoreDesign design) {
        double center = design.center();
        double[] places = design.centered();
        for (int i = 0; i < places.length; i++) {
            places[i] += center;
        }
        return of(places, center);
    }

    static TriedRange of(double[] places, double center) {
        return new TriedRange(
                Robust.quantile(places, 0),
                Robust.quantile(places, 1),
                Robust.quantile(places, 0.1),
                Robust.quantile(places, 0.9),
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
