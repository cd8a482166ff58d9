package parchment.stats.ordinal;

import java.util.Optional;

/**
 * The Cholesky factor of a symmetric positive definite matrix kept by its envelope: in each row from the first entry that is not zero to
 * the diagonal. Nothing outside of it fills in.
 *
 * <p>Envelope method: George and Liu 1981, Computer Solution of Large Sparse Positive Definite Systems, chapter 4. Entries of the inverse:
 * Takahashi, Fagan and Chin 1973. Titles from memory; checked against the dense inverse.
 */
final class EnvelopeFactor {
    /** A pivot under this share of its diagonal is rounding. */
    private static final double SINGULAR = 1e-14;

    private final OrdinalPattern pattern;
    private final double[][] rows;

    private EnvelopeFactor(OrdinalPattern pattern, double[][] rows) {
        this.pattern = pattern;
        this.rows = rows;
    }

    /** Returns an empty lower triangle, each row from its first place to the diagonal. */
    static double[][] lower(OrdinalPattern pattern) {
        double[][] lower = new double[pattern.first.length][];
        for (int i = 0; i < lower.length; i++) {
            lower[i] = new double[i - pattern.first[i] + 1];
        }
        return lower;
    }

    /** Returns the factor, or nothing if a pivot is not a number above 1e-14 of its diagonal; the matrix is used up. */
    static Optional<EnvelopeFactor> of(OrdinalPattern pattern, double[][] lower) {
        for (int i = 0; i < lower.length; i++) {
            int first = pattern.first[i];
            double[] row = lower[i];
            for (int j = first; j <= i; j++) {
                double[] other = lower[j];
                int start = Math.max(first, pattern.first[j]);
                double sum = row[j - first];
                double whole = sum;
                for (int k = start, a = start - first, b = start - pattern.first[j]; k < j; k++, a++, b++) {
                    sum -= row[a] * other[b];
                }
                if (i > j) {
                    row[j - first] = sum / other[other.length - 1];
                } else if (sum > SINGULAR * whole && sum < Double.POSITIVE_INFINITY) {
                    row[j - first] = Math.sqrt(sum);
                } else {
                    return Optional.empty();
                }
            }
        }
        return Optional.of(new EnvelopeFactor(pattern, lower));
    }

    double logDeterminant() {
        double sum = 0;
        for (double[] row : rows) {
            sum += 2 * Math.log(row[row.length - 1]);
        }
        return sum;
    }

    /** Solves in place, by place in the order. */
    void solve(double[] z) {
        for (int i = 0; i < z.length; i++) {
            double[] row = rows[i];
            double sum = z[i];
            for (int k = pattern.first[i], a = 0; k < i; k++, a++) {
                sum -= row[a] * z[k];
            }
            z[i] = sum / row[row.length - 1];
        }
        for (int i = z.length - 1; i >= 0; i--) {
            double[] row = rows[i];
            z[i] /= row[row.length - 1];
            for (int k = pattern.first[i], a = 0; k < i; k++, a++) {
                z[k] -= row[a] * z[i];
            }
        }
    }

    /** Returns the entries of the inverse inside the envelope; those of two effects that share a row are among them. */
    double[][] inverse() {
        double[][] inverse = lower(pattern);
        for (int j = rows.length - 1; j >= 0; j--) {
            int[] below = pattern.below[j];
            double pivot = rows[j][rows[j].length - 1];
            double[] column = new double[below.length];
            for (int k = 0; k < below.length; k++) {
                column[k] = rows[below[k]][j - pattern.first[below[k]]];
            }
            double diagonal = 1 / pivot;
            for (int i = below.length - 1; i >= 0; i--) {
                double[] row = inverse[below[i]];
                int first = pattern.first[below[i]];
                double sum = 0;
                for (int k = 0; k <= i; k++) {
                    sum += column[k] * row[below[k] - first];
                }
                for (int k = i + 1; k < below.length; k++) {
                    sum += column[k] * inverse[below[k]][below[i] - pattern.first[below[k]]];
                }
                row[j - first] = -sum / pivot;
            }
            for (int k = 0; k < below.length; k++) {
                diagonal -= column[k] * inverse[below[k]][j - pattern.first[below[k]]];
            }
            inverse[j][inverse[j].length - 1] = diagonal / pivot;
        }
        return inverse;
    }
}
