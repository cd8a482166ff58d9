package parchment.stats;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import parchment.display.Showable;

/**
 * Holds slopes of many features, shrunk towards 0 so that features which move together cannot run away: ridge, lasso and what lies between.
 *
 * <p>Minimises, over features and response scaled to a standard deviation of 1, half the mean square of the residuals plus penalty times
 * (mixing times the sum of absolute slopes plus (1 - mixing) times half the sum of squares); the penalty is given in units of the response.
 * These are glmnet's conventions. Shrunken slopes are biased on purpose and carry no standard errors: use them to predict.
 *
 * @see <a href="https://doi.org/10.18637/jss.v033.i01">Friedman, Hastie and Tibshirani 2010, J. Stat. Softw. 33(1)</a>
 */
public final class ElasticNet implements Showable {
    /** Mixing of ridge regression: squares only, no slope becomes 0. */
    public static final double RIDGE = 0;
    /** Mixing of the lasso: absolute values only, many slopes become 0. */
    public static final double LASSO = 1;

    private static final int MOST_SWEEPS = 100_000;

    private final List<String> names;
    private final double mixing;
    private final double penalty;
    private final double[] slopes;
    private final double[] means;
    private final double responseMean;
    private final int used;
    private final int leftOut;
    private final boolean settled;

    private ElasticNet(
            List<String> names,
            double mixing,
            double penalty,
            FeatureRows data,
            double[] standardised,
            boolean settled) {
        this.names = names;
        this.mixing = mixing;
        this.penalty = penalty;
        this.slopes = new double[standardised.length];
        for (int k = 0; k < slopes.length; k++) {
            slopes[k] = standardised[k] / data.scales[k];
        }
        this.means = data.means;
        this.responseMean = data.responseMean;
        this.used = data.rows.length;
        this.leftOut = data.leftOut;
        this.settled = settled;
    }

    /**
     * Fits at one penalty.
     *
     * @param features one column per name; rows with a missing number are left out
     * @param mixing from 0 ({@link #RIDGE}) to 1 ({@link #LASSO})
     * @param penalty above 0, in units of the response
     * @throws IllegalArgumentException if mixing or penalty is out of range
     * @throws CannotFitException if fewer than 3 complete rows are left or the response does not vary
     */
    public static ElasticNet fit(
            List<String> names, List<double[]> features, double[] response, double mixing, double penalty) {
        return path(names, features, response, mixing, new double[] {penalty}).get(0);
    }

    /** Fits at several penalties, from the largest down; each starts where the last ended. */
    static List<ElasticNet> path(
            List<String> names, List<double[]> features, double[] response, double mixing, double[] penalties) {
        if (!(mixing >= 0 && mixing <= 1)) {
            throw new IllegalArgumentException(
                    "The mixing of an elastic net must lie between 0 (ridge) and 1 (lasso), but it is "
                            + Checks.number(mixing) + ".");
        }
        FeatureRows data =
                FeatureRows.of("An elastic net", names, features, response, FeatureRows.Scaling.STANDARDISED);
        double deviation = deviation(data);
        double[] slopes = new double[names.size()];
        List<ElasticNet> fits = new ArrayList<>();
        double[][] gram = gram(data);
        double[] cross = cross(data);
        for (double penalty : penalties) {
            Checks.positive("The penalty of an elastic net", penalty);
            boolean settled = descend(gram, cross, slopes, mixing * penalty, (1 - mixing) * penalty / deviation);
            fits.add(new ElasticNet(List.copyOf(names), mixing, penalty, data, slopes.clone(), settled));
        }
        return fits;
    }

    private static double deviation(FeatureRows data) {
        double deviation = FixedBasis.norm(data.response) / Math.sqrt(data.rows.length);
        if (!(deviation > 0)) {
            throw new CannotFitException(
                    "An elastic net needs a response that varies, but all " + data.rows.length + " values are equal.");
        }
        return deviation;
    }

    private static double[][] gram(FeatureRows data) {
        int p = data.columns.length;
        double[][] gram = new double[p][p];
        for (int j = 0; j < p; j++) {
            for (int k = 0; k <= j; k++) {
                gram[j][k] = FixedBasis.dot(data.columns[j], data.columns[k]) / data.rows.length;
                gram[k][j] = gram[j][k];
            }
        }
        return gram;
    }

    private static double[] cross(FeatureRows data) {
        return Arrays.stream(data.columns)
                .mapToDouble(c -> FixedBasis.dot(c, data.response) / data.rows.length)
                .toArray();
    }

    /** Coordinate descent; returns false if it did not settle. */
    private static boolean descend(double[][] gram, double[] cross, double[] slopes, double absolute, double square) {
        double size = 0;
        for (double c : cross) {
            size = Math.max(size, Math.abs(c));
        }
        for (int sweep = 0; sweep < MOST_SWEEPS; sweep++) {
            double moved = 0;
            for (int k = 0; k < slopes.length; k++) {
                if (gram[k][k] == 0) {
                    continue;
                }
                double pull = cross[k] - FixedBasis.dot(gram[k], slopes) + gram[k][k] * slopes[k];
                double next = Math.signum(pull) * Math.max(0, Math.abs(pull) - absolute) / (gram[k][k] + square);
                moved = Math.max(moved, Math.abs(next - slopes[k]));
                slopes[k] = next;
            }
            if (moved <= 1e-13 * size) {
                return true;
            }
        }
        return false;
    }

    /** Returns the smallest penalty at which the lasso of this mixing has no slope left; for ridge as if mixing were 0.001. */
    static double largestPenalty(List<String> names, List<double[]> features, double[] response, double mixing) {
        FeatureRows data =
                FeatureRows.of("An elastic net", names, features, response, FeatureRows.Scaling.STANDARDISED);
        double largest = Arrays.stream(cross(data)).map(Math::abs).max().orElse(0);
        return Math.max(largest, 1e-12 * deviation(data)) / Math.max(mixing, 1e-3);
    }

    /** Returns the slopes per unit of each feature, in the order of {@link #names()}. */
    public double[] slopes() {
        return slopes.clone();
    }

    /**
     * Returns one feature's slope.
     *
     * @throws IllegalArgumentException if there is no feature of that name
     */
    public double slope(String name) {
        int k = names.indexOf(name);
        if (k < 0) {
            throw new IllegalArgumentException(
                    "The model has no feature '" + name + "'. Features: " + String.join(", ", names) + ".");
        }
        return slopes[k];
    }

    public double intercept() {
        return responseMean - FixedBasis.dot(slopes, means);
    }

    public List<String> names() {
        return names;
    }

    public double penalty() {
        return penalty;
    }

    public double mixing() {
        return mixing;
    }

    /** Predicts rows from their features, one column per name; NaN where a feature is missing. */
    public double[] predict(List<double[]> features) {
        return FeatureRows.predict(slopes, means, responseMean, features);
    }

    public int used() {
        return used;
    }

    public int leftOut() {
        return leftOut;
    }

    @Override
    public String toString() {
        return String.format(
                Locale.ROOT,
                "elastic net: mixing %s, penalty %s, %d of %d %s in use, %d rows used, %d left out%s",
                Checks.number(mixing),
                Checks.number(penalty),
                Arrays.stream(slopes).filter(s -> s != 0).count(),
                slopes.length,
                slopes.length == 1 ? "feature" : "features",
                used,
                leftOut,
                settled ? "" : ". The search did not settle; treat this fit with care");
    }
}
