package parchment.curve.measured;

import parchment.stats.local.LocalFit.SlopeQuality;

/**
 * What a smooth curve gives at one time.
 *
 * @param seconds when
 * @param value the height, NaN if missing
 * @param valueStandardError its standard error
 * @param slope the slope per minute, NaN if missing; the rate of rise of a bean-temperature curve
 * @param slopeStandardError its standard error; where rounding hides the slope, at least what one step over the window allows
 * @param quality whether the logger's step lets the slope be seen
 * @param whyMissing a sentence if there is no value, otherwise empty
 */
public record Smoothed(
        double seconds,
        double value,
        double valueStandardError,
        double slope,
        double slopeStandardError,
        SlopeQuality quality,
        String whyMissing) {

    public static Smoothed missing(double seconds, String why) {
        return new Smoothed(seconds, Double.NaN, Double.NaN, Double.NaN, Double.NaN, SlopeQuality.MISSING, why);
    }

    /** Returns whether there is no value. */
    public boolean isMissing() {
        return Double.isNaN(value);
    }
}
