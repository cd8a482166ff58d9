package parchment.stats.warp;

import java.util.Arrays;

/**
 * Sums the cheapest path row by row, without keeping the path. The work space is used again from call to call; one sweep serves one
 * thread.
 *
 * <p>Rows in order, with plain comparisons for the minima, let the processor run ahead of the chain of sums; two rows at a time give
 * it two chains. Anti-diagonal order and {@code Math.min} were measured to be slower.
 */
final class RowSweep {
    private static final double NEVER = Double.POSITIVE_INFINITY;

    private final Corridor corridor = new Corridor();
    private double[] sums = new double[0];
    private double[] above = new double[0];
    private double[] nothing = new double[0];
    private int[] first = new int[0];
    private int[] last = new int[0];

    RowSweep(int rows, int columns) {
        grow(rows, columns);
    }

    private void grow(int rows, int columns) {
        if (sums.length < columns + 2) {
            sums = new double[columns + 2];
            above = new double[columns + 2];
        }
        if (nothing.length < rows + 1) {
            nothing = new double[rows + 1];
        }
        if (first.length < rows) {
            first = new int[rows];
            last = new int[rows];
        }
    }

    /** Returns the distance, or infinity if no path stays inside the window. */
    double distance(double[] a, double[] b, Window window, LocalCost cost, int diagonal, Pruning pruning) {
        grow(a.length, b.length);
        if (window.isFull() && pruning == Pruning.NONE && cost == LocalCost.ABSOLUTE) {
            return diagonal == 1 ? pairsOfRows(a, b) : doubledRows(a, b);
        }
        open(a, b, window);
        double bound = NEVER;
        if (pruning == Pruning.UPPER_BOUND) {
            corridor.around(a, b, first, last);
            bound = inside(a, b, corridor.first(), corridor.last(), cost, diagonal, NEVER, nothing);
        }
        return inside(a, b, first, last, cost, diagonal, bound, nothing);
    }

    /**
     * Returns the distance if it is no more than a limit; otherwise some larger number or infinity.
     *
     * @param rest for each row of a, and one row beyond, a lower bound of what that row and all later ones cost
     */
    double distanceUpTo(
            double[] a, double[] b, Window window, LocalCost cost, int diagonal, double limit, double[] rest) {
        grow(a.length, b.length);
        open(a, b, window);
        // Rounding in the sums of bounds must not close a path that just meets the limit.
        return inside(a, b, first, last, cost, diagonal, limit + 1e-9 * Math.abs(limit), rest);
    }

    private void open(double[] a, double[] b, Window window) {
        for (int i = 0; i < a.length; i++) {
            first[i] = window.first(i, a.length, b.length);
            last[i] = window.last(i, a.length, b.length);
        }
    }

    /** The whole table for weights of 1, two rows in one pass. */
    private double pairsOfRows(double[] a, double[] b) {
        int n = a.length;
        int m = b.length;
        double[] row = sums;
        double sum = 0;
        for (int j = 0; j < m; j++) {
            sum += Math.abs(a[0] - b[j]);
            row[j] = sum;
        }
        int i = 1;
        for (; i + 1 < n; i += 2) {
            double upper = a[i];
            double lower = a[i + 1];
            double corner = NEVER;
            double left = NEVER;
            double leftBelow = NEVER;
            for (int j = 0; j < m; j++) {
                double over = row[j];
                double least = over < corner ? over : corner;
                least = left < least ? left : least;
                double next = least + Math.abs(upper - b[j]);
                corner = over;
                double below = left < leftBelow ? left : leftBelow;
                below = next < below ? next : below;
                leftBelow = below + Math.abs(lower - b[j]);
                left = next;
                row[j] = leftBelow;
            }
        }
        if (i < n) {
            double corner = NEVER;
            double left = NEVER;
            for (int j = 0; j < m; j++) {
                double over = row[j];
                double least = over < corner ? over : corner;
                least = left < least ? left : least;
                left = least + Math.abs(a[i] - b[j]);
                corner = over;
                row[j] = left;
            }
        }
        return row[m - 1];
    }

    /** The whole table for a diagonal of weight 2, where two rows in one pass were measured to gain nothing. */
    private double doubledRows(double[] a, double[] b) {
        int m = b.length;
        double[] row = sums;
        double sum = 0;
        for (int j = 0; j < m; j++) {
            sum += Math.abs(a[0] - b[j]);
            row[j] = sum;
        }
        for (int i = 1; i < a.length; i++) {
            doubledRow(row, a[i], b);
        }
        return row[m - 1];
    }

    private static void doubledRow(double[] row, double ai, double[] b) {
        double corner = NEVER;
        double left = NEVER;
        for (int j = 0; j < b.length; j++) {
            double d = Math.abs(ai - b[j]);
            double over = row[j];
            double least = corner + d;
            least = over < least ? over : least;
            least = left < least ? left : least;
            left = least + d;
            corner = over;
            row[j] = left;
        }
    }

    /**
     * The part of the table between two columns per row, which never move left from row to row. A cell above the bound cannot lie on
     * the best path, as sums only grow along a path; where a row holds nothing else beyond some column the next row stops there.
     * What the rows still to come must cost at least ({@code rest}, from each row on) tightens the bound.
     */
    private double inside(
            double[] a, double[] b, int[] from, int[] to, LocalCost cost, int diagonal, double bound, double[] rest) {
        int n = a.length;
        int m = b.length;
        double extra = diagonal - 1.0;
        double[] up = above;
        double[] row = sums;
        // Columns are shifted by one: up[0] stands before the first sample.
        Arrays.fill(up, 0, m + 2, NEVER);
        Arrays.fill(row, 0, m + 2, NEVER);
        if (from[0] > 0) {
            return NEVER;
        }
        int alive = 0;
        int lastAlive = -1;
        double start = cost.of(a[0], b[0]);
        for (int j = 0; j <= to[0]; j++) {
            row[j + 1] = j == 0 ? start : row[j] + cost.of(a[0], b[j]);
            if (row[j + 1] > bound - rest[1]) {
                row[j + 1] = NEVER;
                break;
            }
            lastAlive = j;
        }
        for (int i = 1; i < n; i++) {
            double[] swap = up;
            up = row;
            row = swap;
            double limit = bound - rest[i + 1];
            int begin = Math.max(from[i], alive);
            int end = to[i];
            if (begin > end || lastAlive < 0) {
                return NEVER;
            }
            // Beyond this column nothing stands above: only the left neighbour feeds a cell.
            int fed = Math.min(end, lastAlive + 1);
            row[begin] = NEVER;
            double left = cost == LocalCost.ABSOLUTE
                    ? absoluteRow(up, row, b, a[i], begin, fed, extra)
                    : squaredRow(up, row, b, a[i], begin, fed, extra);
            int reached = fed;
            while (reached < end && left <= limit) {
                reached++;
                left += cost.of(a[i], b[reached]);
                row[reached + 1] = left;
            }
            int next = reached;
            while (next >= begin && row[next + 1] > limit) {
                next--;
            }
            // Cells right of the last one alive read as closed in the next row and the one after.
            for (int j = next + 1; j <= Math.min(m - 1, Math.max(reached, lastAlive) + 1); j++) {
                row[j + 1] = NEVER;
            }
            lastAlive = next;
            alive = begin;
            while (alive <= lastAlive && row[alive + 1] > limit) {
                row[++alive] = NEVER;
            }
            if (alive > lastAlive) {
                return NEVER;
            }
        }
        // Where the last row stopped short of the last column, what stands there is left over from an earlier row.
        return lastAlive == m - 1 ? row[m] : NEVER;
    }

    /** One row; returns its last sum. The left neighbour is compared last, being the only term that has to be waited for. */
    private static double absoluteRow(
            double[] up, double[] row, double[] b, double ai, int begin, int end, double extra) {
        double corner = up[begin];
        double left = NEVER;
        for (int j = begin; j <= end; j++) {
            double d = Math.abs(ai - b[j]);
            double over = up[j + 1];
            double least = corner + extra * d;
            least = over < least ? over : least;
            least = left < least ? left : least;
            left = least + d;
            corner = over;
            row[j + 1] = left;
        }
        return left;
    }

    /** The same for squared differences; a choice inside the loop would cost more than these lines. */
    private static double squaredRow(
            double[] up, double[] row, double[] b, double ai, int begin, int end, double extra) {
        double corner = up[begin];
        double left = NEVER;
        for (int j = begin; j <= end; j++) {
            double d = (ai - b[j]) * (ai - b[j]);
            double over = up[j + 1];
            double least = corner + extra * d;
            least = over < least ? over : least;
            least = left < least ? left : least;
            left = least + d;
            corner = over;
            row[j + 1] = left;
        }
        return left;
    }
}
