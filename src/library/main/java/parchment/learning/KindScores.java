package parchment.learning;

import java.util.BitSet;
import java.util.List;
import java.util.Map;
import java.util.function.IntPredicate;
import java.util.stream.IntStream;
import parchment.logbook.Batch;
import parchment.stats.Estimate;
import parchment.stats.resample.GroupJackknife;

/** Compares the scores of a kind of roast with those of the others, its uncertainty from leaving out roast days. */
final class KindScores {
    /** Fewest scored roast days of a kind, and of the others, for an error; common practice, no source. */
    private static final int FEWEST_DAYS = 5;

    private final double[] levels;
    private final List<String> days;

    private KindScores(double[] levels, List<String> days) {
        this.levels = levels;
        this.days = days;
    }

    static KindScores of(List<Batch> batches, List<String> days, Map<String, Double> levels) {
        return new KindScores(
                batches.stream()
                        .mapToDouble(batch -> levels.getOrDefault(batch.name(), Double.NaN))
                        .toArray(),
                days);
    }

    /** Returns the mean score of a kind less that of the others; missing if either has no scores. */
    Estimate lessOthers(BitSet kind) {
        List<String> scored = IntStream.range(0, levels.length)
                .filter(i -> Double.isFinite(levels[i]))
                .mapToObj(days::get)
                .distinct()
                .toList();
        double whole = difference(kind, i -> true);
        boolean enough = daysOf(kind::get) >= FEWEST_DAYS && daysOf(i -> !kind.get(i)) >= FEWEST_DAYS;
        double[] leftOut = enough
                ? scored.stream()
                        .mapToDouble(day -> difference(kind, i -> !days.get(i).equals(day)))
                        .toArray()
                : new double[0];
        return GroupJackknife.estimate("points above the others", whole, leftOut);
    }

    private long daysOf(IntPredicate which) {
        return IntStream.range(0, levels.length)
                .filter(i -> Double.isFinite(levels[i]) && which.test(i))
                .mapToObj(days::get)
                .distinct()
                .count();
    }

    private double difference(BitSet kind, IntPredicate kept) {
        return mean(i -> kept.test(i) && kind.get(i)) - mean(i -> kept.test(i) && !kind.get(i));
    }

    private double mean(IntPredicate which) {
        return IntStream.range(0, levels.length)
                .filter(i -> Double.isFinite(levels[i]) && which.test(i))
                .mapToDouble(i -> levels[i])
                .average()
                .orElse(Double.NaN);
    }
}
