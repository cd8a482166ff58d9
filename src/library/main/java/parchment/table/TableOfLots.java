package parchment.table;

import java.util.Optional;
import parchment.logbook.Logbook;
import parchment.logbook.Lot;
import parchment.quantity.Unit;
import tech.tablesaw.api.Table;

/** A row for each purchase of green coffee. */
final class TableOfLots {
    private static final Unit GRAMS_PER_LITRE = Unit.labelled("g/L").withDigits(0);

    private TableOfLots() {}

    static Table of(Logbook logbook) {
        return Rows.of(logbook.lots(), logbook.readerUnit())
                .text("lot", lot -> Optional.of(lot.name()))
                .text("origin", Lot::origin)
                .text("process", Lot::process)
                .text("variety", Lot::variety)
                .text("decaffeination", Lot::decaffeination)
                .date("harvested on", Lot::harvestedOn)
                .date("arrived on", Lot::arrivedOn)
                .text("storage", Lot::storage)
                .text("screen size", Lot::screenSize)
                .number("moisture", Unit.SHARE, lot -> lot.moisture().orElse(Double.NaN))
                .number("density", GRAMS_PER_LITRE, lot -> lot.density().orElse(Double.NaN))
                .text("note", Lot::note)
                .extras(Lot::extras)
                .table(TableNames.of("Lots", logbook));
    }
}
