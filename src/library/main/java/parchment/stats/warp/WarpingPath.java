package parchment.stats.warp;

import java.util.Arrays;
import java.util.Locale;
import parchment.stats.linear.Checks;

/**
 * The cheapest way to pair the samples of a query with those of a reference.
 *
 * <p>Several paths may be equally cheap; this is one of them. Positions count from 0.
 */
public final class WarpingPath {
    /** Share of a steady walk mixed into a path, so that a clock that stood still in it moves on slowly instead. */
    private static final double STEADY = 0.01;

    private final double distance;
    private final double normalised;
    private final int[] query;
    private final int[] reference;

    WarpingPath(double distance, double normalised, int[] query, int[] reference) {
        this.distance = distance;
        this.normalised = normalised;
        this.query = query;
        this.reference = reference;
    }

    /** Returns the sum of the local costs along the path, each times the weight of its move. */
    public double distance() {
        return distance;
    }

    /**
     * Returns the distance divided by the total weight, so that curves of different length compare; NaN for a step pattern that has
     * no such total ({@link StepPattern#SYMMETRIC1}).
     */
    public double normalisedDistance() {
        return normalised;
    }

    /** Returns the number of pairs. */
    public int size() {
        return query.length;
    }

    /** Returns the position on the query of a pair; pairs count from 0. */
    public int query(int pair) {
        return query[pair];
    }

    /** Returns the position on the reference of a pair; pairs count from 0. */
    public int reference(int pair) {
        return reference[pair];
    }

    int[] queries() {
        return query;
    }

    int[] references() {
        return reference;
    }

    /**
     * Returns the path as a warp from the clock of the query to the clock of the reference.
     *
     * <p>A path may pair several samples with one, as if a clock stood still; a warp may not. One part in a hundred of a steady walk
     * along the path is mixed in, so that every instant keeps its own place.
     *
     * @param queryTimes instants of the query's samples, increasing
     * @param referenceTimes instants of the reference's samples, increasing
     * @throws IllegalArgumentException if the instants are too few for the path or do not increase, or if the path pairs the whole
     *     of one curve with a single sample of the other
     */
    public Warp warp(double[] queryTimes, double[] referenceTimes) {
        Checks.rising("The instants of the query", queryTimes);
        Checks.rising("The instants of the reference", referenceTimes);
        int last = query.length - 1;
        if (queryTimes.length <= query[last] || referenceTimes.length <= reference[last]) {
            throw new IllegalArgumentException("The path needs an instant for each of " + (query[last] + 1)
                    + " query samples and " + (reference[last] + 1) + " reference samples, but there are "
                    + queryTimes.length + " and " + referenceTimes.length + ".");
        }
        return Warp.linear(steadied(query, queryTimes, "query"), steadied(reference, referenceTimes, "reference"));
    }

    private static double[] steadied(int[] position, double[] times, String what) {
        int last = position.length - 1;
        double start = times[position[0]];
        double run = times[position[last]] - start;
        if (!(run > 0)) {
            throw new IllegalArgumentException("A warp needs a stretch of the " + what
                    + ", but the path uses a single sample of it. Close an end of the path or compare longer curves.");
        }
        double[] instants = new double[position.length];
        for (int k = 0; k <= last; k++) {
            instants[k] = (1 - STEADY) * times[position[k]] + STEADY * (start + run * k / last);
        }
        instants[last] = times[position[last]];
        return instants;
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof WarpingPath path
                && distance == path.distance
                && Arrays.equals(query, path.query)
                && Arrays.equals(reference, path.reference);
    }

    @Override
    public int hashCode() {
        return 31 * Arrays.hashCode(query) + Arrays.hashCode(reference);
    }

    @Override
    public String toString() {
        String average = Double.isNaN(normalised) ? "" : String.format(Locale.ROOT, " (%.4g per step)", normalised);
        return String.format(
                Locale.ROOT,
                "warping path of %d pairs, query samples %d to %d on reference samples %d to %d, distance %.6g%s",
                size(),
                query[0] + 1,
                query[size() - 1] + 1,
                reference[0] + 1,
                reference[size() - 1] + 1,
                distance,
                average);
    }
}
