package parchment.stats.mixed;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import parchment.stats.linear.OrthonormalBasis;

/** Applies the fixed part of a fitted model to rows of a design with the same columns. */
public final class FixedPrediction {
    private final OrthonormalBasis basis;
    private final double[] coefficients;
    private final List<String> allNames = new ArrayList<>();

    public FixedPrediction(OrthonormalBasis basis, double[] coefficients, MixedDesign fittedOn) {
        this.basis = basis;
        this.coefficients = coefficients;
        fittedOn.fixed().forEach(term -> allNames.addAll(term.columnNames()));
    }

    public double[] predict(MixedDesign rows) {
        double[][] kept = columns(rows, basis.kept);
        double[][] aliased = columns(rows, basis.aliased);
        double[] out = new double[rows.rows()];
        for (int i = 0; i < out.length; i++) {
            double sum = rows.complete(i) ? 0 : Double.NaN;
            for (int k = 0; k < kept.length; k++) {
                sum += coefficients[k] * kept[k][i];
            }
            for (int a = 0; a < aliased.length; a++) {
                double expected = 0;
                double size = 1e-9;
                for (int k = 0; k < kept.length; k++) {
                    double part = basis.aliasCoefficients.get(a)[k] * kept[k][i];
                    expected += part;
                    size += Math.abs(part);
                }
                // The fit never saw this column move on its own, so it says nothing of a row in which it does.
                if (Math.abs(aliased[a][i] - expected) > 1e-6 * (size + Math.abs(aliased[a][i]))) {
                    sum = Double.NaN;
                }
            }
            out[i] = sum;
        }
        return out;
    }

    /** Returns the columns of the rows that have a coefficient, in the order of the coefficients. */
    public double[][] columns(MixedDesign rows) {
        return columns(rows, basis.kept);
    }

    private double[][] columns(MixedDesign rows, List<Integer> wanted) {
        Map<String, double[]> found = new HashMap<>();
        for (MixedDesign.FixedTerm term : rows.fixed()) {
            for (int c = 0; c < term.columns().size(); c++) {
                found.put(term.columnNames().get(c), term.columns().get(c));
            }
        }
        double[][] out = new double[wanted.size()][];
        for (int k = 0; k < out.length; k++) {
            String name = allNames.get(wanted.get(k));
            double[] column = found.get(name);
            if (column == null) {
                throw new IllegalArgumentException("Prediction needs the fixed column '" + name
                        + "', but the rows have only "
                        + String.join(", ", found.keySet().stream().sorted().toList()) + ".");
            }
            out[k] = column;
        }
        return out;
    }
}
