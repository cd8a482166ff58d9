package parchment.align;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import parchment.curve.SmoothCurve;
import parchment.curve.measured.Smoothed;
import parchment.phase.Phases;

/**
 * Reads off one batch when each bean temperature was first passed, from the lowest reading to the highest, on the smoothed curve.
 *
 * <p>A temperature that was passed inside a gap of the readings has no time.
 */
final class FirstPassages {
    /** Seconds without a reading from which on a curve is torn; as in the cleaning of curves. */
    private static final double TORN_SECONDS = 10;

    private final double[] celsius;
    private final double[] seconds;
    /** Whether readings are missing between a point and the one before it. */
    private final boolean[] torn;

    private FirstPassages(double[] celsius, double[] seconds, boolean[] torn) {
        this.celsius = celsius;
        this.seconds = seconds;
        this.torn = torn;
    }

    /** Returns a batch's climb, or nothing if its bean temperature does not rise over two readings at least. */
    static Optional<FirstPassages> of(Phases phases) {
        Optional<SmoothCurve> smooth = phases.bean();
        if (smooth.isEmpty()) {
            return Optional.empty();
        }
        List<Smoothed> readings =
                smooth.get().atReadings().stream().filter(at -> !at.isMissing()).toList();
        double interval = smooth.get().clean().interval();
        double tear = Math.max(TORN_SECONDS, Double.isNaN(interval) ? 0 : 3 * interval);
        int lowest = 0;
        for (int i = 1; i < readings.size(); i++) {
            lowest = readings.get(i).value() < readings.get(lowest).value() ? i : lowest;
        }
        double[] celsius = new double[readings.size()];
        double[] seconds = new double[readings.size()];
        boolean[] torn = new boolean[readings.size()];
        int size = 0;
        boolean missing = false;
        for (int i = lowest; i < readings.size(); i++) {
            Smoothed at = readings.get(i);
            missing |= i > lowest && at.seconds() - readings.get(i - 1).seconds() > tear;
            if (size == 0 || at.value() > celsius[size - 1]) {
                celsius[size] = at.value();
                seconds[size] = at.seconds();
                torn[size++] = missing;
                missing = false;
            }
        }
        return size < 2
                ? Optional.empty()
                : Optional.of(new FirstPassages(
                        Arrays.copyOf(celsius, size), Arrays.copyOf(seconds, size), Arrays.copyOf(torn, size)));
    }

    /** Returns the lowest temperature, where the climb starts. */
    double from() {
        return celsius[0];
    }

    /** Returns the highest temperature that was reached before the drop. */
    double to() {
        return celsius[celsius.length - 1];
    }

    /** Returns when the climb starts, in seconds since charge. */
    double fromSeconds() {
        return seconds[0];
    }

    /** Returns when the highest temperature was reached. */
    double toSeconds() {
        return seconds[seconds.length - 1];
    }

    /** Returns when a temperature was first passed, in seconds since charge; NaN outside the climb and inside a gap. */
    double passage(double at) {
        if (!(at >= from() && at <= to())) {
            return Double.NaN;
        }
        int found = Arrays.binarySearch(celsius, at);
        if (found >= 0) {
            return seconds[found];
        }
        int after = -found - 1;
        if (torn[after]) {
            return Double.NaN;
        }
        double share = (at - celsius[after - 1]) / (celsius[after] - celsius[after - 1]);
        return seconds[after - 1] + share * (seconds[after] - seconds[after - 1]);
    }

    /** Returns the highest temperature that had been reached at a time; NaN before the climb and after it. */
    double reached(double at) {
        if (!(at >= fromSeconds() && at <= toSeconds())) {
            return Double.NaN;
        }
        int found = Arrays.binarySearch(seconds, at);
        if (found >= 0) {
            return celsius[found];
        }
        int after = -found - 1;
        double share = (at - seconds[after - 1]) / (seconds[after] - seconds[after - 1]);
        return celsius[after - 1] + share * (celsius[after] - celsius[after - 1]);
    }

    /** Returns when each temperature of a grid was first passed. */
    double[] passages(double[] grid) {
        return Arrays.stream(grid).map(this::passage).toArray();
    }
}
