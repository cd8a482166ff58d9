package parchment.stats.warp;

import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import parchment.display.Interruption;
import parchment.stats.linear.Checks;

/**
 * Averages curves under dynamic time warping: the average whose summed squared warping distance to all curves cannot be lowered by
 * one more round of matching and averaging.
 *
 * <p>Each round matches every curve to the average so far and replaces each sample of the average by the mean of all samples matched
 * to it. The summed distance falls from round to round; the result is a local optimum and depends on the start. Defaults: start at
 * the most central of the curves, full window, at most 30 rounds. Local costs are squared differences, all moves at weight 1.
 *
 * @see <a href="https://doi.org/10.1016/j.patcog.2010.09.013">Petitjean, Ketterlin and Gançarski 2011, Pattern Recognition 44:678</a>
 */
public final class BarycentreAverage {
    private static final String JOB = "A barycentre average";

    private final double[] values;
    private final double[] spread;
    private final int curves;

    private BarycentreAverage(double[] values, double[] spread, int curves) {
        this.values = values;
        this.spread = spread;
        this.curves = curves;
    }

    /**
     * Returns the average with the defaults named above.
     *
     * @throws IllegalArgumentException if there are fewer than two curves or a sample is missing
     */
    public static BarycentreAverage of(List<double[]> curves) {
        return of(curves, Window.full());
    }

    /** Returns the average under a window, started at the most central curve. */
    public static BarycentreAverage of(List<double[]> curves, Window window) {
        check(curves);
        int medoid = warping(window)
                .withPruning(Pruning.UPPER_BOUND)
                .distances(curves)
                .medoid();
        return of(curves, window, curves.get(medoid), 30);
    }

    /**
     * Returns the average from a chosen start.
     *
     * @param start first guess; the average has its length
     * @param rounds at most so many rounds, 1 or more
     * @throws IllegalArgumentException if there are fewer than two curves or a sample is missing
     */
    public static BarycentreAverage of(List<double[]> curves, Window window, double[] start, int rounds) {
        check(curves);
        Checks.curve(JOB, "the start", start);
        Checks.atLeast(1, "The number of rounds of a barycentre average", rounds);
        DynamicTimeWarping warping = warping(window);
        double[] average = start.clone();
        double[] spread = new double[rounds + 1];
        double[] next = average;
        int round = 0;
        while (true) {
            double[] sums = new double[start.length];
            int[] counts = new int[start.length];
            double total = 0;
            for (double[] curve : curves) {
                Interruption.checkHere();
                WarpingPath path = warping.align(next, curve);
                total += path.distance();
                for (int k = 0; k < path.size(); k++) {
                    sums[path.query(k)] += curve[path.reference(k)];
                    counts[path.query(k)]++;
                }
            }
            if (round > 0 && total > spread[round - 1]) {
                // Rounding only: the sum cannot rise otherwise.
                break;
            }
            average = next;
            spread[round] = total;
            if (round == rounds || (round > 0 && spread[round - 1] - total <= 1e-9 * spread[round - 1])) {
                round++;
                break;
            }
            round++;
            next = new double[start.length];
            for (int k = 0; k < next.length; k++) {
                next[k] = sums[k] / counts[k];
            }
        }
        return new BarycentreAverage(average, Arrays.copyOf(spread, round), curves.size());
    }

    private static DynamicTimeWarping warping(Window window) {
        return DynamicTimeWarping.of(StepPattern.SYMMETRIC1)
                .withCost(LocalCost.SQUARED)
                .withWindow(window);
    }

    private static void check(List<double[]> curves) {
        if (curves.size() < 2) {
            throw new IllegalArgumentException(JOB + " needs at least 2 curves, but there are " + curves.size() + ".");
        }
        for (int i = 0; i < curves.size(); i++) {
            Checks.curve(JOB, "curve " + (i + 1), curves.get(i));
        }
    }

    /** Returns the samples of the average, in the unit of the curves. */
    public double[] values() {
        return values.clone();
    }

    /** Returns the summed squared distance of the curves to the average at the start and after each round. */
    public double[] spread() {
        return spread.clone();
    }

    /** Returns the number of rounds that were worked. */
    public int rounds() {
        return spread.length - 1;
    }

    @Override
    public String toString() {
        return String.format(
                Locale.ROOT,
                "average of %d curves, %d samples, after %d rounds; summed squared distance %.4g at the start, %.4g now",
                curves,
                values.length,
                rounds(),
                spread[0],
                spread[spread.length - 1]);
    }
}
