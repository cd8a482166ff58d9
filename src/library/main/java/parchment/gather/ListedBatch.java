package parchment.gather;

import java.time.Duration;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import parchment.logbook.MarkKind;

/**
 * What one row of a list adds to one batch.
 *
 * @param name the batch as the row names it, "" if it does not
 * @param roastedAt when it was charged, if a time stands there
 * @param day the day, if only that stands there
 * @param written values under headings of the table of batches, or of their own, as they will be written
 * @param marks seconds since the charge
 * @param notes words for the note
 * @param table the table it stands in
 * @param line the line in its sheet, counted from 1
 */
record ListedBatch(
        String name,
        Optional<LocalDateTime> roastedAt,
        Optional<LocalDate> day,
        Map<String, String> written,
        Map<MarkKind, Double> marks,
        List<String> notes,
        FoundTable table,
        int line) {
    ListedBatch {
        written = Collections.unmodifiableMap(new LinkedHashMap<>(written));
        marks = Collections.unmodifiableMap(new LinkedHashMap<>(marks));
        notes = List.copyOf(notes);
    }

    /** Returns it with its time of the charge moved. */
    ListedBatch moved(Duration by) {
        return new ListedBatch(name, roastedAt.map(at -> at.plus(by)), day, written, marks, notes, table, line);
    }
}
