package parchment.stats;

import java.util.List;
import java.util.Locale;
import java.util.stream.IntStream;
import parchment.display.Showable;

/**
 * A smooth curve of one feature whose wiggliness is chosen by restricted maximum likelihood, with standard errors and the number of
 * parameters it amounts to.
 */
public final class PenalizedSpline implements Showable {
    private final SplineBasis basis;
    private final LinearMixedModel model;
    private final double[][] inverse;
    private final double[] coefficients;
    private final double edf;
    private final double scale;
    private final Interval range;

    private PenalizedSpline(
            SplineBasis basis,
            LinearMixedModel model,
            double[][] inverse,
            double[] coefficients,
            double edf,
            double scale,
            Interval range) {
        this.basis = basis;
        this.model = model;
        this.inverse = inverse;
        this.coefficients = coefficients;
        this.edf = edf;
        this.scale = scale;
        this.range = range;
    }

    /**
     * Fits y as a smooth of x.
     *
     * @param size number of B-splines, 5 or more
     * @throws CannotFitException if x has no range or fewer than 4 complete rows are left
     */
    public static PenalizedSpline fit(double[] x, double[] y, int size) {
        Checks.sameLength("A smooth", x.length, "y", y.length);
        int[] rows = IntStream.range(0, x.length)
                .filter(i -> Double.isFinite(x[i]) && Double.isFinite(y[i]))
                .toArray();
        if (rows.length < 4) {
            throw new CannotFitException("A smooth needs at least 4 complete rows, but there are " + rows.length + ".");
        }
        double[] keptX = MixedDesign.pick(x, rows);
        double[] keptY = MixedDesign.pick(y, rows);
        double low = java.util.Arrays.stream(keptX).min().orElseThrow();
        double high = java.util.Arrays.stream(keptX).max().orElseThrow();
        if (!(high > low)) {
            throw new CannotFitException("A smooth needs rows that differ along it, but all " + rows.length + " lie at "
                    + Checks.number(low) + ".");
        }
        SplineBasis basis = SplineBasis.of(low, high, size);
        LinearMixedModel model =
                basis.addTo(MixedDesign.of("y", keptY), "smooth", keptX).fit();
        double variance = model.variance("smooth", "smooth");
        double sigma2 = model.residualStandardDeviation() * model.residualStandardDeviation();
        int p = variance > 1e-12 * sigma2 ? size : 2;
        double[][] cross = new double[p][p];
        double[] right = new double[p];
        for (int i = 0; i < rows.length; i++) {
            double[] row = row(basis, keptX[i], p);
            for (int a = 0; a < p; a++) {
                right[a] += row[a] * keptY[i];
                for (int b = 0; b < p; b++) {
                    cross[a][b] += row[a] * row[b];
                }
            }
        }
        double[][] penalised = new double[p][];
        for (int a = 0; a < p; a++) {
            penalised[a] = cross[a].clone();
            penalised[a][a] += a < 2 ? 0 : sigma2 / variance;
        }
        double[][] inverse = SmallSolve.inverse(penalised)
                .orElseThrow(() -> new CannotFitException("A smooth needs rows spread over its range, but these "
                        + rows.length + " leave a part of it undetermined; use fewer functions than " + size + "."));
        double[] coefficients = Satterthwaite.times(inverse, right);
        double edf = 0;
        for (int a = 0; a < p; a++) {
            edf += FixedBasis.dot(inverse[a], cross[a]);
        }
        double squares = 0;
        for (int i = 0; i < rows.length; i++) {
            squares += Math.pow(keptY[i] - FixedBasis.dot(coefficients, row(basis, keptX[i], p)), 2);
        }
        double scale = squares / (rows.length - edf);
        return new PenalizedSpline(basis, model, inverse, coefficients, edf, scale, new Interval(low, high, 1));
    }

    private static double[] row(SplineBasis basis, double x, int size) {
        double[] at = {x};
        double[] row = new double[size];
        row[0] = 1;
        row[1] = basis.line(at)[0];
        if (size > 2) {
            List<double[]> wiggles = basis.wiggles(at);
            for (int k = 2; k < size; k++) {
                row[k] = wiggles.get(k - 2)[0];
            }
        }
        return row;
    }

    /** Returns the curve's height; NaN outside the range of the data. */
    public double value(double x) {
        return range.contains(x) ? FixedBasis.dot(coefficients, row(basis, x, coefficients.length)) : Double.NaN;
    }

    /**
     * Returns the standard error of the height, with the smooth's prior included (Bayesian; Nychka 1988, J. Am. Stat. Assoc.
     * 83:1134: intervals cover on average along the curve).
     */
    public double standardError(double x) {
        if (!range.contains(x)) {
            return Double.NaN;
        }
        double[] row = row(basis, x, coefficients.length);
        return Math.sqrt(scale * Satterthwaite.quadratic(inverse, row));
    }

    /** Returns the number of free parameters that the curve amounts to, intercept included. */
    public double effectiveDegreesOfFreedom() {
        return edf;
    }

    /** Returns the residual variance: residual sum of squares over rows minus effective degrees of freedom. */
    public double residualVariance() {
        return scale;
    }

    /** Returns the range of x in which there are data. */
    public Interval range() {
        return range;
    }

    /** Returns the mixed model behind the curve. */
    public LinearMixedModel model() {
        return model;
    }

    @Override
    public String toString() {
        return String.format(
                Locale.ROOT,
                "smooth from %s to %s over %d rows, worth %.1f parameters, residual standard deviation %.4g",
                Checks.number(range.lower()),
                Checks.number(range.upper()),
                model.used(),
                edf,
                Math.sqrt(scale));
    }
}
