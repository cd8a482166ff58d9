package parchment.stats.warp;

/**
 * Frees the corners of a path from the grid: each moves to where the squared distance of the velocities is least.
 *
 * <p>A path on the grid is right to about a cell, but its slopes jump from one fraction to the next, which adds to the phase
 * distance. A corner moves across the path, as far along one clock as back along the other, so that the result still does not
 * depend on which curve comes first.
 */
final class Polish {
    private static final int SWEEPS = 30;
    /** Weight of a bend against the velocities' squared length: settles the clock where a curve is level, too small to matter elsewhere. */
    private static final double CALM = 1e-4;

    private static final double GOLDEN = 0.381966011250105;

    private final double[] q1;
    private final double[] q2;
    private final double steepest;
    private final double calm;
    private final double[] x;
    private final double[] y;

    /** Takes both curves on the grid and the corners of the path, on clocks from 0 to 1. */
    Polish(double[] firstCurve, double[] secondCurve, int largestSlope, double[] x, double[] y) {
        this.q1 = Velocity.atNodes(firstCurve);
        this.q2 = Velocity.atNodes(secondCurve);
        this.steepest = largestSlope;
        this.calm = CALM * 0.5 * (Velocity.product(q1, q1) + Velocity.product(q2, q2));
        this.x = x;
        this.y = y;
        for (int sweep = 0; sweep < SWEEPS; sweep++) {
            double moved = 0;
            for (int k = 1; k < x.length - 1; k++) {
                moved = Math.max(moved, Math.abs(move(k)));
            }
            if (moved < 1e-3 / q1.length) {
                break;
            }
        }
    }

    /** Returns the squared distance of the velocities along the path. */
    double squaredDistance() {
        double sum = 0;
        for (int k = 1; k < x.length; k++) {
            sum += segment(x[k - 1], y[k - 1], x[k], y[k], 0);
        }
        return sum;
    }

    private double move(int k) {
        // How far a corner may go before a neighbouring piece becomes steeper or flatter than the limits.
        double high = Math.min(room(x[k] - x[k - 1], y[k] - y[k - 1]), room(y[k + 1] - y[k], x[k + 1] - x[k]));
        double low = -Math.min(room(y[k] - y[k - 1], x[k] - x[k - 1]), room(x[k + 1] - x[k], y[k + 1] - y[k]));
        double reach = 1.0 / q1.length;
        high = Math.min(high, reach);
        low = Math.max(low, -reach);
        if (!(high > low)) {
            return 0;
        }
        double a = low;
        double b = high;
        double c = a + GOLDEN * (b - a);
        double d = b - GOLDEN * (b - a);
        double costC = cost(k, c);
        double costD = cost(k, d);
        while (b - a > 1e-2 * reach) {
            if (costC < costD) {
                b = d;
                d = c;
                costD = costC;
                c = a + GOLDEN * (b - a);
                costC = cost(k, c);
            } else {
                a = c;
                c = d;
                costC = costD;
                d = b - GOLDEN * (b - a);
                costD = cost(k, d);
            }
        }
        double best = 0.5 * (a + b);
        if (!(cost(k, best) < cost(k, 0))) {
            return 0;
        }
        x[k] += best;
        y[k] -= best;
        return best;
    }

    /** How far the first side may grow while the second shrinks alike, until their ratio is the steepest allowed. */
    private double room(double growing, double shrinking) {
        return Math.max(0, (steepest * shrinking - growing) / (1 + steepest));
    }

    private double cost(int k, double shift) {
        return segment(x[k - 1], y[k - 1], x[k] + shift, y[k] - shift, calm)
                + segment(x[k] + shift, y[k] - shift, x[k + 1], y[k + 1], calm);
    }

    private double segment(double x0, double y0, double x1, double y1, double calming) {
        int parts = Math.max(4, (int) Math.ceil((x1 - x0 + y1 - y0) * q1.length));
        double dx = (x1 - x0) / parts;
        double dy = (y1 - y0) / parts;
        double rootX = Math.sqrt(dx);
        double rootY = Math.sqrt(dy);
        double sum = calming * parts * (rootX - rootY) * (rootX - rootY);
        for (int p = 0; p < parts; p++) {
            double d = rootX * at(q1, x0 + (p + 0.5) * dx) - rootY * at(q2, y0 + (p + 0.5) * dy);
            sum += d * d;
        }
        return sum;
    }

    private static double at(double[] q, double t) {
        double position = t * (q.length - 1);
        int node = Math.min((int) position, q.length - 2);
        return q[node] + (position - node) * (q[node + 1] - q[node]);
    }
}
