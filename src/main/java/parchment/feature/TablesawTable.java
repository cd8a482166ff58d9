package parchment.feature;

import java.util.List;
import parchment.logbook.Batch;
import parchment.quantity.Unit;
import tech.tablesaw.api.DateTimeColumn;
import tech.tablesaw.api.DoubleColumn;
import tech.tablesaw.api.StringColumn;
import tech.tablesaw.api.Table;
import tech.tablesaw.columns.numbers.NumberColumnFormatter;

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
            DoubleColumn column = DoubleColumn.create(heading, batches.values(feature));
            // What is printed is rounded to what the number is worth; the column itself keeps every digit.
            column.setPrintFormatter(new Rounded(kept(feature)));
            table.addColumns(column);
        }
        return table;
    }

    /** Returns the unit in which numbers are kept: a share from 0 to 1 has two decimals more than per cent. */
    private static Unit kept(Feature feature) {
        boolean share = "%".equals(feature.unit().toString());
        return Unit.labelled("").withDigits(feature.unit().digits() + (share ? 2 : 0));
    }

    private static final class Rounded extends NumberColumnFormatter {
        private final Unit unit;

        Rounded(Unit unit) {
            this.unit = unit;
        }

        @Override
        public String format(double value) {
            return Double.isNaN(value) ? "" : unit.number(value);
        }
    }
}
