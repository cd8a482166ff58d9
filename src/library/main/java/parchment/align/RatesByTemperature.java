package parchment.align;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import parchment.curve.SmoothCurve;
import parchment.curve.measured.Smoothed;
import parchment.logbook.MarkKind;
import parchment.phase.Phases;

/** Reads the rate of rise of a batch at the bean temperatures of a grid, after its turning point and up to its drop. */
final class RatesByTemperature {
    /** Degrees Celsius between the positions at which batches are compared. */
    static final double STEP = 1;
    /** A rate with a larger standard error, in degrees Celsius per minute, is not drawn: at the ends of a curve it says little. */
    static final double LARGEST_ERROR = 2.5;
    /** The standard error of a rate, in degrees Celsius per minute, at which the batches are still told apart. */
    private static final double WANTED_ERROR = 0.7;
    /** Seconds to either side beyond which the shape of a roast would be smoothed away; common practice, no source. */
    private static final double LARGEST_BANDWIDTH = 60;

    private RatesByTemperature() {}

    /**
     * Returns the seconds to either side over which all batches are smoothed: the usual ones, or as many more as bring the usual
     * standard error of a rate to {@value #WANTED_ERROR} °C/min. The error of a local slope falls with the bandwidth to the power 1.5.
     */
    static double bandwidth(List<Phases> all) {
        double[] errors = all.stream()
                .flatMap(phases -> phases.bean().stream())
                .mapToDouble(RatesByTemperature::usualError)
                .filter(Double::isFinite)
                .sorted()
                .toArray();
        double usual = errors.length == 0 ? 0 : errors[errors.length / 2];
        double wanted = SmoothCurve.BANDWIDTH_SECONDS * Math.pow(usual / WANTED_ERROR, 2 / 3.0);
        double rounded = 5 * Math.ceil(wanted / 5);
        return Math.max(SmoothCurve.BANDWIDTH_SECONDS, Math.min(LARGEST_BANDWIDTH, rounded));
    }

    /** Returns the median standard error of a few rates along a curve, in degrees Celsius per minute. */
    private static double usualError(SmoothCurve smooth) {
        double[] seconds = smooth.clean().kept().seconds();
        double[] errors = new double[9];
        for (int i = 0; i < errors.length; i++) {
            int reading = (int) Math.round((i + 1) * (seconds.length - 1) / 10.0);
            errors[i] = seconds.length == 0
                    ? Double.NaN
                    : smooth.at(seconds[reading]).slopeStandardError();
        }
        double[] known = Arrays.stream(errors).filter(Double::isFinite).sorted().toArray();
        return known.length == 0 ? Double.NaN : known[known.length / 2];
    }

    /** Returns temperature and rate in turns, from the lowest reading on, for readings that reach a new highest temperature. */
    static double[] rising(Phases phases, double bandwidth) {
        Optional<SmoothCurve> smooth =
                phases.bean().map(bean -> bean.bandwidthSeconds() < bandwidth ? bean.withBandwidth(bandwidth) : bean);
        if (smooth.isEmpty()) {
            return new double[0];
        }
        // A drop that was written a little late would add readings of the emptying drum.
        double end = phases.mark(MarkKind.DROP)
                .map(drop -> drop.seconds() - 2 * drop.standardError())
                .orElse(Double.POSITIVE_INFINITY);
        List<Smoothed> readings = smooth.get().atReadings();
        int lowest = 0;
        for (int i = 1; i < readings.size(); i++) {
            lowest = readings.get(i).value() < readings.get(lowest).value() ? i : lowest;
        }
        double[] rising = new double[2 * readings.size()];
        int size = 0;
        double reached = Double.NEGATIVE_INFINITY;
        for (Smoothed at : readings.subList(Math.min(lowest, readings.size()), readings.size())) {
            boolean told = at.slope() > 0 && at.slopeStandardError() <= LARGEST_ERROR && at.seconds() <= end;
            if (at.value() > reached && told) {
                rising[size++] = at.value();
                rising[size++] = at.slope();
                reached = at.value();
            }
        }
        return Arrays.copyOf(rising, size);
    }

    /** Returns the rates at the temperatures of a grid, straight between neighbouring readings that are close enough. */
    static double[] onGrid(double[] rising, double[] grid) {
        double[] rates = new double[grid.length];
        Arrays.fill(rates, Double.NaN);
        int at = 0;
        for (int i = 0; i < grid.length; i++) {
            while (at + 2 < rising.length && rising[at + 2] < grid[i]) {
                at += 2;
            }
            // Neighbours more than a few degrees apart have a gap between them, which nothing may bridge.
            if (at + 3 < rising.length && rising[at] <= grid[i] && rising[at + 2] - rising[at] < 4 * STEP) {
                double share = (grid[i] - rising[at]) / (rising[at + 2] - rising[at]);
                rates[i] = rising[at + 1] + share * (rising[at + 3] - rising[at + 1]);
            }
        }
        return rates;
    }
}
