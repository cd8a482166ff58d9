package parchment.lesson;

import java.util.Collection;
import java.util.Comparator;
import java.util.Locale;
import java.util.Optional;
import parchment.display.Spelling;
import parchment.file.NameForms;

/** Holds the words in which this room refuses what it cannot use. */
final class Checks {
    private Checks() {}

    /** Returns a count with its noun, as in "1 answer" or "3 answers". */
    static String count(long number, String one, String many) {
        return number + " " + (number == 1 ? one : many);
    }

    /** Returns the known word that is nearest to the typed one, if it is near enough to be a slip of the pen. */
    static Optional<String> closest(String typed, Collection<String> known) {
        return known.stream()
                .filter(word -> distance(typed, word) <= StrictMath.max(1, word.length() / 3))
                .min(Comparator.comparingInt(word -> distance(typed, word)));
    }

    private static int distance(String typed, String word) {
        return Spelling.changesOrSwaps(typed.toLowerCase(Locale.ROOT), word.toLowerCase(Locale.ROOT));
    }

    /** Returns the message that a lesson has no question of that name, with the nearest one. */
    static String noSuchQuestion(int lesson, String name, Collection<String> known) {
        return String.format(
                Locale.ROOT,
                "Lesson %d has no question '%s'.%s Its questions are: %s.",
                lesson,
                name,
                closest(name, known)
                        .map(near -> " Did you mean '" + near + "'?")
                        .orElse(""),
                String.join(", ", known));
    }

    /** Returns a path as it is searched for a name: small letters and digits with single dashes between. */
    static String asKey(String path) {
        return NameForms.composed(path)
                .replaceAll("[^\\p{L}\\p{M}\\p{N}]+", "-")
                .toLowerCase(Locale.ROOT);
    }
}
