package parchment.stats.mixed;

import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import parchment.display.Showable;
import parchment.stats.Estimate;
import parchment.stats.linear.Checks;
import parchment.stats.linear.Vectors;

/**
 * Asks of many candidate features, at the variances of one fitted model, what each would add to it: slope and t-like statistic.
 *
 * <p>Features belong to units (batches) that have several rows (cups). With P the projection off the fixed terms in the metric of the
 * model, a feature f needs only f'B'Py and f'B'PBf, B the membership of rows in units; both products are made once, so that shuffles
 * of whole feature rows cost a small quadratic form each and no refit. With shuffled features this is the test of Freedman and Lane 1983
 * (J. Bus. Econ. Stat. 1:292) seen from the feature's side.
 */
public final class AddedFeatures implements Showable {
    private final List<String> units;
    private final double[] score;
    private final double[][] information;
    private final double sigma;

    private AddedFeatures(List<String> units, double[] score, double[][] information, double sigma) {
        this.units = units;
        this.score = score;
        this.information = information;
        this.sigma = sigma;
    }

    /**
     * Prepares the products.
     *
     * @param model the model without any of the candidate features
     * @param unitOfRow unit of each row of the model's design
     */
    public static AddedFeatures to(LinearMixedModel model, List<String> unitOfRow) {
        Checks.sameLength("Adding features", model.design().rows(), "the unit", unitOfRow.size());
        int[] rows = model.data().rows;
        Map<String, Integer> numbers = new LinkedHashMap<>();
        int[] unit = new int[rows.length];
        for (int i = 0; i < rows.length; i++) {
            unit[i] = numbers.computeIfAbsent(unitOfRow.get(rows[i]), label -> numbers.size());
        }
        MixedProjection projection = new MixedProjection(model);
        int count = numbers.size();
        double[] score = sums(projection.apply(model.data().rest), unit, count);
        double[][] information = new double[count][];
        for (int u = 0; u < count; u++) {
            double[] member = new double[rows.length];
            for (int i = 0; i < rows.length; i++) {
                member[i] = unit[i] == u ? 1 : 0;
            }
            information[u] = sums(projection.apply(member), unit, count);
        }
        return new AddedFeatures(List.copyOf(numbers.keySet()), score, information, model.residualStandardDeviation());
    }

    private static double[] sums(double[] values, int[] unit, int count) {
        double[] out = new double[count];
        for (int i = 0; i < values.length; i++) {
            out[unit[i]] += values[i];
        }
        return out;
    }

    /** Returns the units in the order in which a feature's values must come. */
    public List<String> units() {
        return units;
    }

    /** Returns slope divided by its standard error; NaN if the feature does not vary apart from the fixed terms. */
    public double statistic(double[] feature) {
        double[] parts = parts(feature);
        return parts[0] / (sigma * Math.sqrt(parts[1]));
    }

    /** Returns the statistic of a feature whose values are taken in another order. */
    public double statistic(double[] feature, int[] order) {
        return statistic(Vectors.pick(feature, order));
    }

    /** Returns the slope that the feature would have. */
    public Estimate slope(String name, double[] feature) {
        double[] parts = parts(feature);
        return new Estimate(name, parts[0] / parts[1], sigma / Math.sqrt(parts[1]), Double.POSITIVE_INFINITY);
    }

    /**
     * Returns the statistics of many features at once, as {@link #statistic(double[])} gives them one by one but several times as fast.
     *
     * @param features one column of values per feature, in the order of {@link #units()}
     */
    public double[] statistics(List<double[]> features) {
        int count = features.size();
        int n = units.size();
        double[][] values = new double[n][count];
        for (int k = 0; k < count; k++) {
            Checks.sameLength("Adding a feature", n, "the feature", features.get(k).length);
            for (int u = 0; u < n; u++) {
                values[u][k] = features.get(k)[u];
            }
        }
        double[] top = new double[count];
        double[] bottom = new double[count];
        double[] size = new double[count];
        double[] beside = new double[count];
        for (int u = 0; u < n; u++) {
            double[] own = values[u];
            double[] row = information[u];
            // The matrix is symmetric: each pair of units once, all features side by side.
            Arrays.fill(beside, 0);
            for (int v = 0; v < u; v++) {
                double weight = 2 * row[v];
                double[] other = values[v];
                for (int k = 0; k < count; k++) {
                    beside[k] += weight * other[k];
                }
            }
            for (int k = 0; k < count; k++) {
                top[k] += own[k] * score[u];
                bottom[k] += own[k] * (beside[k] + row[u] * own[k]);
                size[k] += Math.abs(row[u]) * own[k] * own[k];
            }
        }
        double[] out = new double[count];
        for (int k = 0; k < count; k++) {
            out[k] = bottom[k] > 1e-10 * size[k] ? top[k] / (sigma * Math.sqrt(bottom[k])) : Double.NaN;
        }
        return out;
    }

    private double[] parts(double[] feature) {
        Checks.sameLength("Adding a feature", units.size(), "the feature", feature.length);
        double top = 0;
        double bottom = 0;
        double size = 0;
        for (int u = 0; u < feature.length; u++) {
            double[] row = information[u];
            double sum = 0;
            for (int v = 0; v < feature.length; v++) {
                sum += row[v] * feature[v];
            }
            top += feature[u] * score[u];
            bottom += feature[u] * sum;
            size += Math.abs(row[u]) * feature[u] * feature[u];
        }
        return new double[] {top, bottom > 1e-10 * size ? bottom : Double.NaN};
    }

    @Override
    public String toString() {
        return "room for added features in " + units.size() + " units";
    }
}
