package parchment.evidence;

import java.util.Locale;
import parchment.stats.Interval;

/**
 * Holds what a planned feature did to a score, from batches whose target was drawn by chance before charge, taken as they were drawn
 * (not as they came out).
 *
 * @param attribute the attribute that was scored
 * @param feature the name of the feature
 * @param stepWords the natural step, as in "1 °C"
 * @param slope points per unit of the target as the library keeps it
 * @param perStep points per natural step
 * @param interval of the slope per natural step
 */
public record Effect(String attribute, String feature, String stepWords, Slope slope, Slope perStep, Interval interval)
        implements Claim {

    @Override
    public String toString() {
        if (!perStep.known()) {
            return "What the planned " + feature + " did to " + attribute + " could not be estimated.";
        }
        if (Double.isInfinite(interval.lower()) || Double.isInfinite(interval.upper())) {
            return String.format(
                    Locale.ROOT,
                    "Planning %s more in %s, as drawn by chance before charge, changed %s by %s points, and so few batches bound it"
                            + " on neither side.",
                    stepWords,
                    feature,
                    attribute,
                    Wording.signed(perStep.estimate()));
        }
        return String.format(
                Locale.ROOT,
                "Planning %s more in %s, as drawn by chance before charge, changed %s by %s points (%.0f %% interval %s).",
                stepWords,
                feature,
                attribute,
                Wording.signed(perStep.estimate(), interval),
                100 * interval.level(),
                Wording.signed(interval));
    }
}
