package parchment.stats.regression;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.stream.IntStream;
import org.hipparchus.exception.MathRuntimeException;
import org.hipparchus.linear.Array2DRowRealMatrix;
import org.hipparchus.linear.ArrayRealVector;
import org.hipparchus.linear.QRDecomposition;
import org.hipparchus.linear.RealVector;
import org.hipparchus.optim.nonlinear.vector.leastsquares.LeastSquaresBuilder;
import org.hipparchus.optim.nonlinear.vector.leastsquares.LeastSquaresOptimizer;
import org.hipparchus.optim.nonlinear.vector.leastsquares.LevenbergMarquardtOptimizer;
import org.hipparchus.optim.nonlinear.vector.leastsquares.ParameterValidator;
import org.hipparchus.util.Pair;
import parchment.display.Showable;
import parchment.stats.Estimate;
import parchment.stats.linear.CannotFitException;
import parchment.stats.linear.Checks;
import parchment.stats.linear.Vectors;

/**
 * Fits a curve given as a function by nonlinear least squares, with standard errors from its slopes at the optimum.
 *
 * <p>Levenberg and Marquardt's search with numerical derivatives, then Gauss-Newton steps until they no longer gain. The standard
 * errors hold as far as the curve is straight in its parameters near the optimum.
 *
 * @see <a href="https://doi.org/10.1002/9780470316757">Bates and Watts 1988, Nonlinear Regression Analysis and Its Applications, chapter
 *     2</a>
 */
public final class NonlinearModel implements Showable {
    private static final int MOST_EVALUATIONS = 20_000;
    /** Step of the five-point differences as a share of the parameter: small beside the widths of peaks far from 0, large beside rounding. */
    private static final double STEP = 1e-4;

    /** Numerical derivatives are good to about 1e-12; a direction shorter than this, columns at length 1, is none. */
    private static final double SINGULAR = 1e-10;

    private final ResponseCurve curve;
    private final List<String> names;
    private final double[] parameters;
    private final double[] standardErrors;
    private final double squares;
    private final int used;
    private final int leftOut;
    private final List<String> notes;

    private NonlinearModel(
            ResponseCurve curve,
            List<String> names,
            double[] parameters,
            double[] standardErrors,
            double squares,
            int used,
            int leftOut,
            List<String> notes) {
        this.curve = curve;
        this.names = names;
        this.parameters = parameters;
        this.standardErrors = standardErrors;
        this.squares = squares;
        this.used = used;
        this.leftOut = leftOut;
        this.notes = notes;
    }

    /** Fits a curve of one predictor. */
    public static NonlinearModel fit(
            double[] x, double[] response, List<String> names, double[] start, ResponseCurve curve) {
        return fit(List.of(x), response, names, start, curve);
    }

    /**
     * Fits a curve of several predictors.
     *
     * @param predictors columns of equal length; rows with a missing number are left out
     * @param names one name per parameter
     * @param start starting values, finite; of the right order of size, for the search finds the nearest valley only
     * @throws IllegalArgumentException if lengths differ, or the curve has no value at the start
     * @throws CannotFitException if there are fewer complete rows than parameters
     */
    public static NonlinearModel fit(
            List<double[]> predictors, double[] response, List<String> names, double[] start, ResponseCurve curve) {
        Checks.sameLength("A nonlinear fit", names.size(), "the start", start.length);
        for (double[] predictor : predictors) {
            Checks.sameLength("A nonlinear fit", response.length, "a predictor", predictor.length);
        }
        int[] rows = IntStream.range(0, response.length)
                .filter(i -> Double.isFinite(response[i]) && predictors.stream().allMatch(p -> Double.isFinite(p[i])))
                .toArray();
        if (rows.length < start.length) {
            throw new CannotFitException("A nonlinear fit of " + start.length
                    + " parameters needs at least as many complete rows, but there are " + rows.length + ".");
        }
        double[][] x = new double[rows.length][predictors.size()];
        for (int i = 0; i < rows.length; i++) {
            for (int k = 0; k < predictors.size(); k++) {
                x[i][k] = predictors.get(k)[rows[i]];
            }
        }
        double[] y = Vectors.pick(response, rows);
        if (!Double.isFinite(squares(curve, x, y, start))) {
            throw new IllegalArgumentException(
                    "The curve has no finite value at the starting values; start from others.");
        }
        List<String> notes = new ArrayList<>();
        double[] found = polished(curve, x, y, searched(curve, x, y, start, notes), notes);
        double sum = squares(curve, x, y, found);
        double[] errors = standardErrors(slopes(curve, x, found), sum / (rows.length - start.length), notes);
        return new NonlinearModel(
                curve,
                List.copyOf(names),
                found,
                errors,
                sum,
                rows.length,
                response.length - rows.length,
                List.copyOf(notes));
    }

    private static double[] searched(
            ResponseCurve curve, double[][] x, double[] y, double[] start, List<String> notes) {
        // A step into nowhere (a root of a negative number) is answered with the largest number, so that the search
        // turns back.
        ParameterValidator asIs = p -> p;
        try {
            LeastSquaresOptimizer.Optimum optimum = new LevenbergMarquardtOptimizer()
                    .withCostRelativeTolerance(1e-15)
                    .withParameterRelativeTolerance(1e-15)
                    .withOrthoTolerance(1e-15)
                    .optimize(new LeastSquaresBuilder()
                            .start(start)
                            .target(y)
                            .parameterValidator(asIs)
                            .maxEvaluations(MOST_EVALUATIONS)
                            .maxIterations(MOST_EVALUATIONS)
                            .model(point -> new Pair<RealVector, org.hipparchus.linear.RealMatrix>(
                                    new ArrayRealVector(bounded(values(curve, x, point.toArray())), false),
                                    new Array2DRowRealMatrix(bounded(slopes(curve, x, point.toArray())), false)))
                            .build());
            return optimum.getPoint().toArray();
        } catch (MathRuntimeException e) {
            notes.add("The search stopped before it settled (" + e.getLocalizedMessage()
                    + "); treat this fit with care, or start from other values.");
            return start.clone();
        }
    }

    private static double[] bounded(double[] values) {
        for (int i = 0; i < values.length; i++) {
            values[i] = Double.isFinite(values[i]) ? values[i] : 1e100;
        }
        return values;
    }

    private static double[][] bounded(double[][] values) {
        for (double[] row : values) {
            for (int i = 0; i < row.length; i++) {
                row[i] = Double.isFinite(row[i]) ? row[i] : 0;
            }
        }
        return values;
    }

    /** Gauss-Newton steps: the last digits, which a search that compares sums of squares cannot see. */
    private static double[] polished(
            ResponseCurve curve, double[][] x, double[] y, double[] start, List<String> notes) {
        double[] point = start;
        double sum = squares(curve, x, y, point);
        double last = Double.POSITIVE_INFINITY;
        for (int step = 0; step < 50; step++) {
            double[] residuals = values(curve, x, point);
            for (int i = 0; i < y.length; i++) {
                residuals[i] = y[i] - residuals[i];
            }
            double[] move = scaledSolve(slopes(curve, x, point), residuals);
            if (move.length == 0) {
                notes.add("The data do not tell all parameters apart: a change of one is made good by the others.");
                return point;
            }
            double size = 0;
            double[] next = point.clone();
            for (int k = 0; k < next.length; k++) {
                next[k] += move[k];
                size = Math.max(size, Math.abs(move[k]) / Math.max(Math.abs(point[k]), Double.MIN_NORMAL));
            }
            double reached = squares(curve, x, y, next);
            if (!(reached <= sum * (1 + 1e-12)) || size >= last) {
                return point;
            }
            point = next;
            sum = reached;
            last = size;
        }
        return point;
    }

    /** Least squares with columns scaled to length 1; empty if they are dependent to working precision. */
    private static double[] scaledSolve(double[][] slopes, double[] right) {
        double[] lengths = new double[slopes[0].length];
        QRDecomposition qr = factored(slopes, lengths);
        if (!qr.getSolver().isNonSingular()) {
            return new double[0];
        }
        double[] move = qr.getSolver().solve(new ArrayRealVector(right, false)).toArray();
        for (int k = 0; k < move.length; k++) {
            move[k] /= lengths[k];
        }
        return move;
    }

    private static QRDecomposition factored(double[][] slopes, double[] lengths) {
        double[][] scaled = new double[slopes.length][lengths.length];
        for (int k = 0; k < lengths.length; k++) {
            for (double[] row : slopes) {
                lengths[k] = Math.hypot(lengths[k], row[k]);
            }
            lengths[k] = lengths[k] > 0 ? lengths[k] : 1;
            for (int i = 0; i < scaled.length; i++) {
                scaled[i][k] = slopes[i][k] / lengths[k];
            }
        }
        return new QRDecomposition(new Array2DRowRealMatrix(scaled, false), SINGULAR);
    }

    private static double[] standardErrors(double[][] slopes, double variance, List<String> notes) {
        int p = slopes[0].length;
        double[] lengths = new double[p];
        QRDecomposition qr = factored(slopes, lengths);
        double[] errors = new double[p];
        if (!qr.getSolver().isNonSingular() || !Double.isFinite(variance)) {
            java.util.Arrays.fill(errors, Double.NaN);
            if (notes.isEmpty()) {
                notes.add(
                        "Standard errors cannot be had: there are no rows to spare, or parameters that cannot be told apart.");
            }
            return errors;
        }
        // Rows of the inverse of R have the lengths that errors are made of.
        double[][] r = qr.getR().getSubMatrix(0, p - 1, 0, p - 1).getData();
        double[][] inverse = new double[p][p];
        for (int c = 0; c < p; c++) {
            for (int i = c; i >= 0; i--) {
                double sum = i == c ? 1 : 0;
                for (int k = i + 1; k <= c; k++) {
                    sum -= r[i][k] * inverse[k][c];
                }
                inverse[i][c] = sum / r[i][i];
            }
        }
        for (int i = 0; i < p; i++) {
            errors[i] = Math.sqrt(variance) * Vectors.norm(inverse[i]) / lengths[i];
        }
        return errors;
    }

    private static double[] values(ResponseCurve curve, double[][] x, double[] parameters) {
        double[] out = new double[x.length];
        for (int i = 0; i < out.length; i++) {
            out[i] = curve.value(x[i], parameters);
        }
        return out;
    }

    private static double squares(ResponseCurve curve, double[][] x, double[] y, double[] parameters) {
        double sum = 0;
        for (int i = 0; i < y.length; i++) {
            double rest = y[i] - curve.value(x[i], parameters);
            sum += rest * rest;
        }
        return sum;
    }

    /** Derivatives by the parameters, by five-point central differences. */
    private static double[][] slopes(ResponseCurve curve, double[][] x, double[] parameters) {
        double[][] out = new double[x.length][parameters.length];
        double[] moved = parameters.clone();
        for (int k = 0; k < moved.length; k++) {
            double step = parameters[k] == 0 ? 1e-6 : STEP * Math.abs(parameters[k]);
            // A power of two, so that the step itself is exact.
            step = Math.pow(2, Math.rint(Math.log(step) / Math.log(2)));
            for (int i = 0; i < x.length; i++) {
                double sum = 0;
                for (int side = -1; side <= 1; side += 2) {
                    moved[k] = parameters[k] + side * step;
                    sum += side * 8 * curve.value(x[i], moved);
                    moved[k] = parameters[k] + side * 2 * step;
                    sum -= side * curve.value(x[i], moved);
                }
                out[i][k] = sum / (12 * step);
            }
            moved[k] = parameters[k];
        }
        return out;
    }

    /** Returns every parameter's estimate, in order. */
    public List<Estimate> terms() {
        return IntStream.range(0, parameters.length)
                .mapToObj(k -> new Estimate(names.get(k), parameters[k], standardErrors[k], used - parameters.length))
                .toList();
    }

    /**
     * Returns one parameter's estimate.
     *
     * @throws IllegalArgumentException if there is no parameter of that name
     */
    public Estimate term(String name) {
        int k = names.indexOf(name);
        if (k < 0) {
            throw new IllegalArgumentException(
                    "The curve has no parameter '" + name + "'. Parameters: " + String.join(", ", names) + ".");
        }
        return terms().get(k);
    }

    public double residualSumOfSquares() {
        return squares;
    }

    /** Returns the residual standard deviation; NaN if there are no rows to spare. */
    public double residualStandardDeviation() {
        return used > parameters.length ? Math.sqrt(squares / (used - parameters.length)) : Double.NaN;
    }

    /** Returns the curve's height at the given values of the predictors. */
    public double value(double... x) {
        return curve.value(x, parameters.clone());
    }

    public int used() {
        return used;
    }

    public int leftOut() {
        return leftOut;
    }

    /** Returns what did not settle or cannot be told, in plain words; empty if all is well. */
    public List<String> notes() {
        return notes;
    }

    @Override
    public String toString() {
        return String.format(
                Locale.ROOT,
                "nonlinear least squares: %d parameters, %d rows used, %d left out, residual standard deviation %.4g%s",
                parameters.length,
                used,
                leftOut,
                residualStandardDeviation(),
                notes.isEmpty() ? "" : ". " + String.join(" ", notes));
    }
}
