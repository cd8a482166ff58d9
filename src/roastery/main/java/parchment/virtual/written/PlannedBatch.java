package parchment.virtual.written;

import java.time.LocalDateTime;

/**
 * What was settled about a batch before it was charged, for the simulator to roast.
 *
 * @param name the batch's name
 * @param roastedAt the charge
 * @param lot the lot
 * @param recipe the recipe's name
 * @param greenMass kg
 * @param chargeReading bean-probe reading at which the beans go in, °C
 * @param meantDrop bean-probe reading at which the person means to drop, °C
 * @param plan how that reading was come by
 * @param positionInDay 1 for the day's first batch
 * @param warmUp minutes of warming up before the day's first batch
 */
public record PlannedBatch(
        String name,
        LocalDateTime roastedAt,
        VirtualLot lot,
        String recipe,
        double greenMass,
        double chargeReading,
        double meantDrop,
        Plan plan,
        int positionInDay,
        double warmUp) {

    /** Says how the drop was settled before the charge. */
    public enum Plan {
        /** Drawn by chance before the charge, and written down. */
        CHANCE,
        /** Chosen by the roaster before the charge, and written down. */
        CHOICE,
        /** Not written down. */
        UNWRITTEN
    }
}
