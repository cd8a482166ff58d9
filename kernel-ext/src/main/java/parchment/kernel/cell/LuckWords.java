package parchment.kernel.cell;

import java.util.Comparator;
import java.util.List;
import java.util.Locale;

/**
 * Puts into words what luck alone would find among so many questions.
 *
 * <p>Each question finds something where there is nothing in 5 of 100 logbooks ({@code docs/evidence.md}, Verdicts: slope 4, bend 1).
 * Of <i>n</i> independent ones at least one does in 1 - 0.95<sup>n</sup>. Questions to the same scores are not independent; the figure
 * is a measure of how far a finding is worth its word, not a test.
 */
final class LuckWords {
    /** Chance that one question finds something where there is nothing. */
    static final double CHANCE = 0.05;

    private record Share(double of, String words) {}

    private static final List<Share> SHARES = List.of(
            new Share(1 / 20.0, "about one time in 20"),
            new Share(1 / 10.0, "about one time in ten"),
            new Share(1 / 7.0, "about one time in seven"),
            new Share(1 / 5.0, "about one time in five"),
            new Share(1 / 4.0, "about one time in four"),
            new Share(1 / 3.0, "about one time in three"),
            new Share(1 / 2.0, "about one time in two"),
            new Share(2 / 3.0, "about two times in three"),
            new Share(3 / 4.0, "about three times in four"),
            new Share(4 / 5.0, "about four times in five"),
            new Share(9 / 10.0, "about nine times in ten"),
            new Share(19 / 20.0, "about 19 times in 20"),
            new Share(1, "nearly always"));

    private LuckWords() {}

    /** Returns the chance that at least one of so many independent questions finds something where there is nothing. */
    static double chance(int questions) {
        return 1 - Math.pow(1 - CHANCE, questions);
    }

    /** Returns the sentence for so many questions, one or more. */
    static String sentence(int questions) {
        String how = how(questions);
        return questions == 1
                ? "If nothing went with them, it would still bring a finding by luck " + how + " (5 in 100)."
                : "If nothing went with them, " + questions + " questions would still bring a finding by luck " + how
                        + " (" + inHundred(questions) + " in 100, at 5 in 100 each and as if each stood for itself).";
    }

    /** Returns the place in a row, as in "9th". */
    static String ordinal(int number) {
        int tens = number % 100;
        String end = tens >= 11 && tens <= 13
                ? "th"
                : switch (number % 10) {
                    case 1 -> "st";
                    case 2 -> "nd";
                    case 3 -> "rd";
                    default -> "th";
                };
        return number == 1 ? "first" : number + end;
    }

    private static String how(int questions) {
        double chance = chance(questions);
        return SHARES.stream()
                .min(Comparator.comparingDouble(share -> Math.abs(share.of() - chance)))
                .map(Share::words)
                .orElseThrow();
    }

    private static String inHundred(int questions) {
        double percent = 100 * chance(questions);
        return percent > 99 ? "over 99" : String.format(Locale.ROOT, "%.0f", percent);
    }
}
