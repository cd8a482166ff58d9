package parchment.stats;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.stream.IntStream;
import parchment.display.Showable;

/**
 * Holds a regression on a few mixtures of many features (components), each chosen to go with what is left of the response.
 *
 * <p>Features are centred, not scaled: give columns of comparable size, or standardise them first. One response; the orthogonal-scores
 * algorithm.
 *
 * @see <a href="https://doi.org/10.18637/jss.v018.i02">Mevik and Wehrens 2007, J. Stat. Softw. 18(2)</a>; Martens and Naes 1989, Multivariate
 *     Calibration, section 3.5
 */
public final class PartialLeastSquares implements Showable {
    private final List<String> names;
    private final double[] means;
    private final double responseMean;
    /** Slopes with 0, 1, 2 ... components. */
    private final List<double[]> slopes;

    private final double[] explained;
    private final int used;
    private final int leftOut;

    private PartialLeastSquares(List<String> names, FeatureRows data, List<double[]> slopes, double[] explained) {
        this.names = names;
        this.means = data.means;
        this.responseMean = data.responseMean;
        this.slopes = slopes;
        this.explained = explained;
        this.used = data.rows.length;
        this.leftOut = data.leftOut;
    }

    /**
     * Fits up to the given number of components; fewer if nothing is left to go with the response.
     *
     * @param features one column per name; rows with a missing number are left out
     * @param components 1 or more; cut to what rows and features allow
     */
    public static PartialLeastSquares fit(
            List<String> names, List<double[]> features, double[] response, int components) {
        if (components < 1) {
            throw new IllegalArgumentException(
                    "Partial least squares needs at least 1 component, but was asked for " + components + ".");
        }
        FeatureRows data =
                FeatureRows.of("Partial least squares", names, features, response, FeatureRows.Scaling.CENTRED);
        int n = data.rows.length;
        int p = names.size();
        double[][] rest = Arrays.stream(data.columns).map(double[]::clone).toArray(double[][]::new);
        double[] y = data.response.clone();
        double total = squares(rest);
        int most = Math.min(components, Math.min(p, n - 1));
        List<double[]> slopes = new ArrayList<>();
        slopes.add(new double[p]);
        List<double[]> directions = new ArrayList<>();
        List<double[]> loadings = new ArrayList<>();
        double[] explained = new double[most];
        double firstLength = 0;
        int found = 0;
        while (found < most) {
            double[] weights = new double[p];
            for (int k = 0; k < p; k++) {
                weights[k] = FixedBasis.dot(rest[k], y);
            }
            double length = FixedBasis.norm(weights);
            firstLength = Math.max(firstLength, length);
            if (!(length > 1e-13 * firstLength) || firstLength == 0) {
                break;
            }
            double[] scores = new double[n];
            for (int k = 0; k < p; k++) {
                weights[k] /= length;
                for (int i = 0; i < n; i++) {
                    scores[i] += rest[k][i] * weights[k];
                }
            }
            double size = FixedBasis.dot(scores, scores);
            double[] loading = new double[p];
            for (int k = 0; k < p; k++) {
                loading[k] = FixedBasis.dot(rest[k], scores) / size;
            }
            double gain = FixedBasis.dot(scores, y) / size;
            double before = squares(rest);
            for (int i = 0; i < n; i++) {
                y[i] -= gain * scores[i];
                for (int k = 0; k < p; k++) {
                    rest[k][i] -= loading[k] * scores[i];
                }
            }
            explained[found] = total > 0 ? (before - squares(rest)) / total : 0;
            // The direction that makes the scores from the features as given: r = w - sum of r_j (p_j'w).
            double[] direction = weights.clone();
            for (int j = 0; j < found; j++) {
                double overlap = FixedBasis.dot(loadings.get(j), weights);
                for (int k = 0; k < p; k++) {
                    direction[k] -= overlap * directions.get(j)[k];
                }
            }
            directions.add(direction);
            loadings.add(loading);
            double[] next = slopes.get(found).clone();
            for (int k = 0; k < p; k++) {
                next[k] += gain * direction[k];
            }
            slopes.add(next);
            found++;
        }
        return new PartialLeastSquares(List.copyOf(names), data, List.copyOf(slopes), Arrays.copyOf(explained, found));
    }

    private static double squares(double[][] columns) {
        return Arrays.stream(columns).mapToDouble(c -> FixedBasis.dot(c, c)).sum();
    }

    /**
     * Measures the error on left-out groups with 0 (the plain mean), 1, 2 ... components.
     *
     * @param most the largest number of components tried
     * @param folds parts of whole groups (days, cuppings)
     */
    public static HeldOutErrors heldOut(
            List<String> names, List<double[]> features, double[] response, int most, GroupedFolds folds) {
        double[] settings = IntStream.rangeClosed(0, most).asDoubleStream().toArray();
        return HeldOutErrors.of("components", settings, response, folds, (train, test) -> {
            PartialLeastSquares fit =
                    fit(names, FeatureRows.pick(features, train), MixedDesign.pick(response, train), Math.max(1, most));
            List<double[]> left = FeatureRows.pick(features, test);
            return IntStream.rangeClosed(0, most)
                    .mapToObj(c -> fit.predict(left, Math.min(c, fit.components())))
                    .toList();
        });
    }

    /** Returns the number of components found. */
    public int components() {
        return slopes.size() - 1;
    }

    /** Returns the share of the features' variation that one component holds, counted from 1. */
    public double explained(int component) {
        return explained[component - 1];
    }

    /** Returns the slopes of the features with the given number of components. */
    public double[] slopes(int components) {
        checkComponents(components);
        return slopes.get(components).clone();
    }

    /** Predicts rows with the given number of components (0: the mean); NaN where a feature is missing. */
    public double[] predict(List<double[]> features, int components) {
        checkComponents(components);
        return FeatureRows.predict(slopes.get(components), means, responseMean, features);
    }

    private void checkComponents(int components) {
        if (components < 0 || components >= slopes.size()) {
            throw new IllegalArgumentException(
                    "The fit has 0 to " + components() + " components, but was asked for " + components + ".");
        }
    }

    @Override
    public String toString() {
        return String.format(
                Locale.ROOT,
                "partial least squares: %d %s of %d %s %s %.0f %% of their variation, %d rows used, %d left out",
                components(),
                components() == 1 ? "component" : "components",
                names.size(),
                names.size() == 1 ? "feature" : "features",
                components() == 1 ? "holds" : "hold",
                100 * Arrays.stream(explained).sum(),
                used,
                leftOut);
    }
}
