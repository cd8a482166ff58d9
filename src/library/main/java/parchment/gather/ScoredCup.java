package parchment.gather;

import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.Map;
import java.util.Set;

/** Collects a cup while its cells come in. */
final class ScoredCup {
    final Map<ScorePart, String> known;
    final Map<String, Double> scores = new LinkedHashMap<>();
    final Set<String> notes = new LinkedHashSet<>();
    final int line;

    ScoredCup(Map<ScorePart, String> known, int line) {
        this.known = known;
        this.line = line;
    }

    double score(String attribute) {
        return scores.getOrDefault(attribute, Double.NaN);
    }

    boolean isMean() {
        return known.containsKey(ScorePart.MEAN);
    }
}
