package parchment.learning;

import java.util.List;
import java.util.SplittableRandom;
import java.util.stream.IntStream;
import parchment.stats.linear.Robust;

/**
 * Plants something in the scores that lines and bends miss, to see whether the search would have found it: batches high in both of two features
 * score better than all others.
 *
 * <p>Where it would not have been found, finding nothing says nothing.
 */
final class PlantedStep {
    /** How often something is planted; all must be found. */
    static final int TRIALS = 3;
    /** How many points better the planted batches score, as times the usual miss of lines and bends; our own rule, no source. */
    private static final double USUAL_MISSES = 2;

    private PlantedStep() {}

    /**
     * What came of it.
     *
     * @param points how many points better the planted batches scored
     * @param found in how many trials it was found
     */
    record Result(double points, int found) {}

    static Result of(ScoredRows scored, HeldOutDays plain, long seed) {
        SplittableRandom random = new SplittableRandom(seed);
        double step = USUAL_MISSES * plain.smooth();
        int found = 0;
        for (int trial = 0; trial < TRIALS; trial++) {
            int features = scored.names().size();
            int one = random.nextInt(features);
            int other = (one + 1 + random.nextInt(features - 1)) % features;
            boolean[] high = high(scored.rows(), one, other);
            double[] response = IntStream.range(0, high.length)
                    .mapToDouble(i -> scored.level(i) + (high[i] ? step : 0))
                    .toArray();
            HeldOutDays again = HeldOutDays.of(scored.rows(), response, scored.lots(), scored.days(), seed);
            found += again.low() > 0 ? 1 : 0;
        }
        return new Result(step, found);
    }

    private static boolean[] high(List<double[]> rows, int one, int other) {
        double[] first = rows.stream().mapToDouble(row -> row[one]).toArray();
        double[] second = rows.stream().mapToDouble(row -> row[other]).toArray();
        double middle = Robust.median(first);
        double middleOfOther = Robust.median(second);
        boolean[] high = new boolean[first.length];
        for (int i = 0; i < high.length; i++) {
            high[i] = first[i] > middle && second[i] > middleOfOther;
        }
        return high;
    }
}
