package parchment.evidence.finding;

import parchment.display.Showable;
import parchment.stats.Interval;

/**
 * What was estimated, in a type of its own so that "went with" and "made" cannot be mixed up: how a score went with a feature, or what a
 * feature drawn by chance did to it.
 *
 * <p>The two are different types with different words and are never exchanged.
 */
public sealed interface Claim extends Showable permits Association, Effect {

    /** Returns the slope, points per unit of the feature as the library keeps it. */
    Slope slope();

    /** Returns the slope per natural step of the feature in the reader's unit, such as 1 °C, in points. */
    Slope perStep();

    /** Returns the interval of the slope per natural step, in points. */
    Interval interval();
}
