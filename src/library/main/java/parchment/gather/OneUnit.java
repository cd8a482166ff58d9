package parchment.gather;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import parchment.sheet.Header;
import parchment.sheet.Numbers;

/**
 * Writes what the lists of a folder have in several units in one, that of most rows: the logbook has one column for a mass or a temperature, and would not
 * read a second one.
 */
final class OneUnit {
    private static final Set<ListMeaning.Kind> CONVERTED =
            Set.of(ListMeaning.Kind.MASS, ListMeaning.Kind.ROAST_TEMPERATURE, ListMeaning.Kind.ROOM_TEMPERATURE);

    private OneUnit() {}

    /** Returns the rows with each quantity in one unit; what was converted is told. */
    static List<ListedBatch> of(List<ListedBatch> rows, GatherQuestions questions) {
        Map<String, Map<String, Integer>> units = new LinkedHashMap<>();
        for (ListedBatch row : rows) {
            row.written().keySet().stream().filter(OneUnit::isConverted).forEach(heading -> {
                Header header = Header.parse(heading);
                units.computeIfAbsent(header.name(), name -> new LinkedHashMap<>())
                        .merge(header.unit(), 1, Integer::sum);
            });
        }
        units.values().removeIf(counts -> counts.size() < 2);
        Map<String, String> wanted = new LinkedHashMap<>();
        units.forEach((name, counts) -> {
            // The first of those that as many rows have.
            String most = counts.entrySet().stream()
                    .reduce((one, other) -> other.getValue() > one.getValue() ? other : one)
                    .orElseThrow()
                    .getKey();
            wanted.put(name, most);
            questions.leaveOut("The " + name + " stands in " + String.join(" and ", counts.keySet())
                    + " in the lists; all are written in " + most + ".");
        });
        return wanted.isEmpty()
                ? rows
                : rows.stream().map(row -> converted(row, wanted)).toList();
    }

    private static boolean isConverted(String heading) {
        Header header = Header.parse(heading);
        return !header.unit().isEmpty()
                && ListMeaning.of(header.name())
                        .filter(meaning -> CONVERTED.contains(meaning.kind()))
                        .isPresent();
    }

    private static ListedBatch converted(ListedBatch row, Map<String, String> wanted) {
        Map<String, String> written = new LinkedHashMap<>();
        List<String> notes = new ArrayList<>(row.notes());
        row.written().forEach((heading, value) -> {
            Header header = Header.parse(heading);
            String unit = wanted.getOrDefault(header.name(), "");
            if (unit.isEmpty() || !isConverted(heading) || unit.equals(header.unit()) || value.isBlank()) {
                written.putIfAbsent(heading, value);
                return;
            }
            double number = Numbers.parse(value, Numbers.Decimal.POINT);
            Optional<String> other = CellUnit.between(header.unit(), unit)
                    .filter(conversion -> !Double.isNaN(number))
                    .map(conversion -> Numbers.written(conversion.of(number)));
            // What is no number cannot be converted, and is not lost under a heading that is not read.
            other.ifPresentOrElse(
                    text -> written.putIfAbsent(header.name() + " [" + unit + "]", text),
                    () -> notes.add(heading + " " + value));
        });
        return new ListedBatch(
                row.name(), row.roastedAt(), row.day(), written, row.marks(), notes, row.table(), row.line());
    }
}
