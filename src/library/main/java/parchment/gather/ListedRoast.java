package parchment.gather;

import java.time.Duration;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import parchment.logbook.MarkKind;
import parchment.quantity.Elapsed;

/**
 * Puts all rows of lists that are about one batch together: where two fill a cell, the first one stands.
 *
 * @param name the batch as the lists name it; "" if they do not
 * @param rows its rows, in the order of the lists
 */
record ListedRoast(String name, List<ListedBatch> rows) {
    ListedRoast {
        rows = List.copyOf(rows);
    }

    Optional<LocalDateTime> roastedAt() {
        return rows.stream().flatMap(row -> row.roastedAt().stream()).findFirst();
    }

    Optional<LocalDate> day() {
        return roastedAt()
                .map(LocalDateTime::toLocalDate)
                .or(() -> rows.stream().flatMap(row -> row.day().stream()).findFirst());
    }

    Map<String, String> written() {
        Map<String, String> all = new LinkedHashMap<>();
        rows.forEach(row -> row.written().forEach(all::putIfAbsent));
        return all;
    }

    Map<MarkKind, Double> marks() {
        Map<MarkKind, Double> all = new LinkedHashMap<>();
        rows.forEach(row -> row.marks().forEach(all::putIfAbsent));
        return all;
    }

    /** Returns the notes of all rows, and what a later row has other than the first that filled the cell. */
    List<String> notes() {
        Set<String> notes = new LinkedHashSet<>();
        rows.forEach(row -> notes.addAll(row.notes()));
        Map<String, String> known = new LinkedHashMap<>();
        for (ListedBatch row : rows) {
            List<String> other = new ArrayList<>();
            said(row).forEach((heading, value) -> {
                String before = known.putIfAbsent(heading, value);
                if (before != null && !before.equals(value)) {
                    other.add(heading + " " + value);
                }
            });
            if (!other.isEmpty()) {
                notes.add("line " + row.line() + ": " + String.join(", ", other));
            }
        }
        return List.copyOf(notes);
    }

    private static Map<String, String> said(ListedBatch row) {
        Map<String, String> said = new LinkedHashMap<>();
        row.roastedAt()
                .map(at -> at.toString().replace('T', ' '))
                .or(() -> row.day().map(LocalDate::toString))
                .ifPresent(at -> said.put("roasted at", at));
        said.putAll(row.written());
        row.marks()
                .forEach((mark, seconds) ->
                        said.put(mark.words(), Elapsed.seconds(seconds).toString()));
        return said;
    }

    /** Returns the number it has among the batches of its day; empty if it is not numbered so. */
    Optional<String> numberOfDay() {
        return day().map(day -> day + "-")
                .filter(name::startsWith)
                .map(day -> name.substring(day.length()))
                .filter(number -> number.matches("\\p{L}{0,3}\\d{1,4}"));
    }

    /** Returns it with all its times moved. */
    ListedRoast moved(Duration by) {
        return new ListedRoast(name, rows.stream().map(row -> row.moved(by)).toList());
    }

    /** Returns how a person finds it: its name, or the line of its first row. */
    String shown() {
        ListedBatch first = rows.get(0);
        return name.isEmpty()
                ? "line " + first.line() + " of " + first.table().sheet().name()
                : name;
    }
}
