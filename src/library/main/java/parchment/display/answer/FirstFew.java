package parchment.display.answer;

import java.util.List;

/** Names the first of many in a sentence, and counts the rest. */
public final class FirstFew {
    private static final int NAMED = 5;

    private FirstFew() {}

    /** Returns all names if there are up to five, or the first five and how many more there are, as in "B1, B2, B3, B4, B5 and 2 more". */
    public static String of(List<String> names) {
        String listed = String.join(", ", names.subList(0, Math.min(NAMED, names.size())));
        return names.size() > NAMED ? listed + " and " + (names.size() - NAMED) + " more" : listed;
    }
}
