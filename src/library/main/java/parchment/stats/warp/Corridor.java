package parchment.stats.warp;

/**
 * Marks a narrow corridor around the path of two curves thinned to blocks. The cheapest path inside it exists, so its cost bounds
 * the distance from above, closely if the curves are smooth.
 */
final class Corridor {
    /** Blocks per curve: enough to follow the path, few enough to cost next to nothing. */
    private static final int BLOCKS = 50;

    private final double[] thinA = new double[BLOCKS];
    private final double[] thinB = new double[BLOCKS];
    private final double[][] sums = new double[BLOCKS][BLOCKS];
    private int[] first = new int[0];
    private int[] last = new int[0];

    int[] first() {
        return first;
    }

    int[] last() {
        return last;
    }

    /** Lays the corridor, cut to the window whose first and last columns are given per row. */
    void around(double[] a, double[] b, int[] windowFirst, int[] windowLast) {
        int n = a.length;
        int m = b.length;
        if (first.length < n) {
            first = new int[n];
            last = new int[n];
        }
        int rows = Math.min(BLOCKS, n);
        int columns = Math.min(BLOCKS, m);
        thin(a, rows, thinA);
        thin(b, columns, thinB);
        fill(rows, columns, windowFirst, windowLast, n, m);
        for (int i = 0; i < n; i++) {
            first[i] = Integer.MAX_VALUE;
            last[i] = -1;
        }
        int r = rows - 1;
        int c = columns - 1;
        while (true) {
            // Each block of the path opens its own cells and half a block on every side.
            open(r, c, rows, columns, n, m);
            if (r == 0 && c == 0) {
                break;
            }
            double slanted = r > 0 && c > 0 ? sums[r - 1][c - 1] : Double.POSITIVE_INFINITY;
            double over = r > 0 ? sums[r - 1][c] : Double.POSITIVE_INFINITY;
            double left = c > 0 ? sums[r][c - 1] : Double.POSITIVE_INFINITY;
            if (slanted <= over && slanted <= left && r > 0 && c > 0) {
                r--;
                c--;
            } else if (r > 0 && (over <= left || c == 0)) {
                r--;
            } else {
                c--;
            }
        }
        for (int i = 0; i < n; i++) {
            first[i] = Math.max(windowFirst[i], first[i]);
            last[i] = Math.min(windowLast[i], last[i]);
        }
        for (int i = n - 2; i >= 0; i--) {
            first[i] = Math.min(first[i], Math.max(windowFirst[i], first[i + 1]));
        }
        for (int i = 1; i < n; i++) {
            last[i] = Math.max(last[i], Math.min(windowLast[i], last[i - 1]));
        }
    }

    private void open(int r, int c, int rows, int columns, int n, int m) {
        int margin = Math.max(1, m / columns / 2);
        int low = Math.max(0, c * m / columns - margin);
        int high = Math.min(m - 1, (c + 1) * m / columns - 1 + margin);
        int sideways = Math.max(1, n / rows / 2);
        int top = Math.max(0, r * n / rows - sideways);
        int bottom = Math.min(n - 1, (r + 1) * n / rows - 1 + sideways);
        for (int i = top; i <= bottom; i++) {
            first[i] = Math.min(first[i], low);
            last[i] = Math.max(last[i], high);
        }
    }

    private void fill(int rows, int columns, int[] windowFirst, int[] windowLast, int n, int m) {
        for (int r = 0; r < rows; r++) {
            int middle = (2 * r + 1) * n / (2 * rows);
            int low = windowFirst[middle];
            int high = windowLast[middle];
            for (int c = 0; c < columns; c++) {
                boolean closed = (c + 1) * m / columns - 1 < low || c * m / columns > high;
                double d = Math.abs(thinA[r] - thinB[c]);
                double best = r == 0 && c == 0 ? 0 : Double.POSITIVE_INFINITY;
                if (r > 0) {
                    best = Math.min(best, sums[r - 1][c]);
                }
                if (c > 0) {
                    best = Math.min(best, sums[r][c - 1]);
                }
                if (r > 0 && c > 0) {
                    best = Math.min(best, sums[r - 1][c - 1]);
                }
                sums[r][c] = closed ? Double.POSITIVE_INFINITY : best + d;
            }
        }
    }

    private static void thin(double[] curve, int blocks, double[] into) {
        int n = curve.length;
        for (int k = 0; k < blocks; k++) {
            int from = k * n / blocks;
            int to = (k + 1) * n / blocks;
            double sum = 0;
            for (int i = from; i < to; i++) {
                sum += curve[i];
            }
            into[k] = sum / (to - from);
        }
    }
}
