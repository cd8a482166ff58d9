package parchment.trial;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeSet;
import java.util.stream.Collectors;
import parchment.stats.Interval;
import parchment.stats.mixed.SlopeInsideSets;
import parchment.stats.resample.SetShuffle;
import parchment.stats.resample.ShuffledSlope;

/**
 * Takes the scored batches of a trial as they were assigned, whatever they came out at: batch means inside sets on the drawn targets, among the shuffles of
 * the targets.
 */
final class AsAssigned {
    /** The shuffles of an answer are always the same ones. */
    static final long SEED = 1;

    private final List<AssignedBatch> batches;
    private final ShuffledSlope slope;
    private final SlopeInsideSets line;
    private final double span;
    private final double level;

    private AsAssigned(
            List<AssignedBatch> batches, ShuffledSlope slope, SlopeInsideSets line, double span, double level) {
        this.batches = batches;
        this.slope = slope;
        this.line = line;
        this.span = span;
        this.level = level;
    }

    /**
     * Returns the analysis of the batches that have a score, set by set; empty if no set has two of them with different targets.
     *
     * @param span from the lowest target of the trial to the highest
     * @param level of the interval, as in 0.90
     */
    static Optional<AsAssigned> of(List<AssignedBatch> all, double span, double level) {
        Map<String, List<AssignedBatch>> sets = all.stream()
                .filter(batch -> Double.isFinite(batch.mean()))
                .collect(Collectors.groupingBy(AssignedBatch::set, LinkedHashMap::new, Collectors.toList()));
        List<AssignedBatch> kept = sets.values().stream()
                .filter(set -> set.stream()
                                .mapToDouble(AssignedBatch::target)
                                .distinct()
                                .count()
                        > 1)
                .flatMap(List::stream)
                .toList();
        if (kept.isEmpty()) {
            return Optional.empty();
        }
        List<String> names = kept.stream().map(AssignedBatch::set).toList();
        double[] targets = kept.stream().mapToDouble(AssignedBatch::target).toArray();
        double[] means = kept.stream().mapToDouble(AssignedBatch::mean).toArray();
        return Optional.of(new AsAssigned(
                kept,
                SetShuffle.of(names, targets, SEED).slope(means),
                SlopeInsideSets.on(names, targets),
                span,
                level));
    }

    /** Returns the batches behind it. */
    List<AssignedBatch> batches() {
        return batches;
    }

    List<String> sets() {
        return batches.stream().map(AssignedBatch::set).toList();
    }

    long setCount() {
        return sets().stream().distinct().count();
    }

    int cuppers() {
        return batches.stream()
                .flatMap(batch -> batch.scores().stream())
                .map(AssignedBatch.GivenScore::cupper)
                .collect(Collectors.toCollection(TreeSet::new))
                .size();
    }

    double[] means() {
        return batches.stream().mapToDouble(AssignedBatch::mean).toArray();
    }

    ShuffledSlope slope() {
        return slope;
    }

    SlopeInsideSets line() {
        return line;
    }

    /** Returns the two-sided chance of as steep a slope if the target did nothing. */
    double chance() {
        return slope.probability();
    }

    /** Returns the difference of the score from the lowest target to the highest, in points. */
    double difference() {
        return slope.estimate() * span;
    }

    /** Returns the interval of that difference, in points. */
    Interval interval() {
        Interval found = slope.interval(level);
        return new Interval(found.lower() * span, found.upper() * span, level);
    }

    /** Returns the same interval by the t distribution, to stand beside it; its ends are NaN where no degree of freedom is left. */
    Interval plainInterval() {
        Interval found = line.slope("slope", means()).interval(level);
        return new Interval(found.lower() * span, found.upper() * span, level);
    }

    double level() {
        return level;
    }
}
