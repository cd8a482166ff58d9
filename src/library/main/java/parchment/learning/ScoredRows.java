package parchment.learning;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;
import parchment.feature.BatchTable;
import parchment.feature.Feature;
import parchment.logbook.Batch;
import parchment.logbook.Logbook;
import parchment.logbook.written.CupScores;

/**
 * The table that the yardstick learns from: the level of each scored batch beside its features.
 *
 * @param features the features, counted from the mean of lot and probe period
 * @param levels the level of each batch, in points
 * @param notDated scored batches that were left out because no roast day is written
 */
record ScoredRows(CentredRows features, List<Double> levels, int notDated) {
    ScoredRows {
        levels = List.copyOf(levels);
    }

    static ScoredRows of(String attribute, Logbook logbook, List<Feature> asked) {
        Map<String, Double> found = BatchLevels.of(logbook, attribute);
        // Too few or all alike to take cuppers and cuppings out: as they were written, so that they are counted.
        Map<String, Double> levels = found.isEmpty() ? asWritten(attribute, logbook) : found;
        Set<String> dated = new LinkedHashSet<>();
        int notDated = 0;
        for (Batch batch : logbook.batches()) {
            if (levels.containsKey(batch.name()) && batch.roastDay().isPresent()) {
                dated.add(batch.name());
            } else if (levels.containsKey(batch.name())) {
                notDated++;
            }
        }
        CentredRows rows = CentredRows.of(BatchTable.of(logbook, asked), asked, dated);
        List<Double> own = new ArrayList<>();
        rows.batches().forEach(batch -> own.add(levels.getOrDefault(batch.name(), Double.NaN)));
        return new ScoredRows(rows, own, notDated);
    }

    private static Map<String, Double> asWritten(String attribute, Logbook logbook) {
        return logbook.cups().stream()
                .filter(cup -> Double.isFinite(cup.score(attribute)))
                .collect(Collectors.groupingBy(
                        CupScores::batch, Collectors.averagingDouble(cup -> cup.score(attribute))));
    }

    /** Tells whether there is anything to foretell: levels that differ. */
    boolean differ() {
        return levels.stream().distinct().count() > 1;
    }

    List<String> names() {
        return features.names();
    }

    List<double[]> rows() {
        return features.rows();
    }

    double level(int row) {
        return levels.get(row);
    }

    double[] response() {
        return levels.stream().mapToDouble(Double::doubleValue).toArray();
    }

    List<String> lots() {
        return features.batches().stream().map(batch -> batch.lot().orElse("")).toList();
    }

    List<String> days() {
        return features.batches().stream()
                .map(batch -> batch.roastDay().map(LocalDate::toString).orElse(""))
                .toList();
    }
}
