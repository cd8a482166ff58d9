package parchment.gather;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import parchment.sheet.DateOrder;
import parchment.sheet.Words;

/**
 * Reads the days of a list such as 31-01-05 with the year first, where the year last would scatter its rows over years, or into years that are none of the rest of
 * the folder, nor next to one. Where both can be, the year is read last, and that is named.
 */
final class ShortDays {
    private static final int ROWS_LOOKED_AT = 2_000;

    private ShortDays() {}

    /** Returns the lists in their order, with such days in ISO form. */
    static List<FoundTable> settled(List<FoundTable> sheets, List<FoundTable> recordings, GatherQuestions questions) {
        Set<Integer> known = new TreeSet<>();
        Stream.concat(
                        Stream.concat(sheets.stream(), recordings.stream())
                                .flatMap(table -> Stream.concat(
                                        Stream.of(
                                                String.valueOf(
                                                        table.sheet().file().getFileName()),
                                                table.sheet().tab()),
                                        table.above().stream().flatMap(List::stream))),
                        sheets.stream()
                                .flatMap(table -> table.rows().stream()
                                        .limit(ROWS_LOOKED_AT)
                                        .flatMap(List::stream)
                                        .filter(cell -> CellForm.of(cell) == CellForm.DATE)))
                .flatMap(text -> WrittenDay.find(text).stream())
                .filter(day -> !day.isShort() && day.written().matches(".*(19|20)\\d{2}.*"))
                .forEach(day -> known.add(day.year()));
        return sheets.stream().map(table -> settled(table, known, questions)).toList();
    }

    private static FoundTable settled(FoundTable table, Set<Integer> known, GatherQuestions questions) {
        FoundTable settled = table;
        for (int c = 0; c < table.headings().size(); c++) {
            List<WrittenDay> days = days(table.column(c));
            if (days.isEmpty() || days.stream().anyMatch(day -> day.yearFirst().isEmpty())) {
                continue;
            }
            String column = "The days under " + Words.quote(table.headings().get(c)) + ", such as "
                    + Words.quote(days.get(0).written()) + ",";
            boolean first = fits(
                    days.stream()
                            .map(day -> day.yearFirst().orElseThrow().getYear())
                            .collect(Collectors.toCollection(TreeSet::new)),
                    known);
            boolean last = days.stream().allMatch(ShortDays::canEndWithTheYear)
                    && fits(days.stream().map(WrittenDay::year).collect(Collectors.toCollection(TreeSet::new)), known);
            if (first && !last) {
                List<String> told = new ArrayList<>(settled.leftOut());
                told.add(column + " have the year first: with the year last they would be of years far apart, or not"
                        + " of the rest of the folder.");
                settled = yearFirst(settled, c, told);
            } else if (first) {
                questions.leaveOut(TablePlace.of(table).shown() + ": " + column
                        + " could have the year first too; they are read with the year last. Write the year with four"
                        + " digits if that is wrong.");
            }
        }
        return settled;
    }

    /** Returns the days of a column in which all are short; none if any value is something else. */
    private static List<WrittenDay> days(List<String> cells) {
        List<WrittenDay> days = new ArrayList<>();
        for (String cell : cells) {
            if (!cell.isBlank()) {
                Optional<WrittenDay> day = WrittenDay.ofCell(cell).flatMap(written -> WrittenDay.inName(cell.strip()));
                if (day.isEmpty() || !day.get().isShort() || day.get().order().isPresent()) {
                    return List.of();
                }
                days.add(day.get());
            }
        }
        return days;
    }

    private static boolean canEndWithTheYear(WrittenDay day) {
        return day.on(DateOrder.DAY_MONTH_YEAR).isPresent()
                || day.on(DateOrder.MONTH_DAY_YEAR).isPresent();
    }

    /** Years of one list follow one another, and are those of the rest of the folder or next to them. */
    private static boolean fits(TreeSet<Integer> years, Set<Integer> known) {
        return known.isEmpty()
                ? years.last() - years.first() <= 1
                : years.stream().allMatch(year -> known.stream().anyMatch(other -> Math.abs(other - year) <= 1));
    }

    private static FoundTable yearFirst(FoundTable table, int place, List<String> told) {
        List<List<String>> rows = new ArrayList<>();
        for (List<String> row : table.rows()) {
            List<String> dated = new ArrayList<>(row);
            WrittenDay.inName(row.get(place).strip())
                    .flatMap(WrittenDay::yearFirst)
                    .ifPresent(day -> dated.set(
                            place,
                            row.get(place).replaceFirst("(?<!\\d)\\d{2}[-_]\\d{2}[-_]\\d{2}(?!\\d)", day.toString())));
            rows.add(dated);
        }
        return new FoundTable(table.sheet(), table.above(), table.headings(), rows, table.lines(), told);
    }
}
