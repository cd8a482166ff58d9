package parchment.evidence.finding;

import java.util.Locale;
import parchment.stats.Interval;

/**
 * The answer where nobody drew the feature by chance: how a score went with it, without a word of what made what.
 *
 * @param attribute the attribute that was scored
 * @param feature the name of the feature
 * @param stepWords the natural step, as in "1 °C"
 * @param slope points per unit of the feature as the library keeps it
 * @param perStep points per natural step
 * @param interval of the slope per natural step
 */
public record Association(
        String attribute, String feature, String stepWords, Slope slope, Slope perStep, Interval interval)
        implements Claim {

    @Override
    public String toString() {
        if (!perStep.known()) {
            return "How " + attribute + " went with the " + feature + " could not be estimated.";
        }
        return String.format(
                Locale.ROOT,
                "Inside lots, %s more in %s went with %s points of %s (%.0f %% interval %s).",
                stepWords,
                feature,
                Wording.signed(perStep.estimate(), interval),
                attribute,
                100 * interval.level(),
                Wording.signed(interval));
    }
}
