package parchment.stats.ordinal;

import java.util.Arrays;
import parchment.stats.linear.QuasiNewton;
import parchment.stats.linear.Vectors;

/**
 * Evaluates minus the log likelihood of a cumulative logit model with random intercepts, the random effects integrated out by Laplace's
 * approximation, and its gradient.
 *
 * <p>Parameters: thresholds, coefficients of the orthogonal columns, standard deviations. With a and b the distances of a row's upper and
 * lower threshold from its linear predictor, log P = log F(a) + log(1 - F(b)) + log(1 - exp(b - a)), F the logistic function; hence all
 * derivatives by the predictor are sums of two terms. The gradient includes how the mode moves with the parameters.
 */
final class OrdinalLikelihood implements QuasiNewton.Surface {
    private final OrdinalRows data;
    private final int thresholds;
    private final int fixed;
    private final int terms;
    private final int[] firstEffect;
    private final OrdinalPattern pattern;
    final int effects;
    /** Scaled random effects (standard deviation 1) at the mode; kept as the start of the next search. */
    final double[] mode;

    private final double[] eta;
    private final double[] slope;
    private final double[] weight;
    private final double[] upper;
    private final double[] lower;

    OrdinalLikelihood(OrdinalRows data) {
        this.data = data;
        this.thresholds = data.categories.length - 1;
        this.fixed = data.basis.size() - 1;
        this.terms = data.blocks.size();
        this.firstEffect = new int[terms + 1];
        for (int t = 0; t < terms; t++) {
            firstEffect[t + 1] = firstEffect[t] + data.blocks.get(t).nodes();
        }
        this.effects = firstEffect[terms];
        this.pattern = OrdinalPattern.of(data, firstEffect);
        this.mode = new double[effects];
        int n = data.rows.length;
        this.eta = new double[n];
        this.slope = new double[n];
        this.weight = new double[n];
        this.upper = new double[n];
        this.lower = new double[n];
    }

    int parameters() {
        return thresholds + fixed + terms;
    }

    /** Thresholds from the shares of the categories, no effects, standard deviations of 1. */
    double[] start() {
        double[] start = new double[parameters()];
        double below = 0;
        int[] counts = new int[thresholds + 1];
        for (int c : data.category) {
            counts[c]++;
        }
        for (int j = 0; j < thresholds; j++) {
            below += counts[j];
            double share = below / data.category.length;
            start[j] = Math.log(share / (1 - share));
        }
        Arrays.fill(start, thresholds + fixed, start.length, 1);
        return start;
    }

    @Override
    public double value(double[] p, double[] gradient) {
        for (int j = 1; j < thresholds; j++) {
            if (!(p[j] > p[j - 1])) {
                return Double.POSITIVE_INFINITY;
            }
        }
        OrdinalSystem system = system(p);
        double joint = toMode(p, linear(p), system);
        if (!Double.isFinite(joint)) {
            Arrays.fill(mode, 0);
            return Double.POSITIVE_INFINITY;
        }
        fillGradient(p, system, gradient);
        return -joint + 0.5 * system.logDeterminant();
    }

    private OrdinalSystem system(double[] p) {
        return new OrdinalSystem(data, firstEffect, pattern, Arrays.copyOfRange(p, thresholds + fixed, p.length));
    }

    /** Moves the random effects to their mode at the given parameters and returns the factored matrix there. */
    OrdinalSystem atMode(double[] p) {
        OrdinalSystem system = system(p);
        toMode(p, linear(p), system);
        return system;
    }

    private double[] linear(double[] p) {
        double[] linear = new double[eta.length];
        for (int k = 0; k < fixed; k++) {
            double[] q = data.columns.get(k);
            for (int i = 0; i < linear.length; i++) {
                linear[i] += p[thresholds + k] * q[i];
            }
        }
        return linear;
    }

    /** Newton steps to the mode of the random effects; returns the joint log density there, NaN if it is not reached. */
    private double toMode(double[] p, double[] linear, OrdinalSystem system) {
        double joint = joint(p, linear, mode, system);
        if (!Double.isFinite(joint)) {
            Arrays.fill(mode, 0);
            joint = joint(p, linear, mode, system);
        }
        for (int step = 0; step < 100 && Double.isFinite(joint); step++) {
            if (!system.factor(weight)) {
                return Double.NaN;
            }
            double[] right = system.transposed(slope);
            for (int e = 0; e < effects; e++) {
                right[e] -= mode[e];
            }
            double[] move = system.solve(right);
            double promised = Vectors.dot(move, right);
            if (!(promised > 1e-20)) {
                return joint;
            }
            double scale = 1;
            double[] from = mode.clone();
            double reached = Double.NaN;
            for (int half = 0; half < 30; half++, scale /= 2) {
                for (int e = 0; e < effects; e++) {
                    mode[e] = from[e] + scale * move[e];
                }
                reached = joint(p, linear, mode, system);
                if (reached >= joint - 1e-11 * Math.abs(joint)) {
                    break;
                }
            }
            if (!(reached >= joint - 1e-11 * Math.abs(joint))) {
                return Double.NaN;
            }
            joint = reached;
        }
        return system.factor(weight) ? joint : Double.NaN;
    }

    private double joint(double[] p, double[] linear, double[] u, OrdinalSystem system) {
        double sum = 0;
        double[] random = system.times(u);
        for (int i = 0; i < eta.length; i++) {
            eta[i] = linear[i] + random[i];
            int c = data.category[i];
            double a = c < thresholds ? p[c] - eta[i] : Double.POSITIVE_INFINITY;
            double b = c > 0 ? p[c - 1] - eta[i] : Double.NEGATIVE_INFINITY;
            double fa = logistic(a);
            double fb = logistic(b);
            upper[i] = fa;
            lower[i] = fb;
            slope[i] = fa + fb - 1;
            weight[i] = fa * logistic(-a) + fb * logistic(-b);
            sum += logLogistic(a) + logLogistic(-b) + Math.log1p(-Math.exp(b - a));
        }
        return sum - 0.5 * Vectors.dot(u, u);
    }

    private void fillGradient(double[] p, OrdinalSystem system, double[] gradient) {
        Arrays.fill(gradient, 0);
        int n = eta.length;
        double[] leverage = system.leverages();
        double[] pull = new double[n];
        for (int i = 0; i < n; i++) {
            double bendUpper = upper[i] * (1 - upper[i]) * (1 - 2 * upper[i]);
            double bendLower = lower[i] * (1 - lower[i]) * (1 - 2 * lower[i]);
            pull[i] = -leverage[i] * (bendUpper + bendLower);
        }
        // How the determinant feels a move of the mode, carried back through the mode's own equation.
        double[] carried = system.solve(system.transposed(pull));
        double[] carriedRows = system.times(carried);
        double[] byEta = new double[n];
        for (int i = 0; i < n; i++) {
            int c = data.category[i];
            double densityUpper = upper[i] * (1 - upper[i]);
            double densityLower = lower[i] * (1 - lower[i]);
            // Of minus joint plus half the log determinant, by the predictor at a fixed mode.
            byEta[i] = -slope[i] + 0.5 * (pull[i] - carriedRows[i] * weight[i]);
            double gap = c > 0 && c < thresholds ? 1 / Math.expm1(p[c] - p[c - 1]) : 0;
            if (c < thresholds) {
                gradient[c] += -(1 - upper[i] + gap)
                        + 0.5 * (leverage[i] * densityUpper * (1 - 2 * upper[i]) + carriedRows[i] * densityUpper);
            }
            if (c > 0) {
                gradient[c - 1] += lower[i]
                        + gap
                        + 0.5 * (leverage[i] * densityLower * (1 - 2 * lower[i]) + carriedRows[i] * densityLower);
            }
        }
        for (int k = 0; k < fixed; k++) {
            gradient[thresholds + k] = Vectors.dot(byEta, data.columns.get(k));
        }
        for (int t = 0; t < terms; t++) {
            int[] group = data.blocks.get(t).group;
            double[] partial = system.rowsOfInverse(t);
            double sum = 0;
            for (int i = 0; i < n; i++) {
                int e = firstEffect[t] + group[i];
                sum += byEta[i] * mode[e] + weight[i] * partial[i] + 0.5 * carried[e] * slope[i];
            }
            gradient[thresholds + fixed + t] = sum;
        }
    }

    static double logistic(double x) {
        return x >= 0 ? 1 / (1 + Math.exp(-x)) : Math.exp(x) / (1 + Math.exp(x));
    }

    private static double logLogistic(double x) {
        return x >= 0 ? -Math.log1p(Math.exp(-x)) : x - Math.log1p(Math.exp(x));
    }
}
