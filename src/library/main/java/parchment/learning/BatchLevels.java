package parchment.learning;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import parchment.logbook.Logbook;
import parchment.logbook.written.CupScores;
import parchment.stats.mixed.GroupEffect;
import parchment.stats.mixed.LinearMixedModel;
import parchment.stats.mixed.MixedDesign;
import parchment.stats.mixed.RandomTerm;

/**
 * Brings the scores of a batch to one number that is fair to it: strict and mild cuppers, and good and bad days of the table, taken out.
 */
final class BatchLevels {
    /** Fewest scores and batches from which cuppers and cuppings can be told from batches; common practice, no source. */
    private static final int FEWEST_SCORES = 12;

    private static final int FEWEST_BATCHES = 4;

    private BatchLevels() {}

    /** Returns the level of each batch that was scored, in points; empty if there are too few scores, or they do not vary. */
    static Map<String, Double> of(Logbook logbook, String attribute) {
        List<CupScores> cups = logbook.cups().stream()
                .filter(cup -> Double.isFinite(cup.score(attribute)))
                .toList();
        double[] scores = cups.stream().mapToDouble(cup -> cup.score(attribute)).toArray();
        List<String> batches = cups.stream().map(CupScores::batch).toList();
        long tasted = batches.stream().distinct().count();
        boolean vary = cups.stream()
                        .mapToDouble(cup -> cup.score(attribute))
                        .distinct()
                        .count()
                > 1;
        if (!vary || cups.size() < FEWEST_SCORES || tasted < FEWEST_BATCHES) {
            return Map.of();
        }
        List<String> cuppers = cups.stream().map(CupScores::cupper).toList();
        List<String> cuppings = cups.stream().map(CupScores::cupping).toList();
        double[] taken = new double[scores.length];
        List<RandomTerm> terms = new ArrayList<>();
        if (cups.size() > tasted) {
            terms.add(RandomTerm.intercept("batch", batches));
        }
        boolean severalCuppers = cuppers.stream().distinct().count() > 1;
        long groups = cuppings.stream().distinct().count();
        // A cupping of one batch each could not be told from the batch.
        boolean severalCuppings = groups > 1 && groups < tasted;
        if (severalCuppers) {
            terms.add(RandomTerm.intercept("cupper", cuppers));
        }
        if (severalCuppings) {
            terms.add(RandomTerm.intercept("cupping", cuppings));
        }
        if (severalCuppers || severalCuppings) {
            MixedDesign design = MixedDesign.of("score", scores);
            for (RandomTerm term : terms) {
                design = design.withRandom(term);
            }
            LinearMixedModel fit = design.fit();
            if (severalCuppers) {
                take(fit.groupEffects("cupper"), cuppers, taken);
            }
            if (severalCuppings) {
                take(fit.groupEffects("cupping"), cuppings, taken);
            }
        }
        Map<String, double[]> sums = new LinkedHashMap<>();
        for (int i = 0; i < scores.length; i++) {
            double[] sum = sums.computeIfAbsent(batches.get(i), name -> new double[2]);
            sum[0] += scores[i] - taken[i];
            sum[1]++;
        }
        Map<String, Double> levels = new LinkedHashMap<>();
        sums.forEach((batch, sum) -> levels.put(batch, sum[0] / sum[1]));
        return levels;
    }

    private static void take(List<GroupEffect> effects, List<String> groups, double[] taken) {
        Map<String, Double> byGroup = new LinkedHashMap<>();
        effects.forEach(effect -> byGroup.put(effect.group(), effect.estimate()));
        for (int i = 0; i < taken.length; i++) {
            taken[i] += byGroup.getOrDefault(groups.get(i), 0.0);
        }
    }
}
