package parchment.stats.resample;

import java.util.Arrays;
import java.util.Locale;
import parchment.display.Showable;
import parchment.stats.Interval;
import parchment.stats.linear.Checks;

/**
 * Holds a slope inside sets beside the slopes that the other ways of dealing the values would have given.
 *
 * <p>Its interval is made without a normal distribution and without a grid: a slope b is kept unless, with b times the assigned value taken off
 * the responses, the way that came about is among the most extreme on one side. One way of dealing speaks against b exactly where b lies on one side of
 * one ratio, so the ends are two of these ratios in their order.
 *
 * @see <a href="https://doi.org/10.1002/9781119258889">Imbens and Rubin 2015, Causal Inference, section 5.7 (the idea of inverting the test)</a>
 */
public final class ShuffledSlope implements Showable {
    /** Sums this close, relative to the largest, are equal up to rounding. */
    private static final double ROUNDING = 1e-10;

    private final double sum;
    private final double[] sums;
    private final double squares;
    private final double[] ratios;
    private final int same;
    private final SetShuffle shuffle;

    ShuffledSlope(double sum, double[] sums, double values, double[] valueSums, double squares, SetShuffle shuffle) {
        this.sum = sum;
        this.sums = sums;
        this.squares = squares;
        this.shuffle = shuffle;
        double[] found = new double[sums.length];
        int n = 0;
        for (int i = 0; i < sums.length; i++) {
            double apart = values - valueSums[i];
            if (apart > 1e-9 * squares) {
                found[n++] = (sum - sums[i]) / apart;
            }
        }
        this.ratios = Arrays.copyOf(found, n);
        Arrays.sort(ratios);
        this.same = shuffle.counted() - n;
    }

    /** Returns the slope: points of the response per unit of the assigned value. */
    public double estimate() {
        return sum / squares;
    }

    /** Returns the slope under each shuffle, in no particular order. */
    public double[] shuffled() {
        return Arrays.stream(sums).map(shuffled -> shuffled / squares).toArray();
    }

    /** Returns the two-sided p-value of "the assigned value does nothing": the share of ways that give as steep a slope either way. */
    public double probability() {
        double least = Math.abs(sum) - rounding();
        return share(Arrays.stream(sums)
                .filter(shuffled -> Math.abs(shuffled) >= least)
                .count());
    }

    /** Returns the p-value against a slope above 0: the share of ways that give one at least as high. */
    public double upperProbability() {
        double least = sum - rounding();
        return share(Arrays.stream(sums).filter(shuffled -> shuffled >= least).count());
    }

    /** Returns the p-value against a slope below 0: the share of ways that give one at least as low. */
    public double lowerProbability() {
        double most = sum + rounding();
        return share(Arrays.stream(sums).filter(shuffled -> shuffled <= most).count());
    }

    private double rounding() {
        return ROUNDING * Arrays.stream(sums).map(Math::abs).max().orElse(0);
    }

    private double share(long count) {
        // Where ways are drawn, the one that came about counts as one more (Phipson and Smyth 2010).
        return (double) (count + (shuffle.isComplete() ? 0 : 1)) / shuffle.counted();
    }

    /**
     * Returns the interval of slopes that neither side's shuffles speak against; without an end on a side where the design has too few ways
     * of dealing to speak at that level.
     *
     * @param level as in 0.90
     */
    public Interval interval(double level) {
        Checks.share("The level of an interval", level);
        // Ways that leave every value in its place speak against no slope.
        int rank = (int) Math.floor((1 - level) / 2 * shuffle.counted() + 1e-9) - same;
        return rank < 0
                ? new Interval(Double.NEGATIVE_INFINITY, Double.POSITIVE_INFINITY, level)
                : new Interval(ratios[rank], ratios[ratios.length - 1 - rank], level);
    }

    /** Returns the shuffles behind it. */
    public SetShuffle shuffle() {
        return shuffle;
    }

    @Override
    public String toString() {
        return String.format(
                Locale.ROOT, "slope %.4g, two-sided p %.3g among %s", estimate(), probability(), shuffle.words());
    }
}
