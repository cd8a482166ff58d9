package parchment.phase;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import parchment.curve.SmoothCurve;
import parchment.curve.measured.Smoothed;

/**
 * Turns times into bean temperatures and back: the rising part of a smoothed curve, from its lowest point on.
 *
 * <p>Where the curve falls for a moment it is held at the height it had reached: a temperature is passed when it is first reached.
 */
final class RisingPart {
    private final double[] seconds;
    private final double[] heights;
    private final double[] rates;

    private RisingPart(double[] seconds, double[] heights, double[] rates) {
        this.seconds = seconds;
        this.heights = heights;
        this.rates = rates;
    }

    /** Reads the climb of a batch; empty without a curve, or where it never rises for a minute. */
    static Optional<RisingPart> of(Phases phases) {
        return phases.bean().flatMap(RisingPart::of);
    }

    static Optional<RisingPart> of(SmoothCurve smooth) {
        List<Smoothed> rows =
                smooth.atReadings().stream().filter(row -> !row.isMissing()).toList();
        int lowest = 0;
        for (int i = 1; i < rows.size() && rows.get(i).seconds() < 400; i++) {
            if (rows.get(i).value() < rows.get(lowest).value()) {
                lowest = i;
            }
        }
        int size = rows.size() - lowest;
        if (size < 5 || rows.get(rows.size() - 1).seconds() - rows.get(lowest).seconds() < 60) {
            return Optional.empty();
        }
        double[] seconds = new double[size];
        double[] heights = new double[size];
        double[] rates = new double[size];
        double highest = Double.NEGATIVE_INFINITY;
        for (int i = 0; i < size; i++) {
            Smoothed row = rows.get(lowest + i);
            seconds[i] = row.seconds();
            // A hair's rise keeps the climb strictly increasing, so that a time belongs to every height.
            highest = Math.max(highest + 1e-9, row.value());
            heights[i] = highest;
            rates[i] = row.slope();
        }
        return Optional.of(new RisingPart(seconds, heights, rates));
    }

    /** Returns when a height is first reached, in seconds; negative infinity below the lowest, positive infinity above the last. */
    double secondsAt(double celsius) {
        if (celsius < heights[0]) {
            return Double.NEGATIVE_INFINITY;
        }
        if (celsius > heights[heights.length - 1]) {
            return Double.POSITIVE_INFINITY;
        }
        return between(heights, seconds, celsius);
    }

    /** Returns the height reached by a time, in °C; NaN outside the climb. */
    double celsiusAt(double atSeconds) {
        return atSeconds < start() || atSeconds > end() ? Double.NaN : between(seconds, heights, atSeconds);
    }

    /** Returns the rate of rise at a time, in °C/min; NaN outside the climb. */
    double rateAt(double atSeconds) {
        return atSeconds < start() || atSeconds > end() ? Double.NaN : between(seconds, rates, atSeconds);
    }

    /** Returns the mean rate between two heights in °C/min, as far as the climb got; NaN if it did not reach the first. */
    double meanRate(double fromCelsius, double toCelsius) {
        double low = Math.max(fromCelsius, heights[0]);
        double high = Math.min(toCelsius, heights[heights.length - 1]);
        return high - low < 1 ? Double.NaN : 60 * (high - low) / (secondsAt(high) - secondsAt(low));
    }

    double start() {
        return seconds[0];
    }

    double end() {
        return seconds[seconds.length - 1];
    }

    double highest() {
        return heights[heights.length - 1];
    }

    /** Returns the times of the readings of the climb. */
    double[] times() {
        return seconds.clone();
    }

    private static double between(double[] x, double[] y, double at) {
        int found = Arrays.binarySearch(x, at);
        if (found >= 0) {
            return y[found];
        }
        int after = -found - 1;
        double part = (at - x[after - 1]) / (x[after] - x[after - 1]);
        return y[after - 1] + part * (y[after] - y[after - 1]);
    }
}
