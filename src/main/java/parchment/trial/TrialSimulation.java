package parchment.trial;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Random;
import parchment.display.Interruption;
import parchment.stats.mixed.SlopeInsideSets;
import parchment.stats.resample.SetShuffle;

/**
 * Draws trials to see how many find a slope where the formula does not reach: few sets, missed targets, lost batches.
 *
 * @param power the slope and the spread
 * @param targets each once a set
 * @param followed share of targets that are followed; the others come out by habit, as widely as the targets lie
 * @param lost share of batches that are lost by chance
 */
record TrialSimulation(TrialPower power, List<Double> targets, double followed, double lost) {
    /** So many trials of each size; the share found is right within 2 in 100. */
    static final int TRIALS = 400;

    private static final long SEED = 1;

    /** Returns the share of trials of so many sets that find the slope. */
    double power(int sets) {
        Random random = new Random(SEED);
        int found = 0;
        for (int trial = 0; trial < TRIALS; trial++) {
            found += finds(sets, random) ? 1 : 0;
            Interruption.checkHere();
        }
        return (double) found / TRIALS;
    }

    private boolean finds(int sets, Random random) {
        double habit = Math.sqrt(power.squares() / targets.size());
        double middle =
                targets.stream().mapToDouble(Double::doubleValue).average().orElse(0);
        List<String> names = new ArrayList<>();
        List<Double> drawn = new ArrayList<>();
        List<Double> scores = new ArrayList<>();
        for (int set = 0; set < sets; set++) {
            List<Double> shuffled = new ArrayList<>(targets);
            Collections.shuffle(shuffled, random);
            for (double target : shuffled) {
                double own = middle + habit * random.nextGaussian();
                double reached = random.nextDouble() < followed ? target : own;
                double score = power.slope() * reached + Math.sqrt(power.variance()) * random.nextGaussian();
                if (random.nextDouble() >= lost) {
                    names.add("set " + set);
                    drawn.add(target);
                    scores.add(score);
                }
            }
        }
        double[] x = drawn.stream().mapToDouble(Double::doubleValue).toArray();
        double[] y = scores.stream().mapToDouble(Double::doubleValue).toArray();
        if (names.size() - names.stream().distinct().count() < 2) {
            return false;
        }
        SetShuffle shuffle = SetShuffle.of(names, x, SEED);
        // Where ways are many the shuffles and Student's t agree, and t is quick.
        double chance = shuffle.isComplete()
                ? shuffle.slope(y).probability()
                : SlopeInsideSets.on(names, x).slope("slope", y).probability();
        return chance <= power.chance() + 1e-12;
    }
}
