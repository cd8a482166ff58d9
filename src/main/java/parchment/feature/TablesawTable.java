package parchment.feature;

import java.util.List;
import parchment.logbook.Batch;
import tech.tablesaw.api.DateTimeColumn;
import tech.tablesaw.api.DoubleColumn;
import tech.tablesaw.api.StringColumn;
import tech.tablesaw.api.Table;

/** Turns a table of batches into a Tablesaw table. Kept apart so that Tablesaw is loaded only when it is asked for. */
final class TablesawTable {
    private TablesawTable() {}

    static Table of(BatchTable batches) {
        List<Batch> rows = batches.batches();
        StringColumn names = StringColumn.create("batch");
        StringColumn lots = StringColumn.create("lot");
        DateTimeColumn times = DateTimeColumn.create("roasted at");
        for (Batch batch : rows) {
            names.append(batch.name());
            lots.append(batch.lot().orElse(""));
            batch.roastedAt()
                    .ifPresentOrElse(
                            at -> times.append(at.atZoneSameInstant(
                                            batches.logbook().contents().zone())
                                    .toLocalDateTime()),
                            times::appendMissing);
        }
        Table table = Table.create(batches.logbook().name(), names, lots, times);
        for (Feature feature : batches.features()) {
            String unit = feature.unit().toString();
            // Shares are kept from 0 to 1 here, so their column does not say per cent.
            String heading = unit.isEmpty() || "%".equals(unit) ? feature.name() : feature.name() + " [" + unit + "]";
            table.addColumns(DoubleColumn.create(heading, batches.values(feature)));
        }
        return table;
    }
}
