package parchment.evidence;

import java.util.ArrayList;
import java.util.Collection;
import java.util.Locale;
import parchment.display.answer.Spelling;

/** Refuses questions that cannot be asked of a logbook, in words that say what to ask instead. */
final class EvidenceChecks {
    /** How many single-letter changes a misspelt name may be away from the one that is offered. */
    private static final int NEAR = 3;

    private EvidenceChecks() {}

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
            int changes = Spelling.changes(asked.toLowerCase(Locale.ROOT), name.toLowerCase(Locale.ROOT));
            if (changes < least) {
                least = changes;
                best = name;
            }
        }
        return best;
    }
}
