package parchment.gather;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import parchment.sheet.DateOrder;
import parchment.sheet.Words;

/**
 * What the joining reads of a list of batches, and what was told while it was read.
 *
 * @param batches one for each row, in the list's order; two rows of one batch stay two
 * @param told what could not be read, what was converted, what stands twice: a sentence each
 */
record BatchList(List<ListedBatch> batches, List<String> told) {
    BatchList {
        batches = List.copyOf(batches);
        told = List.copyOf(told);
    }

    /** Reads the rows of a list whose columns are known; the order decides dates that do not say which number is the day. */
    static BatchList of(ListColumns columns, DateOrder order) {
        List<String> told = new ArrayList<>(columns.table().leftOut());
        List<ListedBatch> batches = new BatchRows(columns, order, told).read();
        twice(batches, told);
        return new BatchList(batches, told);
    }

    private static void twice(List<ListedBatch> batches, List<String> told) {
        Map<String, ListedBatch> first = new LinkedHashMap<>();
        for (ListedBatch batch : batches) {
            ListedBatch before = first.putIfAbsent(Clues.plain(batch.name()), batch);
            if (before == null || batch.name().isEmpty()) {
                continue;
            }
            List<String> other = new ArrayList<>();
            batch.written().forEach((heading, value) -> {
                String was = before.written().getOrDefault(heading, value);
                if (!was.equals(value)) {
                    other.add(heading + " " + Words.quote(was) + " and " + Words.quote(value));
                }
            });
            batch.marks().forEach((mark, seconds) -> {
                if (Math.abs(before.marks().getOrDefault(mark, seconds) - seconds) > 1) {
                    other.add("the " + mark);
                }
            });
            if (!batch.day()
                    .or(() -> batch.roastedAt().map(at -> at.toLocalDate()))
                    .equals(before.day().or(() -> before.roastedAt().map(at -> at.toLocalDate())))) {
                other.add("the day");
            }
            told.add("Batch " + Words.quote(batch.name()) + " stands on lines " + before.line() + " and " + batch.line()
                    + (other.isEmpty()
                            ? ", without a difference."
                            : "; they differ in " + String.join(", ", other) + "."));
        }
    }
}
