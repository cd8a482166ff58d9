package parchment.lesson;

import java.util.Collection;
import java.util.Locale;
import parchment.display.answer.Spelling;
import parchment.file.NameForms;

/** The words in which this room refuses what it cannot use, in one place. */
final class LessonWords {
    private LessonWords() {}

    /** Returns a count with its noun, as in "1 answer" or "3 answers". */
    static String count(long number, String one, String many) {
        return number + " " + (number == 1 ? one : many);
    }

    /** Returns the message that a lesson has no question of that name, with the nearest one. */
    static String noSuchQuestion(int lesson, String name, Collection<String> known) {
        return String.format(
                Locale.ROOT,
                "Lesson %d has no question '%s'.%s Its questions are: %s.",
                lesson,
                name,
                Spelling.question(name, known),
                String.join(", ", known));
    }

    /** Returns a path as it is searched for a name: small letters and digits with single dashes between. */
    static String asKey(String path) {
        return NameForms.composed(path)
                .replaceAll("[^\\p{L}\\p{M}\\p{N}]+", "-")
                .toLowerCase(Locale.ROOT);
    }
}
