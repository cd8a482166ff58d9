package parchment.gather;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.regex.Pattern;
import parchment.sheet.Words;

/** Keeps the day that stands alone on a row above other rows, as on a page of a notebook, for each of them. */
final class RowDays {
    private static final int LONGEST_DAY = 32;
    private static final int LONGEST_TITLE = 48;

    /** A day has as many roasts at most (common practice, no source). */
    private static final int MOST_A_DAY = 60;

    /** What says when a page was made, and nothing of the roasts on it. */
    private static final Pattern PRINTED = Pattern.compile(
            "(?iu)print|export|creat|updat|until|since|stand|druck|erstellt|imprim|imprés|créé|mis à jour|stampa|depuis|desde|seit|bis |from|ab ");

    private static final String DAY = "Date";

    private final List<String> days = new ArrayList<>();
    private String day = "";

    /** Returns whether a row of a table of three columns or more has a day and nothing else. */
    static boolean isDay(List<String> cells) {
        List<String> filled = cells.stream().filter(cell -> !cell.isEmpty()).toList();
        return cells.size() >= 3 && filled.size() == 1 && isDay(filled.get(0), LONGEST_DAY);
    }

    /** Returns whether a cell is a day, or a few words with one, such as "Tuesday, 3 June 2031" or "Week 23, 3.6.2031". */
    private static boolean isDay(String cell, int longest) {
        return CellForm.of(cell) == CellForm.DATE
                || cell.length() < longest && WrittenDay.find(cell).isPresent() && CellForm.of(cell) == CellForm.WORDS;
    }

    /** Returns the day that stands alone on the last row above a table of roasts that fit into a day; the day of a printout is none. */
    static Optional<String> above(FoundTable table) {
        if (table.above().isEmpty() || table.rows().size() > MOST_A_DAY) {
            return Optional.empty();
        }
        List<String> filled = table.above().get(table.above().size() - 1).stream()
                .map(String::strip)
                .filter(cell -> !cell.isEmpty())
                .toList();
        return filled.size() == 1
                        && isDay(filled.get(0), LONGEST_TITLE)
                        && !PRINTED.matcher(filled.get(0)).find()
                ? Optional.of(filled.get(0))
                : Optional.empty();
    }

    void begin(List<String> cells) {
        day = cells.stream().filter(cell -> !cell.isEmpty()).findFirst().orElse("");
    }

    /** Gives the day to the row with which there are so many. */
    void give(int rows) {
        if (!day.isEmpty() || !days.isEmpty()) {
            while (days.size() < rows - 1) {
                days.add("");
            }
            days.add(day);
        }
    }

    void remove(int row) {
        if (!days.isEmpty()) {
            days.remove(row);
        }
    }

    /** Returns a table with each row's day as a column of its own, if there are any. */
    FoundTable beside(FoundTable table) {
        if (days.isEmpty() || days.size() != table.rows().size()) {
            return table;
        }
        List<String> headings = new ArrayList<>(table.headings());
        headings.add(DAY);
        List<List<String>> dated = new ArrayList<>();
        for (int r = 0; r < days.size(); r++) {
            List<String> row = new ArrayList<>(table.rows().get(r));
            row.add(days.get(r));
            dated.add(row);
        }
        List<String> told = new ArrayList<>(table.leftOut());
        told.add("Days stand alone on rows: each row got the day above it, as a column " + Words.quote(DAY) + ".");
        return new FoundTable(table.sheet(), table.above(), headings, dated, table.lines(), told);
    }
}
