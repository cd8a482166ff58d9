package parchment.curve.measured;

import java.util.List;
import java.util.Locale;
import parchment.curve.Curve;
import parchment.curve.SmoothCurve;
import parchment.quantity.Elapsed;
import parchment.quantity.TemperatureUnit;

/**
 * Finds when a smoothed curve first rises to a value, after its lowest point.
 *
 * <p>The standard error is that of the height divided by the slope; where the curve is so flat that this exceeds the window, there is
 * no answer.
 */
public final class Passage {
    private static final int STEPS = 30;

    /** A slope of less than this many degrees a minute is left by rounding where the readings stay the same. */
    private static final double LEAST_SLOPE = 1e-6;

    private Passage() {}

    /** Returns the time in seconds at which the curve first reaches a value from below. */
    public static CurveEstimate rising(SmoothCurve smooth, double value) {
        return rising(smooth, value, TemperatureUnit.CELSIUS);
    }

    /** Returns the time in seconds at which the curve first reaches a value from below; reasons are told on the reader's scale. */
    public static CurveEstimate rising(SmoothCurve smooth, double value, TemperatureUnit reader) {
        List<Smoothed> rows = smooth.atReadings();
        Curve kept = smooth.clean().kept();
        String shown = kept.unit().format(value, reader);
        int lowest = -1;
        for (int i = 0; i < rows.size(); i++) {
            if (!rows.get(i).isMissing()
                    && (lowest < 0 || rows.get(i).value() < rows.get(lowest).value())) {
                lowest = i;
            }
        }
        if (lowest < 0) {
            return CurveEstimate.missing("the " + kept.name() + " has too few readings.");
        }
        if (rows.get(lowest).value() > value) {
            return CurveEstimate.missing(String.format(
                    Locale.ROOT,
                    "the %s never was as low as %s (lowest %s).",
                    kept.name(),
                    shown,
                    kept.unit().format(rows.get(lowest).value(), reader)));
        }
        for (int i = lowest + 1; i < rows.size(); i++) {
            if (rows.get(i).value() >= value) {
                return between(smooth, rows.get(i - 1), rows.get(i), value, shown);
            }
        }
        return CurveEstimate.missing("the " + kept.name() + " never reached " + shown + ".");
    }

    private static CurveEstimate between(
            SmoothCurve smooth, Smoothed before, Smoothed after, double value, String shown) {
        double low = before.seconds();
        double high = after.seconds();
        if (smooth.at(0.5 * (low + high)).isMissing() || before.isMissing()) {
            return CurveEstimate.missing(String.format(
                    Locale.ROOT,
                    "the %s passes %s inside a gap (%s to %s).",
                    smooth.clean().kept().name(),
                    shown,
                    Elapsed.seconds(low),
                    Elapsed.seconds(high)));
        }
        // Newton's steps, kept between the two readings.
        double rise = after.value() - before.value();
        double at = rise > 0 ? low + (high - low) * (value - before.value()) / rise : low;
        for (int i = 0; i < STEPS; i++) {
            Smoothed here = smooth.at(at);
            double off = here.value() - value;
            if (off < 0) {
                low = at;
            } else {
                high = at;
            }
            double next = at - off / (here.slope() / 60);
            next = next > low && next < high ? next : 0.5 * (low + high);
            boolean done = Math.abs(next - at) < 1e-6;
            at = next;
            if (done) {
                break;
            }
        }
        Smoothed there = smooth.at(at);
        double error = there.valueStandardError() / Math.max(there.slope() / 60, 1e-12);
        if (!(there.slope() > LEAST_SLOPE) || error > smooth.bandwidthSeconds()) {
            return CurveEstimate.missing(String.format(
                    Locale.ROOT,
                    "the %s is too flat at %s to say when it passed.",
                    smooth.clean().kept().name(),
                    shown));
        }
        return CurveEstimate.of(at, error);
    }
}
