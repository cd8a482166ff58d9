package parchment.gather;

import java.util.ArrayList;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import parchment.sheet.Numbers;
import parchment.sheet.Sheet;

/** Cuts a table of readings in which each row names its batch into one table a batch. */
final class BatchBeside {
    /** A score sheet names a batch on a row for each cupper and cup, and seldom on more than 25 (common practice, no source). */
    private static final int FEWEST = 30;

    /** Where something rises from row to row of each batch, as only a clock does, so many readings are enough. */
    private static final int FEWEST_WITH_CLOCK = 10;

    private BatchBeside() {}

    /** Returns the parts, each as if it stood on a tab with the batch's name; the table itself if no column names batches so. */
    static List<FoundTable> parts(FoundTable table) {
        for (int i = 0; i < table.headings().size(); i++) {
            if (!BatchNumbers.isWord(table.headings().get(i))) {
                continue;
            }
            Map<String, List<Integer>> rows = new LinkedHashMap<>();
            for (int r = 0; r < table.rows().size(); r++) {
                rows.computeIfAbsent(table.rows().get(r).get(i).strip(), name -> new ArrayList<>())
                        .add(r);
            }
            int fewest = rows.values().stream().mapToInt(List::size).min().orElse(0);
            boolean batches = fewest >= FEWEST || fewest >= FEWEST_WITH_CLOCK && hasClock(table, rows.values());
            if (batches && !rows.containsKey("")) {
                List<FoundTable> parts = new ArrayList<>();
                rows.forEach((name, of) -> parts.add(part(table, name, of)));
                return parts;
            }
        }
        return List.of(table);
    }

    private static boolean hasClock(FoundTable table, Collection<List<Integer>> batches) {
        for (int c = 0; c < table.headings().size(); c++) {
            List<String> cells = table.column(c);
            if (batches.stream()
                    .allMatch(rows -> rises(cells, rows, table.sheet().decimal()))) {
                return true;
            }
        }
        return false;
    }

    private static boolean rises(List<String> cells, List<Integer> rows, Numbers.Decimal decimal) {
        double before = Double.NEGATIVE_INFINITY;
        for (int row : rows) {
            String cell = cells.get(row);
            double here = CellForm.of(cell) == CellForm.CLOCK
                    ? ColumnTimes.seconds(cell, ColumnTimes.MINUTES_AND_SECONDS, decimal)
                    : Numbers.parse(cell, decimal);
            if (!(here > before)) {
                return false;
            }
            before = here;
        }
        return true;
    }

    private static FoundTable part(FoundTable table, String name, List<Integer> rows) {
        Sheet sheet = table.sheet();
        String tab = sheet.tab().isEmpty() ? name : sheet.tab() + " " + name;
        return new FoundTable(
                new Sheet(sheet.file(), tab, sheet.delimiter(), sheet.decimal(), List.of()),
                Stream.concat(table.above().stream(), Stream.of(List.of("Batch", name)))
                        .toList(),
                table.headings(),
                rows.stream().map(table.rows()::get).toList(),
                rows.stream().map(table.lines()::get).toList(),
                table.leftOut());
    }
}
