package parchment.feature;

import java.util.Collection;
import java.util.Locale;
import java.util.Optional;
import parchment.display.Spelling;

/** Finds the name that was probably meant. */
final class Suggestion {
    private Suggestion() {}

    /** Returns the nearest name, if it is near enough to be a slip of the pen. */
    static Optional<String> nearest(String asked, Collection<String> names) {
        String typed = asked.strip().toLowerCase(Locale.ROOT);
        String best = null;
        int least = Integer.MAX_VALUE;
        for (String name : names) {
            int distance = Spelling.changes(typed, name.toLowerCase(Locale.ROOT));
            if (distance < least) {
                least = distance;
                best = name;
            }
        }
        return best == null || least > Math.max(2, best.length() / 3) ? Optional.empty() : Optional.of(best);
    }
}
