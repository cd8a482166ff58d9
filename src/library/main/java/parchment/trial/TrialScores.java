package parchment.trial;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import parchment.curve.Curve;
import parchment.feature.Features;
import parchment.feature.path.BatchPath;
import parchment.feature.path.Measured;
import parchment.logbook.Logbook;
import parchment.logbook.Quantity;
import parchment.logbook.written.CupScores;
import parchment.logbook.written.Cupping;
import parchment.trial.sealed.TrialControl;
import parchment.trial.sealed.TrialTerms;

/** Finds in a logbook what came of the places of a trial: roasted, cupped blind, and what the control came out at. */
final class TrialScores {
    private TrialScores() {}

    /**
     * Returns the places with what the logbook tells of them.
     *
     * <p>A place counts as roasted once its batch is in the logbook, whatever a filter left out; as cupped once it has a blind score of the trial's attribute. Scores
     * of a cupping that is not written as blind are not taken. Readings are those of the batch's own probe, for which the target was meant.
     *
     * @param drawn the places as drawn; one that is {@link AssignedBatch.State#LOST} stays lost unless it was cupped all the same
     */
    static List<AssignedBatch> of(TrialTerms terms, List<AssignedBatch> drawn, Logbook logbook) {
        Logbook whole = logbook.whole();
        Map<String, List<AssignedBatch.GivenScore>> scores = blindScores(terms.score(), whole);
        Map<String, BatchPath> paths = new HashMap<>();
        List<String> names = drawn.stream().map(AssignedBatch::batch).toList();
        BatchPath.of(whole.only(batch -> names.contains(batch.name())))
                .forEach(path -> paths.put(path.batch().name(), path));
        List<AssignedBatch> found = new ArrayList<>();
        for (AssignedBatch place : drawn) {
            boolean roasted = whole.find(place.batch()).isPresent();
            AssignedBatch.State state = roasted && place.state() == AssignedBatch.State.NOT_ROASTED
                    ? AssignedBatch.State.NOT_CUPPED
                    : place.state();
            OptionalDouble achieved = Optional.ofNullable(paths.get(place.batch()))
                    .map(path -> achieved(terms.control(), path))
                    .orElse(OptionalDouble.empty());
            found.add(place.with(state).with(achieved, scores.getOrDefault(place.batch(), List.of())));
        }
        return List.copyOf(found);
    }

    private static Map<String, List<AssignedBatch.GivenScore>> blindScores(String attribute, Logbook logbook) {
        Map<String, List<AssignedBatch.GivenScore>> scores = new HashMap<>();
        for (CupScores cup : logbook.cups()) {
            double score = cup.score(attribute);
            if (isBlind(cup, logbook) && Double.isFinite(score)) {
                scores.computeIfAbsent(cup.batch(), batch -> new ArrayList<>())
                        .add(new AssignedBatch.GivenScore(cup.cupper(), score));
            }
        }
        return scores;
    }

    /** Says whether a score was given at a cupping that is written as blind. */
    static boolean isBlind(CupScores cup, Logbook logbook) {
        return Optional.of(cup.cupping())
                .flatMap(logbook::cupping)
                .filter(how -> how.blind() == Cupping.Said.YES)
                .isPresent();
    }

    /** Returns what a control came out at, on the batch's own probe. */
    static OptionalDouble achieved(TrialControl control, BatchPath path) {
        return switch (control) {
            case DROP_TEMPERATURE -> read(Features.dropTemperature().measure(path));
            case CHARGE_TEMPERATURE -> read(Features.chargeTemperature().measure(path));
            case FIRST_GAS -> firstGas(path);
        };
    }

    private static OptionalDouble read(Measured measured) {
        return measured.isMissing() ? OptionalDouble.empty() : OptionalDouble.of(measured.value());
    }

    /** The gas that was held first from charge on; a control is logged at its moves, so its first reading is its setting. */
    private static OptionalDouble firstGas(BatchPath path) {
        return path.steps(Quantity.GAS)
                .map(steps -> steps.list().isEmpty()
                        ? last(steps.control())
                        : steps.list().get(0).from())
                .filter(Double::isFinite)
                .map(OptionalDouble::of)
                .orElse(OptionalDouble.empty());
    }

    private static double last(Curve control) {
        return control.size() == 0 ? Double.NaN : control.values()[control.size() - 1];
    }
}
