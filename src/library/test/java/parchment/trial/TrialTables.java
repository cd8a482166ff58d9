package parchment.trial;

import com.google.gson.JsonObject;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import java.util.Set;
import parchment.quantity.TemperatureUnit;
import parchment.stats.ReferenceData;
import parchment.trial.sealed.TrialControl;
import parchment.trial.sealed.TrialTerms;

/** Builds trials for tests: the outside example, and tables of one score per batch. */
final class TrialTables {
    static final String SEAL = "0000 1111 2222 3333 4444 5555 6666 7777";

    private TrialTables() {}

    static TrialTerms terms(double smallestDifference, int looks) {
        return new TrialTerms(
                "quay",
                "sweetness",
                TrialControl.DROP_TEMPERATURE,
                List.of(201.5, 203.0, 204.5),
                smallestDifference,
                looks,
                TrialTerms.USUAL_LOST_BATCH,
                List.of("Ana", "Bo", "Cy"),
                2,
                TemperatureUnit.CELSIUS);
    }

    /** Returns a scored place; target -1, 0 or 1 steps of 1.5 °C from 203 °C. */
    static AssignedBatch scored(int set, int place, double steps, double score) {
        return place(set, place, steps)
                .with(
                        OptionalDouble.of(203 + 1.5 * steps),
                        List.of(
                                new AssignedBatch.GivenScore("Ana", score),
                                new AssignedBatch.GivenScore("Bo", score),
                                new AssignedBatch.GivenScore("Cy", score)));
    }

    static AssignedBatch place(int set, int place, double steps) {
        return AssignedBatch.drawn(
                "set " + set,
                place,
                "Cinder Ridge",
                LocalDate.of(2026, 3, 1).plusDays(set),
                "T" + set + "-" + place,
                203 + 1.5 * steps);
    }

    /** Sets of three with the given slope per step; the rest is a fixed pattern of the given size that leaves the slope alone. */
    static List<AssignedBatch> sets(int sets, double perStep, double rest) {
        List<AssignedBatch> batches = new ArrayList<>();
        for (int set = 0; set < sets; set++) {
            double bend = set % 2 == 0 ? rest : -rest;
            batches.add(scored(set, 1, -1, 6 + 0.1 * set - perStep + bend));
            batches.add(scored(set, 2, 0, 6 + 0.1 * set - 2 * bend));
            batches.add(scored(set, 3, 1, 6 + 0.1 * set + perStep + bend));
        }
        return batches;
    }

    /** The fifteen batches of the outside example, one score each. */
    static List<AssignedBatch> example() {
        JsonObject inputs =
                ReferenceData.expected("coin-flip", "coin_flip_example").getAsJsonObject("inputs");
        double[] set = ReferenceData.numbers(inputs.get("set"));
        double[] target = ReferenceData.numbers(inputs.get("target"));
        double[] achieved = ReferenceData.numbers(inputs.get("achieved"));
        double[] score = ReferenceData.numbers(inputs.get("score"));
        List<AssignedBatch> batches = new ArrayList<>();
        for (int i = 0; i < set.length; i++) {
            batches.add(place((int) set[i], i % 3 + 1, target[i] / 1.5)
                    .with(OptionalDouble.of(achieved[i]), List.of(new AssignedBatch.GivenScore("Ana", score[i]))));
        }
        return batches;
    }

    static AssignedBatch lost(AssignedBatch batch) {
        return new AssignedBatch(
                batch.set(),
                batch.place(),
                batch.lot(),
                batch.day(),
                batch.batch(),
                batch.target(),
                AssignedBatch.State.LOST,
                OptionalDouble.empty(),
                List.of(),
                Set.of());
    }
}
