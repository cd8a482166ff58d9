package parchment.display.answer;

import java.util.Collection;
import java.util.Locale;
import java.util.Optional;

/** Counts how far a name that was typed is from one that is known, to tell a slip of the pen from another name, and offers the name that was meant. */
public final class Spelling {
    /** Longest text that is compared letter by letter; a longer one is no slip of the pen of anything. */
    public static final int LONGEST_COMPARED = 400;

    private Spelling() {}

    /**
     * Returns the known name nearest to the one typed, if it is near enough to be a slip of the pen: letter case aside, none of two letters differs,
     * one of up to five, two of up to nine, three of more. Of names as near the first is taken.
     */
    public static Optional<String> closest(String typed, Collection<String> known) {
        String low = typed.strip().toLowerCase(Locale.ROOT);
        String best = null;
        int least = slips(low.length()) + 1;
        for (String name : known) {
            int changes = changesOrSwaps(low, name.toLowerCase(Locale.ROOT));
            if (changes < least) {
                best = name;
                least = changes;
            }
        }
        return Optional.ofNullable(best);
    }

    /** Returns " Did you mean 'x'?" with the {@linkplain #closest closest} known name, blank before it, or nothing if none is near. */
    public static String question(String typed, Collection<String> known) {
        return closest(typed, known)
                .map(name -> " Did you mean '" + name + "'?")
                .orElse("");
    }

    /** Returns how many letters of a name may differ from another's for one to be a slip of the other. */
    private static int slips(int letters) {
        return letters <= 2 ? 0 : letters <= 5 ? 1 : letters <= 9 ? 2 : letters <= LONGEST_COMPARED ? 3 : 0;
    }

    /**
     * Returns the number of letters to add, drop or change (Levenshtein 1966). Takes time and memory in proportion to both lengths. A text of
     * more than {@value #LONGEST_COMPARED} letters is as far from any other as the longer of them is long, which is the most it can be.
     */
    public static int changes(String typed, String known) {
        return distance(typed, known, Swaps.COUNT_TWICE);
    }

    /**
     * Returns the number of letters to add, drop, change or swap with their neighbour (Damerau 1964, as optimal string alignment).
     * Takes time and memory in proportion to both lengths. A text of more than {@value #LONGEST_COMPARED} letters is as far from any other as the
     * longer of them is long.
     */
    public static int changesOrSwaps(String typed, String known) {
        return distance(typed, known, Swaps.COUNT_ONCE);
    }

    private enum Swaps {
        COUNT_ONCE,
        COUNT_TWICE
    }

    private static int distance(String a, String b, Swaps swaps) {
        int longer = Math.max(a.length(), b.length());
        if (longer > LONGEST_COMPARED) {
            return a.equals(b) ? 0 : longer;
        }
        int[][] d = new int[a.length() + 1][b.length() + 1];
        for (int i = 0; i <= a.length(); i++) {
            for (int j = 0; j <= b.length(); j++) {
                if (i == 0 || j == 0) {
                    d[i][j] = i + j;
                    continue;
                }
                int changed = d[i - 1][j - 1] + (a.charAt(i - 1) == b.charAt(j - 1) ? 0 : 1);
                d[i][j] = Math.min(changed, Math.min(d[i - 1][j], d[i][j - 1]) + 1);
                boolean swapped =
                        i > 1 && j > 1 && a.charAt(i - 1) == b.charAt(j - 2) && a.charAt(i - 2) == b.charAt(j - 1);
                if (swapped && swaps == Swaps.COUNT_ONCE) {
                    d[i][j] = Math.min(d[i][j], d[i - 2][j - 2] + 1);
                }
            }
        }
        return d[a.length()][b.length()];
    }
}
