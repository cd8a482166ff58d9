package parchment.gather;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import parchment.sheet.Words;

/** Looks for the attributes that a total or mean is worked out of, where it is not all of them. */
final class ScorePartialSums {
    /** Cups from which no choice of attributes agrees by accident; most attributes that are tried; how near. Common practice, no source. */
    static final int LEAST = 5;

    private static final int MOST_ATTRIBUTES = 12;
    private static final double NEAR = 0.051;

    private ScorePartialSums() {}

    /** Returns what a total is, as in "the sum of acidity and body"; nothing if no choice of at least two attributes gives it in every cup. */
    static Optional<String> of(String total, List<ScoredCup> cups) {
        List<ScoredCup> with =
                cups.stream().filter(cup -> cup.scores.containsKey(total)).toList();
        if (with.size() < LEAST
                || with.stream().map(cup -> cup.score(total)).distinct().count() < 3) {
            return Optional.empty();
        }
        List<String> others = with.stream()
                .flatMap(cup -> cup.scores.keySet().stream())
                .distinct()
                .filter(attribute ->
                        !attribute.equals(total) && !ScoreWords.isTotal(attribute) && !ScoreWords.isMean(attribute))
                .toList();
        if (others.size() < 2 || others.size() > MOST_ATTRIBUTES) {
            return Optional.empty();
        }
        for (int choice = (1 << others.size()) - 1; choice > 0; choice--) {
            List<String> chosen = new ArrayList<>();
            for (int i = 0; i < others.size(); i++) {
                if ((choice & (1 << i)) != 0) {
                    chosen.add(others.get(i));
                }
            }
            if (chosen.size() < 2) {
                continue;
            }
            boolean sum = with.stream().allMatch(cup -> Math.abs(cup.score(total) - sum(cup, chosen)) < NEAR);
            boolean mean =
                    with.stream().allMatch(cup -> Math.abs(cup.score(total) - sum(cup, chosen) / chosen.size()) < NEAR);
            if (sum || mean) {
                return Optional.of((sum ? "the sum of " : "the mean of ") + Words.some(chosen));
            }
        }
        return Optional.empty();
    }

    // A score that is missing in a cup leaves a total that agrees with nothing: NaN is near to no number.
    private static double sum(ScoredCup cup, List<String> chosen) {
        return chosen.stream().mapToDouble(cup::score).sum();
    }
}
