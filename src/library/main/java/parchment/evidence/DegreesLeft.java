package parchment.evidence;

import java.time.LocalDate;
import java.util.HashMap;
import java.util.Map;

/**
 * Counts the degrees of freedom that the roast days leave for a slope.
 *
 * <p>What is compared between roast days cannot have more than the days less the fixed columns; what is compared between batches of
 * one day has the batches less the days and the columns that vary inside days. With a share w of the feature's spread inside days
 * the two combine as 1 / (w^2 / inside + (1 - w)^2 / between), Satterthwaite's rule (1946) for a sum of two sources. The mixed
 * model's own degrees of freedom are never allowed above this number: a day spread that is estimated as 0 would promise too much.
 */
final class DegreesLeft {
    private final double insideShare;
    private final double inside;
    private final double between;

    private DegreesLeft(double insideShare, double inside, double between) {
        this.insideShare = insideShare;
        this.inside = inside;
        this.between = between;
    }

    static DegreesLeft of(ScoreDesign design) {
        return of(
                design,
                design.form().lots() == ModelForm.Lots.OWN_LEVEL
                        ? design.material().within()
                        : design.centered());
    }

    /** Counts for any comparison of batches, given as one number per batch counted from its lot's mean. */
    static DegreesLeft of(ScoreDesign design, double[] feature) {
        ModelFrame material = design.material();
        Map<LocalDate, double[]> days = new HashMap<>();
        for (TastedBatch batch : material.batches()) {
            double[] sum = days.computeIfAbsent(batch.day(), key -> new double[2]);
            sum[0] += feature[batch.position()];
            sum[1]++;
        }
        double all = 0;
        double within = 0;
        for (TastedBatch batch : material.batches()) {
            double[] sum = days.getOrDefault(batch.day(), new double[] {0, 1});
            double value = feature[batch.position()];
            double rest = value - sum[0] / sum[1];
            all += value * value;
            within += rest * rest;
        }
        int columns = design.columns().size();
        double between = days.size() - 1.0 - columns;
        double inside = (double) material.batches().size() - days.size() - insideColumns(design);
        if (design.form().days() == ModelForm.Days.FIXED) {
            return new DegreesLeft(1, inside, 0);
        }
        return new DegreesLeft(all > 0 ? within / all : 0, inside, between);
    }

    private static int insideColumns(ScoreDesign design) {
        int varying = 0;
        for (Map.Entry<String, double[]> column : design.columns().entrySet()) {
            if (!column.getKey().startsWith("roast day ") && variesInsideDays(design.material(), column.getValue())) {
                varying++;
            }
        }
        return varying;
    }

    private static boolean variesInsideDays(ModelFrame material, double[] column) {
        Map<LocalDate, Double> first = new HashMap<>();
        for (int row = 0; row < column.length; row++) {
            Double seen = first.putIfAbsent(
                    material.batchOf(material.scores().get(row)).day(), column[row]);
            if (seen != null && Math.abs(seen - column[row]) > 1e-9) {
                return true;
            }
        }
        return false;
    }

    /** Returns the share of the feature's spread that lies inside roast days. */
    double insideShare() {
        return insideShare;
    }

    /**
     * Returns the factor by which the variance of the slope grows because the weights of its two sources, inside days and between them,
     * are estimated: 1 + 4 w (1 - w) (1 / inside + 1 / between) (Meier 1953, Biometrics 9:59, for a weighted mean).
     *
     * @param weight the share of the slope's information that comes from inside roast days
     */
    double priceOfWeights(double weight) {
        if (!(weight > 0 && weight < 1) || inside < 1 || between < 1) {
            return 1;
        }
        return 1 + 4 * weight * (1 - weight) * (1 / inside + 1 / between);
    }

    /** Returns the most degrees of freedom that a slope may have; 0 if nothing is left to compare. */
    double most() {
        if (insideShare >= 1 - 1e-9) {
            return Math.max(0, inside);
        }
        if (between < 1 && (insideShare < 0.5 || inside < 1)) {
            return 0;
        }
        double denominator = (1 - insideShare) * (1 - insideShare) / Math.max(1, between);
        if (insideShare > 1e-9) {
            denominator += insideShare * insideShare / Math.max(1, inside);
        }
        return 1 / denominator;
    }
}
