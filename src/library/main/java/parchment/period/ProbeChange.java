package parchment.period;

import java.time.LocalDate;
import java.util.List;
import parchment.display.Showable;
import parchment.stats.Estimate;
import parchment.stats.Interval;

/**
 * One date at which a machine's probe changed, found in the readings or written into the upkeep.
 *
 * @param machine the machine; empty where none was written
 * @param kind how it is known
 * @param on the written day, else the first roast day with the new readings
 * @param earliest first day of the 90 % date set: the change lies after the roast day before it
 * @param latest last day of the 90 % date set
 * @param offsets by how much readings changed, in °C, one per indicator, with its error
 * @param chance how often readings without a change look as changed as this by chance; NaN if it was not found in the readings
 * @param words what is to be said of it
 */
public record ProbeChange(
        String machine,
        Kind kind,
        LocalDate on,
        LocalDate earliest,
        LocalDate latest,
        List<Estimate> offsets,
        double chance,
        String words)
        implements Showable {

    /** How a change is known. */
    public enum Kind {
        /** The readings stepped, and the upkeep names work on a probe then. */
        FOUND_AND_WRITTEN("found and written"),
        /** The readings stepped, and the upkeep names no work on a probe. */
        FOUND_WITHOUT_ENTRY("found, not written"),
        /** The upkeep names work on a probe, and the readings show no step. */
        WRITTEN_WITHOUT_CHANGE("written, not seen"),
        /** The upkeep names work on a probe that moved nothing, such as cleaning, and the readings show no step. */
        OTHER_WORK("other work on the probe, not seen"),
        /** The readings stepped where fewer than two lots were roasted before and after: the lot could be the reason. */
        LOT_OR_PROBE("lot or probe"),
        /** Only one of the indicators stepped: a habit of charging or of marking could be the reason. */
        ONE_PLACE_ONLY("one place only"),
        /** Only the empty drum's readings stepped: the air probe, or how the drum is heated before charge, could be the reason. */
        NOT_IN_THE_BEANS("in the empty drum only"),
        /** A slow change explains the readings about as well as a step. */
        STEP_OR_SLOW("step or slow change");

        private final String words;

        Kind(String words) {
            this.words = words;
        }

        /** Returns the kind in words. */
        public String words() {
            return words;
        }

        /** Tells whether the bean probe may have moved then. */
        boolean mayBeTheBeanProbe() {
            return this != OTHER_WORK && this != NOT_IN_THE_BEANS;
        }

        /** Tells whether readings before and after are taken as those of two probe periods. */
        public boolean separatesPeriods() {
            return this == FOUND_AND_WRITTEN || this == FOUND_WITHOUT_ENTRY || this == WRITTEN_WITHOUT_CHANGE;
        }
    }

    /** What is less than this in °C cannot be shown as a step. */
    private static final double NOTHING = 0.005;

    /** How a change's interval is told. */
    private static final double LEVEL = 0.9;

    /**
     * Tells whether readings before and after a change are alike to the last digit that can be shown, their error included. No two roasts are: such
     * readings follow from each other, as in built or copied curves, and tell nothing of the probe.
     */
    public static boolean isExactlyAlike(Estimate offset) {
        Interval interval = offset.interval(LEVEL);
        return interval.lower() > -NOTHING && interval.upper() < NOTHING;
    }

    /** Copies the list. */
    public ProbeChange {
        offsets = List.copyOf(offsets);
    }

    @Override
    public String toString() {
        return on + (machine.isEmpty() ? "" : ", " + machine) + ": " + words;
    }
}
