package parchment.gather;

import java.time.DateTimeException;
import java.time.MonthDay;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import parchment.sheet.Words;

/**
 * Completes days that are written without a year, such as "04.03.", with the one year that the name of the file or the tab, or a line above the list, states.
 */
final class YearlessDays {
    private static final Pattern DAY = Pattern.compile("(\\d{1,2})([./])(\\d{1,2})([./]?)");
    private static final Pattern YEAR = Pattern.compile("(?<!\\d)(?:19|20)\\d{2}(?!\\d)");
    private static final int FEWEST = 2;

    private YearlessDays() {}

    /** Returns the table with such days completed; the same table where it has none, or no year or several are stated. */
    static FoundTable completed(FoundTable table) {
        for (int c = 0; c < table.headings().size(); c++) {
            if (!isColumn(table, c)) {
                continue;
            }
            Set<String> years = years(table);
            List<String> told = new ArrayList<>(table.leftOut());
            String heading = Words.quote(table.headings().get(c));
            if (years.size() != 1 || turnsBack(table.column(c))) {
                told.add("The days under " + heading + " have no year, and "
                        + (years.size() == 1
                                ? "they go from a later month to an earlier one"
                                : years.isEmpty()
                                        ? "none stands in the file's name or above the list"
                                        : "several stand in the file's name and above the list")
                        + ": none is taken. Write the year beside them, or into the file's name.");
                return with(table, c, Optional.empty(), told);
            }
            String year = years.iterator().next();
            told.add("The days under " + heading + " have no year and got that of the file's name, tab or title, "
                    + year + ".");
            return with(table, c, Optional.of(year), told);
        }
        return table;
    }

    /** Every value is a day and a month, with a sign behind it as no number has, or under a word for a date. */
    private static boolean isColumn(FoundTable table, int place) {
        List<String> cells =
                table.column(place).stream().filter(cell -> !cell.isBlank()).toList();
        if (cells.size() < FEWEST || !isDay(cells.get(0).strip())) {
            return false;
        }
        boolean named = TradeWords.of(table.headings().get(place)).strength(ListMeaning.DATE) > 0;
        return cells.stream().map(String::strip).allMatch(cell -> isDay(cell) && (named || cell.endsWith(".")));
    }

    private static boolean isDay(String cell) {
        Matcher day = DAY.matcher(cell);
        return day.matches()
                && (exists(day.group(1), day.group(3))
                        || day.group(2).equals("/") && exists(day.group(3), day.group(1)));
    }

    private static boolean exists(String day, String month) {
        try {
            MonthDay.of(Integer.parseInt(month), Integer.parseInt(day));
            return true;
        } catch (DateTimeException e) {
            return false;
        }
    }

    private static Set<String> years(FoundTable table) {
        Set<String> years = new LinkedHashSet<>();
        Stream.concat(
                        Stream.of(
                                String.valueOf(table.sheet().file().getFileName()),
                                table.sheet().tab()),
                        table.above().stream().flatMap(List::stream))
                .forEach(text -> {
                    Matcher year = YEAR.matcher(text);
                    while (year.find()) {
                        years.add(year.group());
                    }
                });
        return years;
    }

    /** A list over the turn of a year has days of two years. */
    private static boolean turnsBack(List<String> cells) {
        int before = 0;
        boolean up = false;
        boolean down = false;
        for (String cell : cells) {
            Matcher day = DAY.matcher(cell.strip());
            if (day.matches() && day.group(2).equals(".")) {
                int month = Integer.parseInt(day.group(3));
                up |= before > 0 && month > before;
                down |= before > 0 && month < before;
                before = month;
            }
        }
        return up && down || down && turns(cells);
    }

    /** From December to January is a turn; a list with the newest day first goes back month by month. */
    private static boolean turns(List<String> cells) {
        int first = 0;
        int last = 0;
        for (String cell : cells) {
            Matcher day = DAY.matcher(cell.strip());
            if (day.matches()) {
                first = first == 0 ? Integer.parseInt(day.group(3)) : first;
                last = Integer.parseInt(day.group(3));
            }
        }
        return first - last > 6;
    }

    private static FoundTable with(FoundTable table, int place, Optional<String> year, List<String> told) {
        if (year.isEmpty()) {
            return new FoundTable(table.sheet(), table.above(), table.headings(), table.rows(), table.lines(), told);
        }
        List<List<String>> rows = new ArrayList<>();
        for (List<String> row : table.rows()) {
            List<String> dated = new ArrayList<>(row);
            Matcher day = DAY.matcher(row.get(place).strip());
            if (day.matches()) {
                dated.set(place, day.group(1) + day.group(2) + day.group(3) + day.group(2) + year.get());
            }
            rows.add(dated);
        }
        return new FoundTable(table.sheet(), table.above(), table.headings(), rows, table.lines(), told);
    }
}
