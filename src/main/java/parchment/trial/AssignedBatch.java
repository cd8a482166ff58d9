package parchment.trial;

import java.time.LocalDate;
import java.util.List;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.stream.Collectors;

/**
 * Holds one place of a trial: what was drawn for it, and what came of it.
 *
 * @param set the set's name: one lot on one roast day, listed before any target was seen
 * @param place the place in the set, counted from 1
 * @param lot the green lot
 * @param day the roast day
 * @param batch the batch's name in the logbook
 * @param target the drawn target, as the control's unit keeps it
 * @param state what came of it
 * @param achieved what the control came out at, as the control's unit keeps it; empty if it could not be read
 * @param scores the blind scores of the batch, one per cupper and cup; empty unless it was cupped
 * @param sawTargets cuppers who saw targets of the trial before they cupped this batch
 */
record AssignedBatch(
        String set,
        int place,
        String lot,
        LocalDate day,
        String batch,
        double target,
        State state,
        OptionalDouble achieved,
        List<GivenScore> scores,
        Set<String> sawTargets) {

    /** What came of a place of a trial. */
    enum State {
        /** Roasted and cupped blind. */
        CUPPED("cupped"),
        /** Roasted, and no blind score of it is written. */
        NOT_CUPPED("roasted and not cupped"),
        /** Charged, and no coffee to cup came of it. */
        LOST("lost"),
        /** Never charged; its line of the seal was not opened. */
        NOT_ROASTED("not roasted");

        private final String words;

        State(String words) {
            this.words = words;
        }

        String words() {
            return words;
        }
    }

    /**
     * One cupper's blind score of one cup.
     *
     * @param cupper who scored
     * @param points the score
     */
    record GivenScore(String cupper, double points) {}

    AssignedBatch {
        scores = List.copyOf(scores);
        sawTargets = Set.copyOf(sawTargets);
    }

    /** Returns a place as it was drawn, of which nothing else is known yet. */
    static AssignedBatch drawn(String set, int place, String lot, LocalDate day, String batch, double target) {
        return new AssignedBatch(
                set, place, lot, day, batch, target, State.NOT_ROASTED, OptionalDouble.empty(), List.of(), Set.of());
    }

    /** Returns the same place with what came of it. */
    AssignedBatch with(State found) {
        return new AssignedBatch(set, place, lot, day, batch, target, found, achieved, scores, sawTargets);
    }

    /** Returns the same place with who had seen targets before they cupped it. */
    AssignedBatch seenBy(Set<String> cuppers) {
        return new AssignedBatch(set, place, lot, day, batch, target, state, achieved, scores, cuppers);
    }

    /** Returns the same place with what was read of it and scored. */
    AssignedBatch with(OptionalDouble read, List<GivenScore> given) {
        return new AssignedBatch(
                set, place, lot, day, batch, target, given.isEmpty() ? state : State.CUPPED, read, given, sawTargets);
    }

    /** Returns the same place without the scores of cuppers who had seen targets. */
    AssignedBatch blindOnly() {
        List<GivenScore> blind = scores.stream()
                .filter(score -> !sawTargets.contains(score.cupper()))
                .toList();
        return new AssignedBatch(
                set,
                place,
                lot,
                day,
                batch,
                target,
                blind.isEmpty() && state == State.CUPPED ? State.NOT_CUPPED : state,
                achieved,
                blind,
                sawTargets);
    }

    /** Returns the mean over cuppers of each cupper's mean over cups; NaN if there is no score. */
    double mean() {
        return scores.stream()
                .collect(Collectors.groupingBy(GivenScore::cupper, Collectors.averagingDouble(GivenScore::points)))
                .values()
                .stream()
                .mapToDouble(Double::doubleValue)
                .average()
                .orElse(Double.NaN);
    }
}
