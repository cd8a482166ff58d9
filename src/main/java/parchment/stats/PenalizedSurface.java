package parchment.stats;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.stream.IntStream;
import parchment.display.Showable;

/**
 * A smooth surface over two features, its wiggliness in each direction chosen by restricted maximum likelihood.
 *
 * <p>A tensor product of two {@link SplineBasis}, split into a tilted and twisted plane (four fixed columns) and five random parts with a
 * variance each: a curve of the first feature, a curve of the second, either curve changing in proportion to the other feature, and a free
 * rest. A part whose variance is estimated as zero is gone, so a surface that is only a sum of two curves becomes one.
 *
 * @see <a href="https://doi.org/10.1016/j.csda.2012.11.013">Lee, Durban and Eilers 2013, Comput. Stat. Data Anal. 61:22</a>; Wood, Scheipl and
 *     Faraway 2013, Stat. Comput. 23:341
 */
public final class PenalizedSurface implements Showable {
    private static final List<String> PARTS =
            List.of("curve of first", "curve of second", "first by second", "second by first", "rest");

    private final SplineBasis first;
    private final SplineBasis second;
    private final Interval firstRange;
    private final Interval secondRange;
    private final LinearMixedModel model;
    /** Which of all columns are in use, and their coefficients and relative covariance. */
    private final int[] inUse;

    private final double[] coefficients;
    private final double[][] inverse;
    private final double edf;
    private final double scale;

    private PenalizedSurface(
            SplineBasis first,
            SplineBasis second,
            Interval firstRange,
            Interval secondRange,
            LinearMixedModel model,
            double[] x,
            double[] z,
            double[] y) {
        this.first = first;
        this.second = second;
        this.firstRange = firstRange;
        this.secondRange = secondRange;
        this.model = model;
        double sigma2 = model.residualStandardDeviation() * model.residualStandardDeviation();
        double[] penalties = penalties(sigma2);
        this.inUse = IntStream.range(0, penalties.length)
                .filter(k -> Double.isFinite(penalties[k]))
                .toArray();
        int p = inUse.length;
        double[][] cross = new double[p][p];
        double[] right = new double[p];
        double[][] rows = new double[x.length][];
        for (int i = 0; i < x.length; i++) {
            rows[i] = row(x[i], z[i]);
            for (int a = 0; a < p; a++) {
                right[a] += rows[i][a] * y[i];
                for (int b = 0; b < p; b++) {
                    cross[a][b] += rows[i][a] * rows[i][b];
                }
            }
        }
        double[][] penalised = new double[p][];
        for (int a = 0; a < p; a++) {
            penalised[a] = cross[a].clone();
            penalised[a][a] += penalties[inUse[a]];
        }
        this.inverse = SmallSolve.inverse(penalised)
                .orElseThrow(() -> new CannotFitException("A surface needs rows spread over both features, but these "
                        + x.length + " leave a part of it undetermined; use fewer functions."));
        this.coefficients = Satterthwaite.times(inverse, right);
        double parameters = 0;
        double squares = 0;
        for (int a = 0; a < p; a++) {
            parameters += FixedBasis.dot(inverse[a], cross[a]);
        }
        for (int i = 0; i < x.length; i++) {
            squares += Math.pow(y[i] - FixedBasis.dot(coefficients, rows[i]), 2);
        }
        this.edf = parameters;
        this.scale = squares / (x.length - parameters);
    }

    /**
     * Fits a response as a smooth surface.
     *
     * @param size number of B-splines in each direction, 5 or more; 6 to 8 is plenty for a few hundred rows
     * @throws CannotFitException if a feature has no range, fewer than 8 complete rows are left, or the features move together so
     *     closely that a tilt in both directions cannot be told
     */
    public static PenalizedSurface fit(double[] firstFeature, double[] secondFeature, double[] response, int size) {
        Checks.sameLength("A surface", response.length, "the first feature", firstFeature.length);
        Checks.sameLength("A surface", response.length, "the second feature", secondFeature.length);
        int[] rows = IntStream.range(0, response.length)
                .filter(i -> Double.isFinite(response[i] + firstFeature[i] + secondFeature[i]))
                .toArray();
        if (rows.length < 8) {
            throw new CannotFitException(
                    "A surface needs at least 8 complete rows, but there are " + rows.length + ".");
        }
        double[] x = MixedDesign.pick(firstFeature, rows);
        double[] z = MixedDesign.pick(secondFeature, rows);
        double[] y = MixedDesign.pick(response, rows);
        Interval xRange = range(x);
        Interval zRange = range(z);
        if (!(xRange.upper() > xRange.lower() && zRange.upper() > zRange.lower())) {
            throw new CannotFitException("A surface needs two features that vary, but in these " + rows.length
                    + " rows one of them has a single value.");
        }
        SplineBasis first = SplineBasis.of(xRange.lower(), xRange.upper(), size);
        SplineBasis second = SplineBasis.of(zRange.lower(), zRange.upper(), size);
        LinearMixedModel model = design(first, second, x, z, y).fit();
        if (!model.aliasedColumns().isEmpty()) {
            throw new CannotFitException("A surface needs two features that vary apart from each other, but in these "
                    + rows.length + " rows one determines the other's plane. Ask about one of them.");
        }
        return new PenalizedSurface(first, second, xRange, zRange, model, x, z, y);
    }

    private static Interval range(double[] values) {
        return new Interval(
                Arrays.stream(values).min().orElse(Double.NaN),
                Arrays.stream(values).max().orElse(Double.NaN),
                1);
    }

    private static MixedDesign design(SplineBasis first, SplineBasis second, double[] x, double[] z, double[] y) {
        double[] lineX = first.line(x);
        double[] lineZ = second.line(z);
        List<double[]> wiggleX = first.wiggles(x);
        List<double[]> wiggleZ = second.wiggles(z);
        List<double[]> rest = new ArrayList<>();
        for (double[] a : wiggleX) {
            wiggleZ.forEach(b -> rest.add(product(a, b)));
        }
        return MixedDesign.of("response", y)
                .withCovariate("first", lineX)
                .withCovariate("second", lineZ)
                .withCovariate("first times second", product(lineX, lineZ))
                .withRandom(RandomTerm.smooth(PARTS.get(0), wiggleX))
                .withRandom(RandomTerm.smooth(PARTS.get(1), wiggleZ))
                .withRandom(RandomTerm.smooth(
                        PARTS.get(2),
                        wiggleX.stream().map(a -> product(a, lineZ)).toList()))
                .withRandom(RandomTerm.smooth(
                        PARTS.get(3),
                        wiggleZ.stream().map(b -> product(b, lineX)).toList()))
                .withRandom(RandomTerm.smooth(PARTS.get(4), rest));
    }

    private static double[] product(double[] a, double[] b) {
        double[] out = new double[a.length];
        for (int i = 0; i < out.length; i++) {
            out[i] = a[i] * b[i];
        }
        return out;
    }

    /** Ridge of every column: 0 for the plane, the ratio of variances for the parts, infinity for a part that is gone. */
    private double[] penalties(double sigma2) {
        int wiggles = first.size() - 2;
        int[] sizes = {wiggles, wiggles, wiggles, wiggles, wiggles * wiggles};
        double[] penalties = new double[4 + 4 * wiggles + wiggles * wiggles];
        int at = 4;
        for (int part = 0; part < sizes.length; part++) {
            double variance = model.variance(PARTS.get(part), "smooth");
            double penalty = variance > 1e-12 * sigma2 ? sigma2 / variance : Double.POSITIVE_INFINITY;
            Arrays.fill(penalties, at, at + sizes[part], penalty);
            at += sizes[part];
        }
        return penalties;
    }

    private double[] row(double x, double z) {
        double[] atX = {x};
        double[] atZ = {z};
        double lineX = first.line(atX)[0];
        double lineZ = second.line(atZ)[0];
        double[] wiggleX = first.wiggles(atX).stream().mapToDouble(w -> w[0]).toArray();
        double[] wiggleZ = second.wiggles(atZ).stream().mapToDouble(w -> w[0]).toArray();
        double[] all = new double[4 + 4 * wiggleX.length + wiggleX.length * wiggleZ.length];
        int at = 0;
        all[at++] = 1;
        all[at++] = lineX;
        all[at++] = lineZ;
        all[at++] = lineX * lineZ;
        for (double w : wiggleX) {
            all[at++] = w;
        }
        for (double w : wiggleZ) {
            all[at++] = w;
        }
        for (double w : wiggleX) {
            all[at++] = w * lineZ;
        }
        for (double w : wiggleZ) {
            all[at++] = w * lineX;
        }
        for (double a : wiggleX) {
            for (double b : wiggleZ) {
                all[at++] = a * b;
            }
        }
        return MixedDesign.pick(all, inUse);
    }

    private boolean tried(double x, double z) {
        return firstRange.contains(x) && secondRange.contains(z);
    }

    /** Returns the surface's height; NaN outside the range of either feature. Corners without data are far extrapolations still. */
    public double value(double firstFeature, double secondFeature) {
        return tried(firstFeature, secondFeature)
                ? FixedBasis.dot(coefficients, row(firstFeature, secondFeature))
                : Double.NaN;
    }

    /** Returns the standard error of the height, with the smooth's prior included, as in {@link PenalizedSpline#standardError}. */
    public double standardError(double firstFeature, double secondFeature) {
        return tried(firstFeature, secondFeature)
                ? Math.sqrt(scale * Satterthwaite.quadratic(inverse, row(firstFeature, secondFeature)))
                : Double.NaN;
    }

    /** Returns the number of free parameters that the surface amounts to, intercept included. */
    public double effectiveDegreesOfFreedom() {
        return edf;
    }

    /** Returns the residual variance: residual sum of squares over rows minus effective degrees of freedom. */
    public double residualVariance() {
        return scale;
    }

    /** Returns the range of the first feature in which there are data. */
    public Interval firstRange() {
        return firstRange;
    }

    /** Returns the range of the second feature in which there are data. */
    public Interval secondRange() {
        return secondRange;
    }

    /** Returns the mixed model behind the surface. */
    public LinearMixedModel model() {
        return model;
    }

    @Override
    public String toString() {
        return String.format(
                Locale.ROOT,
                "surface from %s to %s and %s to %s over %d rows, worth %.1f parameters, residual standard deviation %.4g",
                Checks.number(firstRange.lower()),
                Checks.number(firstRange.upper()),
                Checks.number(secondRange.lower()),
                Checks.number(secondRange.upper()),
                model.used(),
                edf,
                Math.sqrt(scale));
    }
}
