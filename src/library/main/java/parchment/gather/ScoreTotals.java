package parchment.gather;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import parchment.sheet.Numbers;
import parchment.sheet.Words;

/** Finds what is only worked out of other scores on the same sheet: sums, means of attributes, means of cuppers. */
final class ScoreTotals {
    /** Cups that must agree before it is no accident; share of them; how near. All common practice, no source. */
    private static final int LEAST = 3;

    private static final double MOST = 0.9;
    private static final double NEAR = 0.051;

    private final List<ScoredCup> cups;
    private final List<String> told = new ArrayList<>();

    private ScoreTotals(List<ScoredCup> cups) {
        this.cups = cups;
    }

    /** Takes what is worked out of the cups, and returns the cups that are left and what is to be told. */
    static ScoreTotals of(List<ScoredCup> read) {
        ScoreTotals totals = new ScoreTotals(new ArrayList<>(read));
        totals.attributes();
        totals.means();
        return totals;
    }

    private void attributes() {
        Set<String> attributes = new LinkedHashSet<>();
        cups.forEach(cup -> attributes.addAll(cup.scores.keySet()));
        for (String attribute : List.copyOf(attributes)) {
            if (attributes.size() >= 3 && (isWorkedOut(attribute) || isPartial(attribute))) {
                attributes.remove(attribute);
                cups.forEach(cup -> cup.scores.remove(attribute));
            }
        }
    }

    private boolean isPartial(String attribute) {
        if (!isCalledWorkedOut(attribute)) {
            return false;
        }
        Optional<String> how = ScorePartialSums.of(attribute, cups);
        told.add(
                how.map(found -> Words.quote(attribute) + " is only " + found
                                + " and is left out; it can be worked out again.")
                        .orElse(
                                Words.quote(attribute)
                                        + " is kept as an attribute of its own: it is no sum or mean of the others that could be found."));
        return how.isPresent();
    }

    private static boolean isCalledWorkedOut(String attribute) {
        return ScoreWords.isTotal(attribute) || ScoreWords.isMean(attribute);
    }

    /** Returns whether a score counts among those that an attribute can be worked out of: totals and means are none of them. */
    private static boolean isOther(String other, String attribute) {
        return !other.equals(attribute) && !isCalledWorkedOut(other);
    }

    private static long count(ScoredCup cup, String attribute) {
        return cup.scores.keySet().stream()
                .filter(other -> isOther(other, attribute))
                .count();
    }

    private boolean isWorkedOut(String attribute) {
        List<ScoredCup> with = cups.stream()
                .filter(cup -> cup.scores.containsKey(attribute) && count(cup, attribute) >= 2)
                .toList();
        if (with.size() < LEAST
                || with.stream().map(cup -> cup.score(attribute)).distinct().count() < 2) {
            return false;
        }
        Map<Double, Integer> above = new LinkedHashMap<>();
        int means = 0;
        for (ScoredCup cup : with) {
            double sum = others(cup, attribute);
            double total = cup.score(attribute);
            above.merge(Math.rint((total - sum) * 100) / 100, 1, Integer::sum);
            means += Math.abs(total - sum / count(cup, attribute)) < NEAR ? 1 : 0;
        }
        Map.Entry<Double, Integer> usual = java.util.Collections.max(above.entrySet(), Map.Entry.comparingByValue());
        boolean constant = usual.getValue() >= MOST * with.size() && sumIsPlausible(with, attribute, usual.getKey());
        if (!constant && means < MOST * with.size()) {
            return false;
        }
        double more = constant ? usual.getKey() : 0;
        String how = !constant
                ? "the mean of the others"
                : more == 0 ? "the sum of the others" : "the sum of the others and " + Numbers.written(more);
        told.add(Words.quote(attribute) + " is only " + how + " in " + with.size()
                + " cups and is left out; it can be worked out again.");
        for (ScoredCup cup : with) {
            double total = cup.score(attribute);
            double expected = constant ? others(cup, attribute) + more : others(cup, attribute) / count(cup, attribute);
            if (Math.abs(total - expected) >= NEAR) {
                told.add("Line " + cup.line + ": " + Words.quote(attribute) + " is " + Numbers.written(total) + ", and "
                        + how + " is " + Numbers.written(Math.rint(expected * 100) / 100)
                        + ". One of the scores is a slip, or was changed later.");
            }
        }
        return true;
    }

    // With nothing added, any sum; with a constant, only what is called a total or lies above all the rest.
    private static boolean sumIsPlausible(List<ScoredCup> cups, String attribute, double more) {
        return Math.abs(more) < NEAR
                || cups.size() >= 5
                        && (attribute.equals("total")
                                || cups.stream()
                                        .allMatch(cup -> cup.scores.entrySet().stream()
                                                .allMatch(e -> e.getValue() <= cup.score(attribute))));
    }

    private static double others(ScoredCup cup, String attribute) {
        return cup.scores.entrySet().stream()
                .filter(e -> isOther(e.getKey(), attribute))
                .mapToDouble(Map.Entry::getValue)
                .sum();
    }

    private void means() {
        boolean people = cups.stream().anyMatch(cup -> !cup.isMean());
        if (!people) {
            return;
        }
        int left = 0;
        for (ScoredCup mean : List.copyOf(cups)) {
            if (!mean.isMean()) {
                continue;
            }
            List<ScoredCup> same = below(mean);
            if (same.isEmpty()) {
                continue;
            }
            for (Map.Entry<String, Double> score : mean.scores.entrySet()) {
                double expected = average(same, score.getKey());
                if (!(Math.abs(expected - score.getValue()) < NEAR)) {
                    told.add("Line " + mean.line + ": the mean " + Numbers.written(score.getValue()) + " of "
                            + Words.quote(score.getKey())
                            + " is not that of the scores beside it ("
                            + (Double.isNaN(expected) ? "none" : Numbers.written(Math.rint(expected * 100) / 100))
                            + "); it is left out, the scores are kept.");
                }
            }
            if (!mean.notes.isEmpty()) {
                same.get(0).notes.addAll(mean.notes);
            }
            cups.remove(mean);
            left++;
        }
        if (left > 0) {
            told.add(Words.count(left, "mean", "means") + " over cuppers left out: their scores stand beside.");
        }
    }

    /** Returns the cups that a mean is of: those that all it says is said of; where they are of several days, those that it fits, or the last before it. */
    private List<ScoredCup> below(ScoredCup mean) {
        Map<ScorePart, String> of = withoutPeople(mean.known);
        Map<Map<ScorePart, String>, List<ScoredCup>> groups = new LinkedHashMap<>();
        for (ScoredCup cup : cups) {
            Map<ScorePart, String> own = withoutPeople(cup.known);
            boolean names = of.keySet().stream().anyMatch(ScoreRoles.NAMES_OF_CUPS::contains);
            if (!cup.isMean() && (own.equals(of) || names && own.entrySet().containsAll(of.entrySet()))) {
                groups.computeIfAbsent(own, key -> new ArrayList<>()).add(cup);
            }
        }
        List<List<ScoredCup>> all = List.copyOf(groups.values());
        return all.stream()
                .filter(group -> mean.scores.entrySet().stream()
                        .allMatch(score -> Math.abs(average(group, score.getKey()) - score.getValue()) < NEAR))
                .findFirst()
                .or(() -> all.stream()
                        .filter(group -> group.get(0).line < mean.line)
                        .reduce((first, second) -> second))
                .or(() -> all.stream().findFirst())
                .orElse(List.of());
    }

    private static double average(List<ScoredCup> cups, String attribute) {
        return cups.stream()
                .filter(cup -> cup.scores.containsKey(attribute))
                .mapToDouble(cup -> cup.score(attribute))
                .average()
                .orElse(Double.NaN);
    }

    private static Map<ScorePart, String> withoutPeople(Map<ScorePart, String> known) {
        Map<ScorePart, String> rest = new EnumMap<>(ScorePart.class);
        rest.putAll(known);
        rest.keySet()
                .removeAll(
                        Set.of(ScorePart.CUPPER, ScorePart.MEAN, ScorePart.OTHER, ScorePart.POSITION, ScorePart.CUP));
        return rest;
    }

    List<ScoredCup> cups() {
        return cups;
    }

    List<String> told() {
        return told;
    }
}
