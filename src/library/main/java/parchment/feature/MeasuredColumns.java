package parchment.feature;

import java.util.ArrayList;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.WeakHashMap;
import parchment.display.Progress;
import parchment.feature.path.BatchPath;
import parchment.feature.path.Measured;
import parchment.logbook.Logbook;

/**
 * Keeps the paths of one logbook's batches, and each feature once it was measured on them.
 *
 * <p>A feature is known again by being the same object, as the built-in ones are; a feature that nobody holds any more is let go.
 */
final class MeasuredColumns {
    private final List<BatchPath> paths;
    private final Map<Feature, List<Measured>> columns = new WeakHashMap<>();

    private MeasuredColumns(List<BatchPath> paths) {
        this.paths = paths;
    }

    static MeasuredColumns of(Logbook logbook) {
        return new MeasuredColumns(BatchPath.of(logbook));
    }

    List<BatchPath> paths() {
        return paths;
    }

    /** Returns one row per batch, one column per feature; measures those features that were not measured before. */
    Measured[][] cells(List<Feature> features) {
        List<List<Measured>> asked = new ArrayList<>();
        Map<Feature, List<Measured>> fresh = measure(
                features.stream().filter(feature -> known(feature).isEmpty()).toList());
        for (Feature feature : features) {
            asked.add(known(feature).orElseGet(() -> fresh.getOrDefault(feature, List.of())));
        }
        Measured[][] cells = new Measured[paths.size()][features.size()];
        for (int j = 0; j < asked.size(); j++) {
            for (int i = 0; i < cells.length; i++) {
                cells[i][j] = asked.get(j).get(i);
            }
        }
        return cells;
    }

    private synchronized Optional<List<Measured>> known(Feature feature) {
        return Optional.ofNullable(columns.get(feature));
    }

    private synchronized void keep(Map<Feature, List<Measured>> fresh) {
        columns.putAll(fresh);
    }

    // Not locked: a feature of the reader's own may ask for a table of the same logbook.
    private Map<Feature, List<Measured>> measure(List<Feature> fresh) {
        Map<Feature, List<Measured>> measured = new IdentityHashMap<>();
        if (fresh.isEmpty()) {
            return measured;
        }
        try (Progress progress = Progress.of(paths.size(), "measuring batches")) {
            List<List<Measured>> rows = paths.parallelStream()
                    .map(path -> {
                        List<Measured> row = fresh.stream()
                                .map(feature -> feature.measure(path))
                                .toList();
                        progress.step();
                        return row;
                    })
                    .toList();
            for (int j = 0; j < fresh.size(); j++) {
                int column = j;
                measured.put(
                        fresh.get(j), rows.stream().map(row -> row.get(column)).toList());
            }
        }
        keep(measured);
        return measured;
    }
}
