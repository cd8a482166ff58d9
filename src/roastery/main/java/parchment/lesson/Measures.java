package parchment.lesson;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.NoSuchElementException;
import java.util.function.Predicate;
import parchment.feature.BatchTable;
import parchment.feature.Feature;
import parchment.logbook.Batch;
import parchment.logbook.Logbook;

/** Shows a few features of every batch, as the pages of the lesson need them. */
final class Measures {
    private final Logbook logbook;
    private final Map<String, Map<String, Double>> byFeature = new LinkedHashMap<>();

    private Measures(Logbook logbook) {
        this.logbook = logbook;
    }

    static Measures of(Logbook logbook, Feature... features) {
        Measures measures = new Measures(logbook);
        BatchTable table = BatchTable.of(logbook, features);
        for (Feature feature : features) {
            double[] values = table.values(feature);
            Map<String, Double> byBatch = new LinkedHashMap<>();
            for (int i = 0; i < values.length; i++) {
                byBatch.put(table.batches().get(i).name(), values[i]);
            }
            measures.byFeature.put(feature.name(), byBatch);
        }
        return measures;
    }

    /** Returns a batch's number, NaN if it is missing. */
    double value(String batch, Feature feature) {
        return byFeature.getOrDefault(feature.name(), Map.of()).getOrDefault(batch, Double.NaN);
    }

    /** Returns each batch's number by its name, NaN if it is missing. */
    Map<String, Double> byBatch(Feature feature) {
        Map<String, Double> values = new LinkedHashMap<>();
        logbook.batches().forEach(batch -> values.put(batch.name(), value(batch.name(), feature)));
        return values;
    }

    /** Tells whether a batch has all the numbers. */
    boolean hasAll(Batch batch) {
        return byFeature.values().stream()
                .noneMatch(values -> Double.isNaN(values.getOrDefault(batch.name(), Double.NaN)));
    }

    /**
     * Returns the newest batch with all the numbers for which a condition holds.
     *
     * @throws NoSuchElementException if there is none
     */
    Batch newest(Predicate<Batch> condition) {
        List<Batch> fitting = logbook.batches().stream()
                .filter(this::hasAll)
                .filter(condition)
                .toList();
        if (fitting.isEmpty()) {
            throw new NoSuchElementException("No batch of this seed fits the lesson. Take another seed.");
        }
        return fitting.get(fitting.size() - 1);
    }

    /** Returns the batches whose number is within a tolerance of the highest. */
    List<String> highest(Feature feature, double tolerance) {
        Map<String, Double> values = byFeature.getOrDefault(feature.name(), Map.of());
        double most = values.values().stream()
                .filter(value -> !Double.isNaN(value))
                .mapToDouble(Double::doubleValue)
                .max()
                .orElse(Double.NaN);
        List<String> names = new ArrayList<>();
        values.forEach((name, value) -> {
            if (value >= most - tolerance) {
                names.add(name);
            }
        });
        return names;
    }
}
