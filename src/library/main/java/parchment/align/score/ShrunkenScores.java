package parchment.align.score;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import parchment.logbook.Logbook;
import parchment.logbook.written.CupScores;
import parchment.stats.mixed.GroupEffect;
import parchment.stats.mixed.LinearMixedModel;
import parchment.stats.mixed.MixedDesign;
import parchment.stats.mixed.RandomTerm;

/**
 * Draws the mean score of each batch towards the mean of all, the more so the fewer cups it has.
 *
 * <pre>{@code
 * ShrunkenScores.of(logbook, "liking").of("H042")
 * }</pre>
 *
 * <p>The score of one attribute is taken as the mean of all plus an effect of the batch, of the cupper and of the cupping, each by chance;
 * what is given is the best linear unbiased prediction of the batch with its standard error. Nothing about the roast is in the model.
 */
public final class ShrunkenScores {
    /** Fewest scores and batches from which a spread between batches is told; common practice, no source. */
    private static final int FEWEST_SCORES = 12;

    private static final int FEWEST_BATCHES = 5;

    private final Map<String, Score> byBatch;
    private final boolean shrunk;

    /**
     * Holds what was scored of one batch.
     *
     * @param scores how many scores
     * @param mean their plain mean
     * @param shrunken the mean drawn towards that of all batches; NaN where that cannot be told
     * @param standardError the standard error of what is shrunken
     */
    public record Score(int scores, double mean, double shrunken, double standardError) {}

    private ShrunkenScores(Map<String, Score> byBatch, boolean shrunk) {
        this.byBatch = byBatch;
        this.shrunk = shrunk;
    }

    /** Draws the means of all batches that a logbook has scores of. */
    public static ShrunkenScores of(Logbook logbook, String attribute) {
        return of(logbook.cups(), attribute);
    }

    /** Draws the means of all batches that some cups are of, such as those that were scored blind. */
    public static ShrunkenScores of(List<CupScores> scored, String attribute) {
        List<CupScores> cups = scored.stream()
                .filter(cup -> Double.isFinite(cup.score(attribute)))
                .toList();
        List<String> batches = cups.stream().map(CupScores::batch).toList();
        Map<String, double[]> sums = new HashMap<>();
        for (CupScores cup : cups) {
            double[] sum = sums.computeIfAbsent(cup.batch(), k -> new double[2]);
            sum[0] += cup.score(attribute);
            sum[1]++;
        }
        Map<String, GroupEffect> effects = new HashMap<>();
        OptionalDouble level = OptionalDouble.empty();
        boolean vary = cups.stream()
                        .mapToDouble(cup -> cup.score(attribute))
                        .distinct()
                        .count()
                > 1;
        if (vary && cups.size() >= FEWEST_SCORES && sums.size() >= FEWEST_BATCHES && cups.size() > sums.size()) {
            LinearMixedModel fit = fit(attribute, cups, batches);
            level = OptionalDouble.of(fit.coefficients()[0]);
            fit.groupEffects("batch").forEach(effect -> effects.put(effect.group(), effect));
        }
        Map<String, Score> scores = new HashMap<>();
        for (Map.Entry<String, double[]> entry : sums.entrySet()) {
            double[] sum = entry.getValue();
            GroupEffect effect = effects.get(entry.getKey());
            scores.put(
                    entry.getKey(),
                    new Score(
                            (int) sum[1],
                            sum[0] / sum[1],
                            effect == null ? Double.NaN : level.orElse(Double.NaN) + effect.estimate(),
                            effect == null ? Double.NaN : effect.standardError()));
        }
        return new ShrunkenScores(scores, level.isPresent());
    }

    private static LinearMixedModel fit(String attribute, List<CupScores> cups, List<String> batches) {
        MixedDesign design = MixedDesign.of(
                        "score",
                        cups.stream().mapToDouble(cup -> cup.score(attribute)).toArray())
                .withRandom(RandomTerm.intercept("batch", batches));
        List<String> cuppers = cups.stream().map(CupScores::cupper).toList();
        List<String> cuppings = cups.stream().map(CupScores::cupping).toList();
        if (cuppers.stream().distinct().count() > 1) {
            design = design.withRandom(RandomTerm.intercept("cupper", cuppers));
        }
        long groups = cuppings.stream().distinct().count();
        // A cupping of one batch each could not be told from the batch.
        if (groups > 1 && groups < batches.stream().distinct().count()) {
            design = design.withRandom(RandomTerm.intercept("cupping", cuppings));
        }
        return design.fit();
    }

    /** Returns what was scored of a batch; empty if it was not scored. */
    public Optional<Score> of(String batch) {
        return Optional.ofNullable(byBatch.get(batch));
    }

    @Override
    public String toString() {
        String batches = byBatch.size() == 1 ? "1 batch" : byBatch.size() + " batches";
        return "Mean scores of " + batches
                + (shrunk ? ", each drawn towards that of all" : ", too few to say how much of them is luck");
    }

    /** Returns what the scores are, in a sentence. */
    public String note(String attribute) {
        List<String> parts = new ArrayList<>();
        parts.add("Scores are of " + attribute + ".");
        parts.add(
                shrunk
                        ? "The shrunken score is the mean drawn towards that of all batches, the more so the fewer scores there"
                                + " are, with cuppers and cuppings allowed for: what to expect when the batch is cupped again."
                        : "The logbook has too few scores to say how much of a batch's mean is luck, so the plain mean is all"
                                + " there is.");
        return String.join(" ", parts);
    }
}
