package parchment.curve;

import java.util.List;
import java.util.Locale;
import parchment.curve.measured.CurveEstimate;
import parchment.curve.measured.Smoothed;
import parchment.display.Showable;

/**
 * Works out the rate of rise along a curve: its slope per minute at every reading, with standard errors.
 *
 * <p>Degrees Celsius per minute for a temperature. Missing where the readings are too few; never carried across a gap.
 */
public final class RateOfRise implements Showable {
    private final SmoothCurve smooth;
    private final List<Smoothed> rows;

    private RateOfRise(SmoothCurve smooth) {
        this.smooth = smooth;
        this.rows = smooth.atReadings();
    }

    /** Returns the rate of rise of a smoothed curve. */
    public static RateOfRise of(SmoothCurve smooth) {
        return new RateOfRise(smooth);
    }

    /** Cleans a curve, smooths it with the usual settings and returns its rate of rise. */
    public static RateOfRise of(Curve curve) {
        return of(SmoothCurve.of(curve));
    }

    /** Returns the smoothed curve. */
    public SmoothCurve smooth() {
        return smooth;
    }

    /** Returns the rate at a time. */
    public CurveEstimate at(double seconds) {
        return smooth.slopeAt(seconds);
    }

    /** Returns the times of the readings in seconds. */
    public double[] seconds() {
        return rows.stream().mapToDouble(Smoothed::seconds).toArray();
    }

    /** Returns the rates at the readings, NaN where missing. */
    public double[] values() {
        return rows.stream().mapToDouble(Smoothed::slope).toArray();
    }

    /** Returns the standard errors of the rates. */
    public double[] standardErrors() {
        return rows.stream().mapToDouble(Smoothed::slopeStandardError).toArray();
    }

    @Override
    public String toString() {
        int missing = (int) rows.stream().filter(Smoothed::isMissing).count();
        double typical = parchment.stats.linear.Robust.median(standardErrors());
        return String.format(
                        Locale.ROOT,
                        "rate of rise of the %s at %d readings (%d missing), typical standard error ",
                        smooth.clean().kept().name(),
                        rows.size(),
                        missing)
                + (Double.isNaN(typical) ? "missing" : String.format(Locale.ROOT, "%.2g per minute", typical));
    }
}
