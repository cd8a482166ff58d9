package parchment.gather;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.OptionalInt;
import java.util.Set;
import parchment.gather.ListColumn.Confidence;

/**
 * Finds which column of a list of lots names them, which has short names, and which others the table of lots has a place for.
 */
final class LotColumns {
    private static final Set<ListMeaning> OF_LOTS = Set.of(
            ListMeaning.ORIGIN,
            ListMeaning.PROCESS,
            ListMeaning.VARIETY,
            ListMeaning.MOISTURE,
            ListMeaning.DENSITY,
            ListMeaning.ARRIVED_ON,
            ListMeaning.HARVESTED_ON,
            ListMeaning.STORAGE,
            ListMeaning.SCREEN_SIZE,
            ListMeaning.NOTE,
            ListMeaning.BLANK);

    private LotColumns() {}

    /**
     * Returns the columns as a list of lots has them: one lot, and no marks or masses of roasts.
     *
     * @param used the lots that batches name, in small letters
     */
    static ListColumns of(ListColumns found, Set<String> used) {
        int name = name(found, used);
        List<ListColumn> columns = new ArrayList<>();
        for (ListColumn column : found.columns()) {
            if (column.place() == name) {
                String reason = column.meaning() == ListMeaning.LOT ? column.reason() : "names each lot once";
                columns.add(with(column, ListMeaning.LOT, "", reason));
            } else if (OF_LOTS.contains(column.meaning())) {
                columns.add(with(column, column.meaning(), column.unit(), column.reason()));
            } else {
                columns.add(with(column, ListMeaning.EXTRA, "", "is kept under its own heading"));
            }
        }
        return new ListColumns(found.table(), columns);
    }

    private static ListColumn with(ListColumn column, ListMeaning meaning, String unit, String reason) {
        return new ListColumn(column.place(), column.heading(), meaning, unit, reason, Confidence.CERTAIN, List.of());
    }

    /** The column that is named so, unless batches name none of its lots and all that they name in a column of longer words. */
    private static int name(ListColumns found, Set<String> used) {
        int named = Math.max(0, TableClaims.lotPlace(found));
        int best = named;
        for (ListColumn column : found.columns()) {
            boolean better = matches(found.table(), column.place(), used) > matches(found.table(), best, used)
                    && letters(found.table(), column.place()) >= letters(found.table(), named)
                    && isOnce(found.table(), column.place());
            best = better ? column.place() : best;
        }
        return best;
    }

    /** Returns the column whose words batches use instead of the lot's name. */
    static OptionalInt shortNames(ListColumns columns, Set<String> used) {
        FoundTable table = columns.table();
        int name = columns.of(ListMeaning.LOT).map(ListColumn::place).orElse(0);
        int best = -1;
        for (ListColumn column : columns.columns()) {
            boolean other = column.place() != name && isOnce(table, column.place());
            long matches = other ? matches(table, column.place(), used) : 0;
            boolean enough =
                    matches >= 2 || matches == 1 && 2 * matches >= table.rows().size();
            if (enough
                    && letters(table, column.place()) < letters(table, name)
                    && (best < 0 || matches > matches(table, best, used))) {
                best = column.place();
            }
        }
        return best < 0 ? OptionalInt.empty() : OptionalInt.of(best);
    }

    private static long matches(FoundTable table, int place, Set<String> used) {
        return table.column(place).stream()
                .map(LotName::anyCase)
                .filter(used::contains)
                .distinct()
                .count();
    }

    private static int letters(FoundTable table, int place) {
        return table.column(place).stream().mapToInt(String::length).sum();
    }

    /** Two lots may have been given one short name by mistake, which is asked about; what stands on many rows names no lot. */
    private static boolean isOnce(FoundTable table, int place) {
        List<String> cells = table.column(place).stream()
                .filter(cell -> CellForm.of(cell) != CellForm.BLANK)
                .map(cell -> cell.toLowerCase(Locale.ROOT))
                .toList();
        return 2 * new HashSet<>(cells).size() > cells.size();
    }
}
