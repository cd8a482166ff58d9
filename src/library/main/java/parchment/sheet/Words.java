package parchment.sheet;

import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import parchment.display.answer.Spelling;

/** Puts what a user wrote into a sentence: quoted, shortened, harmless; and finds the name that was probably meant. */
public final class Words {
    private static final int LONGEST_QUOTE = 60;
    private static final int LONGEST_NAME = 250;

    private Words() {}

    /** Returns the text in single quotes, shortened, on one line, without characters that turn the line's direction; or "null". */
    public static String quote(@Nullable String text) {
        if (text == null) {
            return "null";
        }
        StringBuilder safe = new StringBuilder("'");
        int points = 0;
        for (int i = 0; i < text.length(); ) {
            int point = text.codePointAt(i);
            i += Character.charCount(point);
            if (points++ == LONGEST_QUOTE) {
                safe.append('…');
                break;
            }
            if (Character.isISOControl(point) || turnsDirection(point)) {
                safe.append('\uFFFD');
            } else {
                safe.appendCodePoint(point);
            }
        }
        return safe.append('\'').toString();
    }

    /** Returns a line of the user's own as it may be shown: whole, but without characters that steer a terminal or turn the line's direction. */
    public static String harmless(String line) {
        StringBuilder safe = new StringBuilder();
        line.codePoints()
                .map(point -> point != '\t' && Character.isISOControl(point) || turnsDirection(point) ? 0xFFFD : point)
                .forEach(safe::appendCodePoint);
        return safe.toString();
    }

    // Embeddings, overrides and isolates would run on past the quote and turn the rest of the message around.
    private static boolean turnsDirection(int point) {
        return point >= 0x202A && point <= 0x202E || point >= 0x2066 && point <= 0x2069;
    }

    /** Returns a count with its noun, as in "1 row" or "3 rows". */
    public static String count(long number, String one, String many) {
        return String.format(Locale.ROOT, "%d %s", number, number == 1 ? one : many);
    }

    /** Returns the known name that is closest to the one written, if it is close enough to be a slip. */
    public static Optional<String> closest(String written, Collection<String> known) {
        String plain = plain(written);
        if (plain.length() > LONGEST_NAME) {
            return Optional.empty();
        }
        Map<String, String> plainly = new LinkedHashMap<>();
        known.forEach(name -> plainly.putIfAbsent(plain(name), name));
        return Spelling.closest(plain, plainly.keySet()).map(plainly::get);
    }

    /** Returns " Did you mean 'x'?" or nothing. */
    public static String didYouMean(@Nullable String written, Collection<String> known) {
        return Optional.ofNullable(written)
                .flatMap(name -> closest(name, known))
                .map(name -> " Did you mean " + quote(name) + "?")
                .orElse("");
    }

    /** Returns all names, for what is kept in a file; {@link #some} is for a screen. */
    public static String all(Collection<String> names) {
        return String.join(", ", names.stream().map(Words::quote).toList());
    }

    /** Returns a few names for a message: all of them, or the first five and a count. */
    public static String some(Collection<String> names) {
        List<String> quoted = names.stream().limit(5).map(Words::quote).toList();
        String listed = String.join(", ", quoted);
        return names.size() > 5 ? listed + " and " + (names.size() - 5) + " more" : listed;
    }

    private static String plain(String name) {
        return name.strip().toLowerCase(Locale.ROOT).replaceAll("[\\s_.-]+", " ");
    }
}
