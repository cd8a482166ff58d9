package parchment.stats.linear;

import java.util.ArrayList;
import java.util.List;

/**
 * Turns fixed columns into orthonormal ones (Gram-Schmidt, done twice), leaving out columns that the earlier ones determine.
 *
 * <p>Working with orthonormal columns keeps the crossproducts of a mixed model well behaved whatever the columns' units are.
 */
public final class OrthonormalBasis {
    /** A column is aliased if this share of its length or less is left after the earlier ones; as R's lm uses it. */
    private static final double ALIASED = 1e-7;

    public final List<String> names = new ArrayList<>();
    public final List<String> aliasedNames = new ArrayList<>();
    /** Which given column each kept and each aliased one was, counted over all columns. */
    public final List<Integer> kept = new ArrayList<>();

    public final List<Integer> aliased = new ArrayList<>();
    /** Coefficients of the kept columns which make up each aliased one. */
    public final List<double[]> aliasCoefficients = new ArrayList<>();

    public final List<double[]> q = new ArrayList<>();
    /** Column k of R: coefficients of the orthonormal columns which make up the kept column k. */
    final List<double[]> r = new ArrayList<>();

    public static OrthonormalBasis of(List<String> names, List<double[]> columns) {
        return of(names, columns, ALIASED);
    }

    public static OrthonormalBasis of(List<String> names, List<double[]> columns, double tolerance) {
        OrthonormalBasis basis = new OrthonormalBasis();
        List<double[]> aliasedR = new ArrayList<>();
        for (int c = 0; c < columns.size(); c++) {
            double[] rest = columns.get(c).clone();
            double before = Vectors.norm(rest);
            double[] coefficients = new double[basis.q.size() + 1];
            for (int pass = 0; pass < 3; pass++) {
                for (int k = 0; k < basis.q.size(); k++) {
                    double[] qk = basis.q.get(k);
                    double dot = Vectors.dot(qk, rest);
                    coefficients[k] += dot;
                    for (int i = 0; i < rest.length; i++) {
                        rest[i] -= dot * qk[i];
                    }
                }
            }
            double after = Vectors.norm(rest);
            if (before == 0 || after <= tolerance * before) {
                basis.aliased.add(c);
                basis.aliasedNames.add(names.get(c));
                aliasedR.add(coefficients);
                continue;
            }
            for (int i = 0; i < rest.length; i++) {
                rest[i] /= after;
            }
            coefficients[basis.q.size()] = after;
            basis.q.add(rest);
            basis.r.add(coefficients);
            basis.kept.add(c);
            basis.names.add(names.get(c));
        }
        for (double[] coefficients : aliasedR) {
            double[] padded = new double[basis.size()];
            System.arraycopy(coefficients, 0, padded, 0, Math.min(coefficients.length, padded.length));
            basis.aliasCoefficients.add(basis.backSolve(padded));
        }
        return basis;
    }

    public int size() {
        return q.size();
    }

    /** Returns log of the determinant of X'X. */
    public double logDeterminant() {
        double sum = 0;
        for (int k = 0; k < r.size(); k++) {
            sum += 2 * Math.log(r.get(k)[k]);
        }
        return sum;
    }

    /** Returns R^-1 v: from coefficients of orthonormal columns to those of the given ones. */
    public double[] backSolve(double[] v) {
        double[] x = v.clone();
        for (int k = size() - 1; k >= 0; k--) {
            double[] column = r.get(k);
            x[k] /= column[k];
            for (int j = 0; j < k; j++) {
                x[j] -= column[j] * x[k];
            }
        }
        return x;
    }

    /** Returns R^-1 S R^-T for a symmetric S. */
    public double[][] sandwich(double[][] s) {
        int p = size();
        double[][] half = new double[p][];
        for (int row = 0; row < p; row++) {
            half[row] = backSolve(s[row]);
        }
        double[][] out = new double[p][p];
        for (int c = 0; c < p; c++) {
            double[] column = new double[p];
            for (int row = 0; row < p; row++) {
                column[row] = half[row][c];
            }
            double[] solved = backSolve(column);
            for (int row = 0; row < p; row++) {
                out[row][c] = solved[row];
            }
        }
        return out;
    }
}
