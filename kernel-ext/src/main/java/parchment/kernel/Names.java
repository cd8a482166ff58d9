package parchment.kernel;

import java.util.Collection;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;

/** Finds the name that somebody most likely meant. */
final class Names {
    private Names() {}

    /**
     * Returns at most two names near the one written, the nearest first; none if nothing is near. A name counts as near when a
     * third of its letters or fewer differ; letter case does not count.
     */
    static List<String> near(String written, Collection<String> known) {
        String low = written.toLowerCase(Locale.ROOT);
        int most = Math.max(1, written.length() / 3);
        record Near(String name, int distance) {}
        List<Near> near = known.stream()
                .distinct()
                .filter(name -> Math.abs(name.length() - written.length()) <= most)
                .filter(name -> !name.equals(written))
                .map(name -> new Near(name, distance(low, name.toLowerCase(Locale.ROOT))))
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
    static String question(List<String> near) {
        return near.isEmpty() ? "" : " Did you mean `" + String.join("` or `", near) + "`?";
    }

    /** Counts the letters to add, drop, change or swap with their neighbour (optimal string alignment). */
    static int distance(String a, String b) {
        int[][] d = new int[a.length() + 1][b.length() + 1];
        for (int i = 0; i <= a.length(); i++) {
            d[i][0] = i;
        }
        for (int j = 0; j <= b.length(); j++) {
            d[0][j] = j;
        }
        for (int i = 1; i <= a.length(); i++) {
            for (int j = 1; j <= b.length(); j++) {
                int change = a.charAt(i - 1) == b.charAt(j - 1) ? 0 : 1;
                d[i][j] = Math.min(Math.min(d[i - 1][j] + 1, d[i][j - 1] + 1), d[i - 1][j - 1] + change);
                if (i > 1 && j > 1 && a.charAt(i - 1) == b.charAt(j - 2) && a.charAt(i - 2) == b.charAt(j - 1)) {
                    d[i][j] = Math.min(d[i][j], d[i - 2][j - 2] + 1);
                }
            }
        }
        return d[a.length()][b.length()];
    }
}
