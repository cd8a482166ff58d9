package parchment.chart;

import java.util.ArrayDeque;
import java.util.Arrays;

/**
 * Writes a path of SVG from places on the page, with fewer points where nobody could see the difference.
 *
 * <p>Runs of points are simplified by the method of Ramer (1972) and Douglas and Peucker (1973): no point that is left out was
 * farther than the tolerance from the line that is drawn. Places are rounded to tenths and written relative to each other.
 */
final class Polyline {
    /** Tolerance for a line that is looked at by itself, in units of the picture: a fifth of a pixel. */
    static final double FINE = 0.2;

    private final double tolerance;

    private final StringBuilder d = new StringBuilder();
    private double[] xs = new double[64];
    private double[] ys = new double[64];
    private int size;
    private long penX;
    private long penY;

    Polyline() {
        this(FINE);
    }

    Polyline(double tolerance) {
        this.tolerance = tolerance;
    }

    /** Adds a place to the present run. */
    Polyline to(double x, double y) {
        if (size == xs.length) {
            xs = Arrays.copyOf(xs, 2 * size);
            ys = Arrays.copyOf(ys, 2 * size);
        }
        // Places far off the page are pulled in: some viewers overflow on them, and none of them is seen.
        xs[size] = Math.max(-9999, Math.min(9999, x));
        ys[size] = Math.max(-9999, Math.min(9999, y));
        size++;
        return this;
    }

    /** Ends the present run; the next place starts a new one. */
    Polyline lift() {
        write("");
        return this;
    }

    /** Ends the present run with a line back to its start. */
    Polyline close() {
        write("z");
        return this;
    }

    /** Returns the path's data. */
    String data() {
        write("");
        return d.toString();
    }

    private void write(String end) {
        if (size > 0) {
            boolean[] kept = simplify(xs, ys, size, tolerance);
            start(tenths(xs[0]), tenths(ys[0]));
            for (int i = 1; i < size; i++) {
                long x = tenths(xs[i]);
                long y = tenths(ys[i]);
                if (kept[i] && (x != penX || y != penY)) {
                    step(x - penX, y - penY);
                    penX = x;
                    penY = y;
                }
            }
            if (size == 1) {
                d.append("h0"); // a lone point shows as a dot under round line caps
            }
            d.append(end);
        }
        size = 0;
    }

    private void start(long x, long y) {
        d.append('M');
        number(x);
        d.append(y < 0 ? "" : " ");
        number(y);
        penX = x;
        penY = y;
    }

    private void step(long dx, long dy) {
        if (dy == 0) {
            d.append('h');
            number(dx);
        } else if (dx == 0) {
            d.append('v');
            number(dy);
        } else {
            d.append('l');
            number(dx);
            d.append(dy < 0 ? "" : " ");
            number(dy);
        }
    }

    private void number(long tenths) {
        d.append(Svg.number(tenths));
    }

    private static long tenths(double place) {
        return Math.round(place * 10);
    }

    /** Returns which of the points are needed. */
    static boolean[] simplify(double[] xs, double[] ys, int size, double tolerance) {
        boolean[] kept = new boolean[size];
        kept[0] = true;
        kept[size - 1] = true;
        ArrayDeque<int[]> open = new ArrayDeque<>();
        open.push(new int[] {0, size - 1});
        while (!open.isEmpty()) {
            int[] run = open.pop();
            int farthest = -1;
            double most = tolerance;
            for (int i = run[0] + 1; i < run[1]; i++) {
                double distance = distance(xs, ys, run[0], run[1], i);
                if (distance > most) {
                    most = distance;
                    farthest = i;
                }
            }
            if (farthest > 0) {
                kept[farthest] = true;
                open.push(new int[] {run[0], farthest});
                open.push(new int[] {farthest, run[1]});
            }
        }
        return kept;
    }

    private static double distance(double[] xs, double[] ys, int from, int to, int point) {
        double dx = xs[to] - xs[from];
        double dy = ys[to] - ys[from];
        double px = xs[point] - xs[from];
        double py = ys[point] - ys[from];
        double lengthSquared = dx * dx + dy * dy;
        double along = lengthSquared == 0 ? 0 : Math.max(0, Math.min(1, (px * dx + py * dy) / lengthSquared));
        return Math.hypot(px - along * dx, py - along * dy);
    }
}
