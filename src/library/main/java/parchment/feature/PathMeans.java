package parchment.feature;

import java.util.List;
import java.util.Locale;
import parchment.curve.ControlSteps;
import parchment.curve.Curve;
import parchment.curve.SmoothCurve;
import parchment.curve.measured.Gap;
import parchment.curve.measured.Smoothed;
import parchment.feature.path.Measured;
import parchment.quantity.Elapsed;
import parchment.stats.local.Autocovariance;

/** Integrates curves over time. A stretch with a gap in it has no integral: nothing is bridged. */
final class PathMeans {
    private PathMeans() {}

    /** Returns the mean over time of a smoothed curve. */
    static Measured mean(SmoothCurve smooth, double from, double to) {
        Measured area = area(smooth, from, to);
        return area.isMissing() ? area : Measured.of(area.value() / (to - from), area.standardError() / (to - from));
    }

    /** Returns the integral of a smoothed curve over seconds, with the error that the noise brings. */
    private static Measured area(SmoothCurve smooth, double from, double to) {
        String name = smooth.clean().kept().name();
        if (!(to > from)) {
            return Measured.missing("the stretch of the " + name + " has no length.");
        }
        for (Gap gap : smooth.clean().gaps()) {
            if (gap.fromSeconds() < to && gap.toSeconds() > from) {
                return Measured.missing("the " + name + " has a gap (" + gap + ").");
            }
        }
        List<Smoothed> rows =
                smooth.atReadings().stream().filter(r -> !r.isMissing()).toList();
        double reach = Math.max(10, 3 * smooth.clean().interval());
        if (rows.size() < 2
                || rows.get(0).seconds() > from + reach
                || rows.get(rows.size() - 1).seconds() < to - reach) {
            return Measured.missing(String.format(
                    Locale.ROOT,
                    "the %s was not logged from %s to %s.",
                    name,
                    Elapsed.seconds(from),
                    Elapsed.seconds(to)));
        }
        double sum = 0;
        for (int i = 0; i <= rows.size(); i++) {
            // The first and the last value are held for the moment to the ends.
            double left = Math.max(from, i == 0 ? from : rows.get(i - 1).seconds());
            double right = Math.min(to, i == rows.size() ? to : rows.get(i).seconds());
            if (right > left) {
                sum += 0.5 * (right - left) * (at(rows, i, left) + at(rows, i, right));
            }
        }
        return Measured.of(sum, noise(smooth, to - from));
    }

    private static double at(List<Smoothed> rows, int i, double seconds) {
        if (i == 0) {
            return rows.get(0).value();
        }
        if (i == rows.size()) {
            return rows.get(i - 1).value();
        }
        Smoothed a = rows.get(i - 1);
        Smoothed b = rows.get(i);
        double share = (seconds - a.seconds()) / (b.seconds() - a.seconds());
        return a.value() + share * (b.value() - a.value());
    }

    /** Standard error of an integral: each reading's own noise, and the noise that neighbours share over its length. */
    private static double noise(SmoothCurve smooth, double seconds) {
        Autocovariance noise = smooth.noise();
        double shared = noise.at(0);
        double decay = shared > 0 ? noise.at(1) / shared : 0;
        double length = decay > 0 ? -1 / Math.log(decay) : 0;
        double interval =
                Double.isNaN(smooth.clean().interval()) ? 0 : smooth.clean().interval();
        return Math.sqrt(((noise.variance() - shared) * interval + 2 * shared * length) * seconds);
    }

    /** Returns the mean over time of a control, which holds its level until the next reading. */
    static Measured mean(ControlSteps steps, double from, double to) {
        Curve control = steps.control();
        if (!(to > from)) {
            return Measured.missing("the stretch of the " + control.name() + " has no length.");
        }
        if (control.secondsAt(0) > from + 10) {
            return Measured.missing(
                    "the " + control.name() + " was not logged before " + Elapsed.seconds(control.secondsAt(0)) + ".");
        }
        double sum = 0;
        for (int i = 0; i < control.size(); i++) {
            double left = i == 0 ? from : Math.max(from, control.secondsAt(i));
            double right = i + 1 < control.size() ? Math.min(to, control.secondsAt(i + 1)) : to;
            if (right > left) {
                sum += (right - left) * control.valueAt(i);
            }
        }
        return Measured.exact(sum / (to - from));
    }
}
