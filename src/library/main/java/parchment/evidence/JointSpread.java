package parchment.evidence;

import java.time.LocalDate;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import parchment.stats.linear.Matrices;
import parchment.stats.mixed.LinearModel;
import parchment.stats.mixed.MixedDesign;

/**
 * Works out how some measures of the batches vary together, as far as the model's slopes rest on it.
 *
 * <p>Each measure's differences inside lots, after the model's other columns are taken out, are split into those inside roast days and
 * those between. A difference between days counts g = s^2 / (s^2 + n d^2) as much, where d^2 is the spread of days, s^2 that of
 * batches inside a day and n the batches per day; this is the weight that a mixed model gives it.
 */
final class JointSpread {
    private final double[][] inside;
    private final double[][] between;
    private final double weight;
    private final double degrees;

    private JointSpread(double[][] inside, double[][] between, double weight, double degrees) {
        this.inside = inside;
        this.between = between;
        this.weight = weight;
        this.degrees = degrees;
    }

    /**
     * Works the spread out.
     *
     * @param measures one number per batch each
     * @param own the design's columns that are these measures or functions of them, so not to be taken out
     * @param dayVariance the variance of the scores between roast days
     * @param batchVariance the variance of a batch's mean score inside a day
     */
    static JointSpread of(
            ScoreDesign design, List<double[]> measures, Set<String> own, double dayVariance, double batchVariance) {
        ModelFrame material = design.material();
        int batches = material.batches().size();
        double[][] rest = new double[measures.size()][];
        int columns = 0;
        for (int k = 0; k < rest.length; k++) {
            MixedDesign others = MixedDesign.of("measure", measures.get(k));
            for (Map.Entry<String, double[]> column : design.columns().entrySet()) {
                if (!own.contains(column.getKey())) {
                    others = others.withCovariate(column.getKey(), batchMeans(material, column.getValue()));
                }
            }
            LinearModel squares = LinearModel.fit(others);
            rest[k] = squares.residuals();
            columns = squares.columnNames().size() - 1;
        }
        double[][] all = new double[rest.length][rest.length];
        double[][] between = new double[rest.length][rest.length];
        int days = products(material, rest, all, between);
        for (int k = 0; k < rest.length; k++) {
            for (int l = 0; l < rest.length; l++) {
                all[k][l] -= between[k][l];
            }
        }
        double perDay = (double) batches / days;
        double weight = batchVariance > 0 ? batchVariance / (batchVariance + perDay * dayVariance) : 1;
        double insideDegrees = Math.max(0, batches - days);
        double betweenDegrees = Math.max(1, days - material.groupMeans().size() - columns);
        return new JointSpread(all, between, weight, insideDegrees + weight * betweenDegrees);
    }

    private static int products(ModelFrame material, double[][] rest, double[][] all, double[][] between) {
        Map<LocalDate, double[]> days = new HashMap<>();
        for (TastedBatch batch : material.batches()) {
            double[] sums = days.computeIfAbsent(batch.day(), key -> new double[rest.length + 1]);
            sums[rest.length]++;
            for (int k = 0; k < rest.length; k++) {
                sums[k] += rest[k][batch.position()];
                for (int l = 0; l < rest.length; l++) {
                    all[k][l] += rest[k][batch.position()] * rest[l][batch.position()];
                }
            }
        }
        for (double[] sums : days.values()) {
            for (int k = 0; k < rest.length; k++) {
                for (int l = 0; l < rest.length; l++) {
                    between[k][l] += sums[k] * sums[l] / sums[rest.length];
                }
            }
        }
        return days.size();
    }

    private static double[] batchMeans(ModelFrame material, double[] rows) {
        double[] sums = new double[material.batches().size()];
        int[] counts = new int[sums.length];
        for (int row = 0; row < rows.length; row++) {
            int batch = material.scores().get(row).batch();
            sums[batch] += rows[row];
            counts[batch]++;
        }
        for (int i = 0; i < sums.length; i++) {
            sums[i] /= counts[i];
        }
        return sums;
    }

    /** Returns the covariance of two measures that slopes rest on. */
    double covariance(int first, int second) {
        return (inside[first][second] + weight * between[first][second]) / degrees;
    }

    /** Returns the covariance of all measures. */
    double[][] covariance() {
        double[][] covariance = new double[inside.length][inside.length];
        for (int k = 0; k < inside.length; k++) {
            for (int l = 0; l < inside.length; l++) {
                covariance[k][l] = covariance(k, l);
            }
        }
        return covariance;
    }

    /** Returns the share of the information on a weighted sum of the measures that comes from inside roast days. */
    double insideWeight(double[] direction) {
        double within = Matrices.form(direction, inside, direction);
        double information = within + weight * Matrices.form(direction, between, direction);
        return information > 0 ? within / information : 0;
    }
}
