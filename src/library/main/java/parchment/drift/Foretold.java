package parchment.drift;

import java.util.Arrays;
import java.util.List;
import org.hipparchus.linear.Array2DRowRealMatrix;
import org.hipparchus.linear.ArrayRealVector;
import org.hipparchus.linear.QRDecomposition;
import org.hipparchus.linear.RealMatrix;

/** Foretells rows from the first ones by least squares: the same for every series of one design. */
final class Foretold {
    private final int stretch;
    private final List<double[]> columns;
    private final RealMatrix solve;
    private final double[] errors;

    /**
     * Deviations of a series from what its first rows foretell.
     *
     * @param raw in the unit of the rows
     * @param standard in standard deviations of a new row
     * @param spread standard deviation of rows about what is foretold
     */
    record Deviations(double[] raw, double[] standard, double spread) {
        /** Returns the standard deviations of the rows after the stretch. */
        double[] watched(int stretch) {
            return Arrays.copyOfRange(standard, stretch, standard.length);
        }
    }

    Foretold(List<double[]> columns, int stretch) {
        this.columns = columns;
        this.stretch = stretch;
        double[][] first = new double[stretch][columns.size()];
        for (int i = 0; i < stretch; i++) {
            for (int k = 0; k < columns.size(); k++) {
                first[i][k] = columns.get(k)[i];
            }
        }
        RealMatrix x = new Array2DRowRealMatrix(first, false);
        RealMatrix inverse =
                new QRDecomposition(x.transposeMultiply(x)).getSolver().getInverse();
        this.solve = inverse.multiplyTransposed(x);
        this.errors = new double[columns.get(0).length];
        for (int i = 0; i < errors.length; i++) {
            int row = i;
            ArrayRealVector z = new ArrayRealVector(
                    columns.stream().mapToDouble(c -> c[row]).toArray(), false);
            errors[i] = Math.sqrt(1 + inverse.operate(z).dotProduct(z));
        }
    }

    Deviations of(double[] y) {
        double[] raw = y.clone();
        for (int k = 0; k < columns.size(); k++) {
            double coefficient = 0;
            for (int i = 0; i < stretch; i++) {
                coefficient += solve.getEntry(k, i) * y[i];
            }
            double[] column = columns.get(k);
            for (int i = 0; i < raw.length; i++) {
                raw[i] -= coefficient * column[i];
            }
        }
        double squares = 0;
        for (int i = 0; i < stretch; i++) {
            squares += raw[i] * raw[i];
        }
        double spread = Math.sqrt(squares / (stretch - columns.size()));
        double[] standard = new double[raw.length];
        for (int i = 0; i < raw.length; i++) {
            standard[i] = raw[i] / (spread * errors[i]);
        }
        return new Deviations(raw, standard, spread);
    }

    /** Returns the error of foretelling a watched row, in standard deviations of rows. */
    double error(int watched) {
        return errors[stretch + watched];
    }
}
