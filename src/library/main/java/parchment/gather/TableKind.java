package parchment.gather;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/**
 * What a table is taken for, and why; it decides who reads it further.
 *
 * @param what what it is
 * @param score how well it fits, from 0 to 1
 * @param reason why, as the rest of a sentence that begins with the table
 */
record TableKind(What what, double score, String reason) {
    /** Less than this is nothing: it is left to a person. */
    static final double LEAST = 0.4;

    /** Names what a table can be. */
    enum What {
        BATCHES("a list of batches"),
        LOTS("a list of lots"),
        SHORT_NAMES("a list of short names of lots"),
        UPKEEP("a list of work on a machine"),
        KEY("a key of blind codes"),
        SCORES("a score sheet"),
        RECORDING("a recording"),
        NOTHING("none of these");

        private final String words;

        What(String words) {
            this.words = words;
        }

        String words() {
            return words;
        }
    }

    /** Returns what a table is, of what this room's lists and recordings claim. */
    static TableKind of(FoundTable table, Clues clues) {
        return of(table, clues, List.of());
    }

    /** Returns what a table is, where others (score sheets and keys) claim it too: the highest score wins. */
    static TableKind of(FoundTable table, Clues clues, List<TableKind> claims) {
        List<TableKind> all = new ArrayList<>(TableClaims.of(table, clues));
        all.addAll(claims);
        return all.stream()
                .max(Comparator.comparingDouble(TableKind::score))
                .filter(best -> best.score() >= LEAST)
                .orElse(new TableKind(What.NOTHING, 0, "has nothing that a list, a score sheet or a recording has"));
    }
}
