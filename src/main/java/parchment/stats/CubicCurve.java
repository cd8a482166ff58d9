package parchment.stats;

import java.util.Arrays;
import parchment.display.Showable;

/** A smooth curve through given points, made of cubic pieces. Outside the points there is no answer. */
public final class CubicCurve implements Showable {
    private final double[] x;
    private final double[] y;
    private final double[] slopes;
    private final String kind;

    private CubicCurve(double[] x, double[] y, double[] slopes, String kind) {
        this.x = x;
        this.y = y;
        this.slopes = slopes;
        this.kind = kind;
    }

    /**
     * Returns the natural cubic spline: the curve of least bending through the points.
     *
     * @param x positions, strictly increasing, at least 2
     */
    public static CubicCurve natural(double[] x, double[] y) {
        check(x, y);
        int n = x.length;
        // Equations for the slopes from equal second derivatives on both sides of each point (de Boor 1978, chapter
        // IV).
        double[] lower = new double[n];
        double[] diagonal = new double[n];
        double[] upper = new double[n];
        double[] right = new double[n];
        diagonal[0] = 2;
        upper[0] = 1;
        right[0] = 3 * secant(x, y, 0);
        for (int i = 1; i < n - 1; i++) {
            double before = 1 / (x[i] - x[i - 1]);
            double after = 1 / (x[i + 1] - x[i]);
            lower[i] = before;
            diagonal[i] = 2 * (before + after);
            upper[i] = after;
            right[i] = 3 * (secant(x, y, i - 1) * before + secant(x, y, i) * after);
        }
        lower[n - 1] = 1;
        diagonal[n - 1] = 2;
        right[n - 1] = 3 * secant(x, y, n - 2);
        for (int i = 1; i < n; i++) {
            double factor = lower[i] / diagonal[i - 1];
            diagonal[i] -= factor * upper[i - 1];
            right[i] -= factor * right[i - 1];
        }
        double[] slopes = new double[n];
        slopes[n - 1] = right[n - 1] / diagonal[n - 1];
        for (int i = n - 2; i >= 0; i--) {
            slopes[i] = (right[i] - upper[i] * slopes[i + 1]) / diagonal[i];
        }
        return new CubicCurve(x.clone(), y.clone(), slopes, "natural cubic spline");
    }

    /**
     * Returns a curve that rises where the points rise and falls where they fall, without overshoot.
     *
     * @param x positions, strictly increasing, at least 2
     * @see <a href="https://doi.org/10.1137/0717021">Fritsch and Carlson 1980, SIAM J. Numer. Anal. 17:238</a>
     */
    public static CubicCurve monotone(double[] x, double[] y) {
        check(x, y);
        int n = x.length;
        double[] slopes = new double[n];
        slopes[0] = secant(x, y, 0);
        slopes[n - 1] = secant(x, y, n - 2);
        for (int i = 1; i < n - 1; i++) {
            slopes[i] = 0.5 * (secant(x, y, i - 1) + secant(x, y, i));
        }
        // A later piece may lower a slope that an earlier one has approved; within three sweeps all agree.
        boolean changed = true;
        for (int sweep = 0; changed && sweep < 100; sweep++) {
            changed = false;
            for (int i = 0; i < n - 1; i++) {
                changed |= restrain(slopes, i, secant(x, y, i));
            }
        }
        return new CubicCurve(x.clone(), y.clone(), slopes, "monotone cubic curve");
    }

    /** Lowers the slopes at both ends of a piece until the piece is monotone; says whether it had to. */
    private static boolean restrain(double[] slopes, int i, double secant) {
        if (secant == 0) {
            boolean changed = slopes[i] != 0 || slopes[i + 1] != 0;
            slopes[i] = 0;
            slopes[i + 1] = 0;
            return changed;
        }
        // A slope against the secant makes a bump at once.
        double a = Math.max(0, slopes[i] / secant);
        double b = Math.max(0, slopes[i + 1] / secant);
        boolean changed = slopes[i] / secant < 0 || slopes[i + 1] / secant < 0;
        double first = 2 * a + b - 3;
        double second = a + 2 * b - 3;
        if (first > 0 && second > 0 && a * (first + second) < first * first) {
            // Just inside the circle of radius 3, so that rounding does not call for another sweep.
            double scale = 3 / Math.hypot(a, b) * (1 - 1e-13);
            a *= scale;
            b *= scale;
            changed = true;
        }
        if (changed) {
            slopes[i] = a * secant;
            slopes[i + 1] = b * secant;
        }
        return changed;
    }

    private static double secant(double[] x, double[] y, int i) {
        return (y[i + 1] - y[i]) / (x[i + 1] - x[i]);
    }

    private static void check(double[] x, double[] y) {
        Checks.sameLength("A curve through points", x.length, "y", y.length);
        if (x.length < 2) {
            throw new IllegalArgumentException(
                    "A curve through points needs at least 2 of them, but there is " + x.length + ".");
        }
        for (int i = 0; i < x.length; i++) {
            if (!Double.isFinite(x[i]) || !Double.isFinite(y[i]) || (i > 0 && !(x[i] > x[i - 1]))) {
                throw new IllegalArgumentException(
                        "A curve through points needs them complete and in strictly increasing order, but position "
                                + (i + 1) + " is at " + Checks.number(x[i])
                                + (i > 0 ? " after " + Checks.number(x[i - 1]) : "") + ".");
            }
        }
    }

    /** Returns the height at a place; NaN outside the points. */
    public double value(double at) {
        if (!(at >= x[0] && at <= x[x.length - 1])) {
            return Double.NaN;
        }
        int i = piece(at);
        double h = x[i + 1] - x[i];
        double u = (at - x[i]) / h;
        double w = 1 - u;
        return y[i] * (1 + 2 * u) * w * w
                + h * slopes[i] * u * w * w
                + y[i + 1] * u * u * (3 - 2 * u)
                - h * slopes[i + 1] * u * u * w;
    }

    /** Returns the slope at a place; NaN outside the points. */
    public double slope(double at) {
        if (!(at >= x[0] && at <= x[x.length - 1])) {
            return Double.NaN;
        }
        int i = piece(at);
        double h = x[i + 1] - x[i];
        double u = (at - x[i]) / h;
        return 6 * u * (1 - u) * (y[i + 1] - y[i]) / h
                + slopes[i] * (1 - u) * (1 - 3 * u)
                + slopes[i + 1] * u * (3 * u - 2);
    }

    private int piece(double at) {
        int found = Arrays.binarySearch(x, at);
        int i = found >= 0 ? found : -found - 2;
        return Math.min(i, x.length - 2);
    }

    @Override
    public String toString() {
        return kind + " through " + x.length + " points from " + Checks.number(x[0]) + " to "
                + Checks.number(x[x.length - 1]);
    }
}
