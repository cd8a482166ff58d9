package parchment.drift;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Predicate;
import parchment.feature.BatchTable;
import parchment.feature.Feature;
import parchment.feature.path.OnProbe;
import parchment.logbook.Batch;
import parchment.logbook.Logbook;
import parchment.period.ProbePeriods;

/** The measured and dated batches, in order of time. */
final class WatchedBatches {
    private final BatchTable table;
    private final double[] all;
    final List<Batch> batches;
    final int notMeasured;
    final int earlierProbe;

    WatchedBatches(Logbook logbook, Feature feature) {
        this.table = BatchTable.of(logbook, feature);
        this.all = table.values(feature);
        List<Batch> measured = new ArrayList<>();
        for (int i = 0; i < all.length; i++) {
            Batch batch = table.batches().get(i);
            if (Double.isFinite(all[i]) && batch.roastedAt().isPresent()) {
                measured.add(batch);
            }
        }
        measured.sort(
                Comparator.comparing((Batch b) -> b.roastedAt().orElseThrow().toInstant())
                        .thenComparing(Batch::name));
        this.notMeasured = all.length - measured.size();
        Predicate<Batch> now = feature.onProbe() == OnProbe.FREE_OF_IT
                ? b -> true
                : onTheLatestProbe(measured, ProbePeriods.of(logbook));
        this.batches = measured.stream().filter(now).toList();
        this.earlierProbe = measured.size() - batches.size();
    }

    double value(Batch batch) {
        return all[table.batches().indexOf(batch)];
    }

    /** Keeps what the probe of the batch's own machine read in the latest of its periods that holds such a batch. */
    private static Predicate<Batch> onTheLatestProbe(List<Batch> measured, ProbePeriods periods) {
        Map<Optional<String>, Integer> latest = new HashMap<>();
        measured.forEach(
                batch -> latest.merge(batch.machine(), periods.number(batch).orElse(1), Math::max));
        return batch -> periods.number(batch).orElse(1).equals(latest.get(batch.machine()));
    }
}
