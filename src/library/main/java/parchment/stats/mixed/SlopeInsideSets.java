package parchment.stats.mixed;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import parchment.stats.Estimate;
import parchment.stats.Fieller;
import parchment.stats.linear.CannotFitException;
import parchment.stats.linear.Checks;

/**
 * Fits a straight line inside sets: every column is taken from its set's mean, so that whatever differs between sets is out of it.
 *
 * <p>The same as least squares with one level per set, in closed form. Degrees of freedom: rows less sets less one; rows alone in their set are not counted.
 */
public final class SlopeInsideSets {
    private final List<String> sets;
    private final double[] x;
    private final double squares;
    private final int degreesOfFreedom;

    private SlopeInsideSets(List<String> sets, double[] x, double squares, int degreesOfFreedom) {
        this.sets = sets;
        this.x = x;
        this.squares = squares;
        this.degreesOfFreedom = degreesOfFreedom;
    }

    /**
     * Returns the fit on one column.
     *
     * @throws CannotFitException if x does not differ inside any set
     */
    public static SlopeInsideSets on(List<String> sets, double[] x) {
        double[] centred = centred(sets, x);
        double squares = product(centred, centred);
        double scale = product(x, x);
        if (!(squares > 1e-18 * scale) || squares == 0) {
            throw new CannotFitException(
                    "A slope inside sets needs a set with two different values, but in each set all values are the same.");
        }
        long groups = sets.stream().distinct().count();
        return new SlopeInsideSets(List.copyOf(sets), centred, squares, (int) (x.length - groups) - 1);
    }

    /** Returns the sum of squares of x inside sets. */
    public double squares() {
        return squares;
    }

    public int degreesOfFreedom() {
        return degreesOfFreedom;
    }

    /** Returns the slope of a response, with a missing standard error where no degree of freedom is left. */
    public Estimate slope(String name, double[] response) {
        double[] y = centred(sets, response);
        return new Estimate(name, product(x, y) / squares, Math.sqrt(covariance(y, y) / squares), degreesOfFreedom);
    }

    /** Returns the variance left inside sets around the line. */
    public double residualVariance(double[] response) {
        double[] y = centred(sets, response);
        return covariance(y, y);
    }

    /**
     * Returns the set of ratios of the slopes of two responses: with x an assigned value and the second response what was achieved, the
     * Anderson-Rubin set of the slope on the achieved one, since with one instrument the two are the same.
     *
     * @param level as in 0.90
     * @see <a href="https://doi.org/10.1214/aoms/1177730090">Anderson and Rubin 1949, Ann. Math. Stat. 20:46</a>
     */
    public Fieller ratio(double[] response, double[] achieved, double level) {
        double[] y = centred(sets, response);
        double[] w = centred(sets, achieved);
        double ofY = covariance(y, y);
        double ofW = covariance(w, w);
        // Where a line leaves nothing of one of them, rounding alone must not make the two covary.
        double most = Math.sqrt(ofY * ofW);
        return Fieller.of(
                product(x, y) / squares,
                product(x, w) / squares,
                ofY / squares,
                Math.max(-most, Math.min(most, covariance(y, w))) / squares,
                ofW / squares,
                degreesOfFreedom,
                level);
    }

    /** Returns the covariance of what is left of two centred responses around their lines. */
    private double covariance(double[] y, double[] w) {
        double left = product(y, w) - product(x, y) * product(x, w) / squares;
        return degreesOfFreedom < 1 ? Double.NaN : (y == w ? Math.max(0, left) : left) / degreesOfFreedom;
    }

    /** Returns a column less its set's mean. */
    private static double[] centred(List<String> sets, double[] values) {
        Checks.sameLength("A slope inside sets", sets.size(), "a column", values.length);
        Map<String, double[]> sums = new LinkedHashMap<>();
        for (int i = 0; i < values.length; i++) {
            double[] sum = sums.computeIfAbsent(sets.get(i), set -> new double[2]);
            sum[0] += values[i];
            sum[1]++;
        }
        double[] centred = new double[values.length];
        for (int i = 0; i < values.length; i++) {
            double[] sum = Objects.requireNonNull(sums.get(sets.get(i)));
            centred[i] = values[i] - sum[0] / sum[1];
        }
        return centred;
    }

    private static double product(double[] a, double[] b) {
        double sum = 0;
        for (int i = 0; i < a.length; i++) {
            sum += a[i] * b[i];
        }
        return sum;
    }
}
