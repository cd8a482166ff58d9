package parchment.align;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import parchment.curve.SmoothCurve;
import parchment.logbook.MarkKind;
import parchment.phase.Phases;
import parchment.phase.found.Mark;
import parchment.stats.linear.Robust;
import parchment.stats.warp.ElasticAlignment;
import parchment.stats.warp.Warp;

/**
 * Sets one clock for many batches by the shape of their rate of rise, from the turning point to the drop.
 *
 * <p>The rates are matched by the elastic metric of Srivastava et al. 2011 to their Karcher mean. Rising temperatures could not set such a clock: they are all stretched copies of one another.
 */
final class ElasticClock {
    /** Seconds to either side that rates are smoothed over: noise would otherwise bend the clock. Common practice, no source. */
    static final double BANDWIDTH = 45;

    private static final int CELLS = 70;
    /** A stage that took three times as long, or a third, is no longer the same stage; common practice, no source. */
    private static final int LARGEST_SLOPE = 3;
    /** Most batches that the mean is taken of: more would not change it, but take longer. */
    private static final int LARGEST_MEAN = 15;

    private final List<Optional<Warp>> warps;
    private final List<String> notes;

    private ElasticClock(List<Optional<Warp>> warps, List<String> notes) {
        this.warps = warps;
        this.notes = notes;
    }

    /** The rate of rise at equal steps of a batch's own time from the turning point to the drop. */
    private record Rates(double[] seconds, double[] values) {}

    static ElasticClock of(List<Phases> all) {
        List<Optional<Rates>> rates =
                all.parallelStream().map(ElasticClock::rates).toList();
        List<Rates> known = rates.stream().flatMap(Optional::stream).toList();
        if (known.size() < 2) {
            return new ElasticClock(
                    rates.stream().map(r -> Optional.<Warp>empty()).toList(), List.of());
        }
        double[] shares = new double[CELLS + 1];
        Arrays.setAll(shares, k -> (double) k / CELLS);
        ElasticAlignment alignment = ElasticAlignment.of(CELLS).withLargestSlope(LARGEST_SLOPE);
        List<double[]> chosen = spread(known);
        double[] meanShape = alignment.mean(shares, chosen).mean();
        double start =
                Robust.median(known.stream().mapToDouble(r -> r.seconds[0]).toArray());
        double end =
                Robust.median(known.stream().mapToDouble(r -> r.seconds[CELLS]).toArray());
        double[] reference = new double[CELLS + 1];
        Arrays.setAll(reference, k -> start + (end - start) * k / CELLS);
        List<Optional<Warp>> warps = rates.parallelStream()
                .map(r -> r.map(own -> warp(alignment, own, reference, meanShape)))
                .toList();
        return new ElasticClock(
                warps,
                List.of(String.format(
                        Locale.ROOT,
                        "The clock follows the shape of the rate of rise between turning point and drop, smoothed over %.0f s"
                                + " to either side; its mean shape is that of %d batches. Where the rate has no shape to hold"
                                + " on to, the clock is a guess.",
                        BANDWIDTH,
                        chosen.size())));
    }

    private static List<double[]> spread(List<Rates> known) {
        List<double[]> chosen = new ArrayList<>();
        int count = Math.min(LARGEST_MEAN, known.size());
        for (int i = 0; i < count; i++) {
            chosen.add(known.get((int) ((long) i * known.size() / count)).values);
        }
        return chosen;
    }

    private static Optional<Rates> rates(Phases phases) {
        Optional<SmoothCurve> bean = phases.bean();
        double start = phases.mark(MarkKind.TURNING_POINT).map(Mark::seconds).orElse(Double.NaN);
        double end = phases.mark(MarkKind.DROP)
                .map(drop -> drop.seconds() - 2 * drop.standardError())
                .orElse(Double.NaN);
        if (bean.isEmpty() || !(start > 0 && end > start)) {
            return Optional.empty();
        }
        Track track = Track.ofRate(bean.get(), BANDWIDTH);
        double last = track.isEmpty() ? Double.NaN : Math.min(end, track.to());
        double[] seconds = new double[CELLS + 1];
        Arrays.setAll(seconds, k -> start + (last - start) * k / CELLS);
        double[] values = Arrays.stream(seconds).map(track::at).toArray();
        return SharedStretch.whole(values) && last > start ? Optional.of(new Rates(seconds, values)) : Optional.empty();
    }

    private static Warp warp(ElasticAlignment alignment, Rates own, double[] reference, double[] meanShape) {
        return alignment.align(own.seconds, own.values, reference, meanShape).warp();
    }

    List<Optional<Warp>> warps() {
        return warps;
    }

    List<String> notes() {
        return notes;
    }
}
