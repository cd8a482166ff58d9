package parchment.trial;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import parchment.evidence.finding.RandomChoice;
import parchment.stats.Estimate;
import parchment.stats.linear.CannotFitException;
import parchment.stats.mixed.Likelihood;
import parchment.stats.mixed.LinearMixedModel;
import parchment.stats.mixed.MixedDesign;

/** Fits every single score of a trial with sets, batches, cuppers and cuppers in a set free to differ, to stand beside the batch means. */
final class TrialMixedModel {
    private static final String TARGET = "target";

    private TrialMixedModel() {}

    /**
     * Returns the slope on the target, in points per unit, with at most as many degrees of freedom as the batch means have; empty if no such model can be
     * fitted.
     */
    static Optional<Estimate> slope(AsAssigned assigned) {
        List<Double> scores = new ArrayList<>();
        List<Double> targets = new ArrayList<>();
        List<String> sets = new ArrayList<>();
        List<String> batches = new ArrayList<>();
        List<String> cuppers = new ArrayList<>();
        Map<String, Double> middle = new HashMap<>(assigned.batches().stream()
                .collect(Collectors.groupingBy(AssignedBatch::set, Collectors.averagingDouble(AssignedBatch::target))));
        for (AssignedBatch batch : assigned.batches()) {
            for (AssignedBatch.GivenScore score : batch.scores()) {
                scores.add(score.points());
                targets.add(batch.target() - middle.getOrDefault(batch.set(), 0.0));
                sets.add(batch.set());
                batches.add(batch.set() + " " + batch.place());
                cuppers.add(score.cupper());
            }
        }
        RandomChoice choice = new RandomChoice(scores.size());
        choice.offer("set", sets);
        choice.offer("batch", batches);
        choice.offer("cupper", cuppers);
        List<String> inSet = new ArrayList<>();
        for (int i = 0; i < sets.size(); i++) {
            inSet.add(sets.get(i) + " " + cuppers.get(i));
        }
        choice.offer("cupper in a set", inSet);
        MixedDesign design = MixedDesign.of("score", numbers(scores)).withCovariate(TARGET, numbers(targets));
        for (var term : choice.terms()) {
            design = design.withRandom(term);
        }
        try {
            Estimate slope = LinearMixedModel.fit(design, Likelihood.RESTRICTED).term(TARGET);
            return Double.isFinite(slope.standardError()) && slope.standardError() > 0
                    ? Optional.of(new Estimate(
                            slope.name(),
                            slope.estimate(),
                            slope.standardError(),
                            Math.min(slope.degreesOfFreedom(), assigned.line().degreesOfFreedom())))
                    : Optional.empty();
        } catch (CannotFitException e) {
            return Optional.empty();
        }
    }

    private static double[] numbers(List<Double> values) {
        return values.stream().mapToDouble(Double::doubleValue).toArray();
    }
}
