package parchment.stats;

import java.util.Arrays;
import java.util.Optional;

/**
 * Finds the theta with the lowest criterion.
 *
 * <p>The criterion does not change when a column of a relative factor changes its sign, so the search runs without bounds: first a
 * quasi-Newton search (BFGS), then Newton steps with second derivatives from differences of the gradient. Signs are set afterwards so
 * that diagonals are 0 or more. At a diagonal of 0 the first derivative vanishes always; there the derivative by its square decides.
 */
final class MixedSearch {
    private static final int MOST_STEPS = 200;
    private static final double LARGEST = 1e5;
    /** The search stops when the next step promises a gain below this. */
    private static final double GAIN = 1e-12;
    /** Near the optimum differences of the criterion are rounding; steps are then taken on the gradient's word. */
    private static final double ROUNDING = 1e-9;
    /** A diagonal under this is tried at 0. */
    private static final double NEAR_ZERO = 0.02;

    private final MixedSystem system;
    double[] theta;
    MixedSystem.Value value;
    int evaluations;
    boolean converged;
    boolean unbounded;

    private MixedSearch(MixedSystem system, double[] start) {
        this.system = system;
        this.theta = start.clone();
        this.value = system.evaluate(theta, true);
        this.evaluations = 1;
    }

    static MixedSearch run(MixedSystem system, double[] start) {
        MixedSearch search = new MixedSearch(system, start);
        if (search.value.brokeDown() && start.length > 0) {
            throw new CannotFitException("A mixed model needs a response that differs from row to row by more than its "
                    + "fixed columns give, but in these " + system.rows + " rows they give it exactly.");
        }
        if (start.length == 0) {
            search.converged = true;
            return search;
        }
        for (int round = 0; round < 4; round++) {
            search.quasiNewton();
            search.polish();
            if (!search.settleZeros()) {
                break;
            }
        }
        search.setSigns();
        search.value = system.evaluate(search.theta, true);
        return search;
    }

    private void quasiNewton() {
        int n = theta.length;
        double[][] h = identity(n, 1);
        boolean fresh = true;
        converged = false;
        for (int step = 0; step < MOST_STEPS; step++) {
            double[] g = value.gradient;
            double[] direction = multiply(h, g, -1);
            double slope = dot(direction, g);
            if (!(slope < 0)) {
                h = identity(n, 1);
                fresh = true;
                direction = multiply(h, g, -1);
                slope = dot(direction, g);
            }
            if (-slope < 2 * GAIN && !fresh) {
                converged = true;
                return;
            }
            if (slope == 0) {
                converged = true;
                return;
            }
            double longest = 0;
            for (int i = 0; i < n; i++) {
                longest = Math.max(longest, Math.abs(direction[i]) / (0.5 + Math.abs(theta[i])));
            }
            double scale = Math.min(1, (fresh ? 0.5 : 1.5) / longest);
            double[] next = new double[n];
            MixedSystem.Value found = value;
            boolean better = false;
            for (int half = 0; half < 30 && !better; half++) {
                for (int i = 0; i < n; i++) {
                    next[i] = theta[i] + scale * direction[i];
                }
                found = system.evaluate(next, true);
                evaluations++;
                better = !found.brokeDown()
                        && (found.criterion <= value.criterion + 1e-4 * scale * slope
                                || (-slope < 1e-6 && found.criterion <= value.criterion + ROUNDING));
                if (!better) {
                    double drop = found.criterion - value.criterion - scale * slope;
                    double ideal = found.brokeDown() ? 0.1 * scale : -0.5 * slope * scale * scale / drop;
                    scale = Math.min(0.5 * scale, Math.max(0.1 * scale, ideal));
                }
            }
            if (!better) {
                // No gain to be had beyond rounding; Newton steps have the last word.
                return;
            }
            update(h, next, found.gradient, fresh);
            fresh = false;
            theta = next.clone();
            value = found;
            if (size(theta) > LARGEST) {
                unbounded = true;
                return;
            }
        }
    }

    private void update(double[][] h, double[] next, double[] gradient, boolean fresh) {
        int n = next.length;
        double[] s = new double[n];
        double[] y = new double[n];
        for (int i = 0; i < n; i++) {
            s[i] = next[i] - theta[i];
            y[i] = gradient[i] - value.gradient[i];
        }
        double sy = dot(s, y);
        if (!(sy > 1e-12 * Math.sqrt(dot(s, s) * dot(y, y)))) {
            return;
        }
        if (fresh) {
            double first = sy / dot(y, y);
            for (int i = 0; i < n; i++) {
                h[i][i] = first;
            }
        }
        double[] hy = multiply(h, y, 1);
        double yhy = dot(y, hy);
        for (int i = 0; i < n; i++) {
            for (int j = 0; j < n; j++) {
                h[i][j] += (1 + yhy / sy) * s[i] * s[j] / sy - (hy[i] * s[j] + s[i] * hy[j]) / sy;
            }
        }
    }

    /** Newton steps until the promised gain is below rounding; keeps only steps that do not raise the criterion. */
    private void polish() {
        if (converged || unbounded) {
            return;
        }
        for (int step = 0; step < 12; step++) {
            double[] gradient = value.gradient;
            Optional<double[]> newton = hessian(system, theta).flatMap(h -> newtonStep(h, gradient));
            evaluations += 2 * theta.length;
            if (newton.isEmpty()) {
                // Not settled: the note says so.
                return;
            }
            double[] gain = newton.get();
            double promised = -0.5 * dot(gain, value.gradient);
            if (promised < GAIN) {
                converged = true;
                return;
            }
            double scale = 1;
            boolean better = false;
            for (int half = 0; half < 12 && !better; half++, scale /= 2) {
                double[] next = theta.clone();
                for (int i = 0; i < next.length; i++) {
                    next[i] += scale * gain[i];
                }
                MixedSystem.Value found = system.evaluate(next, true);
                evaluations++;
                if (!found.brokeDown()
                        && (found.criterion < value.criterion
                                || (promised < 1e-6 && found.criterion <= value.criterion + ROUNDING))) {
                    theta = next;
                    value = found;
                    better = true;
                }
            }
            if (!better) {
                converged = promised < 1e-7;
                return;
            }
        }
    }

    /** Second derivatives of the criterion by central differences of its gradient; nothing if the factor breaks down beside theta. */
    static Optional<double[][]> hessian(MixedSystem system, double[] theta) {
        int n = theta.length;
        double[][] h = new double[n][n];
        for (int i = 0; i < n; i++) {
            double step = 1e-4 * Math.max(0.1, Math.abs(theta[i]));
            double[] moved = theta.clone();
            moved[i] = theta[i] + step;
            MixedSystem.Value up = system.evaluate(moved, true);
            moved[i] = theta[i] - step;
            MixedSystem.Value down = system.evaluate(moved, true);
            if (up.brokeDown() || down.brokeDown()) {
                return Optional.empty();
            }
            for (int j = 0; j < n; j++) {
                h[i][j] = (up.gradient[j] - down.gradient[j]) / (2 * step);
            }
        }
        for (int i = 0; i < n; i++) {
            for (int j = 0; j < i; j++) {
                h[i][j] = 0.5 * (h[i][j] + h[j][i]);
                h[j][i] = h[i][j];
            }
        }
        return Optional.of(h);
    }

    /** The Newton step, with a ridge added until the matrix is positive definite; nothing if no ridge makes it so, as with missing numbers. */
    static Optional<double[]> newtonStep(double[][] hessian, double[] gradient) {
        int n = gradient.length;
        double largest = 1e-12;
        double enough = largest;
        for (int i = 0; i < n; i++) {
            largest = Math.max(largest, Math.abs(hessian[i][i]));
            for (int j = 0; j < n; j++) {
                // A ridge above n times the largest entry makes every symmetric matrix positive definite.
                enough = Math.max(enough, 100 * n * Math.abs(hessian[i][j]));
            }
        }
        if (!Double.isFinite(enough)) {
            return Optional.empty();
        }
        for (double ridge = 0; ridge <= enough; ridge = ridge == 0 ? 1e-8 * largest : 10 * ridge) {
            double[][] shifted = new double[n][];
            for (int i = 0; i < n; i++) {
                shifted[i] = hessian[i].clone();
                shifted[i][i] += ridge;
            }
            Optional<double[]> step = SmallSolve.solve(shifted, gradient);
            if (step.isPresent()) {
                return step.map(move -> Arrays.stream(move).map(v -> -v).toArray());
            }
        }
        return Optional.empty();
    }

    /** Tries small diagonals at 0; leaves 0 again where the criterion falls with the square. Returns true if the search must go on. */
    private boolean settleZeros() {
        boolean again = false;
        for (int t = 0, k = 0; t < system.products.terms; t++) {
            int size = system.products.sizeOfTerm[t];
            for (int c = 0; c < size; c++) {
                if (size == 1 && Math.abs(theta[k]) < NEAR_ZERO) {
                    again |= settle(k);
                }
                k += size - c;
            }
        }
        return again;
    }

    private boolean settle(int k) {
        double[] zero = theta.clone();
        zero[k] = 0;
        MixedSystem.Value atZero = system.evaluate(zero, true);
        zero[k] = 1e-3;
        MixedSystem.Value near = system.evaluate(zero, true);
        evaluations += 2;
        if (atZero.brokeDown() || near.brokeDown()) {
            return false;
        }
        // The derivative by theta squared, at 0.
        boolean falls = near.gradient[k] < 0;
        if (!falls && atZero.criterion <= value.criterion + 1e-9) {
            zero[k] = 0;
            theta = zero;
            value = atZero;
            return false;
        }
        if (falls && Math.abs(theta[k]) < 1e-4) {
            zero[k] = 0.1;
            MixedSystem.Value away = system.evaluate(zero, true);
            if (!away.brokeDown()) {
                theta = zero;
                value = away;
                return true;
            }
        }
        return false;
    }

    private void setSigns() {
        for (int t = 0, k = 0; t < system.products.terms; t++) {
            int size = system.products.sizeOfTerm[t];
            for (int c = 0; c < size; c++) {
                boolean negative = theta[k] < 0;
                for (int r = c; r < size; r++, k++) {
                    theta[k] = negative ? -theta[k] : theta[k];
                }
            }
        }
    }

    private static double size(double[] v) {
        double largest = 0;
        for (double x : v) {
            largest = Math.max(largest, Math.abs(x));
        }
        return largest;
    }

    private static double[][] identity(int n, double scale) {
        double[][] h = new double[n][n];
        for (int i = 0; i < n; i++) {
            h[i][i] = scale;
        }
        return h;
    }

    private static double[] multiply(double[][] h, double[] v, double scale) {
        double[] out = new double[v.length];
        for (int i = 0; i < v.length; i++) {
            out[i] = scale * dot(h[i], v);
        }
        return out;
    }

    private static double dot(double[] a, double[] b) {
        return FixedBasis.dot(a, b);
    }
}
