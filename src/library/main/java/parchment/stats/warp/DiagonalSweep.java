package parchment.stats.warp;

import java.util.Arrays;
import org.jspecify.annotations.Nullable;

/**
 * Sums the cheapest path without keeping it, from one anti-diagonal of the table of pairs to the next. The work space is used again
 * from call to call; one sweep serves one thread.
 *
 * <p>Pairs on one anti-diagonal do not depend on each other, so the processor can work on several at once. The compiler of Java 17
 * sees that only in a short loop that reads and writes every array at the same place and ends at a plain "less than": neighbours
 * are therefore copied into place beforehand. Where a diagonal is too short for that to pay, nothing is lost.
 */
final class DiagonalSweep {
    private static final double NEVER = Double.POSITIVE_INFINITY;

    /** Serves the thread that asks, so that a distance leaves nothing behind to be cleared away. */
    private static final ThreadLocal<DiagonalSweep> OWN = ThreadLocal.withInitial(DiagonalSweep::new);

    private final Corridor corridor = new Corridor();
    /** Work space larger than this many samples is made anew each time rather than held on to. */
    private static final int KEPT = 1 << 16;

    // Sums on three diagonals; place k is row k - 1, so that a row above the first can be read as closed.
    private double[] now = new double[0];
    private double[] before = new double[0];
    private double[] spare = new double[0];
    // The diagonal before, and the one before that, moved by one row: what stands above a pair, and what lies slantwise
    // of it.
    private double[] above = new double[0];
    private double[] slanted = new double[0];
    private double[] rows = new double[0];
    private double[] backwards = new double[0];
    private double[] columns = new double[0];
    private double[] nothing = new double[0];
    private int[] first = new int[0];
    private int[] last = new int[0];
    // What the first and last columns were laid out for; the next pair of curves usually asks for the same.
    private @Nullable Window opened;
    private int openedRows;
    private int openedColumns;

    private DiagonalSweep() {}

    /** Returns the sweep of the calling thread, or a new one for curves too long to hold on to the space they take. */
    static DiagonalSweep of(int samples) {
        return samples > KEPT ? new DiagonalSweep() : OWN.get();
    }

    private void grow(int n, int m) {
        if (now.length < n + 3) {
            now = new double[n + 3];
            before = new double[n + 3];
            spare = new double[n + 3];
            above = new double[n + 3];
            slanted = new double[n + 3];
            rows = new double[n + 3];
            columns = new double[n + 3];
            nothing = new double[n + 3];
            first = new int[n];
            last = new int[n];
            opened = null;
        }
        if (backwards.length < m) {
            backwards = new double[m];
        }
    }

    /** Returns the distance, or infinity if no path stays inside the window. */
    double distance(double[] a, double[] b, Window window, LocalCost cost, int diagonal, Pruning pruning) {
        open(a, b, window);
        double bound = NEVER;
        if (pruning == Pruning.UPPER_BOUND) {
            corridor.around(a, b, first, last);
            bound = inside(a.length, b.length, corridor.first(), corridor.last(), cost, diagonal, NEVER, nothing);
        }
        return inside(a.length, b.length, first, last, cost, diagonal, bound, nothing);
    }

    /**
     * Returns the distance if it is no more than a limit; otherwise some larger number or infinity.
     *
     * @param rest for each row of a, and one row beyond, a lower bound of what that row and all later ones cost
     */
    double distanceUpTo(
            double[] a, double[] b, Window window, LocalCost cost, int diagonal, double limit, double[] rest) {
        open(a, b, window);
        // Rounding in the sums of bounds must not close a path that just meets the limit.
        return inside(a.length, b.length, first, last, cost, diagonal, limit + 1e-9 * Math.abs(limit), rest);
    }

    private void open(double[] a, double[] b, Window window) {
        int n = a.length;
        int m = b.length;
        grow(n, m);
        if (window != opened || n != openedRows || m != openedColumns) {
            for (int i = 0; i < n; i++) {
                first[i] = window.first(i, n, m);
                last[i] = window.last(i, n, m);
            }
            opened = window;
            openedRows = n;
            openedColumns = m;
        }
        System.arraycopy(a, 0, rows, 1, n);
        for (int j = 0; j < m; j++) {
            backwards[j] = b[m - 1 - j];
        }
    }

    /**
     * The part of the table between two columns per row, which never move left from row to row. A pair above the bound cannot lie on
     * the best path, as sums only grow along a path; a diagonal is cut on both sides to what can. What the rows still to come must
     * cost at least ({@code rest}, from each row on) tightens the bound.
     */
    private double inside(
            int n, int m, int[] from, int[] to, LocalCost cost, int diagonal, double bound, double[] rest) {
        double extra = diagonal - 1.0;
        double start = cost.of(rows[1], backwards[m - 1]);
        if (from[0] > 0 || to[0] < 0 || start > bound - rest[1]) {
            return NEVER;
        }
        Arrays.fill(before, 0, n + 3, NEVER);
        Arrays.fill(slanted, 0, n + 3, NEVER);
        before[1] = start;
        // Places written, and among them those that a path may go on from, on the diagonal before and on the one before
        // that.
        int writtenLow = 1;
        int writtenHigh = 1;
        int low1 = 1;
        int high1 = 1;
        int low2 = n + 1;
        int high2 = -1;
        int openLow = 0;
        int openHigh = 0;
        for (int d = 1; d < n + m - 1; d++) {
            // Both i + from[i] and i + to[i] grow from row to row, so that the rows open on a diagonal lie together.
            while (openHigh + 1 < n && openHigh + 1 + from[openHigh + 1] <= d) {
                openHigh++;
            }
            while (openLow < n && openLow + to[openLow] < d) {
                openLow++;
            }
            int low = Math.max(openLow + 1, Math.min(low1, low2 + 1));
            int high = Math.min(openHigh + 1, Math.max(high1 + 1, high2 + 1));
            if (low > high) {
                Arrays.fill(above, 0, n + 3, NEVER);
                int begin = Math.max(0, writtenLow - 1);
                System.arraycopy(before, begin, above, begin + 1, Math.min(n + 1, writtenHigh + 1) - begin + 1);
                Arrays.fill(now, 0, n + 3, NEVER);
                writtenLow = 0;
                writtenHigh = n;
                low2 = low1;
                high2 = high1;
                low1 = n + 1;
                high1 = -1;
            } else {
                System.arraycopy(before, low - 1, above, low, high - low + 2);
                System.arraycopy(backwards, m - 1 - d + low - 1, columns, low, high - low + 1);
                if (cost == LocalCost.ABSOLUTE) {
                    absolute(now, before, above, slanted, rows, columns, low, high + 1, extra);
                } else {
                    squared(now, before, above, slanted, rows, columns, low, high + 1, extra);
                }
                writtenLow = low;
                writtenHigh = high;
                now[low - 1] = NEVER;
                now[high + 1] = NEVER;
                now[high + 2] = NEVER;
                while (low <= high && now[low] > bound - rest[low]) {
                    now[low++] = NEVER;
                }
                while (high >= low && now[high] > bound - rest[high]) {
                    now[high--] = NEVER;
                }
                low2 = low1;
                high2 = high1;
                low1 = low <= high ? low : n + 1;
                high1 = low <= high ? high : -1;
            }
            if (high1 < 0 && high2 < 0) {
                return NEVER;
            }
            turn();
        }
        return high1 == n ? before[n] : NEVER;
    }

    private void turn() {
        double[] oldest = spare;
        spare = before;
        before = now;
        now = oldest;
        double[] swap = slanted;
        slanted = above;
        above = swap;
    }

    private static void absolute(
            double[] sums,
            double[] left,
            double[] above,
            double[] slanted,
            double[] a,
            double[] b,
            int begin,
            int end,
            double extra) {
        for (int k = begin; k < end; k++) {
            double d = Math.abs(a[k] - b[k]);
            sums[k] = Math.min(Math.min(left[k], above[k]), slanted[k] + extra * d) + d;
        }
    }

    /** The same for squared differences; a choice inside the loop would cost more than these lines. */
    private static void squared(
            double[] sums,
            double[] left,
            double[] above,
            double[] slanted,
            double[] a,
            double[] b,
            int begin,
            int end,
            double extra) {
        for (int k = begin; k < end; k++) {
            double d = (a[k] - b[k]) * (a[k] - b[k]);
            sums[k] = Math.min(Math.min(left[k], above[k]), slanted[k] + extra * d) + d;
        }
    }
}
