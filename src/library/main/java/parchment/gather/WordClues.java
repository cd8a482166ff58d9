package parchment.gather;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;
import parchment.sheet.Words;

/**
 * Finds machines, lots and people of the lists in the names and first lines of recordings: a recording that names one of them is hardly the row of another.
 */
final class WordClues {
    private static final List<ListMeaning> TELLING =
            List.of(ListMeaning.MACHINE, ListMeaning.LOT, ListMeaning.OPERATOR);

    private final List<JoinEvidence.Curve> curves;
    private final List<ListedRoast> roasts;

    WordClues(List<JoinEvidence.Curve> curves, List<ListedRoast> roasts) {
        this.curves = curves;
        this.roasts = roasts;
    }

    /** Adds a clue to each pair that something else connects, and whose recording names one machine, lot or person of the lists. */
    void addTo(List<Map<Integer, List<Clue>>> clues) {
        for (ListMeaning meaning : TELLING) {
            Map<String, String> values = values(meaning.words());
            if (values.size() < 2) {
                continue;
            }
            for (int c = 0; c < curves.size(); c++) {
                List<String> found = found(text(curves.get(c)), values.keySet());
                if (found.size() == 1) {
                    String one = found.get(0);
                    clues.get(c).forEach((row, known) -> add(known, meaning, one, values, roasts.get(row)));
                }
            }
        }
    }

    private static void add(
            List<Clue> known, ListMeaning meaning, String one, Map<String, String> values, ListedRoast roast) {
        String plain = plain(roast.written().getOrDefault(meaning.words(), ""));
        if (!values.containsKey(plain) || known.stream().noneMatch(clue -> !clue.against())) {
            return;
        }
        String names = "it names the " + meaning.words() + " " + Words.quote(values.get(one));
        known.add(
                plain.equals(one)
                        ? new Clue(Clue.Kind.WORD, JoinEvidence.SAME_WORD, names)
                        : new Clue(
                                Clue.Kind.WORD,
                                JoinEvidence.OTHER_WORD,
                                names + " and the list says " + Words.quote(values.get(plain))));
    }

    /** Returns the values of a column that can be told in a text, as first written, by their plain writing. */
    private Map<String, String> values(String heading) {
        Map<String, String> values = new LinkedHashMap<>();
        for (ListedRoast roast : roasts) {
            String value = roast.written().getOrDefault(heading, "");
            String plain = plain(value);
            if (plain.length() >= 2 && plain.matches(".*\\p{L}.*")) {
                values.putIfAbsent(plain, value);
            }
        }
        return values;
    }

    /** Returns which values stand in a text; one that is part of another that stands there is not meant. */
    private static List<String> found(String text, Set<String> values) {
        List<String> found = values.stream()
                .filter(value -> text.contains(" " + value + " "))
                .collect(Collectors.toCollection(ArrayList::new));
        List<String> all = List.copyOf(found);
        found.removeIf(value -> all.stream()
                .anyMatch(other -> !other.equals(value) && (" " + other + " ").contains(" " + value + " ")));
        return found;
    }

    private static String text(JoinEvidence.Curve curve) {
        StringBuilder text = new StringBuilder(" ").append(plain(curve.batch().name()));
        curve.folders().forEach(folder -> text.append(" | ").append(plain(folder)));
        curve.batch()
                .recording()
                .ifPresent(recording -> recording
                        .file()
                        .above()
                        .forEach(row -> row.forEach(cell -> text.append(" | ").append(plain(cell)))));
        return text.append(' ').toString();
    }

    private static String plain(String text) {
        return BatchNumbers.words(text);
    }
}
