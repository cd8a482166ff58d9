package parchment.align;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.function.ToDoubleFunction;
import parchment.curve.SmoothCurve;
import parchment.curve.measured.Smoothed;

/** Reads a smoothed quantity of one batch at any second, straight between readings; gaps are not bridged. */
final class Track {
    private static final double TORN_SECONDS = 10;

    private final double[] seconds;
    private final double[] values;
    private final double tear;

    private Track(double[] seconds, double[] values, double tear) {
        this.seconds = seconds;
        this.values = values;
        this.tear = tear;
    }

    /** Returns the bean temperature. */
    static Track ofTemperature(SmoothCurve smooth) {
        return of(smooth, Smoothed::value);
    }

    /** Returns the rate of rise, smoothed over at least so many seconds to either side. */
    static Track ofRate(SmoothCurve smooth, double bandwidth) {
        return of(smooth.bandwidthSeconds() < bandwidth ? smooth.withBandwidth(bandwidth) : smooth, Smoothed::slope);
    }

    private static Track of(SmoothCurve smooth, ToDoubleFunction<Smoothed> value) {
        List<Smoothed> kept = new ArrayList<>();
        for (Smoothed at : smooth.atReadings()) {
            if (!at.isMissing() && Double.isFinite(value.applyAsDouble(at))) {
                kept.add(at);
            }
        }
        double interval = smooth.clean().interval();
        return new Track(
                kept.stream().mapToDouble(Smoothed::seconds).toArray(),
                kept.stream().mapToDouble(value).toArray(),
                Math.max(TORN_SECONDS, Double.isNaN(interval) ? 0 : 3 * interval));
    }

    boolean isEmpty() {
        return seconds.length < 2;
    }

    double from() {
        return seconds[0];
    }

    double to() {
        return seconds[seconds.length - 1];
    }

    /** Returns the value at a time; NaN outside the readings and inside a gap. */
    double at(double time) {
        if (isEmpty() || !(time >= from() && time <= to())) {
            return Double.NaN;
        }
        int found = Arrays.binarySearch(seconds, time);
        if (found >= 0) {
            return values[found];
        }
        int after = -found - 1;
        double step = seconds[after] - seconds[after - 1];
        return step > tear
                ? Double.NaN
                : values[after - 1] + (time - seconds[after - 1]) / step * (values[after] - values[after - 1]);
    }
}
