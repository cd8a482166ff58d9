package parchment.phase;

import parchment.curve.Smoothed;

/**
 * Holds what the smoothed bean probe read at a mark.
 *
 * @param celsius the temperature in °C
 * @param standardError its standard error in °C, the mark's time taken as exact
 * @param rateOfRise the rate of rise in °C/min
 * @param rateStandardError the rate's standard error in °C/min
 */
public record ProbeReading(double celsius, double standardError, double rateOfRise, double rateStandardError) {

    static ProbeReading of(Smoothed there) {
        return new ProbeReading(there.value(), there.valueStandardError(), there.slope(), there.slopeStandardError());
    }

    /** Returns the reading a few seconds later or earlier along the straight line. */
    public ProbeReading extended(double seconds) {
        double minutes = seconds / 60;
        return new ProbeReading(
                celsius + rateOfRise * minutes,
                Math.hypot(standardError, rateStandardError * minutes),
                rateOfRise,
                rateStandardError);
    }
}
