package parchment.logbook.written;

import java.util.Optional;
import parchment.quantity.Temperature;

/**
 * What was decided before charge, so that what was meant can be told from what came out.
 *
 * @param dropTemperature the drop temperature that was aimed at
 * @param plannedBy how that aim was chosen
 */
public record BatchPlan(Optional<Temperature> dropTemperature, PlannedBy plannedBy) {

    /** Says how a target was chosen. Only chance lets a comparison speak of an effect. */
    public enum PlannedBy {
        /** The target was drawn by chance before charge. */
        CHANCE,
        /** Somebody chose the target. */
        CHOICE,
        /** The logbook does not say. */
        NOT_WRITTEN
    }

    /** Holds nothing: no plan was written. */
    public static final BatchPlan NOT_WRITTEN = new BatchPlan(Optional.empty(), PlannedBy.NOT_WRITTEN);
}
