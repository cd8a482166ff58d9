package parchment.display.answer;

import java.util.Locale;

/** Makes a sentence's beginning of words that also stand inside one. */
public final class Sentence {
    private Sentence() {}

    /** Returns the words with a capital first letter. */
    public static String of(String words) {
        return words.isEmpty() ? words : words.substring(0, 1).toUpperCase(Locale.ROOT) + words.substring(1);
    }
}
