package parchment.logbook.written;

import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.Map;

/**
 * How one cupping was held, which decides how far its scores can be trusted.
 *
 * @param name the cupping's name
 * @param blind whether the cuppers knew which batch they tasted
 * @param beforeDiscussion whether scores were written before anybody spoke of them
 * @param extras the other columns that were filled in (water, dose, grind …), by header
 */
public record Cupping(String name, Said blind, Said beforeDiscussion, Map<String, String> extras) {

    /** What the logbook says of a yes-or-no matter. */
    public enum Said {
        /** The logbook says yes. */
        YES,
        /** The logbook says no. */
        NO,
        /** The logbook does not say. */
        NOT_WRITTEN
    }

    /** Copies the extras, keeping the order of the columns. */
    public Cupping {
        extras = Collections.unmodifiableMap(new LinkedHashMap<>(extras));
    }
}
