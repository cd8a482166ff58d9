package parchment.gather;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;

/**
 * Collects what each column of a table of scores is taken for, while that is settled, with the questions that are left.
 */
final class ScoreRoles {
    static final Set<ScorePart> NAMES_OF_CUPS = Set.of(ScorePart.BATCH, ScorePart.CODE, ScorePart.LOT);

    private final Map<ScorePart, Integer> keys = new EnumMap<>(ScorePart.class);
    private final Set<Integer> scores = new HashSet<>();
    private final List<Integer> notes = new ArrayList<>();
    private final List<Integer> others = new ArrayList<>();

    private final List<String> open = new ArrayList<>();

    /** Returns what the columns leave open: a question each. */
    List<String> open() {
        return open;
    }

    void ask(String question) {
        open.add(question);
    }

    /** Returns the column of each thing that a cup is known by. */
    Map<ScorePart, Integer> keys() {
        return keys;
    }

    /** Returns the columns of scores, from the left. */
    List<Integer> scores() {
        return scores.stream().sorted().toList();
    }

    List<Integer> notes() {
        return notes;
    }

    /** Returns the columns that are nothing a table of cups has. */
    List<Integer> others() {
        return others;
    }

    boolean has(ScorePart part) {
        return keys.containsKey(part);
    }

    boolean isTaken(int column) {
        return keys.containsValue(column)
                || notes.contains(column)
                || others.contains(column)
                || scores.contains(column);
    }

    void score(int column) {
        scores.add(column);
    }

    void note(int column) {
        notes.add(column);
    }

    void other(int column) {
        others.add(column);
    }

    /** Takes a column for a part, if no other is. */
    void take(ScorePart part, int column) {
        if (keys.putIfAbsent(part, column) != null) {
            others.add(column);
        }
    }

    /** Takes a column for a part instead of the one before. */
    void replace(ScorePart part, int column) {
        Integer before = keys.put(part, column);
        if (before != null) {
            others.add(before);
        }
    }
}
