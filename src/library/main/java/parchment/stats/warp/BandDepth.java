package parchment.stats.warp;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.stream.IntStream;
import parchment.stats.linear.Checks;

/**
 * Ranks curves from the middle of a set outwards by their modified band depth.
 *
 * <p>The depth of a curve is the share of pairs of curves, averaged over the grid, between whose values it runs; pairs that hold the
 * curve itself count, ties count as between. It lies between 2/n and about 1/2. A missing value is left out: the curve's depth is
 * the average over the points where it is present, among the curves present there.
 *
 * @see <a href="https://doi.org/10.1198/jasa.2009.0108">López-Pintado and Romo 2009, J. Am. Stat. Assoc. 104:718</a>; Sun, Genton
 *     and Nychka 2012, Stat 1:68 for the count by ranks
 */
public final class BandDepth {
    private final double[] depths;
    private final List<Integer> order;
    private final int missing;

    private BandDepth(double[] depths, int missing) {
        this.depths = depths;
        this.missing = missing;
        List<Integer> ranked = new ArrayList<>();
        IntStream.range(0, depths.length).filter(i -> !Double.isNaN(depths[i])).forEach(ranked::add);
        ranked.sort((a, b) -> Double.compare(depths[b], depths[a]));
        this.order = List.copyOf(ranked);
    }

    /**
     * Returns the depths of curves on one grid.
     *
     * @param curves values at the same points, NaN where missing
     * @throws IllegalArgumentException if there are fewer than three curves or they differ in length
     */
    public static BandDepth of(List<double[]> curves) {
        int points = curves.isEmpty() ? 0 : curves.get(0).length;
        Checks.sameGrid("Band depth", 3, points, curves);
        int n = curves.size();
        double[] sums = new double[n];
        int[] present = new int[n];
        int missing = 0;
        double[] sorted = new double[n];
        for (int k = 0; k < points; k++) {
            int there = 0;
            for (double[] curve : curves) {
                if (!Double.isNaN(curve[k])) {
                    sorted[there++] = curve[k];
                }
            }
            missing += n - there;
            if (there < 2) {
                continue;
            }
            Arrays.sort(sorted, 0, there);
            for (int i = 0; i < n; i++) {
                double value = curves.get(i)[k];
                if (!Double.isNaN(value)) {
                    long below = firstNotBelow(sorted, there, value);
                    long above = there - firstAbove(sorted, there, value);
                    // Of all pairs, those with both curves strictly on one side do not hold the value between them.
                    double outside = pairs(below) + pairs(above);
                    sums[i] += 1 - outside / pairs(there);
                    present[i]++;
                }
            }
        }
        double[] depths = new double[n];
        for (int i = 0; i < n; i++) {
            depths[i] = present[i] == 0 ? Double.NaN : sums[i] / present[i];
        }
        return new BandDepth(depths, missing);
    }

    private static double pairs(long count) {
        return 0.5 * count * (count - 1);
    }

    private static int firstNotBelow(double[] sorted, int count, double value) {
        int low = 0;
        int high = count;
        while (low < high) {
            int middle = (low + high) >>> 1;
            if (sorted[middle] < value) {
                low = middle + 1;
            } else {
                high = middle;
            }
        }
        return low;
    }

    private static int firstAbove(double[] sorted, int count, double value) {
        int low = 0;
        int high = count;
        while (low < high) {
            int middle = (low + high) >>> 1;
            if (sorted[middle] <= value) {
                low = middle + 1;
            } else {
                high = middle;
            }
        }
        return low;
    }

    /** Returns the number of curves. */
    public int size() {
        return depths.length;
    }

    /** Returns the depth of a curve, NaN if it has no value at all; positions count from 0. */
    public double depth(int curve) {
        return depths[curve];
    }

    /** Returns the positions of the curves from the deepest outwards, the earlier of equals first; curves without a value are left out. */
    public List<Integer> order() {
        return order;
    }

    /** Returns the number of values that were missing. */
    public int missing() {
        return missing;
    }

    @Override
    public String toString() {
        return String.format(
                Locale.ROOT,
                "band depths of %d curves, deepest number %d (%.3f), outermost number %d (%.3f); %d values missing",
                size(),
                order.get(0) + 1,
                depths[order.get(0)],
                order.get(order.size() - 1) + 1,
                depths[order.get(order.size() - 1)],
                missing);
    }
}
