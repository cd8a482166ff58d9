package parchment.stats.warp;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.PriorityQueue;
import parchment.display.Interruption;
import parchment.stats.linear.Checks;

/**
 * Finds the curves most like a given one among many, under dynamic time warping inside a band.
 *
 * <p>The distances are those of {@link StepPattern#SYMMETRIC1} with absolute differences and {@link Window#band}. Curves are looked
 * at in the order of a lower bound of their distance, and left as soon as a bound or the rows summed so far show that they are no
 * nearer than those found; the answer is exact. The bounds of the curves are worked out once, so that a library takes three times the
 * space of its curves.
 *
 * @see <a href="https://doi.org/10.1007/s10115-004-0154-9">Keogh and Ratanamahatana 2005, Knowl. Inf. Syst. 7:358</a> for the lower
 *     bound by an envelope; Lemire 2009, Pattern Recognition 42:2169, for the running extremes
 */
public final class CurveLibrary {
    private static final String JOB = "A search for the nearest curves";

    private final List<double[]> curves;
    private final List<WarpingEnvelope> around;
    private final int radius;
    private final int points;

    private CurveLibrary(List<double[]> curves, int radius) {
        this.curves = curves;
        this.around =
                curves.stream().map(curve -> WarpingEnvelope.of(curve, radius)).toList();
        this.radius = radius;
        this.points = curves.get(0).length;
    }

    /**
     * Says which curve was found and how far it is.
     *
     * @param curve its position in the library, from 0
     * @param distance its warping distance, in the unit of the curves times samples
     */
    public record Neighbour(int curve, double distance) {}

    /**
     * Returns a library of curves of one length.
     *
     * @param radius of the band, in samples, 0 or more
     * @throws IllegalArgumentException if there is no curve, they differ in length or a sample is missing
     */
    public static CurveLibrary of(List<double[]> curves, int radius) {
        int length = curves.isEmpty() ? 0 : curves.get(0).length;
        Checks.sameGrid(JOB, 1, length, curves);
        Checks.atLeast(0, "The radius of a band", radius);
        for (int i = 0; i < curves.size(); i++) {
            Checks.curve(JOB, "curve " + (i + 1), curves.get(i));
        }
        return new CurveLibrary(curves.stream().map(double[]::clone).toList(), radius);
    }

    /**
     * Returns the nearest curves, nearest first; of equals the earlier in the library.
     *
     * @param query a curve of the library's length
     * @param count how many, 1 or more; all if the library holds fewer
     * @throws IllegalArgumentException if the length differs or a sample is missing
     */
    public List<Neighbour> nearest(double[] query, int count) {
        Checks.curve(JOB, "the query", query);
        Checks.asManySamples(JOB, "the query", query.length, "the curves of the library", points);
        Checks.atLeast(1, "The number of nearest curves", count);
        WarpingEnvelope aroundQuery = WarpingEnvelope.of(query, radius);
        double[] bound = new double[curves.size()];
        for (int i = 0; i < bound.length; i++) {
            bound[i] = aroundQuery.outside(curves.get(i), Double.POSITIVE_INFINITY);
        }
        Integer[] order = new Integer[bound.length];
        Arrays.setAll(order, i -> i);
        Arrays.sort(order, Comparator.comparingDouble(i -> bound[i]));
        DiagonalSweep sweep = DiagonalSweep.of(points);
        Comparator<Neighbour> nearer =
                Comparator.comparingDouble(Neighbour::distance).thenComparingInt(Neighbour::curve);
        PriorityQueue<Neighbour> found = new PriorityQueue<>(nearer.reversed());
        Window window = Window.band(radius);
        double[] rest = new double[points + 1];
        for (int i : order) {
            Interruption.checkHere();
            Neighbour farthest = found.peek();
            double limit = found.size() < count || farthest == null ? Double.POSITIVE_INFINITY : farthest.distance();
            if (bound[i] > limit) {
                break;
            }
            double[] curve = curves.get(i);
            if (around.get(i).outsideFrom(query, rest) > limit) {
                continue;
            }
            double distance = sweep.distanceUpTo(query, curve, window, LocalCost.ABSOLUTE, 1, limit, rest);
            if (distance <= limit) {
                found.add(new Neighbour(i, distance));
                if (found.size() > count) {
                    found.poll();
                }
            }
        }
        List<Neighbour> nearest = new ArrayList<>(found);
        nearest.sort(nearer);
        return nearest;
    }

    /** Returns the number of curves. */
    public int size() {
        return curves.size();
    }

    @Override
    public String toString() {
        return String.format(
                Locale.ROOT, "library of %d curves of %d samples, band of radius %d", curves.size(), points, radius);
    }
}
