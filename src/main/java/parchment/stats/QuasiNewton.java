package parchment.stats;

import java.util.Optional;

/** Finds a low place of a smooth function with a gradient: quasi-Newton steps (BFGS), then Newton steps for the last digits. */
final class QuasiNewton {
    /** A function with its gradient. Positive infinity marks a place that may not be entered. */
    @FunctionalInterface
    interface Surface {
        double value(double[] x, double[] gradient);
    }

    private static final int MOST_STEPS = 300;
    private static final double GAIN = 1e-9;
    private static final double LONGEST = 2;

    private final Surface surface;
    double[] x;
    double value;
    double[] gradient;
    boolean converged;

    private QuasiNewton(Surface surface, double[] start) {
        this.surface = surface;
        this.x = start.clone();
        this.gradient = new double[start.length];
        this.value = surface.value(x, gradient);
    }

    static QuasiNewton minimum(Surface surface, double[] start) {
        QuasiNewton search = new QuasiNewton(surface, start);
        search.descend();
        search.polish();
        return search;
    }

    private void descend() {
        int n = x.length;
        double[][] h = identity(n);
        boolean fresh = true;
        for (int step = 0; step < MOST_STEPS; step++) {
            double[] direction = Satterthwaite.times(h, gradient);
            double slope = -FixedBasis.dot(direction, gradient);
            if (!(slope < 0) && fresh) {
                return;
            }
            if (!(slope < 0) || (-slope < GAIN && !fresh)) {
                if (-slope < GAIN && slope <= 0) {
                    return;
                }
                h = identity(n);
                fresh = true;
                continue;
            }
            double longest = 0;
            for (double d : direction) {
                longest = Math.max(longest, Math.abs(d));
            }
            double scale = Math.min(1, (fresh ? 0.5 : LONGEST) / longest);
            double[] next = new double[n];
            double[] slopes = new double[n];
            double found = value;
            boolean better = false;
            for (int half = 0; half < 40 && !better; half++, scale /= better ? 1 : 2) {
                for (int i = 0; i < n; i++) {
                    next[i] = x[i] - scale * direction[i];
                }
                found = surface.value(next, slopes);
                better = found <= value + 1e-4 * scale * slope;
            }
            if (!better) {
                if (fresh) {
                    return;
                }
                h = identity(n);
                fresh = true;
                continue;
            }
            fresh = !update(h, next, slopes, fresh);
            x = next.clone();
            gradient = slopes.clone();
            value = found;
        }
    }

    private boolean update(double[][] h, double[] next, double[] slopes, boolean fresh) {
        int n = x.length;
        double[] s = new double[n];
        double[] y = new double[n];
        for (int i = 0; i < n; i++) {
            s[i] = next[i] - x[i];
            y[i] = slopes[i] - gradient[i];
        }
        double sy = FixedBasis.dot(s, y);
        if (!(sy > 1e-12 * FixedBasis.norm(s) * FixedBasis.norm(y))) {
            return !fresh;
        }
        if (fresh) {
            double first = sy / FixedBasis.dot(y, y);
            for (int i = 0; i < n; i++) {
                h[i][i] = first;
            }
        }
        double[] hy = Satterthwaite.times(h, y);
        double yhy = FixedBasis.dot(y, hy);
        for (int i = 0; i < n; i++) {
            for (int j = 0; j < n; j++) {
                h[i][j] += (1 + yhy / sy) * s[i] * s[j] / sy - (hy[i] * s[j] + s[i] * hy[j]) / sy;
            }
        }
        return true;
    }

    private void polish() {
        for (int step = 0; step < 20; step++) {
            double[][] bend = hessian(surface, x);
            Optional<double[]> solved = SmallSolve.solve(bend, gradient);
            if (solved.isEmpty()) {
                // A flat direction: settled if nothing is to be gained along the gradient.
                converged = FixedBasis.norm(gradient) < 1e-4;
                return;
            }
            double[] move = solved.get();
            double promised = 0.5 * FixedBasis.dot(move, gradient);
            if (promised < 1e-13) {
                converged = true;
                return;
            }
            double scale = 1;
            boolean better = false;
            for (int half = 0; half < 20 && !better; half++, scale /= 2) {
                double[] next = new double[x.length];
                double[] slopes = new double[x.length];
                for (int i = 0; i < next.length; i++) {
                    next[i] = x[i] - scale * move[i];
                }
                double found = surface.value(next, slopes);
                if (found < value || (promised < 1e-7 && found <= value + 1e-9)) {
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

    /** Second derivatives by central differences of the gradient. */
    static double[][] hessian(Surface surface, double[] x) {
        int n = x.length;
        double[][] h = new double[n][n];
        double[] up = new double[n];
        double[] down = new double[n];
        for (int i = 0; i < n; i++) {
            double step = 1e-5 * Math.max(1, Math.abs(x[i]));
            double[] moved = x.clone();
            moved[i] = x[i] + step;
            surface.value(moved, up);
            moved[i] = x[i] - step;
            surface.value(moved, down);
            for (int j = 0; j < n; j++) {
                h[i][j] += (up[j] - down[j]) / (4 * step);
                h[j][i] += (up[j] - down[j]) / (4 * step);
            }
        }
        return h;
    }

    private static double[][] identity(int n) {
        double[][] h = new double[n][n];
        for (int i = 0; i < n; i++) {
            h[i][i] = 1;
        }
        return h;
    }
}
