package parchment.virtual;

import java.util.ArrayList;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Function;

/** Measures how people spread their scores, free of what was scored; the five numbers of reference/score-shape/README.md. */
record ScoreShape(double personShare, double spread, double unevenness, double repeat, double halo) {
    /** One person's scores of one product. */
    record Score(String person, String product, List<Double> points) {}

    static ScoreShape of(List<Score> scores, double width) {
        int attributes = scores.get(0).points().size();
        double[] sums = new double[4];
        List<List<Double>> rests = new ArrayList<>();
        for (int a = 0; a < attributes; a++) {
            int attribute = a;
            List<Double> all =
                    scores.stream().map(score -> score.points().get(attribute)).toList();
            List<Double> within = centred(scores, all, Score::product);
            List<Double> rest = centred(scores, within, Score::person);
            rests.add(rest);
            Collection<List<Double>> people =
                    grouped(scores, within, Score::person).values();
            double between = Math.max(
                    0,
                    variance(people.stream().map(ScoreShape::mean).toList())
                            - variance(rest) / ((double) scores.size() / people.size()));
            List<Double> spreads = grouped(scores, rest, Score::person).values().stream()
                    .map(of -> Math.sqrt(variance(of)))
                    .toList();
            List<Double> repeats =
                    grouped(scores, all, score -> score.person() + "|" + score.product()).values().stream()
                            .filter(of -> of.size() > 1)
                            .map(ScoreShape::variance)
                            .toList();
            sums[0] += between / (between + variance(rest));
            sums[1] += Math.sqrt(variance(all)) / width;
            sums[2] += Math.sqrt(variance(spreads)) / mean(spreads);
            sums[3] += repeats.isEmpty() ? Double.NaN : mean(repeats) / variance(rest);
        }
        return new ScoreShape(
                sums[0] / attributes, sums[1] / attributes, sums[2] / attributes, sums[3] / attributes, halo(rests));
    }

    private static double halo(List<List<Double>> rests) {
        List<Double> correlations = new ArrayList<>();
        for (int a = 0; a < rests.size(); a++) {
            for (int b = a + 1; b < rests.size(); b++) {
                double product = 0;
                double left = 0;
                double right = 0;
                // What is left sums to zero, so no mean is taken off.
                for (int i = 0; i < rests.get(a).size(); i++) {
                    product += rests.get(a).get(i) * rests.get(b).get(i);
                    left += rests.get(a).get(i) * rests.get(a).get(i);
                    right += rests.get(b).get(i) * rests.get(b).get(i);
                }
                correlations.add(Math.abs(product / Math.sqrt(left * right)));
            }
        }
        return correlations.isEmpty() ? Double.NaN : mean(correlations);
    }

    private static Map<String, List<Double>> grouped(
            List<Score> scores, List<Double> values, Function<Score, String> by) {
        Map<String, List<Double>> groups = new LinkedHashMap<>();
        for (int i = 0; i < scores.size(); i++) {
            groups.computeIfAbsent(by.apply(scores.get(i)), key -> new ArrayList<>())
                    .add(values.get(i));
        }
        return groups;
    }

    private static List<Double> centred(List<Score> scores, List<Double> values, Function<Score, String> by) {
        Map<String, Double> means = new LinkedHashMap<>();
        grouped(scores, values, by).forEach((key, of) -> means.put(key, mean(of)));
        List<Double> centred = new ArrayList<>();
        for (int i = 0; i < scores.size(); i++) {
            centred.add(values.get(i) - means.get(by.apply(scores.get(i))));
        }
        return centred;
    }

    private static double mean(List<Double> values) {
        return values.stream().mapToDouble(v -> v).average().orElse(Double.NaN);
    }

    private static double variance(List<Double> values) {
        double mean = mean(values);
        return values.stream().mapToDouble(v -> (v - mean) * (v - mean)).sum() / (values.size() - 1);
    }
}
