package parchment.gather;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import parchment.logbook.LogbookFiles;

/**
 * Gives rows of cups the numbers that another version of their table has for them: a cup that stood alone has no number, and is cup 1 once the sheet has a second one of
 * that batch and cupper. It is the same cup, and no third one.
 */
final class NumberedCups {
    private static final String CUP = "cup";

    private NumberedCups() {}

    /**
     * Returns the rows, those without a number as their cups are numbered in the other version: the one with the same scores, else the next that no row has yet.
     *
     * @param name the table's file
     */
    static List<Map<String, String>> as(List<Map<String, String>> other, List<Map<String, String>> rows, String name) {
        if (!name.equals(LogbookFiles.CUPPINGS)) {
            return rows;
        }
        Map<String, List<Map<String, String>>> free = new LinkedHashMap<>();
        other.stream()
                .filter(row -> row.containsKey(CUP))
                .forEach(row -> free.computeIfAbsent(ofBatch(row, name), key -> new ArrayList<>())
                        .add(row));
        rows.stream()
                .filter(row -> row.containsKey(CUP))
                .forEach(row -> free.getOrDefault(ofBatch(row, name), new ArrayList<>())
                        .removeIf(cup -> number(cup).equals(number(row))));
        List<Map<String, String>> numbered = new ArrayList<>(rows);
        // The same scores first, so that no other row takes the number of a cup that is there.
        for (Alike alike : Alike.values()) {
            numbered.replaceAll(row -> row.containsKey(CUP)
                    ? row
                    : taken(row, free.getOrDefault(ofBatch(row, name), new ArrayList<>()), alike));
        }
        return numbered;
    }

    private enum Alike {
        SAME_SCORES,
        ANY
    }

    private static Map<String, String> taken(Map<String, String> row, List<Map<String, String>> free, Alike alike) {
        for (Map<String, String> cup : free) {
            Map<String, String> numbered = new LinkedHashMap<>(row);
            numbered.put(CUP, number(cup));
            if (alike == Alike.ANY || numbered.equals(cup)) {
                free.remove(cup);
                return numbered;
            }
        }
        return row;
    }

    private static String number(Map<String, String> row) {
        return row.getOrDefault(CUP, "");
    }

    private static String ofBatch(Map<String, String> row, String name) {
        Map<String, String> without = new LinkedHashMap<>(row);
        without.remove(CUP);
        return KeptRows.key(without, name);
    }
}
