package parchment.phase.found;

import parchment.curve.measured.Smoothed;

/**
 * What the smoothed bean probe read at a mark.
 *
 * @param celsius the temperature in °C
 * @param standardError its standard error in °C, the mark's time taken as exact
 * @param rateOfRise the rate of rise in °C/min
 * @param rateStandardError the rate's standard error in °C/min
 * @param follows how far the reading goes along with an error of the mark's time: 1 where it is read at the mark, less where the curve
 *     itself shows the instant more exactly than the mark was written
 */
public record ProbeReading(
        double celsius, double standardError, double rateOfRise, double rateStandardError, double follows) {

    public static ProbeReading of(Smoothed there) {
        return new ProbeReading(
                there.value(), there.valueStandardError(), there.slope(), there.slopeStandardError(), 1);
    }

    /** Returns the reading a few seconds later or earlier along the straight line. */
    ProbeReading later(double seconds) {
        double minutes = seconds / 60;
        return new ProbeReading(
                celsius + rateOfRise * minutes,
                Math.hypot(standardError, rateStandardError * minutes),
                rateOfRise,
                rateStandardError,
                follows);
    }

    /** Returns the reading some seconds past the last one, along the straight line, from which it may bend by so much (a standard error). */
    public ProbeReading carriedOn(double seconds, double bend) {
        ProbeReading straight = later(seconds);
        return new ProbeReading(
                straight.celsius, Math.hypot(straight.standardError, bend), rateOfRise, rateStandardError, follows);
    }

    public ProbeReading following(double share) {
        return new ProbeReading(celsius, standardError, rateOfRise, rateStandardError, share);
    }

    /** Returns the reading where the mark is moved by so many seconds: along the straight line, as far as the reading goes along. */
    public ProbeReading extended(double seconds) {
        return later(follows * seconds);
    }
}
