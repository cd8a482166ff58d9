package parchment.feature;

import java.util.Collection;
import java.util.Locale;
import java.util.Optional;

/** Finds the name that was probably meant. */
final class Suggestion {
    private Suggestion() {}

    /** Returns the nearest name, if it is near enough to be a slip of the pen. */
    static Optional<String> nearest(String asked, Collection<String> names) {
        String typed = asked.strip().toLowerCase(Locale.ROOT);
        String best = null;
        int least = Integer.MAX_VALUE;
        for (String name : names) {
            int distance = distance(typed, name.toLowerCase(Locale.ROOT));
            if (distance < least) {
                least = distance;
                best = name;
            }
        }
        return Optional.ofNullable(best).filter(name -> least(asked, name) <= Math.max(2, name.length() / 3));
    }

    private static int least(String asked, String name) {
        return distance(asked.strip().toLowerCase(Locale.ROOT), name.toLowerCase(Locale.ROOT));
    }

    /** Number of letters to add, drop or change (Levenshtein 1966). */
    private static int distance(String a, String b) {
        int[] row = new int[b.length() + 1];
        for (int j = 0; j < row.length; j++) {
            row[j] = j;
        }
        for (int i = 1; i <= a.length(); i++) {
            int diagonal = row[0];
            row[0] = i;
            for (int j = 1; j < row.length; j++) {
                int above = row[j];
                int change = diagonal + (a.charAt(i - 1) == b.charAt(j - 1) ? 0 : 1);
                row[j] = Math.min(change, 1 + Math.min(above, row[j - 1]));
                diagonal = above;
            }
        }
        return row[b.length()];
    }
}
