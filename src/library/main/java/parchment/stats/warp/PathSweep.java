package parchment.stats.warp;

import java.util.Arrays;
import parchment.display.Interruption;

/**
 * Finds the cheapest path for the two patterns of single sideways, upward and diagonal moves, keeping one byte per pair. The work
 * space is used again from call to call; one sweep serves one thread.
 */
final class PathSweep {
    private static final byte SLANTED = 0;
    private static final byte OVER = 1;
    private static final byte LEFT = 2;

    /** Serves the thread that asks, so that a path leaves nothing behind to be cleared away. */
    private static final ThreadLocal<PathSweep> OWN = ThreadLocal.withInitial(PathSweep::new);
    /** Work space for more pairs than this is made anew each time rather than held on to. */
    private static final long KEPT = 1 << 22;

    private byte[][] moves = {};
    private int[] firsts = {};
    private double[] up = {};
    private double[] row = {};
    private int[] queries = {};
    private int[] references = {};

    private PathSweep() {}

    static WarpingPath best(StepPattern pattern, Window window, LocalCost cost, double[] a, double[] b) {
        PathSweep sweep = (long) a.length * b.length > KEPT ? new PathSweep() : OWN.get();
        return sweep.sweep(pattern, window, cost, a, b);
    }

    private void grow(int n, int m) {
        if (moves.length < n) {
            moves = Arrays.copyOf(moves, n);
            firsts = new int[n];
        }
        if (up.length < m + 1) {
            up = new double[m + 1];
            row = new double[m + 1];
        }
        if (queries.length < n + m) {
            queries = new int[n + m];
            references = new int[n + m];
        }
    }

    private byte[] movesOf(int i, int size) {
        if (moves[i] == null || moves[i].length < size) {
            moves[i] = new byte[size];
        }
        return moves[i];
    }

    private WarpingPath sweep(StepPattern pattern, Window window, LocalCost cost, double[] a, double[] b) {
        int n = a.length;
        int m = b.length;
        grow(n, m);
        double extra = pattern == StepPattern.SYMMETRIC2 ? 1 : 0;
        Arrays.fill(row, 0, m + 1, Double.POSITIVE_INFINITY);
        for (int i = 0; i < n; i++) {
            Interruption.checkHere();
            double[] swap = up;
            up = row;
            row = swap;
            Arrays.fill(row, 0, m + 1, Double.POSITIVE_INFINITY);
            int first = window.first(i, n, m);
            int last = window.last(i, n, m);
            firsts[i] = first;
            byte[] made = movesOf(i, Math.max(0, last - first + 1));
            if (i == 0 && first == 0 && last >= 0) {
                // The first pair is reached from nowhere, at weight 1.
                row[1] = cost.of(a[0], b[0]);
                first = 1;
            }
            if (cost == LocalCost.ABSOLUTE) {
                absoluteRow(up, row, b, a[i], first, last, extra, made, firsts[i]);
            } else {
                squaredRow(up, row, b, a[i], first, last, extra, made, firsts[i]);
            }
        }
        double distance = row[m];
        if (Double.isInfinite(distance)) {
            throw StepTable.noPath(pattern, n, m);
        }
        return walkBack(pattern, distance, n, m);
    }

    private static void absoluteRow(
            double[] up,
            double[] row,
            double[] b,
            double ai,
            int begin,
            int end,
            double extra,
            byte[] moves,
            int shift) {
        double corner = begin <= end ? up[begin] : 0;
        double left = row[Math.min(begin, row.length - 1)];
        for (int j = begin; j <= end; j++) {
            double d = Math.abs(ai - b[j]);
            double over = up[j + 1];
            double least = corner + extra * d;
            byte move = SLANTED;
            if (over < least) {
                least = over;
                move = OVER;
            }
            if (left < least) {
                least = left;
                move = LEFT;
            }
            left = least + d;
            corner = over;
            row[j + 1] = left;
            moves[j - shift] = move;
        }
    }

    private static void squaredRow(
            double[] up,
            double[] row,
            double[] b,
            double ai,
            int begin,
            int end,
            double extra,
            byte[] moves,
            int shift) {
        double corner = begin <= end ? up[begin] : 0;
        double left = row[Math.min(begin, row.length - 1)];
        for (int j = begin; j <= end; j++) {
            double d = (ai - b[j]) * (ai - b[j]);
            double over = up[j + 1];
            double least = corner + extra * d;
            byte move = SLANTED;
            if (over < least) {
                least = over;
                move = OVER;
            }
            if (left < least) {
                least = left;
                move = LEFT;
            }
            left = least + d;
            corner = over;
            row[j + 1] = left;
            moves[j - shift] = move;
        }
    }

    private WarpingPath walkBack(StepPattern pattern, double distance, int n, int m) {
        int most = n + m;
        int at = most;
        int i = n - 1;
        int j = m - 1;
        while (true) {
            queries[--at] = i;
            references[at] = j;
            if (i == 0 && j == 0) {
                break;
            }
            byte move = moves[i][j - firsts[i]];
            i -= move == LEFT ? 0 : 1;
            j -= move == OVER ? 0 : 1;
        }
        return new WarpingPath(
                distance,
                pattern.normalised(distance, n, m),
                Arrays.copyOfRange(queries, at, most),
                Arrays.copyOfRange(references, at, most));
    }
}
