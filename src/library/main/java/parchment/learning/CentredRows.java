package parchment.learning;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import parchment.feature.BatchTable;
import parchment.feature.Feature;
import parchment.logbook.Batch;
import parchment.period.ProbePeriods;

/**
 * The features of batches as the methods of this room need them: each counted from the mean of its lot and probe period and brought to a
 * common size, so that neither a lot's level nor a move of the probe passes for the roast.
 *
 * @param batches the batches, one per row
 * @param names the features that are known of most batches and vary, from left to right
 * @param rows one row per batch; a number that is missing counts as the mean of its lot and period
 * @param filled how many numbers were missing
 * @param leftOut the features that are missing in more than a fifth of the batches, or do not vary
 */
record CentredRows(List<Batch> batches, List<String> names, List<double[]> rows, int filled, List<String> leftOut) {
    /** A column that is missing more often is left out; common practice, no source. */
    private static final double MOST_MISSING = 0.2;

    CentredRows {
        batches = List.copyOf(batches);
        names = List.copyOf(names);
        rows = List.copyOf(rows);
        leftOut = List.copyOf(leftOut);
    }

    /** Measures the given features of those batches of a table that are named. */
    static CentredRows of(BatchTable table, List<Feature> features, Set<String> wanted) {
        ProbePeriods periods = ProbePeriods.of(table.logbook());
        List<Integer> at = new ArrayList<>();
        List<Batch> batches = new ArrayList<>();
        List<String> groups = new ArrayList<>();
        for (int i = 0; i < table.size(); i++) {
            Batch batch = table.batches().get(i);
            if (wanted.contains(batch.name())) {
                at.add(i);
                batches.add(batch);
                groups.add(batch.lot().orElse("") + "\n" + periods.key(batch));
            }
        }
        List<String> names = new ArrayList<>();
        List<String> leftOut = new ArrayList<>();
        List<double[]> columns = new ArrayList<>();
        int filled = 0;
        for (Feature feature : features) {
            double[] all = table.values(feature);
            double[] column = at.stream().mapToDouble(i -> all[i]).toArray();
            int missing =
                    (int) Arrays.stream(column).filter(v -> !Double.isFinite(v)).count();
            Optional<double[]> centred =
                    missing > MOST_MISSING * column.length ? Optional.empty() : centred(column, groups);
            if (centred.isPresent()) {
                names.add(feature.name());
                columns.add(centred.get());
                filled += missing;
            } else {
                leftOut.add(feature.name());
            }
        }
        List<double[]> rows = new ArrayList<>();
        for (int i = 0; i < batches.size(); i++) {
            int row = i;
            rows.add(columns.stream().mapToDouble(column -> column[row]).toArray());
        }
        return new CentredRows(batches, names, rows, filled, leftOut);
    }

    /** Returns a column with a mean of 0 in every group and a standard deviation of 1 in all; nothing if it does not vary. */
    static Optional<double[]> centred(double[] column, List<String> groups) {
        Map<String, double[]> sums = new LinkedHashMap<>();
        for (int i = 0; i < column.length; i++) {
            if (Double.isFinite(column[i])) {
                double[] sum = sums.computeIfAbsent(groups.get(i), key -> new double[2]);
                sum[0] += column[i];
                sum[1]++;
            }
        }
        double[] out = new double[column.length];
        double squares = 0;
        double size = 0;
        for (int i = 0; i < column.length; i++) {
            double[] sum = sums.getOrDefault(groups.get(i), new double[] {0, 1});
            out[i] = Double.isFinite(column[i]) ? column[i] - sum[0] / sum[1] : 0;
            squares += out[i] * out[i];
            size = Math.max(size, Double.isFinite(column[i]) ? Math.abs(column[i]) : 0);
        }
        double deviation = Math.sqrt(squares / column.length);
        if (!(deviation > 1e-9 * size)) {
            return Optional.empty();
        }
        return Optional.of(Arrays.stream(out).map(v -> v / deviation).toArray());
    }
}
