package parchment.virtual;

import java.util.Collection;
import java.util.Comparator;
import java.util.Locale;
import parchment.display.Spelling;

/** Asks whether a known word was meant where an unknown one was typed. */
final class Nearest {
    private Nearest() {}

    /** Returns " Did you mean ...?" with the known word that is nearest, or nothing if none is near. */
    static String question(String typed, Collection<String> known) {
        String low = typed.toLowerCase(Locale.ROOT);
        return known.stream()
                .min(Comparator.comparingInt(word -> Spelling.changesOrSwaps(low, word.toLowerCase(Locale.ROOT))))
                .filter(word ->
                        Spelling.changesOrSwaps(low, word.toLowerCase(Locale.ROOT)) <= Math.max(1, word.length() / 3))
                .map(word -> " Did you mean '" + word + "'?")
                .orElse("");
    }
}
