package parchment.gather;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import parchment.sheet.Words;

/**
 * Reads lines that stand alone over parts of a sheet of scores and say whom or what the rows below are of: a cupper's name, a batch, a day.
 */
final class ScoreSections {
    private final Map<Integer, Map<ScorePart, String>> byLine = new TreeMap<>();
    private final List<String> told = new ArrayList<>();

    private ScoreSections() {}

    static ScoreSections of(FoundTable table, ScoreClues clues) {
        ScoreSections sections = new ScoreSections();
        Set<Integer> rows = new HashSet<>(table.lines());
        int last = table.lines().stream().mapToInt(Integer::intValue).max().orElse(0);
        int first = first(table);
        Map<Integer, String> alone = new TreeMap<>();
        for (int line = first; line < last && line <= table.sheet().rows().size(); line++) {
            List<String> filled = table.sheet().rows().get(line - 1).stream()
                    .map(String::strip)
                    .filter(cell -> !cell.isEmpty())
                    .toList();
            if (!rows.contains(line) && filled.size() == 1) {
                alone.put(line, filled.get(0));
            }
        }
        // One name over all rows can be a title; several over parts of the sheet are who scored.
        boolean several =
                lone(table).stream().filter(ScoreSections::isPerson).distinct().count() > 1;
        Map<ScorePart, String> known = new EnumMap<>(ScorePart.class);
        alone.forEach((line, text) -> says(text, clues, several).ifPresent(said -> {
            known.putAll(said);
            sections.byLine.put(line, new EnumMap<>(known));
            ScorePart part = said.keySet().iterator().next();
            sections.told.add("Line " + line + ", " + Words.quote(text) + ", is taken for the "
                    + (part == ScorePart.DAY ? "day of tasting" : part.words()) + " of the rows below it.");
        }));
        return sections;
    }

    // The lines right above the headings belong to this table; what stands above a blank row belongs to the sheet.
    private static int first(FoundTable table) {
        int line = table.lines().stream().mapToInt(Integer::intValue).min().orElse(1);
        int above = 0;
        // A table that was cut out of a larger one has no rows of a sheet around it.
        while (line > 1
                && line - 2 < table.sheet().rows().size()
                && above < table.above().size() + 3) {
            boolean blank = table.sheet().rows().get(line - 2).stream().allMatch(String::isBlank);
            if (blank) {
                break;
            }
            line--;
            above++;
        }
        return line;
    }

    private static List<String> lone(FoundTable table) {
        List<String> lone = new ArrayList<>();
        for (List<String> row : table.sheet().rows()) {
            List<String> filled = row.stream()
                    .map(String::strip)
                    .filter(cell -> !cell.isEmpty())
                    .toList();
            if (filled.size() == 1) {
                lone.add(filled.get(0));
            }
        }
        return lone;
    }

    private static boolean isPerson(String text) {
        return ScoreWords.isName(text) && !ScoreSurroundings.hasCommonWords(text);
    }

    private static Optional<Map<ScorePart, String>> says(String text, ScoreClues clues, boolean several) {
        String bare = ScoreHeads.bare(text);
        if (clues.batches().contains(text) || clues.batches().contains(bare)) {
            return Optional.of(Map.of(ScorePart.BATCH, clues.batches().contains(bare) ? bare : text));
        }
        if (clues.cuppers().stream().anyMatch(bare::equalsIgnoreCase)) {
            return Optional.of(Map.of(ScorePart.CUPPER, bare));
        }
        int colon = text.indexOf(':');
        if (colon > 0) {
            String value = text.substring(colon + 1).strip();
            return value.isEmpty()
                    ? Optional.empty()
                    : ScoreWords.key(text.substring(0, colon)).map(part -> Map.of(part, value));
        }
        if (ScoreClues.isDay(text)) {
            return Optional.of(Map.of(ScorePart.DAY, text));
        }
        boolean one = !text.contains(" ");
        return isPerson(text) && (several || one) ? Optional.of(Map.of(ScorePart.CUPPER, text)) : Optional.empty();
    }

    /** Returns what is said of a row. */
    Map<ScorePart, String> over(int line) {
        Map<ScorePart, String> said = Map.of();
        for (Map.Entry<Integer, Map<ScorePart, String>> section : byLine.entrySet()) {
            if (section.getKey() < line) {
                said = section.getValue();
            }
        }
        return said;
    }

    /** Returns the first that is said of a part; "" if nothing is. */
    String first(ScorePart part) {
        return byLine.values().stream()
                .map(said -> said.getOrDefault(part, ""))
                .filter(text -> !text.isEmpty())
                .findFirst()
                .orElse("");
    }

    /** Returns whether what stands alone on a line is used. */
    boolean usesText(String text) {
        return told.stream().anyMatch(sentence -> sentence.contains(", " + Words.quote(text) + ", is taken"));
    }

    /** Returns whether a sentence about what was left out is about a line that is used here. */
    boolean uses(String sentence) {
        return byLine.keySet().stream().anyMatch(line -> sentence.startsWith("Line " + line + " is a remark"));
    }

    List<String> told() {
        return told;
    }
}
