package parchment.stats.warp;

import java.util.Locale;

/**
 * Lets curves be grouped and the nearest be found: the distances of all pairs; symmetric, 0 on the diagonal. Positions count from 0.
 */
public final class DistanceTable {
    private final double[][] lower;

    /** Takes a table of which only the part below the diagonal is read. */
    DistanceTable(double[][] lower) {
        this.lower = lower;
    }

    /** Returns the number of curves. */
    public int size() {
        return lower.length;
    }

    /** Returns the distance of two curves. */
    public double distance(int first, int second) {
        return first == second ? 0 : lower[Math.max(first, second)][Math.min(first, second)];
    }

    /** Returns the position of the curve whose summed distance to all others is least; the first of equals. */
    public int medoid() {
        int best = 0;
        double least = Double.POSITIVE_INFINITY;
        for (int i = 0; i < size(); i++) {
            double sum = 0;
            for (int j = 0; j < size(); j++) {
                sum += distance(i, j);
            }
            if (sum < least) {
                least = sum;
                best = i;
            }
        }
        return best;
    }

    @Override
    public String toString() {
        return String.format(
                Locale.ROOT,
                "distances of all pairs of %d curves; the most central is number %d",
                size(),
                medoid() + 1);
    }
}
