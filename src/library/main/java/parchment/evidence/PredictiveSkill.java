package parchment.evidence;

import java.time.LocalDate;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;
import parchment.display.Showable;
import parchment.stats.linear.CannotFitException;
import parchment.stats.mixed.MixedDesign;
import parchment.stats.mixed.Prediction;
import parchment.stats.resample.GroupedFolds;

/**
 * Measures how much better the feature lets one foretell scores on roast days that the model has not seen.
 *
 * <p>Whole roast days are left out with all their cups, in parts; the model with and without the feature is fitted to the rest, and
 * both foretell the contrasts inside cuppings: each cup against the mean of its cupper's cups of that cupping. The gain is the share
 * by which the squared misses shrink, with a standard error over roast days. Negative means that the feature misled.
 *
 * @param overSameModel the share gained over the same model without the feature
 * @param overAverage the share gained over calling every cup of a cupping average
 * @param standardError of the first, over roast days
 * @param roastDays how many roast days were foretold
 */
record PredictiveSkill(double overSameModel, double overAverage, double standardError, int roastDays)
        implements Showable {
    /** One-sided 95 % bound: the gain is above it in 95 of 100 logbooks. */
    private static final double ONE_SIDED = 1.645;

    /** With fewer roast days, or fewer on which a cupper had two cups to compare, nothing is said. */
    private static final int FEWEST_DAYS = 10;

    static final PredictiveSkill MISSING = new PredictiveSkill(Double.NaN, Double.NaN, Double.NaN, 0);

    /** Leaves the roast days out in parts; missing if the rest is too small to fit in any part. */
    static PredictiveSkill of(ScoreDesign with, ScoreDesign without, EvidenceSettings settings) {
        ModelFrame material = with.material();
        if (material.roastDays() < Math.max(FEWEST_DAYS, 2 * settings.parts())) {
            return MISSING;
        }
        List<String> days = material.scores().stream()
                .map(score -> material.batchOf(score).day().toString())
                .toList();
        GroupedFolds folds = GroupedFolds.of(days, settings.parts(), settings.seed());
        double[] scores =
                material.scores().stream().mapToDouble(ScoreRow::score).toArray();
        double[] withMiss = new double[scores.length];
        double[] withoutMiss = new double[scores.length];
        MixedDesign full = with.design();
        MixedDesign small = without.design();
        for (GroupedFolds.Fold fold : folds.folds()) {
            try {
                foretell(full, fold, scores, withMiss, material);
                foretell(small, fold, scores, withoutMiss, material);
            } catch (CannotFitException tooFew) {
                return MISSING;
            }
        }
        double[] plainMiss = contrasts(scores, material);
        return summed(material, withMiss, withoutMiss, plainMiss);
    }

    private static void foretell(
            MixedDesign design, GroupedFolds.Fold fold, double[] scores, double[] misses, ModelFrame material) {
        double[] foretold = design.withRows(fold.train()).fit().predict(design, Prediction.AVERAGE_GROUP);
        double[] differences = new double[scores.length];
        for (int row = 0; row < scores.length; row++) {
            differences[row] = scores[row] - foretold[row];
        }
        double[] contrasts = contrasts(differences, material);
        for (int row : fold.test()) {
            misses[row] = contrasts[row];
        }
    }

    /** Takes from each row the mean of its cupper's rows in that cupping; NaN where a cupper had a single cup. */
    private static double[] contrasts(double[] values, ModelFrame material) {
        Map<String, double[]> sums = new HashMap<>();
        for (int row = 0; row < values.length; row++) {
            if (!Double.isNaN(values[row])) {
                double[] sum = sums.computeIfAbsent(material.scores().get(row).sitting(), key -> new double[2]);
                sum[0] += values[row];
                sum[1]++;
            }
        }
        double[] contrasts = new double[values.length];
        for (int row = 0; row < values.length; row++) {
            double[] sum = sums.getOrDefault(material.scores().get(row).sitting(), new double[] {0, 0});
            contrasts[row] = sum[1] < 2 ? Double.NaN : values[row] - sum[0] / sum[1];
        }
        return contrasts;
    }

    private static PredictiveSkill summed(ModelFrame material, double[] with, double[] without, double[] plain) {
        Map<LocalDate, double[]> perDay = new TreeMap<>();
        double[] total = new double[3];
        for (int row = 0; row < with.length; row++) {
            if (Double.isNaN(with[row]) || Double.isNaN(without[row]) || Double.isNaN(plain[row])) {
                continue;
            }
            double[] day = perDay.computeIfAbsent(
                    material.batchOf(material.scores().get(row)).day(), key -> new double[3]);
            double[] squares = {with[row] * with[row], without[row] * without[row], plain[row] * plain[row]};
            for (int k = 0; k < 3; k++) {
                day[k] += squares[k];
                total[k] += squares[k];
            }
        }
        int days = perDay.size();
        if (days < FEWEST_DAYS || !(total[1] > 0) || !(total[2] > 0)) {
            return MISSING;
        }
        double gain = 1 - total[0] / total[1];
        double sum = 0;
        for (double[] day : perDay.values()) {
            double off = day[1] - day[0] - gain * day[1];
            sum += off * off;
        }
        double error = Math.sqrt(sum * days / (days - 1.0)) / total[1];
        return new PredictiveSkill(gain, 1 - total[0] / total[2], error, days);
    }

    /** Says whether there is a gain to speak of. */
    boolean known() {
        return !Double.isNaN(overSameModel);
    }

    /** Returns the lower bound of the gain over the same model, at one-sided 95 %. */
    public double lowerBound() {
        return overSameModel - ONE_SIDED * standardError;
    }

    @Override
    public String toString() {
        if (!known()) {
            return "There are too few roast days, or cuppings with too few cups, to leave days out and foretell them.";
        }
        return String.format(
                Locale.ROOT,
                "On %d roast days left out, knowing the measure made the misses inside cuppings %.1f %% %s (give or take %.1f %%)"
                        + " than the same model without it, and %.1f %% %s than the plain average.",
                roastDays,
                100 * Math.abs(overSameModel),
                overSameModel < 0 ? "larger" : "smaller",
                200 * standardError,
                100 * Math.abs(overAverage),
                overAverage < 0 ? "larger" : "smaller");
    }
}
