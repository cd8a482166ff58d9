package parchment.stats.ordinal;

import java.util.Arrays;
import java.util.Optional;

/**
 * The matrix I + S Z'WZ S of an ordinal model at given standard deviations S: factor, solve, determinant, and those entries of its inverse
 * that belong to two effects of one row.
 */
final class OrdinalSystem {
    private final OrdinalRows data;
    private final int[] firstEffect;
    private final double[] deviations;
    private final OrdinalPattern pattern;
    private Optional<EnvelopeFactor> factor = Optional.empty();
    /** Made when asked for. */
    private double[][] inverse = new double[0][];

    OrdinalSystem(OrdinalRows data, int[] firstEffect, OrdinalPattern pattern, double[] deviations) {
        this.data = data;
        this.firstEffect = firstEffect;
        this.pattern = pattern;
        this.deviations = deviations;
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
        double[] out = new double[firstEffect[deviations.length]];
        for (int t = 0; t < deviations.length; t++) {
            for (int i = 0; i < v.length; i++) {
                out[effect(t, i)] += deviations[t] * v[i];
            }
        }
        return out;
    }

    /** Factors the matrix at the given weights; without a factor whatever is asked of it is missing. */
    boolean factor(double[] weight) {
        inverse = new double[0][];
        double[][] lower = EnvelopeFactor.lower(pattern);
        for (double[] row : lower) {
            row[row.length - 1] = 1;
        }
        for (int i = 0; i < weight.length; i++) {
            for (int t = 0; t < deviations.length; t++) {
                int own = pattern.place[effect(t, i)];
                for (int s = 0; s < deviations.length; s++) {
                    int other = pattern.place[effect(s, i)];
                    if (other <= own) {
                        lower[own][other - pattern.first[own]] += deviations[t] * deviations[s] * weight[i];
                    }
                }
            }
        }
        factor = EnvelopeFactor.of(pattern, lower);
        return factor.isPresent();
    }

    double logDeterminant() {
        return factor.map(EnvelopeFactor::logDeterminant).orElse(Double.NaN);
    }

    double[] solve(double[] right) {
        double[] out = new double[right.length];
        if (factor.isEmpty()) {
            Arrays.fill(out, Double.NaN);
            return out;
        }
        double[] ordered = new double[right.length];
        for (int e = 0; e < right.length; e++) {
            ordered[pattern.place[e]] = right[e];
        }
        factor.get().solve(ordered);
        for (int e = 0; e < right.length; e++) {
            out[e] = ordered[pattern.place[e]];
        }
        return out;
    }

    /** Returns an entry of the inverse that belongs to two effects of one row. */
    private double entry(int a, int b) {
        if (inverse.length == 0) {
            inverse = factor.map(EnvelopeFactor::inverse).orElseGet(() -> {
                double[][] missing = EnvelopeFactor.lower(pattern);
                for (double[] row : missing) {
                    Arrays.fill(row, Double.NaN);
                }
                return missing;
            });
        }
        int low = Math.max(pattern.place[a], pattern.place[b]);
        return inverse[low][Math.min(pattern.place[a], pattern.place[b]) - pattern.first[low]];
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
        double[] out = new double[data.rows.length];
        for (int i = 0; i < out.length; i++) {
            int own = effect(term, i);
            for (int s = 0; s < deviations.length; s++) {
                out[i] += deviations[s] * entry(own, effect(s, i));
            }
        }
        return out;
    }

    /** Returns the diagonal of the inverse. */
    double[] inverseDiagonal() {
        double[] out = new double[firstEffect[deviations.length]];
        for (int e = 0; e < out.length; e++) {
            out[e] = entry(e, e);
        }
        return out;
    }
}
