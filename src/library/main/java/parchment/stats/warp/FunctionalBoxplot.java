package parchment.stats.warp;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import parchment.stats.linear.Checks;

/**
 * Sums up curves on one grid as a boxplot does numbers: the deepest curve, the band of the deeper half, fences, and the curves
 * that leave the fences.
 *
 * <p>The fences lie beyond the band of the deeper half by its height times a factor, 1.5 by default, at each point. A curve that
 * leaves them anywhere is outlying, and where it does is told. A limit of the method: depth is an average over the grid, so that a
 * central curve with one short excursion stays in the deeper half, widens the band there and is not found.
 *
 * @see <a href="https://doi.org/10.1198/jcgs.2011.09224">Sun and Genton 2011, J. Comput. Graph. Stat. 20:316</a>
 */
public final class FunctionalBoxplot {
    private static final double FACTOR = 1.5;

    private final BandDepth depth;
    private final double[] median;
    private final double[] lower;
    private final double[] upper;
    private final double[] lowerFence;
    private final double[] upperFence;
    private final List<Outlying> outlying;

    /**
     * Says where a curve leaves the fences.
     *
     * @param curve its position, from 0
     * @param from first grid point outside, from 0
     * @param to last grid point outside of the same stretch
     * @param side whether it leaves above or below
     * @param excess largest distance beyond the fence in the stretch, in the unit of the curves
     */
    public record Outlying(int curve, int from, int to, Side side, double excess) {}

    /** Says beyond which fence a curve lies. */
    public enum Side {
        ABOVE,
        BELOW
    }

    private FunctionalBoxplot(List<double[]> curves, double factor) {
        this.depth = BandDepth.of(curves);
        int points = curves.get(0).length;
        List<Integer> order = depth.order();
        if (order.isEmpty()) {
            throw new IllegalArgumentException("A functional boxplot needs values, but every one is missing.");
        }
        this.median = curves.get(order.get(0)).clone();
        List<Integer> half = order.subList(0, (order.size() + 1) / 2);
        this.lower = new double[points];
        this.upper = new double[points];
        this.lowerFence = new double[points];
        this.upperFence = new double[points];
        for (int k = 0; k < points; k++) {
            double low = Double.NaN;
            double high = Double.NaN;
            for (int i : half) {
                double value = curves.get(i)[k];
                if (!Double.isNaN(value)) {
                    low = Double.isNaN(low) ? value : Math.min(low, value);
                    high = Double.isNaN(high) ? value : Math.max(high, value);
                }
            }
            lower[k] = low;
            upper[k] = high;
            lowerFence[k] = low - factor * (high - low);
            upperFence[k] = high + factor * (high - low);
        }
        List<Outlying> found = new ArrayList<>();
        for (int i = 0; i < curves.size(); i++) {
            stretches(i, curves.get(i), found);
        }
        this.outlying = List.copyOf(found);
    }

    private void stretches(int curve, double[] values, List<Outlying> found) {
        int k = 0;
        while (k < values.length) {
            int side = side(values, k);
            if (side == 0) {
                k++;
                continue;
            }
            int from = k;
            double excess = 0;
            while (k < values.length && side(values, k) == side) {
                excess = Math.max(excess, side > 0 ? values[k] - upperFence[k] : lowerFence[k] - values[k]);
                k++;
            }
            found.add(new Outlying(curve, from, k - 1, side > 0 ? Side.ABOVE : Side.BELOW, excess));
        }
    }

    private int side(double[] values, int k) {
        return values[k] > upperFence[k] ? 1 : values[k] < lowerFence[k] ? -1 : 0;
    }

    /**
     * Returns the functional boxplot of curves on one grid.
     *
     * @param curves values at the same points, NaN where missing
     * @throws IllegalArgumentException if there are fewer than three curves, they differ in length, or nothing is present
     */
    public static FunctionalBoxplot of(List<double[]> curves) {
        return new FunctionalBoxplot(curves, FACTOR);
    }

    /**
     * Returns the functional boxplot with fences of another width.
     *
     * @param factor times the height of the band, above 0
     */
    public static FunctionalBoxplot of(List<double[]> curves, double factor) {
        if (!(factor > 0)) {
            throw new IllegalArgumentException(
                    "The factor of the fences must be above 0, but it is " + Checks.number(factor) + ".");
        }
        return new FunctionalBoxplot(curves, factor);
    }

    /** Returns the depths that rank the curves. */
    public BandDepth depth() {
        return depth;
    }

    /** Returns the deepest curve. */
    public double[] median() {
        return median.clone();
    }

    /** Returns the lower edge of the band of the deeper half; NaN where none of it is present. */
    public double[] lower() {
        return lower.clone();
    }

    /** Returns the upper edge of the band of the deeper half. */
    public double[] upper() {
        return upper.clone();
    }

    public double[] lowerFence() {
        return lowerFence.clone();
    }

    public double[] upperFence() {
        return upperFence.clone();
    }

    /** Returns each stretch in which a curve leaves the fences, by curve and then by place. */
    public List<Outlying> outlying() {
        return outlying;
    }

    /** Returns the positions of the outlying curves, in order. */
    public List<Integer> outlyingCurves() {
        return outlying.stream().map(Outlying::curve).distinct().toList();
    }

    @Override
    public String toString() {
        return String.format(
                Locale.ROOT,
                "functional boxplot of %d curves, deepest number %d, %d outlying",
                depth.size(),
                depth.order().get(0) + 1,
                outlyingCurves().size());
    }
}
