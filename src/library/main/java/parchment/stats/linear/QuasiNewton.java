package parchment.stats.linear;

import java.util.Arrays;
import java.util.Optional;

/**
 * A low place of a smooth function with a gradient: quasi-Newton steps (BFGS), then Newton steps with second derivatives from differences of
 * the gradient, for the last digits.
 */
public final class QuasiNewton {
    /** A function with its gradient. Positive infinity marks a place that may not be entered, whose gradient is not asked for. */
    @FunctionalInterface
    public interface Surface {
        /** Returns the value at a place and writes the gradient there into the second array. */
        double value(double[] x, double[] gradient);
    }

    private static final int MOST_STEPS = 300;
    private static final int MOST_NEWTON_STEPS = 20;
    private static final double LARGEST = 1e5;
    /** The search stops when the next step promises a gain below this. */
    private static final double GAIN = 1e-12;
    /** A gain this small is a step of about 1e-8: the place has settled. */
    private static final double LAST_GAIN = 1e-16;
    /** Near the lowest place differences of the value are rounding; steps are then taken on the gradient's word. */
    private static final double ROUNDING = 1e-9;

    private final Surface surface;
    private double[] x;
    private double value;
    private double[] gradient;
    private int evaluations;
    private boolean converged;
    private boolean unbounded;

    private QuasiNewton(Surface surface, double[] start) {
        this.surface = surface;
        this.x = start.clone();
        this.gradient = new double[start.length];
        this.value = evaluate(x, gradient);
    }

    /** Searches from a start that may be entered, until a step promises a gain below 1e-12. */
    public static QuasiNewton minimum(Surface surface, double[] start) {
        QuasiNewton search = new QuasiNewton(surface, start);
        search.descend();
        if (!search.converged && !search.unbounded) {
            search.polish(GAIN);
        }
        return search;
    }

    /** Searches as {@link #minimum} does, and takes Newton steps at any rate, so that the place has the digits that the gradient has. */
    public static QuasiNewton polishedMinimum(Surface surface, double[] start) {
        QuasiNewton search = new QuasiNewton(surface, start);
        search.descend();
        if (!search.unbounded) {
            search.converged = false;
            search.polish(LAST_GAIN);
        }
        return search;
    }

    /** Returns the lowest place found. */
    public double[] place() {
        return x.clone();
    }

    /** Returns the value at the lowest place found. */
    public double value() {
        return value;
    }

    /** Returns how often the function was worked out. */
    public int evaluations() {
        return evaluations;
    }

    /** Tells whether no further step promised a gain. */
    public boolean converged() {
        return converged;
    }

    /** Tells whether the search ran away beyond 100,000 and was given up. */
    public boolean unbounded() {
        return unbounded;
    }

    private double evaluate(double[] at, double[] slopes) {
        evaluations++;
        return surface.value(at, slopes);
    }

    private void descend() {
        int n = x.length;
        double[][] h = Vectors.identity(n);
        boolean fresh = true;
        for (int step = 0; step < MOST_STEPS; step++) {
            double[] direction = downhill(h);
            double slope = Vectors.dot(direction, gradient);
            if (!(slope < 0)) {
                h = Vectors.identity(n);
                fresh = true;
                direction = downhill(h);
                slope = Vectors.dot(direction, gradient);
            }
            if ((-slope < 2 * GAIN && !fresh) || slope == 0) {
                converged = true;
                return;
            }
            double[] next = new double[n];
            double[] slopes = new double[n];
            double found = lower(direction, slope, fresh, next, slopes);
            if (!(found < Double.POSITIVE_INFINITY)) {
                // No gain to be had beyond rounding; Newton steps have the last word.
                return;
            }
            update(h, next, slopes, fresh);
            fresh = false;
            x = next;
            gradient = slopes;
            value = found;
            if (Vectors.largest(x) > LARGEST) {
                unbounded = true;
                return;
            }
        }
    }

    private double[] downhill(double[][] h) {
        double[] direction = Vectors.times(h, gradient);
        Arrays.setAll(direction, i -> -direction[i]);
        return direction;
    }

    /** Looks along a direction for a place that is low enough; infinity if there is none. */
    private double lower(double[] direction, double slope, boolean fresh, double[] next, double[] slopes) {
        double longest = 0;
        for (int i = 0; i < next.length; i++) {
            longest = Math.max(longest, Math.abs(direction[i]) / (0.5 + Math.abs(x[i])));
        }
        double scale = Math.min(1, (fresh ? 0.5 : 1.5) / longest);
        for (int half = 0; half < 30; half++) {
            for (int i = 0; i < next.length; i++) {
                next[i] = x[i] + scale * direction[i];
            }
            double found = evaluate(next, slopes);
            boolean entered = found < Double.POSITIVE_INFINITY;
            if (entered && (found <= value + 1e-4 * scale * slope || (-slope < 1e-6 && found <= value + ROUNDING))) {
                return found;
            }
            double drop = found - value - scale * slope;
            double ideal = entered ? -0.5 * slope * scale * scale / drop : 0.1 * scale;
            scale = Math.min(0.5 * scale, Math.max(0.1 * scale, ideal));
        }
        return Double.POSITIVE_INFINITY;
    }

    private void update(double[][] h, double[] next, double[] slopes, boolean fresh) {
        int n = next.length;
        double[] s = new double[n];
        double[] y = new double[n];
        for (int i = 0; i < n; i++) {
            s[i] = next[i] - x[i];
            y[i] = slopes[i] - gradient[i];
        }
        double sy = Vectors.dot(s, y);
        if (!(sy > 1e-12 * Math.sqrt(Vectors.dot(s, s) * Vectors.dot(y, y)))) {
            return;
        }
        if (fresh) {
            double first = sy / Vectors.dot(y, y);
            for (int i = 0; i < n; i++) {
                h[i][i] = first;
            }
        }
        double[] hy = Vectors.times(h, y);
        double yhy = Vectors.dot(y, hy);
        for (int i = 0; i < n; i++) {
            for (int j = 0; j < n; j++) {
                h[i][j] += (1 + yhy / sy) * s[i] * s[j] / sy - (hy[i] * s[j] + s[i] * hy[j]) / sy;
            }
        }
    }

    /** Newton steps until the promised gain is below rounding; keeps only steps that do not raise the value. */
    private void polish(double least) {
        for (int step = 0; step < MOST_NEWTON_STEPS; step++) {
            Optional<double[]> newton = hessian(surface, x).flatMap(h -> newtonStep(h, gradient));
            evaluations += 2 * x.length;
            if (newton.isEmpty()) {
                return;
            }
            double[] move = newton.get();
            double promised = -0.5 * Vectors.dot(move, gradient);
            if (promised < least) {
                converged = true;
                return;
            }
            double scale = 1;
            boolean better = false;
            for (int half = 0; half < 12 && !better; half++, scale /= 2) {
                double[] next = x.clone();
                double[] slopes = new double[x.length];
                for (int i = 0; i < next.length; i++) {
                    next[i] += scale * move[i];
                }
                double found = evaluate(next, slopes);
                if (found < value || (promised < 1e-6 && found <= value + ROUNDING)) {
                    x = next;
                    value = found;
                    gradient = slopes;
                    better = true;
                }
            }
            if (!better) {
                converged = promised < 1e-7;
                return;
            }
        }
    }

    /** Returns second derivatives by central differences of the gradient; nothing if a place beside x may not be entered. */
    public static Optional<double[][]> hessian(Surface surface, double[] x) {
        int n = x.length;
        double[][] h = new double[n][n];
        double[] up = new double[n];
        double[] down = new double[n];
        for (int i = 0; i < n; i++) {
            double step = 1e-4 * Math.max(0.1, Math.abs(x[i]));
            double[] moved = x.clone();
            moved[i] = x[i] + step;
            boolean entered = surface.value(moved, up) < Double.POSITIVE_INFINITY;
            moved[i] = x[i] - step;
            entered &= surface.value(moved, down) < Double.POSITIVE_INFINITY;
            if (!entered) {
                return Optional.empty();
            }
            for (int j = 0; j < n; j++) {
                h[i][j] = (up[j] - down[j]) / (2 * step);
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

    /**
     * Returns the Newton step, with a ridge added until the matrix is positive definite; nothing if no ridge makes it so, as with missing
     * numbers.
     */
    public static Optional<double[]> newtonStep(double[][] hessian, double[] gradient) {
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
}
