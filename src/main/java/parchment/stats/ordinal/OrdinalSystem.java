package parchment.stats.ordinal;

import java.util.Arrays;
import java.util.Optional;
import parchment.stats.linear.SmallSolve;

/**
 * The matrix I + S Z'WZ S of an ordinal model at given standard deviations S: factor, solve, determinant.
 *
 * <p>The first term's block is diagonal and is eliminated by hand; the rest is dense, with as many columns as the other terms have groups.
 */
final class OrdinalSystem {
    private final OrdinalRows data;
    private final int[] firstEffect;
    private final double[] deviations;
    private final int effects;
    private final int leading;
    private final int rest;
    private final double[] diagonal;
    /** Rows of the other terms' effects, columns of the first term's. */
    private final double[][] border;

    private double[][] factor = new double[0][];
    /** The inverse's dense corner, and its entries of the other terms' effects with the first term's; made when asked for. */
    private double[][] corner = new double[0][];

    private double[][] across = new double[0][];
    private boolean inverted;

    OrdinalSystem(OrdinalRows data, int[] firstEffect, double[] deviations) {
        this.data = data;
        this.firstEffect = firstEffect;
        this.deviations = deviations;
        this.effects = firstEffect[deviations.length];
        this.leading = deviations.length == 0 ? 0 : firstEffect[1];
        this.rest = effects - leading;
        this.diagonal = new double[leading];
        this.border = new double[rest][leading];
    }

    private int effect(int term, int row) {
        return firstEffect[term] + data.blocks.get(term).group[row];
    }

    /** Returns Z S u, one value per row. */
    double[] times(double[] u) {
        double[] out = new double[data.rows.length];
        for (int t = 0; t < deviations.length; t++) {
            for (int i = 0; i < out.length; i++) {
                out[i] += deviations[t] * u[effect(t, i)];
            }
        }
        return out;
    }

    /** Returns S Z'v, one value per effect. */
    double[] transposed(double[] v) {
        double[] out = new double[effects];
        for (int t = 0; t < deviations.length; t++) {
            for (int i = 0; i < v.length; i++) {
                out[effect(t, i)] += deviations[t] * v[i];
            }
        }
        return out;
    }

    boolean factor(double[] weight) {
        inverted = false;
        Arrays.fill(diagonal, 1);
        double[][] dense = new double[rest][rest];
        for (int e = 0; e < rest; e++) {
            Arrays.fill(border[e], 0);
            dense[e][e] = 1;
        }
        for (int i = 0; i < weight.length && leading > 0; i++) {
            int own = effect(0, i);
            diagonal[own] += deviations[0] * deviations[0] * weight[i];
            for (int t = 1; t < deviations.length; t++) {
                int e = effect(t, i) - leading;
                border[e][own] += deviations[0] * deviations[t] * weight[i];
                for (int s = 1; s < deviations.length; s++) {
                    dense[e][effect(s, i) - leading] += deviations[s] * deviations[t] * weight[i];
                }
            }
        }
        for (int e = 0; e < rest; e++) {
            for (int f = 0; f <= e; f++) {
                double sum = 0;
                for (int k = 0; k < leading; k++) {
                    sum += border[e][k] * border[f][k] / diagonal[k];
                }
                dense[e][f] -= sum;
                dense[f][e] = dense[e][f];
            }
        }
        Optional<double[][]> found = SmallSolve.cholesky(dense);
        // Without a factor whatever is asked of it is missing.
        factor = found.orElseGet(() -> missing(rest));
        return found.isPresent();
    }

    private static double[][] missing(int size) {
        double[][] out = new double[size][size];
        for (double[] row : out) {
            Arrays.fill(row, Double.NaN);
        }
        return out;
    }

    double logDeterminant() {
        double sum = 0;
        for (double d : diagonal) {
            sum += Math.log(d);
        }
        for (int e = 0; e < rest; e++) {
            sum += 2 * Math.log(factor[e][e]);
        }
        return sum;
    }

    double[] solve(double[] right) {
        double[] out = right.clone();
        double[] tail = new double[rest];
        for (int e = 0; e < rest; e++) {
            double sum = right[leading + e];
            for (int k = 0; k < leading; k++) {
                sum -= border[e][k] * right[k] / diagonal[k];
            }
            tail[e] = sum;
        }
        SmallSolve.solveFactored(factor, tail);
        for (int k = 0; k < leading; k++) {
            double sum = right[k];
            for (int e = 0; e < rest; e++) {
                sum -= border[e][k] * tail[e];
            }
            out[k] = sum / diagonal[k];
        }
        System.arraycopy(tail, 0, out, leading, rest);
        return out;
    }

    private void invert() {
        if (inverted) {
            return;
        }
        corner = new double[rest][rest];
        across = new double[rest][leading];
        for (int e = 0; e < rest; e++) {
            corner[e][e] = 1;
            SmallSolve.solveFactored(factor, corner[e]);
            for (int f = 0; f < rest; f++) {
                for (int k = 0; k < leading; k++) {
                    across[e][k] -= corner[e][f] * border[f][k] / diagonal[k];
                }
            }
        }
        inverted = true;
    }

    /** Returns, for each row i, z' S H^-1 S z: the relative variance of its predictor. */
    double[] leverages() {
        double[] out = new double[data.rows.length];
        for (int t = 0; t < deviations.length; t++) {
            double[] part = rowsOfInverse(t);
            for (int i = 0; i < out.length; i++) {
                out[i] += deviations[t] * part[i];
            }
        }
        return out;
    }

    /** Returns, for each row, the entry of H^-1 S z that belongs to the row's own group of one term. */
    double[] rowsOfInverse(int term) {
        invert();
        double[] out = new double[data.rows.length];
        for (int i = 0; i < out.length; i++) {
            int own = effect(term, i);
            for (int s = 0; s < deviations.length; s++) {
                out[i] += deviations[s] * entry(own, effect(s, i));
            }
        }
        return out;
    }

    private double entry(int a, int b) {
        if (a < leading && b < leading) {
            // Two effects of the first term in one row are the same effect.
            double sum = 1 / diagonal[a];
            for (int e = 0; e < rest; e++) {
                sum -= across[e][a] * border[e][a] / diagonal[a];
            }
            return sum;
        }
        if (a >= leading && b >= leading) {
            return corner[a - leading][b - leading];
        }
        return across[Math.max(a, b) - leading][Math.min(a, b)];
    }

    /** Returns the diagonal of the inverse. */
    double[] inverseDiagonal() {
        invert();
        double[] out = new double[effects];
        for (int e = 0; e < effects; e++) {
            out[e] = entry(e, e);
        }
        return out;
    }
}
