package parchment.stats.local;

import java.util.Optional;
import parchment.stats.linear.SmallSolve;

/** The moving window of a local regression: finds the weights at a point and applies them. Reuses weights on equal spacing. */
final class LocalWindow {
    static final int VALUE = 0;
    static final int SLOPE = 1;
    static final int VALUE_ERROR = 2;
    static final int SLOPE_ERROR = 3;
    static final int POINTS = 4;
    static final int REACH = 5;

    private final double[] x;
    private final double[] y;
    private final double bandwidth;
    private final int degree;
    private final KernelShape kernel;
    private final Ends ends;
    private final Autocovariance covariance;
    private final double[] decays;

    private final double[][] weights;
    private final double[] offsets;
    private int count = -1;
    private double reach;
    private double valueError;
    private double slopeError;
    private boolean usable;
    private int low;

    LocalWindow(
            double[] x,
            double[] y,
            double bandwidth,
            int degree,
            KernelShape kernel,
            Ends ends,
            Autocovariance covariance) {
        this.x = x;
        this.y = y;
        this.bandwidth = bandwidth;
        this.degree = degree;
        this.kernel = kernel;
        this.ends = ends;
        this.covariance = covariance;
        this.decays = new double[x.length];
        double lastStep = Double.NaN;
        double lastDecay = 0;
        for (int i = 1; i < x.length; i++) {
            double step = x[i] - x[i - 1];
            if (step != lastStep) {
                lastStep = step;
                lastDecay = covariance.decay(step);
            }
            decays[i] = lastDecay;
        }
        this.weights = new double[2][x.length];
        this.offsets = new double[x.length];
    }

    /** Returns value, slope, their standard errors, the number of samples used and the half-window in force; NaN if there are too few. */
    double[] estimate(double point) {
        double half = reachAt(point);
        int first = Double.isNaN(half) ? 0 : firstInside(point - half * (1 + 1e-9));
        int last = first;
        while (!Double.isNaN(half) && last < x.length && x[last] <= point + half * (1 + 1e-9)) {
            last++;
        }
        if (Double.isNaN(half) || !prepare(point, half, first, last - first)) {
            return new double[] {Double.NaN, Double.NaN, Double.NaN, Double.NaN, last - first, half};
        }
        double value = 0;
        double slope = 0;
        double[] w0 = weights[0];
        double[] w1 = weights[1];
        // Sums of differences from a reading of the window: large, nearly equal readings lose no digits.
        double base = y[first];
        for (int i = 0; i < count; i++) {
            double difference = y[first + i] - base;
            value += w0[i] * difference;
            slope += w1[i] * difference;
        }
        return new double[] {base + value, slope, valueError, slopeError, count, half};
    }

    double[] weights(double point, int which) {
        estimate(point);
        return java.util.Arrays.copyOf(weights[which], Math.max(0, count));
    }

    private double reachAt(double point) {
        if (x.length == 0 || !(point >= x[0] - 1e-9 * bandwidth) || !(point <= x[x.length - 1] + 1e-9 * bandwidth)) {
            return Double.NaN;
        }
        if (ends == Ends.KEEP_REACH) {
            return bandwidth;
        }
        double fromStart = 2 * bandwidth - (point - x[0]);
        double fromEnd = 2 * bandwidth - (x[x.length - 1] - point);
        return Math.max(bandwidth, Math.max(fromStart, fromEnd));
    }

    private int firstInside(double edge) {
        if (low < x.length && low > 0 && x[low - 1] >= edge) {
            low = 0;
        }
        while (low < x.length && x[low] < edge) {
            low++;
        }
        return low;
    }

    private boolean prepare(double point, double half, int first, int found) {
        if (same(point, half, first, found)) {
            return usable;
        }
        count = found;
        reach = half;
        for (int i = 0; i < found; i++) {
            offsets[i] = x[first + i] - point;
        }
        usable = solve();
        if (usable) {
            valueError = Math.sqrt(covariance.quadratic(weights[0], count, decays, first));
            slopeError = Math.sqrt(covariance.quadratic(weights[1], count, decays, first));
        }
        return usable;
    }

    private boolean same(double point, double half, int first, int found) {
        double slack = 1e-12 * half;
        if (found != count || Math.abs(half - reach) > slack) {
            return false;
        }
        for (int i = 0; i < found; i++) {
            if (Math.abs(x[first + i] - point - offsets[i]) > slack) {
                return false;
            }
        }
        return true;
    }

    /** Weighted least squares in u = offset / reach by Cholesky; the polynomial is so low that the normal equations are well behaved. */
    private boolean solve() {
        int terms = degree + 1;
        double[] moments = new double[2 * degree + 1];
        int distinct = 0;
        double lastU = Double.NaN;
        double[] k = weights[0];
        double span = Math.max(reach, 1e-300);
        for (int i = 0; i < count; i++) {
            double u = offsets[i] / span;
            double w = kernel.weight(Math.abs(u));
            k[i] = w;
            if (w > 1e-12 && !(Math.abs(u - lastU) <= 1e-9)) {
                distinct++;
                lastU = u;
            }
            double power = w;
            for (int m = 0; m < moments.length; m++) {
                moments[m] += power;
                power *= u;
            }
        }
        if (distinct < terms) {
            return false;
        }
        double[][] normal = new double[terms][terms];
        for (int r = 0; r < terms; r++) {
            for (int c = 0; c < terms; c++) {
                normal[r][c] = moments[r + c];
            }
        }
        Optional<double[][]> factor = SmallSolve.cholesky(normal);
        if (factor.isEmpty()) {
            return false;
        }
        double[] forValue = new double[terms];
        double[] forSlope = new double[terms];
        forValue[0] = 1;
        forSlope[1] = 1;
        SmallSolve.solveFactored(factor.get(), forValue);
        SmallSolve.solveFactored(factor.get(), forSlope);
        for (int i = 0; i < count; i++) {
            double u = offsets[i] / span;
            double value = 0;
            double slope = 0;
            for (int m = terms - 1; m >= 0; m--) {
                value = value * u + forValue[m];
                slope = slope * u + forSlope[m];
            }
            double w = k[i];
            weights[0][i] = w * value;
            weights[1][i] = w * slope / span;
        }
        return true;
    }
}
