package parchment.evidence;

import java.time.LocalDate;
import java.util.HashMap;
import java.util.Map;
import parchment.stats.LinearModel;
import parchment.stats.MixedDesign;

/**
 * Works out the variance of the feature that the model's slope rests on.
 *
 * <p>The feature's differences inside lots, after the model's other columns are taken out, are split into those inside roast days and
 * those between. A difference between days counts g = s^2 / (s^2 + n d^2) as much, where d^2 is the spread of days, s^2 that of
 * batches inside a day and n the batches per day; this is the weight that a mixed model gives it.
 *
 * @param variance in the measure's unit squared
 * @param insideWeight the share of the slope's information that comes from inside roast days
 */
record MeasureVariance(double variance, double insideWeight) {

    /**
     * Works the variance out.
     *
     * @param dayVariance the variance of the scores between roast days
     * @param batchVariance the variance of a batch's mean score inside a day
     */
    static MeasureVariance of(ScoreDesign design, double dayVariance, double batchVariance) {
        Material material = design.material();
        int batches = material.batches().size();
        MixedDesign others = MixedDesign.of("measure", design.centered());
        for (Map.Entry<String, double[]> column : design.columns().entrySet()) {
            if (!column.getKey().equals(ScoreDesign.FEATURE) && !column.getKey().equals(ScoreDesign.SQUARE)) {
                others = others.withCovariate(column.getKey(), batchMeans(material, column.getValue()));
            }
        }
        LinearModel squares = LinearModel.fit(others);
        double[] rest = squares.residuals();
        Map<LocalDate, double[]> days = new HashMap<>();
        double all = 0;
        for (TastedBatch batch : material.batches()) {
            double[] sum = days.computeIfAbsent(batch.day(), key -> new double[2]);
            sum[0] += rest[batch.position()];
            sum[1]++;
            all += rest[batch.position()] * rest[batch.position()];
        }
        double between = days.values().stream()
                .mapToDouble(sum -> sum[0] * sum[0] / sum[1])
                .sum();
        double perDay = (double) batches / days.size();
        double weight = batchVariance > 0 ? batchVariance / (batchVariance + perDay * dayVariance) : 1;
        int groups = material.groupMeans().size();
        double insideDegrees = Math.max(0, batches - days.size());
        double betweenDegrees =
                Math.max(1, days.size() - groups - squares.columnNames().size() + 1);
        double inside = all - between;
        double information = inside + weight * between;
        return new MeasureVariance(
                information / (insideDegrees + weight * betweenDegrees), information > 0 ? inside / information : 0);
    }

    private static double[] batchMeans(Material material, double[] rows) {
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
}
