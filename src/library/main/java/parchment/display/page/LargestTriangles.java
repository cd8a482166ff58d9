package parchment.display.page;

import java.util.Arrays;

/**
 * Thins a path to a number of points and keeps its shape: of each stretch the point stays that spans the largest triangle with the
 * point kept before it and the mean of the stretch after it. The first and the last point always stay.
 *
 * <p>S. Steinarsson: Downsampling Time Series for Visual Representation, University of Iceland 2013, section 4.2 ("largest triangle
 * three buckets"). Gaps stay gaps: where values are missing the pieces between them share the points by their lengths.
 */
final class LargestTriangles {
    private LargestTriangles() {}

    /** Returns positions and values; a gap is one pair of which the value is NaN. */
    static double[][] thin(double[] x, double[] y, int most) {
        int known = (int) Arrays.stream(y).filter(Double::isFinite).count();
        double[][] thinned = new double[2][x.length + 1];
        int size = 0;
        int from = 0;
        while (from < x.length) {
            if (!Double.isFinite(y[from])) {
                from++;
                continue;
            }
            int to = from;
            while (to < x.length && Double.isFinite(y[to])) {
                to++;
            }
            if (size > 0) {
                thinned[0][size] = x[from - 1];
                thinned[1][size++] = Double.NaN;
            }
            int share = known <= most ? to - from : Math.max(2, (int) ((long) most * (to - from) / known));
            size = piece(x, y, from, to, share, thinned, size);
            from = to;
        }
        return new double[][] {Arrays.copyOf(thinned[0], size), Arrays.copyOf(thinned[1], size)};
    }

    private static int piece(double[] x, double[] y, int from, int to, int most, double[][] out, int start) {
        int length = to - from;
        int size = start;
        if (length <= most || most < 3) {
            for (int i = from; i < to; i++) {
                if (length <= most || i == from || i == to - 1) {
                    out[0][size] = x[i];
                    out[1][size++] = y[i];
                }
            }
            return size;
        }
        double stretch = (length - 2.0) / (most - 2);
        int kept = from;
        out[0][size] = x[from];
        out[1][size++] = y[from];
        for (int bucket = 0; bucket < most - 2; bucket++) {
            int begin = from + 1 + (int) (bucket * stretch);
            int end = from + 1 + (int) ((bucket + 1) * stretch);
            int afterEnd = Math.min(to, from + 1 + (int) ((bucket + 2) * stretch));
            double meanX = mean(x, end, Math.max(end + 1, afterEnd));
            double meanY = mean(y, end, Math.max(end + 1, afterEnd));
            int best = begin;
            double largest = -1;
            for (int i = begin; i < end; i++) {
                double area = Math.abs((x[kept] - meanX) * (y[i] - y[kept]) - (x[kept] - x[i]) * (meanY - y[kept]));
                if (area > largest) {
                    largest = area;
                    best = i;
                }
            }
            out[0][size] = x[best];
            out[1][size++] = y[best];
            kept = best;
        }
        out[0][size] = x[to - 1];
        out[1][size++] = y[to - 1];
        return size;
    }

    private static double mean(double[] values, int from, int to) {
        double sum = 0;
        for (int i = from; i < to; i++) {
            sum += values[i];
        }
        return sum / (to - from);
    }
}
