package parchment.logbook.written;

import java.util.Optional;
import java.util.OptionalDouble;

/**
 * How the roasted coffee looked.
 *
 * @param wholeBeanColour the colour meter's reading on whole beans
 * @param groundColour the colour meter's reading on ground coffee
 * @param colourMeter the label of the meter, as written in the column's unit; empty if there is none
 * @param quakers pale beans found in 100 g
 * @param tipping what was written of burnt tips
 * @param scorching what was written of burnt faces
 */
public record BatchLooks(
        OptionalDouble wholeBeanColour,
        OptionalDouble groundColour,
        String colourMeter,
        OptionalDouble quakers,
        Optional<String> tipping,
        Optional<String> scorching) {

    /** Holds nothing: none of it was written. */
    public static final BatchLooks NOT_WRITTEN = new BatchLooks(
            OptionalDouble.empty(),
            OptionalDouble.empty(),
            "",
            OptionalDouble.empty(),
            Optional.empty(),
            Optional.empty());
}
