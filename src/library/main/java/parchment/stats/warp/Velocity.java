package parchment.stats.warp;

import java.util.Arrays;

/** Turns curves into square-root velocities and back; a curve is straight between equally spaced points of a clock from 0 to 1. */
final class Velocity {
    private Velocity() {}

    /** Reads a curve off at equally spaced points of its own clock. */
    static double[] onGrid(double[] times, double[] values, int cells) {
        double[] grid = new double[cells + 1];
        double start = times[0];
        double run = times[times.length - 1] - start;
        for (int k = 0; k <= cells; k++) {
            grid[k] = between(times, values, start + run * k / cells);
        }
        grid[cells] = values[values.length - 1];
        return grid;
    }

    private static double between(double[] x, double[] y, double t) {
        int piece = Stretch.piece(x, t);
        double share = (t - x[piece]) / (x[piece + 1] - x[piece]);
        return y[piece] + Math.max(0, Math.min(1, share)) * (y[piece + 1] - y[piece]);
    }

    /** Reads a curve on the grid at other instants of the clock from 0 to 1. */
    static double[] at(double[] curve, double[] instants) {
        int cells = curve.length - 1;
        double[] read = new double[instants.length];
        for (int k = 0; k < instants.length; k++) {
            double position = Math.max(0, Math.min(cells, instants[k] * cells));
            int piece = Math.min((int) position, cells - 1);
            read[k] = curve[piece] + (position - piece) * (curve[piece + 1] - curve[piece]);
        }
        return read;
    }

    /** sign(f') sqrt|f'|, one value per cell. */
    static double[] of(double[] curve) {
        int cells = curve.length - 1;
        double[] q = new double[cells];
        for (int k = 0; k < cells; k++) {
            double slope = (curve[k + 1] - curve[k]) * cells;
            q[k] = Math.signum(slope) * Math.sqrt(Math.abs(slope));
        }
        return q;
    }

    /** sign(f') sqrt|f'| at the grid points, from the mean slope of the cells on either side. */
    static double[] atNodes(double[] curve) {
        int cells = curve.length - 1;
        double[] q = new double[cells + 1];
        for (int k = 0; k <= cells; k++) {
            int below = Math.max(0, k - 1);
            int above = Math.min(cells, k + 1);
            double slope = (curve[above] - curve[below]) * cells / (above - below);
            q[k] = Math.signum(slope) * Math.sqrt(Math.abs(slope));
        }
        return q;
    }

    /** The curve with a given start and square-root velocity. */
    static double[] curve(double start, double[] q) {
        double[] curve = new double[q.length + 1];
        curve[0] = start;
        for (int k = 0; k < q.length; k++) {
            curve[k + 1] = curve[k] + q[k] * Math.abs(q[k]) / q.length;
        }
        return curve;
    }

    static double product(double[] a, double[] b) {
        double sum = 0;
        for (int k = 0; k < a.length; k++) {
            sum += a[k] * b[k];
        }
        return sum / a.length;
    }

    static double squaredDistance(double[] a, double[] b) {
        double sum = 0;
        for (int k = 0; k < a.length; k++) {
            sum += (a[k] - b[k]) * (a[k] - b[k]);
        }
        return sum / a.length;
    }

    static double[] mean(double[][] rows) {
        double[] mean = new double[rows[0].length];
        for (double[] row : rows) {
            for (int k = 0; k < mean.length; k++) {
                mean[k] += row[k] / rows.length;
            }
        }
        return mean;
    }

    static double[] unitGrid(int cells) {
        double[] grid = new double[cells + 1];
        Arrays.setAll(grid, k -> (double) k / cells);
        return grid;
    }
}
