package parchment.gather;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import parchment.sheet.Sheet;

/** Cuts a table of readings in which each row names its batch into one table a batch. */
final class BatchBeside {
    /** A batch has as many readings, at least. */
    private static final int FEWEST = 30;

    private BatchBeside() {}

    /** Returns the parts, each as if it stood on a tab with the batch's name; the table itself if no column names batches so. */
    static List<Table> parts(Table table) {
        for (int i = 0; i < table.headings().size(); i++) {
            if (!BatchNumbers.isWord(table.headings().get(i))) {
                continue;
            }
            Map<String, List<Integer>> rows = new LinkedHashMap<>();
            for (int r = 0; r < table.rows().size(); r++) {
                rows.computeIfAbsent(table.rows().get(r).get(i).strip(), name -> new ArrayList<>())
                        .add(r);
            }
            boolean batches = !rows.containsKey("") && rows.values().stream().allMatch(of -> of.size() >= FEWEST);
            if (batches) {
                List<Table> parts = new ArrayList<>();
                rows.forEach((name, of) -> parts.add(part(table, name, of)));
                return parts;
            }
        }
        return List.of(table);
    }

    private static Table part(Table table, String name, List<Integer> rows) {
        Sheet sheet = table.sheet();
        String tab = sheet.tab().isEmpty() ? name : sheet.tab() + " " + name;
        return new Table(
                new Sheet(sheet.file(), tab, sheet.delimiter(), sheet.decimal(), List.of()),
                Stream.concat(table.above().stream(), Stream.of(List.of("Batch", name)))
                        .toList(),
                table.headings(),
                rows.stream().map(table.rows()::get).toList(),
                rows.stream().map(table.lines()::get).toList(),
                table.leftOut());
    }
}
