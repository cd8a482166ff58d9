package parchment.kernel.words;

import java.util.Collection;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import parchment.display.answer.Spelling;

/** Finds the name that somebody most likely meant. */
public final class Names {
    private static final int SHORTEST = 3;

    private Names() {}

    /**
     * Returns at most two names near the one written, the nearest first; none if nothing is near. A name counts as near when a
     * third of its letters or fewer differ; letter case does not count. Names of one or two letters are near to too many others.
     */
    public static List<String> near(String written, Collection<String> known) {
        if (written.length() < SHORTEST) {
            return List.of();
        }
        String low = written.toLowerCase(Locale.ROOT);
        int most = Math.max(1, written.length() / 3);
        record Near(String name, int distance) {}
        List<Near> near = known.stream()
                .distinct()
                .filter(name -> Math.abs(name.length() - written.length()) <= most)
                .filter(name -> !name.equals(written))
                .map(name -> new Near(name, Spelling.changesOrSwaps(low, name.toLowerCase(Locale.ROOT))))
                .filter(candidate -> candidate.distance <= most)
                .sorted(Comparator.comparingInt(Near::distance).thenComparing(Near::name))
                .toList();
        return near.stream()
                .filter(candidate -> candidate.distance == near.get(0).distance)
                .limit(2)
                .map(Near::name)
                .toList();
    }

    /** Returns the sentence that offers the names, or an empty text where there are none. */
    public static String question(List<String> near) {
        return near.isEmpty() ? "" : " Did you mean `" + String.join("` or `", near) + "`?";
    }
}
