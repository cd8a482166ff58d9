package parchment.table;

import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import parchment.feature.BatchTable;
import parchment.feature.Feature;
import parchment.logbook.Batch;
import parchment.logbook.Logbook;
import tech.tablesaw.api.Table;

/** A row for each batch. */
final class TableOfBatches {
    private TableOfBatches() {}

    static Table of(BatchTable measured) {
        Logbook logbook = measured.logbook();
        List<Batch> batches = measured.batches();
        Rows<Integer> rows = Rows.of(IntStream.range(0, measured.size()).boxed().toList(), logbook.readerUnit())
                .text("batch", i -> Optional.of(batches.get(i).name()))
                .time("roasted at", i -> batches.get(i).roastedAt());
        for (Batch.Label label : Batch.Label.values()) {
            if (label != Batch.Label.NOTE) {
                rows.text(label.words(), i -> batches.get(i).label(label));
            }
        }
        for (Feature feature : measured.features()) {
            double[] values = measured.values(feature);
            rows.number(feature.name(), feature.unit(), i -> values[i]);
        }
        return rows.text("note", i -> batches.get(i).label(Batch.Label.NOTE))
                .extras(i -> batches.get(i).extras())
                .table(TableNames.timed("Batches", logbook));
    }
}
