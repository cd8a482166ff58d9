package parchment.drift;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import parchment.logbook.Batch;
import parchment.stats.series.Signal.Side;

/** Finds the watched batches at which the charts of a watch leave their limits. */
final class WatchSignals {
    private WatchSignals() {}

    /** Returns every signal, in order of time. */
    static List<Watch.Signal> of(EstimatedLimits limits, List<Batch> watched) {
        return of(limits, watched, limits.singleStandardLimits());
    }

    /** Returns those of the weighted mean and of the sums only: the limits of single batches take long to work out. */
    static List<Watch.Signal> shifts(EstimatedLimits limits, List<Batch> watched) {
        double[] none = new double[watched.size()];
        Arrays.fill(none, Double.POSITIVE_INFINITY);
        return of(limits, watched, none);
    }

    private static List<Watch.Signal> of(EstimatedLimits of, List<Batch> watched, double[] single) {
        double[] mean = of.weightedMeanLimits();
        double[] sum = of.sumLimits();
        double[] own = of.standard();
        double[] means = of.weightedMean();
        double[] above = of.sumAbove();
        double[] below = of.sumBelow();
        List<Watch.Signal> found = new ArrayList<>();
        for (int i = 0; i < own.length; i++) {
            Batch batch = watched.get(i);
            add(found, batch, Watch.Kind.SINGLE_BATCH, own[i] > single[i], own[i] < -single[i]);
            add(found, batch, Watch.Kind.WEIGHTED_MEAN, means[i] > mean[i], means[i] < -mean[i]);
            add(found, batch, Watch.Kind.CUMULATED_SUM, above[i] > sum[i], below[i] > sum[i]);
        }
        return List.copyOf(found);
    }

    private static void add(List<Watch.Signal> found, Batch batch, Watch.Kind kind, boolean above, boolean below) {
        if (above) {
            found.add(new Watch.Signal(batch, kind, Side.ABOVE));
        }
        if (below) {
            found.add(new Watch.Signal(batch, kind, Side.BELOW));
        }
    }
}
