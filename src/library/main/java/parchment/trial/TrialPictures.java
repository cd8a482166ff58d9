package parchment.trial;

import java.util.Arrays;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import parchment.chart.Axis;
import parchment.chart.Boundary;
import parchment.chart.Line;
import parchment.chart.Marker;
import parchment.chart.Plot;
import parchment.chart.Points;
import parchment.chart.Weight;
import parchment.display.answer.Sentence;
import parchment.evidence.finding.TrialVerdict;
import parchment.quantity.Unit;
import parchment.trial.sealed.TrialTerms;

/** Draws a trial: its sets over the targets, its slope among the shuffles, and what was achieved against what was assigned. */
final class TrialPictures {
    private static final int FIELDS = 31;

    private TrialPictures() {}

    /** Draws each set as a line over its targets, every batch as far from its set's mean as it was scored. */
    static Plot sets(TrialAnswer answer) {
        TrialTerms terms = answer.terms();
        Plot plot = Plot.of(
                        Sentence.of(terms.score()) + " of each batch, from its set's mean",
                        Axis.of(
                                terms.control().words() + " as drawn",
                                terms.control().unit(),
                                terms.reader()),
                        Axis.of(terms.score() + " from its set's mean", Unit.POINTS.withDigits(1), terms.reader()))
                .withEmptySentence(
                        "There is nothing to draw: no set has two batches with different targets and a blind score.");
        Optional<AsAssigned> found = answer.assigned();
        if (found.isEmpty()) {
            return plot;
        }
        double middle = 0;
        int n = 0;
        for (List<AssignedBatch> set : bySet(found.get()).values()) {
            double mean =
                    set.stream().mapToDouble(AssignedBatch::mean).average().orElse(0);
            double[] targets = set.stream().mapToDouble(AssignedBatch::target).toArray();
            double[] scores =
                    set.stream().mapToDouble(batch -> batch.mean() - mean).toArray();
            plot = plot.with(Line.of("one set", targets, scores).withWeight(Weight.FAINT));
            middle += Arrays.stream(targets).sum();
            n += targets.length;
        }
        middle /= n;
        List<AssignedBatch> batches = found.get().batches();
        Map<String, Double> means = batches.stream()
                .collect(Collectors.groupingBy(AssignedBatch::set, Collectors.averagingDouble(AssignedBatch::mean)));
        plot = plot.with(Points.of(
                        "one batch, mean of its cups and cuppers",
                        batches.stream().mapToDouble(AssignedBatch::target).toArray(),
                        batches.stream()
                                .mapToDouble(batch -> batch.mean() - means.getOrDefault(batch.set(), 0.0))
                                .toArray())
                .withNames(batches.stream().map(AssignedBatch::batch).toList())
                .withMarker(Marker.CIRCLE));
        double slope = found.get().slope().estimate();
        double low = terms.targets().get(0);
        double high = terms.targets().get(terms.targets().size() - 1);
        boolean tentative = answer.verdict() == TrialVerdict.CANNOT_TELL;
        return plot.with(Line.of(
                        tentative ? "average line, in doubt" : "average line",
                        new double[] {low, high},
                        new double[] {slope * (low - middle), slope * (high - middle)})
                .withWeight(tentative ? Weight.TENTATIVE : Weight.STRONG));
    }

    private static Map<String, List<AssignedBatch>> bySet(AsAssigned found) {
        return found.batches().stream()
                .sorted(Comparator.comparingDouble(AssignedBatch::target))
                .collect(Collectors.groupingBy(AssignedBatch::set, LinkedHashMap::new, Collectors.toList()));
    }

    /** Draws how often each difference comes about when the targets are dealt out again, and where the trial's own lies. */
    static Plot shuffles(TrialAnswer answer, AsAssigned found) {
        TrialTerms terms = answer.terms();
        double[] shuffled = Arrays.stream(found.slope().shuffled())
                .map(slope -> slope * terms.span())
                .toArray();
        double most = Arrays.stream(shuffled).map(Math::abs).max().orElse(1);
        double reach = Math.max(most, Math.abs(found.difference())) * 1.02 + 1e-9;
        double[] edges = new double[FIELDS + 1];
        double[] share = new double[FIELDS + 1];
        for (int i = 0; i <= FIELDS; i++) {
            edges[i] = reach * (2.0 * i / FIELDS - 1);
        }
        for (double difference : shuffled) {
            share[Math.min(FIELDS - 1, (int) ((difference / reach + 1) / 2 * FIELDS))] += 1.0 / shuffled.length;
        }
        return Plot.of(
                        "The difference as it came out, among those of the shuffles",
                        Axis.of("difference from lowest to highest target", Unit.POINTS.withDigits(1), terms.reader()),
                        Axis.of("share of shuffles", Unit.SHARE.withDigits(0), terms.reader()))
                .with(Line.steps("targets dealt out again", edges, share))
                .with(Boundary.at("as it came out", found.difference()))
                .withHeight(200);
    }

    /** Draws what each batch came out at against its target. */
    static Plot achieved(TrialAnswer answer, AsAchieved achieved) {
        TrialTerms terms = answer.terms();
        double low = terms.targets().get(0);
        double high = terms.targets().get(terms.targets().size() - 1);
        List<AssignedBatch> batches = achieved.batches();
        return Plot.of(
                        "What each batch came out at",
                        Axis.of(
                                terms.control().words() + " as drawn",
                                terms.control().unit(),
                                terms.reader()),
                        Axis.of(
                                terms.control().words() + " as achieved",
                                terms.control().unit(),
                                terms.reader()))
                .with(Line.of("target followed exactly", new double[] {low, high}, new double[] {low, high})
                        .withWeight(Weight.FAINT))
                .with(Points.of(
                                "one batch",
                                batches.stream()
                                        .mapToDouble(AssignedBatch::target)
                                        .toArray(),
                                batches.stream()
                                        .mapToDouble(batch -> batch.achieved().orElseThrow())
                                        .toArray())
                        .withNames(batches.stream().map(AssignedBatch::batch).toList())
                        .withMarker(Marker.CIRCLE))
                .withHeight(260);
    }
}
