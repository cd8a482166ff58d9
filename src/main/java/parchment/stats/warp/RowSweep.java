package parchment.stats.warp;

import java.util.Arrays;

/** Sums the cheapest path row by row, without keeping the path; the work space is used again from call to call. */
final class RowSweep {
    private double[] above;
    private double[] here;

    RowSweep(int rows, int columns) {
        above = new double[columns + 1];
        here = new double[columns + 1];
    }

    double distance(double[] a, double[] b, Window window, LocalCost cost, int diagonal, Pruning pruning) {
        int n = a.length;
        int m = b.length;
        if (above.length < m + 1) {
            above = new double[m + 1];
            here = new double[m + 1];
        }
        Arrays.fill(above, 0, m + 1, Double.POSITIVE_INFINITY);
        Arrays.fill(here, 0, m + 1, Double.POSITIVE_INFINITY);
        double[] up = above;
        double[] row = here;
        // Column 0 stands before the first sample; a path starts there at no cost for a first pair at weight 1.
        for (int i = 0; i < n; i++) {
            int first = window.first(i, n, m) + 1;
            int last = window.last(i, n, m) + 1;
            if (first > last) {
                return Double.POSITIVE_INFINITY;
            }
            if (first > 1) {
                row[first - 1] = Double.POSITIVE_INFINITY;
            }
            double left = Double.POSITIVE_INFINITY;
            double ai = a[i];
            int j = first;
            if (i == 0) {
                if (first > 1) return Double.POSITIVE_INFINITY;
                left = cost.of(ai, b[0]);
                row[1] = left;
                j = 2;
            }
            double corner = up[j - 1];
            for (; j <= last; j++) {
                double d = ai - b[j - 1];
                d = cost == LocalCost.ABSOLUTE ? Math.abs(d) : d * d;
                double over = up[j];
                double straight = (over < left ? over : left) + d;
                double slanted = corner + diagonal * d;
                left = straight < slanted ? straight : slanted;
                row[j] = left;
                corner = over;
            }
            if (last < m) {
                row[last + 1] = Double.POSITIVE_INFINITY;
            }
            double[] t = up;
            up = row;
            row = t;
        }
        return up[m];
    }
}
