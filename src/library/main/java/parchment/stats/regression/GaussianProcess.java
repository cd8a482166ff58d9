package parchment.stats.regression;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.stream.IntStream;
import org.hipparchus.exception.MathRuntimeException;
import org.hipparchus.linear.Array2DRowRealMatrix;
import org.hipparchus.linear.ArrayRealVector;
import org.hipparchus.linear.CholeskyDecomposition;
import parchment.display.Showable;
import parchment.stats.linear.CannotFitException;
import parchment.stats.linear.Checks;
import parchment.stats.linear.QuasiNewton;
import parchment.stats.linear.Vectors;

/**
 * A surface over any number of features as a Gaussian process: near points are alike, far points are not, and the standard error grows away
 * from the data.
 *
 * <p>One length per feature, the size of the surface and the noise are found by maximum likelihood from several starts; the mean is the
 * response's mean. The work grows with the cube of the rows: good up to about a thousand.
 *
 * @see <a href="http://gaussianprocess.org/gpml/">Rasmussen and Williams 2006, Gaussian Processes for Machine Learning, algorithm 2.1 and
 *     section 5.4</a>
 */
public final class GaussianProcess implements Showable {
    private final double[][] points;
    private final ProcessShape shape;
    private final double[] lengths;
    private final double signal;
    private final double noise;
    private final double mean;
    private final double[] weights;
    private final CholeskyDecomposition factor;
    private final double logLikelihood;
    private final int leftOut;
    private final List<String> notes;

    private GaussianProcess(
            ProcessShape shape,
            double[][] points,
            double[] rest,
            double mean,
            double[] logs,
            int leftOut,
            List<String> notes) {
        int p = logs.length - 2;
        this.shape = shape;
        this.points = points;
        this.mean = mean;
        this.lengths = IntStream.range(0, p).mapToDouble(k -> Math.exp(logs[k])).toArray();
        this.signal = Math.exp(logs[p]);
        this.noise = Math.exp(logs[p + 1]);
        this.factor = factor(covariance(shape, points, lengths, signal, noise));
        this.weights =
                factor.getSolver().solve(new ArrayRealVector(rest, false)).toArray();
        this.logLikelihood = logLikelihood(factor, rest, weights);
        this.leftOut = leftOut;
        this.notes = notes;
    }

    /**
     * Fits a surface.
     *
     * @param features columns of equal length, at least one that varies; rows with a missing number are left out
     * @throws CannotFitException if fewer than 3 complete rows are left, or a feature or the response does not vary
     */
    public static GaussianProcess fit(List<double[]> features, double[] response, ProcessShape shape) {
        return fit(features, response, shape, Double.NaN);
    }

    /** Fits with a given mean of the response; NaN takes the mean of the data. */
    static GaussianProcess fit(List<double[]> features, double[] response, ProcessShape shape, double givenMean) {
        List<String> names = IntStream.rangeClosed(1, features.size())
                .mapToObj(k -> "feature " + k)
                .toList();
        FeatureRows data =
                FeatureRows.of("A Gaussian process", names, features, response, FeatureRows.Scaling.STANDARDISED);
        double mean = Double.isNaN(givenMean) ? data.responseMean : givenMean;
        double[] rest = Arrays.stream(data.response)
                .map(v -> v + data.responseMean - mean)
                .toArray();
        int p = names.size();
        double size = Vectors.norm(rest) / Math.sqrt(rest.length);
        for (int k = 0; k < p; k++) {
            if (Vectors.norm(data.columns[k]) == 0) {
                throw new CannotFitException("A Gaussian process needs features that vary, but " + names.get(k)
                        + " has one value only; leave it out.");
            }
        }
        if (!(size > 0)) {
            throw new CannotFitException(
                    "A Gaussian process needs a response that varies, but all " + rest.length + " values are equal.");
        }
        double[][] points = points(data, p);
        QuasiNewton.Surface surface = new ProcessLikelihood(shape, points, rest, size);
        // Starts from wiggly to nearly flat, from little to much noise; the likelihood can have several summits.
        List<QuasiNewton> found = new ArrayList<>();
        for (double length : new double[] {0.5, 1.5, 4}) {
            for (double noise : new double[] {0.1, 0.6}) {
                double[] start = new double[p + 2];
                Arrays.fill(start, 0, p, Math.log(length));
                start[p] = Math.log(size);
                start[p + 1] = Math.log(noise * size);
                found.add(QuasiNewton.polishedMinimum(surface, start));
            }
        }
        QuasiNewton best = Collections.min(found, Comparator.comparingDouble(QuasiNewton::value));
        double[] logs = best.place();
        for (int k = 0; k < p; k++) {
            logs[k] += Math.log(data.scales[k]);
        }
        return new GaussianProcess(
                shape,
                natural(points, data),
                rest,
                mean,
                logs,
                data.leftOut,
                best.converged()
                        ? List.of()
                        : List.of("A length, the size or the noise lies at the edge of what was searched: the data do"
                                + " not tell it."));
    }

    /**
     * Returns the process with everything given.
     *
     * @param lengths distance in each feature over which the response changes
     * @param signal standard deviation of the surface
     * @param noise standard deviation of the noise, above 0
     * @param mean of the surface far from the data
     */
    public static GaussianProcess of(
            List<double[]> features,
            double[] response,
            ProcessShape shape,
            double[] lengths,
            double signal,
            double noise,
            double mean) {
        Checks.sameLength("A Gaussian process", features.size(), "the lengths", lengths.length);
        List<String> names = IntStream.rangeClosed(1, features.size())
                .mapToObj(k -> "feature " + k)
                .toList();
        FeatureRows data = FeatureRows.of("A Gaussian process", names, features, response, FeatureRows.Scaling.CENTRED);
        double[] logs = new double[lengths.length + 2];
        for (int k = 0; k < lengths.length; k++) {
            logs[k] = Math.log(Checks.positive("A length", lengths[k]));
        }
        logs[lengths.length] = Math.log(Checks.positive("The size of the surface", signal));
        logs[lengths.length + 1] = Math.log(Checks.positive("The noise", noise));
        double[] rest = Arrays.stream(data.response)
                .map(v -> v + data.responseMean - mean)
                .toArray();
        return new GaussianProcess(
                shape, natural(points(data, lengths.length), data), rest, mean, logs, data.leftOut, List.of());
    }

    private static double[][] points(FeatureRows data, int p) {
        double[][] points = new double[data.rows.length][p];
        for (int i = 0; i < points.length; i++) {
            for (int k = 0; k < p; k++) {
                points[i][k] = data.columns[k][i];
            }
        }
        return points;
    }

    private static double[][] natural(double[][] points, FeatureRows data) {
        for (double[] point : points) {
            for (int k = 0; k < point.length; k++) {
                point[k] = point[k] * data.scales[k] + data.means[k];
            }
        }
        return points;
    }

    static double[][] covariance(ProcessShape shape, double[][] points, double[] lengths, double signal, double noise) {
        int n = points.length;
        double[][] covariance = new double[n][n];
        for (int i = 0; i < n; i++) {
            for (int j = 0; j < i; j++) {
                covariance[i][j] = signal * signal * shape.correlation(distance(points[i], points[j], lengths));
                covariance[j][i] = covariance[i][j];
            }
            covariance[i][i] = signal * signal + noise * noise;
        }
        return covariance;
    }

    static CholeskyDecomposition factor(double[][] covariance) {
        return new CholeskyDecomposition(new Array2DRowRealMatrix(covariance, false), 1e-10, 1e-300);
    }

    static double logLikelihood(CholeskyDecomposition factor, double[] rest, double[] weights) {
        double[][] lower = factor.getL().getData();
        double log = 0;
        for (int i = 0; i < lower.length; i++) {
            log += Math.log(lower[i][i]);
        }
        return -0.5 * Vectors.dot(rest, weights) - log - 0.5 * rest.length * Math.log(2 * Math.PI);
    }

    private static double distance(double[] a, double[] b, double[] lengths) {
        double sum = 0;
        for (int k = 0; k < lengths.length; k++) {
            double d = (a[k] - b[k]) / lengths[k];
            sum += d * d;
        }
        return Math.sqrt(sum);
    }

    private double[] covarianceWith(double[] x) {
        Checks.sameLength("A Gaussian process", lengths.length, "the features", x.length);
        return Arrays.stream(points)
                .mapToDouble(point -> signal * signal * shape.correlation(distance(point, x, lengths)))
                .toArray();
    }

    /** Returns the surface's expected height; NaN where a feature is missing. */
    public double value(double... x) {
        return mean + Vectors.dot(covarianceWith(x), weights);
    }

    /** Returns the standard error of the height itself (of the surface, not of a new noisy value), at the estimated lengths and sizes. */
    public double standardError(double... x) {
        double[] with = covarianceWith(x);
        double[] solved =
                factor.getSolver().solve(new ArrayRealVector(with, false)).toArray();
        return Math.sqrt(Math.max(0, signal * signal - Vectors.dot(with, solved)));
    }

    /** Returns the length of each feature, in its unit: the distance over which the response changes. */
    public double[] lengths() {
        return lengths.clone();
    }

    /** Returns the standard deviation of the surface around its mean. */
    public double surfaceStandardDeviation() {
        return signal;
    }

    /** Returns the standard deviation of the noise. */
    public double noiseStandardDeviation() {
        return noise;
    }

    public double logLikelihood() {
        return logLikelihood;
    }

    public int used() {
        return points.length;
    }

    public int leftOut() {
        return leftOut;
    }

    /** Returns what the data do not tell, in plain words; empty if all is well. */
    public List<String> notes() {
        return notes;
    }

    /** Minus the log likelihood by the logarithms of lengths, size and noise, with its gradient. */
    private static final class ProcessLikelihood implements QuasiNewton.Surface {
        private static final double WIDEST = 9;

        private final ProcessShape shape;
        private final double[][] points;
        private final double[] rest;
        private final double size;

        ProcessLikelihood(ProcessShape shape, double[][] points, double[] rest, double size) {
            this.shape = shape;
            this.points = points;
            this.rest = rest;
            this.size = size;
        }

        @Override
        public double value(double[] logs, double[] gradient) {
            int p = logs.length - 2;
            int n = rest.length;
            for (int k = 0; k < logs.length; k++) {
                double middle = k < p ? 0 : Math.log(size);
                if (!(Math.abs(logs[k] - middle) < WIDEST)) {
                    return Double.POSITIVE_INFINITY;
                }
            }
            double[] lengths =
                    IntStream.range(0, p).mapToDouble(k -> Math.exp(logs[k])).toArray();
            double signal2 = Math.exp(2 * logs[p]);
            double noise2 = Math.exp(2 * logs[p + 1]);
            CholeskyDecomposition factor;
            try {
                factor = factor(covariance(shape, points, lengths, Math.sqrt(signal2), Math.sqrt(noise2)));
            } catch (MathRuntimeException e) {
                return Double.POSITIVE_INFINITY;
            }
            double[][] inverse = factor.getSolver().getInverse().getData();
            double[] weights = Vectors.times(inverse, rest);
            Arrays.fill(gradient, 0);
            for (int i = 0; i < n; i++) {
                for (int j = 0; j <= i; j++) {
                    // Half the trace of (K^-1 - ww') dK; pairs off the diagonal count twice.
                    double pull = (inverse[i][j] - weights[i] * weights[j]) * (i == j ? 0.5 : 1);
                    double r = distance(points[i], points[j], lengths);
                    gradient[p] += pull * 2 * signal2 * shape.correlation(r);
                    gradient[p + 1] += i == j ? pull * 2 * noise2 : 0;
                    double bend = pull * signal2 * shape.bend(r);
                    for (int k = 0; k < p && i != j; k++) {
                        double d = (points[i][k] - points[j][k]) / lengths[k];
                        gradient[k] += bend * d * d;
                    }
                }
            }
            return -logLikelihood(factor, rest, weights);
        }
    }

    @Override
    public String toString() {
        return String.format(
                Locale.ROOT,
                "Gaussian process over %d %s: %d rows used, %d left out, surface %.4g, noise %.4g%s",
                lengths.length,
                lengths.length == 1 ? "feature" : "features",
                used(),
                leftOut,
                signal,
                noise,
                notes.isEmpty() ? "" : ". " + String.join(" ", notes));
    }
}
