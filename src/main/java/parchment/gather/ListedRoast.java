package parchment.gather;

import java.time.Duration;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import parchment.logbook.MarkKind;

/**
 * Holds all rows of lists that are about one batch, put together: where two fill a cell, the first one stands.
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

    List<String> notes() {
        return rows.stream().flatMap(row -> row.notes().stream()).distinct().toList();
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
