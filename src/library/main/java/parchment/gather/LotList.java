package parchment.gather;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalInt;
import parchment.sheet.DateOrder;

/**
 * The lots that a list tells of, with what was told while it was read.
 *
 * @param lots one for each row that names a lot, in the list's order
 * @param told what could not be read, was converted or is kept elsewhere: a sentence each
 */
record LotList(List<ListedLot> lots, List<String> told) {
    LotList {
        lots = List.copyOf(lots);
        told = List.copyOf(told);
    }

    /**
     * Reads the rows of a list whose columns are known.
     *
     * @param shortNames the column of short names, if batches use them
     */
    static LotList of(ListColumns columns, OptionalInt shortNames, DateOrder order) {
        List<String> told = new ArrayList<>(columns.table().leftOut());
        return new LotList(new LotListRows(columns, shortNames, order, told).read(), told);
    }

    /** Reads a list of two columns, the short name and the lot. */
    static LotList ofShortNames(ShortNames names) {
        List<ListedLot> lots = new ArrayList<>();
        names.pairs().forEach(pair -> {
            Map<String, String> written = new LinkedHashMap<>();
            written.put("short name", pair.shortName());
            lots.add(new ListedLot(pair.lot(), List.of(pair.shortName()), written, pair.line()));
        });
        return new LotList(lots, List.of());
    }
}
