package parchment.stats.mixed;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.stream.IntStream;
import parchment.display.Showable;
import parchment.stats.Estimate;
import parchment.stats.linear.CannotFitException;
import parchment.stats.linear.OrthonormalBasis;
import parchment.stats.linear.Vectors;

/**
 * Fits least squares by orthogonal columns (Gram-Schmidt with reorthogonalisation, as accurate as Householder's QR).
 *
 * <p>Takes the fixed terms of a {@link MixedDesign}. A column that the earlier ones determine (to 1e-12 of its length, after them) is
 * dropped and named.
 */
public final class LinearModel implements Showable {
    private static final double ALIASED = 1e-12;

    private final MixedDesign design;
    private final OrthonormalBasis basis;
    private final int[] rows;
    private final double[] coefficients;
    private final double[] rest;
    private final double[] effects;
    private final double sigma;

    private LinearModel(MixedDesign design, OrthonormalBasis basis, int[] rows, double[] effects, double[] rest) {
        this.design = design;
        this.basis = basis;
        this.rows = rows;
        this.effects = effects;
        this.rest = rest;
        this.coefficients = basis.backSolve(effects);
        int df = rows.length - basis.size();
        this.sigma = df > 0 ? Vectors.norm(rest) / Math.sqrt(df) : Double.NaN;
    }

    /**
     * Fits the fixed terms of a design.
     *
     * @throws IllegalArgumentException if the design has random terms
     * @throws CannotFitException if no row is complete
     */
    public static LinearModel fit(MixedDesign design) {
        if (!design.randomTerms().isEmpty()) {
            throw new IllegalArgumentException(
                    "Least squares takes fixed terms only, but the design has the random term '"
                            + design.randomTerms().get(0).name() + "'; fit it as a mixed model.");
        }
        int[] rows = IntStream.range(0, design.rows())
                .filter(i -> Double.isFinite(design.responseAt(i)) && design.complete(i))
                .toArray();
        List<String> names = new ArrayList<>();
        List<double[]> columns = new ArrayList<>();
        for (MixedDesign.FixedTerm term : design.fixed()) {
            for (int c = 0; c < term.columns().size(); c++) {
                names.add(term.columnNames().get(c));
                columns.add(CannotFitException.unlessComputable(
                        "Least squares",
                        "the column '" + term.columnNames().get(c) + "'",
                        Vectors.pick(term.columns().get(c), rows)));
            }
        }
        if (rows.length == 0) {
            throw new CannotFitException("Least squares needs at least 1 complete row, but there is none of "
                    + design.rows() + ". Leave terms out or look for missing values.");
        }
        // Columns beyond the number of rows are dropped as determined by the others.
        OrthonormalBasis basis = OrthonormalBasis.of(names, columns, ALIASED);
        double[] rest = CannotFitException.unlessComputable(
                "Least squares", "the response", Vectors.pick(design.response(), rows));
        double[] effects = new double[basis.size()];
        // A second sweep takes out what rounding left in the residuals of the first.
        for (int pass = 0; pass < 3; pass++) {
            for (int k = 0; k < effects.length; k++) {
                double[] q = basis.q.get(k);
                double dot = Vectors.dot(q, rest);
                effects[k] += dot;
                for (int i = 0; i < rest.length; i++) {
                    rest[i] -= dot * q[i];
                }
            }
        }
        return new LinearModel(design, basis, rows, effects, rest);
    }

    /** Returns the names of the columns kept, in order. */
    public List<String> columnNames() {
        return List.copyOf(basis.names);
    }

    /** Returns the names of the columns dropped because earlier ones determine them. */
    public List<String> aliasedColumns() {
        return List.copyOf(basis.aliasedNames);
    }

    public int used() {
        return rows.length;
    }

    public int leftOut() {
        return design.rows() - rows.length;
    }

    public int residualDegreesOfFreedom() {
        return rows.length - basis.size();
    }

    /** Returns the residual standard deviation; NaN if no degrees of freedom are left. */
    public double residualStandardDeviation() {
        return sigma;
    }

    public double residualSumOfSquares() {
        return Vectors.dot(rest, rest);
    }

    /** Returns the coefficients of the columns kept. */
    public double[] coefficients() {
        return coefficients.clone();
    }

    /** Returns the covariance matrix of the coefficients, by rows. */
    public double[][] coefficientCovariance() {
        int p = basis.size();
        double[][] identity = new double[p][p];
        for (int k = 0; k < p; k++) {
            identity[k][k] = sigma * sigma;
        }
        return basis.sandwich(identity);
    }

    /** Returns every kept column's estimate. */
    public List<Estimate> terms() {
        double[][] covariance = coefficientCovariance();
        return IntStream.range(0, coefficients.length)
                .mapToObj(k -> new Estimate(
                        basis.names.get(k), coefficients[k], Math.sqrt(covariance[k][k]), residualDegreesOfFreedom()))
                .toList();
    }

    /** Returns one column's estimate; NaN if it was dropped. */
    public Estimate term(String column) {
        int k = basis.names.indexOf(column);
        if (k < 0 && !basis.aliasedNames.contains(column)) {
            throw new IllegalArgumentException(
                    "The model has no column '" + column + "'. Columns: " + String.join(", ", basis.names) + ".");
        }
        return k < 0 ? new Estimate(column, Double.NaN, Double.NaN, Double.NaN) : terms().get(k);
    }

    /**
     * Returns the share of the variation that the terms after the intercept explain; NaN for a model without an intercept in first
     * place.
     */
    public double rSquared() {
        double explained = explainedSumOfSquares();
        return explained / (explained + residualSumOfSquares());
    }

    /** Returns the sum of squares that the columns after the intercept explain; NaN without an intercept in first place. */
    public double explainedSumOfSquares() {
        if (basis.names.isEmpty() || !basis.names.get(0).equals(MixedDesign.INTERCEPT)) {
            return Double.NaN;
        }
        double sum = 0;
        for (int k = 1; k < effects.length; k++) {
            sum += effects[k] * effects[k];
        }
        return sum;
    }

    /** Tests jointly that all columns after the intercept are 0: the overall F, and for one factor the one-way analysis of variance. */
    public FTest overall() {
        int between = basis.size() - 1;
        return new FTest(
                "all terms", explainedSumOfSquares() / between / (sigma * sigma), between, residualDegreesOfFreedom());
    }

    /** Returns how much each row used pulls its own fitted value, from 0 to 1, in the order of rows used. */
    public double[] leverages() {
        double[] leverages = new double[rows.length];
        for (double[] q : basis.q) {
            for (int i = 0; i < leverages.length; i++) {
                leverages[i] += q[i] * q[i];
            }
        }
        return leverages;
    }

    /** Returns response minus fitted value of the rows used, in order. */
    public double[] residuals() {
        return rest.clone();
    }

    /** Predicts rows of a design with the same columns; NaN where something is missing or rests on a dropped column. */
    public double[] predict(MixedDesign newRows) {
        return new FixedPrediction(basis, coefficients, design).predict(newRows);
    }

    @Override
    public String toString() {
        return String.format(
                Locale.ROOT,
                "least squares for %s: %d rows used, %d left out, %d columns (%d dropped), residual standard deviation %.4g",
                design.responseName(),
                rows.length,
                leftOut(),
                basis.size(),
                basis.aliased.size(),
                sigma);
    }
}
