package parchment.stats.warp;

import java.util.Arrays;

/**
 * One strictly increasing piecewise cubic through knots; a straight line between knots is the
 * cubic whose slopes at both ends are the secant's. It is evaluated in either direction.
 */
final class Stretch {
    private final double[] x;
    private final double[] y;
    /** Slopes at the left and at the right end of each piece. */
    private final double[] left;

    private final double[] right;
    private final boolean straight;
    private final boolean backward;

    private Stretch(double[] x, double[] y, double[] left, double[] right, boolean straight, boolean backward) {
        this.x = x;
        this.y = y;
        this.left = left;
        this.right = right;
        this.straight = straight;
        this.backward = backward;
    }

    static Stretch linear(double[] x, double[] y) {
        double[] secant = secants(x, y);
        return new Stretch(x, y, secant, secant, true, false);
    }

    /** Chooses the slopes after Fritsch and Carlson 1980: means of the neighbouring secants, pulled back where they overshoot. */
    static Stretch monotoneCubic(double[] x, double[] y) {
        double[] secant = secants(x, y);
        int pieces = secant.length;
        double[] slope = new double[pieces + 1];
        slope[0] = secant[0];
        slope[pieces] = secant[pieces - 1];
        for (int i = 1; i < pieces; i++) {
            slope[i] = 0.5 * (secant[i - 1] + secant[i]);
        }
        for (int i = 0; i < pieces; i++) {
            double a = slope[i] / secant[i];
            double b = slope[i + 1] / secant[i];
            double size = Math.hypot(a, b);
            if (size > 3) {
                slope[i] = 3 * a / size * secant[i];
                slope[i + 1] = 3 * b / size * secant[i];
            }
        }
        return new Stretch(
                x, y, Arrays.copyOf(slope, pieces), Arrays.copyOfRange(slope, 1, pieces + 1), pieces == 1, false);
    }

    private static double[] secants(double[] x, double[] y) {
        double[] secant = new double[x.length - 1];
        for (int i = 0; i < secant.length; i++) {
            secant[i] = (y[i + 1] - y[i]) / (x[i + 1] - x[i]);
        }
        return secant;
    }

    Stretch inverse() {
        return straight ? linear(y, x) : new Stretch(x, y, left, right, false, !backward);
    }

    boolean isStraight() {
        return straight;
    }

    boolean isBackward() {
        return backward;
    }

    double[] from() {
        return backward ? y : x;
    }

    double[] to() {
        return backward ? x : y;
    }

    double at(double t) {
        int piece = piece(from(), t);
        return backward ? solve(piece, t) : value(piece, t);
    }

    double slope(double t) {
        int piece = piece(from(), t);
        return backward ? 1 / slopeOf(piece, solve(piece, t)) : slopeOf(piece, t);
    }

    static int piece(double[] knots, double t) {
        int found = Arrays.binarySearch(knots, t);
        int piece = found >= 0 ? found : -found - 2;
        return Math.max(0, Math.min(piece, knots.length - 2));
    }

    private double value(int i, double t) {
        double h = x[i + 1] - x[i];
        double s = (t - x[i]) / h;
        if (straight) {
            return s >= 1 ? y[i + 1] : y[i] + s * (y[i + 1] - y[i]);
        }
        double r = 1 - s;
        // Hermite form around the straight line, so that both knots are met exactly.
        return r * y[i]
                + s * y[i + 1]
                + s * r * (r * (left[i] * h - (y[i + 1] - y[i])) - s * (right[i] * h - (y[i + 1] - y[i])));
    }

    private double slopeOf(int i, double t) {
        double h = x[i + 1] - x[i];
        double s = (t - x[i]) / h;
        double secant = (y[i + 1] - y[i]) / h;
        return left[i] * (1 - s) * (1 - 3 * s) + right[i] * s * (3 * s - 2) + 6 * secant * s * (1 - s);
    }

    /** Finds where a rising piece reaches a value: Newton's steps, halved whenever they would leave the bracket. */
    private double solve(int i, double target) {
        double low = x[i];
        double high = x[i + 1];
        if (target <= y[i]) {
            return low;
        }
        if (target >= y[i + 1]) {
            return high;
        }
        double t = low + (target - y[i]) / (y[i + 1] - y[i]) * (high - low);
        for (int step = 0; step < 200; step++) {
            double error = value(i, t) - target;
            if (error == 0) {
                return t;
            }
            if (error > 0) {
                high = t;
            } else {
                low = t;
            }
            double next = t - error / slopeOf(i, t);
            if (!(next > low && next < high)) {
                next = 0.5 * (low + high);
            }
            if (Math.abs(next - t) <= 1e-15 * Math.max(Math.abs(x[i]), Math.abs(x[i + 1]))
                    || next == low
                    || next == high) {
                return next;
            }
            t = next;
        }
        return t;
    }
}
