package parchment.gather;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import parchment.logbook.contents.AssumedScale;
import parchment.sheet.Numbers;
import parchment.sheet.Words;

/** Finds the scales that scores are on: as they are written, or as the scores tell by using both ends; otherwise it says least, most and step, and asks. */
final class ScoreScales {
    /** How the question about a scale begins. */
    static final String OPEN = "What is the scale of ";

    /** Scores from which the ends of a scale can be told; common practice, no source. */
    static final int ENOUGH = 20;

    /** Whole numbers between which people score, as an open question lists them; none is taken unless both of its ends are used. */
    private static final double[][] USUAL = {
        {1, 5}, {0, 5}, {1, 7}, {1, 9}, {0, 9}, {1, 10}, {0, 10}, {0, 15}, {0, 20}, {0, 100}
    };

    /** Steps that people score in, the widest first; common practice, no source. */
    private static final double[] STEPS = {1, 0.5, 0.25, 0.1};

    private final List<ScoreScale> scales = new ArrayList<>();
    private final List<String> told = new ArrayList<>();
    private final List<String> open = new ArrayList<>();

    private ScoreScales() {}

    /**
     * Finds the scales.
     *
     * @param cups the cups
     * @param written the scales that headings or cells state, by attribute
     * @param all the scale that is stated for all attributes
     */
    static ScoreScales of(List<TastedCup> cups, Map<String, double[]> written, Optional<double[]> all) {
        ScoreScales found = new ScoreScales();
        Map<String, List<TastedCup>> byAttribute = new LinkedHashMap<>();
        for (TastedCup cup : cups) {
            cup.scores()
                    .keySet()
                    .forEach(attribute -> byAttribute
                            .computeIfAbsent(attribute, a -> new ArrayList<>())
                            .add(cup));
        }
        // Attributes whose scores need the same room are scored alike, and tell the ends together.
        Map<Double, List<String>> alike = byAttribute.keySet().stream()
                .filter(attribute -> !written.containsKey(attribute) && all.isEmpty())
                .collect(Collectors.groupingBy(
                        attribute -> AssumedScale.of(scores(byAttribute.getOrDefault(attribute, List.of()), attribute))
                                .top(),
                        LinkedHashMap::new,
                        Collectors.toList()));
        byAttribute.forEach((attribute, scored) -> Optional.ofNullable(written.get(attribute))
                .or(() -> all)
                .ifPresent(scale -> found.add(attribute, scale, "the sheet says so")));
        alike.forEach((top, attributes) -> found.told(attributes, byAttribute, top));
        found.offScale(byAttribute);
        return found;
    }

    private static double[] scores(List<TastedCup> cups, String attribute) {
        return cups.stream()
                .mapToDouble(cup -> cup.scores().getOrDefault(attribute, Double.NaN))
                .toArray();
    }

    private void told(List<String> attributes, Map<String, List<TastedCup>> byAttribute, double top) {
        double[] scores = attributes.stream()
                .flatMapToDouble(
                        attribute -> Arrays.stream(scores(byAttribute.getOrDefault(attribute, List.of()), attribute)))
                .filter(score -> score <= top)
                .sorted()
                .toArray();
        double least = scores[0];
        double most = scores[scores.length - 1];
        String seen = "scores from " + Numbers.written(least) + " to " + Numbers.written(most) + steps(scores) + " in "
                + Words.count(scores.length, "cell", "cells");
        if (top > 20 && top <= 100 && most > 50) {
            attributes.forEach(a -> add(a, new double[] {0, 100}, seen));
            return;
        }
        for (double[] usual : USUAL) {
            if (least == usual[0] && most == usual[1] && scores.length >= ENOUGH) {
                attributes.forEach(a -> add(a, usual, "both ends are used: " + seen));
                return;
            }
        }
        String fitting = Arrays.stream(USUAL)
                .filter(usual -> usual[0] <= least && usual[1] >= most && usual[1] <= Math.max(top, most))
                .map(usual -> Numbers.written(usual[0]) + " to " + Numbers.written(usual[1]))
                .collect(Collectors.joining(", "));
        open.add(OPEN + String.join(", ", attributes) + "? There are " + seen
                + (fitting.isEmpty() ? "." : ", which fit " + fitting + "."));
    }

    /** Returns the step on which all scores lie, as it stands in a sentence; "" if there is none. */
    private static String steps(double[] scores) {
        for (double step : STEPS) {
            if (Arrays.stream(scores).allMatch(score -> Math.abs(score / step - Math.rint(score / step)) < 1e-6)) {
                return " in steps of " + Numbers.written(step);
            }
        }
        return "";
    }

    private void add(String attribute, double[] scale, String reason) {
        scales.add(new ScoreScale(attribute, scale[0], scale[1], reason));
    }

    private void offScale(Map<String, List<TastedCup>> byAttribute) {
        byAttribute.forEach((attribute, cups) -> {
            Optional<ScoreScale> scale =
                    scales.stream().filter(s -> s.attribute().equals(attribute)).findFirst();
            double low = scale.map(ScoreScale::low).orElse(0.0);
            double high = scale.map(ScoreScale::high)
                    .orElseGet(() -> AssumedScale.of(scores(cups, attribute)).top());
            for (TastedCup cup : cups) {
                double score = cup.scores().getOrDefault(attribute, Double.NaN);
                if (score < low || score > high) {
                    told.add("Line " + cup.line() + ": " + Numbers.written(score) + " for " + Words.quote(attribute)
                            + " is off the scale " + Numbers.written(low) + " to " + Numbers.written(high)
                            + ". It is written as it stands; mend it if it is a slip.");
                }
            }
        });
    }

    List<ScoreScale> scales() {
        return scales;
    }

    List<String> told() {
        return told;
    }

    List<String> open() {
        return open;
    }
}
