package parchment.align;

import java.util.Arrays;
import java.util.List;
import parchment.phase.Phases;

/**
 * The rate of rise of many batches at the bean temperatures of one grid, as {@link PaceChart} draws it.
 *
 * <p>Temperatures are in °C and rates in °C/min; a rate is NaN where the batch did not pass the temperature, where its standard error
 * is too large to draw, and across gaps.
 */
public final class PaceLines {
    private final double bandwidth;
    private final double[] temperatures;
    private final List<double[]> rates;

    private PaceLines(double bandwidth, double[] temperatures, List<double[]> rates) {
        this.bandwidth = bandwidth;
        this.temperatures = temperatures;
        this.rates = rates;
    }

    /** Reads the pace of batches, all smoothed over the same time. */
    public static PaceLines of(List<Phases> batches) {
        double bandwidth = RatesByTemperature.bandwidth(batches);
        List<double[]> rising = batches.parallelStream()
                .map(phases -> RatesByTemperature.rising(phases, bandwidth))
                .toList();
        double low = Double.POSITIVE_INFINITY;
        double high = Double.NEGATIVE_INFINITY;
        for (double[] points : rising) {
            for (int i = 0; i < points.length; i += 2) {
                low = Math.min(low, points[i]);
                high = Math.max(high, points[i]);
            }
        }
        double[] grid = low <= high ? Crowd.grid(low, high, RatesByTemperature.STEP) : new double[0];
        return new PaceLines(
                bandwidth,
                grid,
                rising.stream()
                        .map(points -> RatesByTemperature.onGrid(points, grid))
                        .toList());
    }

    /** Returns the seconds to either side over which every batch was smoothed. */
    public double bandwidthSeconds() {
        return bandwidth;
    }

    /** Returns the bean temperatures, rising, in °C; none if no batch has a rate. */
    public double[] temperatures() {
        return temperatures.clone();
    }

    /** Returns one batch's rates at those temperatures, in °C/min, NaN where there is none; the batch counts from 0. */
    public double[] rates(int batch) {
        return Arrays.copyOf(rates.get(batch), temperatures.length);
    }

    @Override
    public String toString() {
        return rates.size() + " batches at " + temperatures.length + " temperatures";
    }
}
