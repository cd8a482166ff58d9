package parchment.evidence;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.function.Predicate;
import java.util.function.UnaryOperator;
import parchment.display.answer.Report;
import parchment.evidence.finding.Wording;

/**
 * The table that every model of scores is fitted to: the scores of one attribute joined to the batches and their measure, with the count
 * of what could not be joined.
 *
 * <p>Only batches that have both a score and a measure are kept; every score belongs to one of them.
 */
final class ModelFrame {
    private final List<TastedBatch> batches;
    private final List<ScoreRow> scores;
    private final List<Exclusion> leftOut;
    private final List<String> remarks;
    private final List<String> doubts;

    ModelFrame(List<TastedBatch> batches, List<ScoreRow> scores, List<Exclusion> leftOut, List<String> remarks) {
        this(batches, scores, leftOut, remarks, List.of());
    }

    private ModelFrame(
            List<TastedBatch> batches,
            List<ScoreRow> scores,
            List<Exclusion> leftOut,
            List<String> remarks,
            List<String> doubts) {
        this.batches = List.copyOf(batches);
        this.scores = List.copyOf(scores);
        this.leftOut = List.copyOf(leftOut);
        this.remarks = List.copyOf(remarks);
        this.doubts = List.copyOf(doubts);
    }

    /** Returns the same with what stands against telling readings as those of today's probe, one sentence each. */
    ModelFrame withDoubts(List<String> sentences) {
        return new ModelFrame(batches, scores, leftOut, remarks, sentences);
    }

    /** Returns a page that says beside the best what stands against telling readings as those of today's probe. */
    Report sayDoubts(Report page) {
        return doubts.isEmpty() ? page : page.say(String.join(" ", doubts));
    }

    /** Says whether the values were read by the probes of more than one machine, whose places are not one scale. */
    boolean ofSeveralProbes() {
        return batches.stream()
                        .map(batch -> batch.today().probe())
                        .filter(probe -> !probe.isEmpty())
                        .distinct()
                        .count()
                > 1;
    }

    List<TastedBatch> batches() {
        return batches;
    }

    List<ScoreRow> scores() {
        return scores;
    }

    List<Exclusion> leftOut() {
        return leftOut;
    }

    /** Returns what had to be assumed, one sentence each. */
    List<String> remarks() {
        return remarks;
    }

    TastedBatch batchOf(ScoreRow score) {
        return batches.get(score.batch());
    }

    /** Returns the same scores with those batches only for which a condition holds. */
    ModelFrame only(Predicate<TastedBatch> condition) {
        return changed(batch -> condition.test(batch) ? batch : batch.withMeasure(Double.NaN, Double.NaN));
    }

    /** Returns the same scores with other measures; a batch whose measure becomes missing goes, with its scores. */
    ModelFrame changed(UnaryOperator<TastedBatch> change) {
        List<TastedBatch> kept = new ArrayList<>();
        Map<Integer, Integer> moved = new HashMap<>();
        for (TastedBatch batch : batches) {
            TastedBatch now = change.apply(batch);
            if (!Double.isNaN(now.measure())) {
                moved.put(batch.position(), kept.size());
                kept.add(now.at(kept.size()));
            }
        }
        List<ScoreRow> rows = new ArrayList<>();
        for (ScoreRow score : scores) {
            Integer position = moved.get(score.batch());
            if (position != null) {
                rows.add(new ScoreRow(position, score.cupping(), score.cupper(), score.restDays(), score.score()));
            }
        }
        return new ModelFrame(kept, rows, leftOut, remarks, doubts);
    }

    /** Returns the same batches with other scores, one per row. */
    ModelFrame withScores(double[] values) {
        List<ScoreRow> rows = new ArrayList<>();
        for (int i = 0; i < values.length; i++) {
            ScoreRow score = scores.get(i);
            rows.add(new ScoreRow(score.batch(), score.cupping(), score.cupper(), score.restDays(), values[i]));
        }
        return new ModelFrame(batches, rows, leftOut, remarks, doubts);
    }

    int roastDays() {
        return (int) batches.stream().map(TastedBatch::day).distinct().count();
    }

    Set<String> cuppers() {
        Set<String> names = new LinkedHashSet<>();
        scores.forEach(score -> names.add(score.cupper()));
        return names;
    }

    int cuppings() {
        return (int) scores.stream().map(ScoreRow::cupping).distinct().count();
    }

    Set<String> lots() {
        Set<String> names = new LinkedHashSet<>();
        batches.forEach(batch -> names.add(batch.lot()));
        return names;
    }

    /** Returns the mean measure of each lot within each probe period. */
    Map<String, Double> groupMeans() {
        Map<String, double[]> sums = new LinkedHashMap<>();
        for (TastedBatch batch : batches) {
            double[] sum = sums.computeIfAbsent(batch.lotPeriod(), key -> new double[2]);
            sum[0] += batch.measure();
            sum[1]++;
        }
        Map<String, Double> means = new LinkedHashMap<>();
        sums.forEach((group, sum) -> means.put(group, sum[0] / sum[1]));
        return means;
    }

    /** Returns each batch's measure less the mean of its lot and probe period. */
    double[] within() {
        Map<String, Double> means = groupMeans();
        return batches.stream()
                .mapToDouble(batch -> batch.measure() - means.getOrDefault(batch.lotPeriod(), Double.NaN))
                .toArray();
    }

    /** Says whether some reading would be another on today's probe, is not known there, or not exactly. */
    boolean movedToToday() {
        return batches.stream()
                .anyMatch(batch -> batch.today().value() != batch.measure()
                        || batch.today().sharedError() > 0);
    }

    /** Returns the mean measure over the batches. */
    double center() {
        return batches.stream().mapToDouble(TastedBatch::measure).average().orElse(Double.NaN);
    }

    @Override
    public String toString() {
        return String.format(
                Locale.ROOT,
                "%s, %s, %s, %s, %s",
                Wording.count(batches.size(), "batch", "batches"),
                Wording.count(roastDays(), "roast day", "roast days"),
                Wording.count(cuppings(), "cupping", "cuppings"),
                Wording.count(cuppers().size(), "cupper", "cuppers"),
                Wording.count(scores.size(), "score", "scores"));
    }
}
