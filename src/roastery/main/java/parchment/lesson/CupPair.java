package parchment.lesson;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import parchment.lesson.sheet.Grade;
import parchment.logbook.Logbook;
import parchment.logbook.written.CupScores;
import parchment.logbook.written.Cupping;

/**
 * The scores of two batches that stood on one table, two cups of each, by cupper.
 *
 * @param a name of the first batch
 * @param b name of the second
 * @param byCupper each cupper's scores: first and second cup of A, first and second cup of B
 */
record CupPair(String a, String b, Map<String, List<Double>> byCupper) {
    private static final int CUPS = 4;
    /** Quantile of Student's t for a 90 % interval with 3 degrees of freedom, 2.3534 (any table of t); more degrees need less. */
    private static final double T = 2.3534;

    CupPair {
        byCupper = Map.copyOf(byCupper);
    }

    /** Returns the pairs of batches that shared one blind table, scored before anybody spoke, with all four cups by four cuppers or more. */
    static List<CupPair> in(Logbook logbook, String attribute) {
        Map<String, Map<String, Map<String, List<CupScores>>>> tables = new LinkedHashMap<>();
        for (CupScores cup : logbook.cups()) {
            tables.computeIfAbsent(cup.cupping(), c -> new TreeMap<>())
                    .computeIfAbsent(cup.batch(), b -> new TreeMap<>())
                    .computeIfAbsent(cup.cupper(), c -> new ArrayList<>())
                    .add(cup);
        }
        List<CupPair> pairs = new ArrayList<>();
        tables.forEach((cupping, batches) -> {
            List<String> names = batches.keySet().stream()
                    .filter(name -> tables.values().stream()
                                    .filter(t -> t.containsKey(name))
                                    .count()
                            == 1)
                    .toList();
            if (logbook.cupping(cupping).filter(CupPair::blindAndSilent).isPresent()) {
                for (int i = 0; i < names.size(); i++) {
                    for (int j = i + 1; j < names.size(); j++) {
                        of(names.get(i), names.get(j), batches, attribute).ifPresent(pairs::add);
                    }
                }
            }
        });
        return pairs;
    }

    private static boolean blindAndSilent(Cupping cupping) {
        return cupping.blind() == Cupping.Said.YES && cupping.beforeDiscussion() == Cupping.Said.YES;
    }

    private static Optional<CupPair> of(
            String a, String b, Map<String, Map<String, List<CupScores>>> table, String attribute) {
        Map<String, List<Double>> scores = new TreeMap<>();
        table.getOrDefault(a, Map.of()).forEach((cupper, cupsOfA) -> {
            List<Double> four = new ArrayList<>();
            cupsOfA.forEach(cup -> four.add(cup.score(attribute)));
            table.getOrDefault(b, Map.of())
                    .getOrDefault(cupper, List.of())
                    .forEach(cup -> four.add(cup.score(attribute)));
            if (four.size() == CUPS && four.stream().noneMatch(value -> Double.isNaN(value))) {
                scores.put(cupper, four);
            }
        });
        return scores.size() >= 4 ? Optional.of(new CupPair(a, b, scores)) : Optional.empty();
    }

    double meanA() {
        return byCupper.values().stream()
                .mapToDouble(four -> (four.get(0) + four.get(1)) / 2)
                .average()
                .orElse(Double.NaN);
    }

    double meanB() {
        return byCupper.values().stream()
                .mapToDouble(four -> (four.get(2) + four.get(3)) / 2)
                .average()
                .orElse(Double.NaN);
    }

    /** Returns the mean of the cuppers' own differences, A less B. */
    double difference() {
        return meanA() - meanB();
    }

    /** Returns the largest difference that one cupper made between two cups of the same batch. */
    double largestWithin() {
        return byCupper.values().stream()
                .mapToDouble(four -> StrictMath.max(
                        StrictMath.abs(four.get(0) - four.get(1)), StrictMath.abs(four.get(2) - four.get(3))))
                .max()
                .orElse(Double.NaN);
    }

    /** Returns how many cuppers' first cups say the other way round than all cups together, or say nothing. */
    long disagreeing() {
        return byCupper.values().stream()
                .mapToDouble(four -> four.get(0) - four.get(2))
                .filter(first -> first * difference() <= 0)
                .count();
    }

    /** Returns whether the cuppers' own differences leave no doubt which of the two is higher (90 %, Student's t over the cuppers). */
    Grade.Telling telling() {
        List<Double> differences = byCupper.values().stream()
                .map(four -> (four.get(0) + four.get(1) - four.get(2) - four.get(3)) / 2)
                .toList();
        double mean = difference();
        double squares =
                differences.stream().mapToDouble(d -> (d - mean) * (d - mean)).sum();
        double error = StrictMath.sqrt(squares / (differences.size() - 1) / differences.size());
        return StrictMath.abs(mean) > T * error ? Grade.Telling.CAN_TELL : Grade.Telling.CANNOT_TELL;
    }
}
