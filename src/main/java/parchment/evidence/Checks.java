package parchment.evidence;

import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.Locale;

/** Refuses questions that cannot be asked of a logbook, in words that say what to ask instead. */
final class Checks {
    /** How many single-letter changes a misspelt name may be away from the one that is offered. */
    private static final int NEAR = 3;

    private Checks() {}

    /**
     * Lets through an attribute that is scored, and any at all where nothing was ever scored: that is answered, with "cannot tell".
     *
     * @throws IllegalArgumentException if the logbook scores others but not this one
     */
    static void attribute(String asked, Collection<String> known, String logbook) {
        if (known.isEmpty() || known.contains(asked)) {
            return;
        }
        String near = nearest(asked, known);
        throw new IllegalArgumentException("The logbook '" + logbook + "' has no attribute '" + asked + "'."
                + (near.isEmpty() ? "" : " Did you mean '" + near + "'?") + " Attributes: "
                + String.join(", ", new ArrayList<>(known)) + ".");
    }

    /** @throws IllegalArgumentException if the share does not lie between 0.5 and 1 */
    static double level(double level) {
        if (!(level > 0.5 && level < 1)) {
            throw new IllegalArgumentException(String.format(
                    Locale.ROOT, "An interval's level lies between 0.5 and 1, as in 0.90; it was given %s.", level));
        }
        return level;
    }

    /** @throws IllegalArgumentException if the number is not above 0 */
    static double positive(String what, double value) {
        if (!(value > 0) || Double.isInfinite(value)) {
            throw new IllegalArgumentException(
                    String.format(Locale.ROOT, "%s is a number above 0; it was given %s.", what, value));
        }
        return value;
    }

    private static String nearest(String asked, Collection<String> known) {
        String best = "";
        int least = NEAR + 1;
        for (String name : known) {
            int changes = changes(asked.toLowerCase(Locale.ROOT), name.toLowerCase(Locale.ROOT));
            if (changes < least) {
                least = changes;
                best = name;
            }
        }
        return best;
    }

    /** Counts the letters to insert, remove or replace to get from one word to another (Levenshtein 1966). */
    private static int changes(String from, String to) {
        List<Integer> row = new ArrayList<>();
        for (int j = 0; j <= to.length(); j++) {
            row.add(j);
        }
        for (int i = 1; i <= from.length(); i++) {
            int diagonal = row.get(0);
            row.set(0, i);
            for (int j = 1; j <= to.length(); j++) {
                int above = row.get(j);
                int same = diagonal + (from.charAt(i - 1) == to.charAt(j - 1) ? 0 : 1);
                row.set(j, Math.min(same, Math.min(above, row.get(j - 1)) + 1));
                diagonal = above;
            }
        }
        return row.get(to.length());
    }
}
