package parchment.curve;

import parchment.stats.linear.Robust;

/**
 * Estimates how much of its noise a reading shares with the next one, from the changes between readings.
 *
 * <p>Of noise whose correlation falls by a factor f with every reading, neighbouring changes have the correlation -(1 - f) / 2: -1/2
 * where nothing is shared, 0 where all of it is. A mean over m readings leaves another trace: the changes of changes at lag m have a
 * correlation of -1/2, where a probe's own inertia leaves none. The curve's own slope is taken away as the mean change around.
 *
 * @param correlation correlation of neighbouring readings' noise, from 0 to 1; NaN if there are too few readings
 * @param movingMean the number of readings whose mean seems to have been saved; 0 if there is no such trace
 * @param standardDeviation of the noise of one reading
 */
record SharedNoise(double correlation, int movingMean, double standardDeviation) {
    private static final int FEWEST = 60;
    private static final int SLOPE_WINDOW = 15;
    private static final double FARTHEST = 5;
    private static final int LONGEST_MEAN = 15;
    /** Half-way from nothing to the trace of a mean, some five standard errors of a curve of 240 readings. */
    private static final double TRACE = -0.3;

    static SharedNoise of(double[] y) {
        // The later part, where a roast's curve bends little, without the fall after the drop.
        int from = (int) (0.4 * y.length);
        int n = (int) (0.92 * y.length) - from - 1;
        if (n < FEWEST) {
            return new SharedNoise(Double.NaN, 0, Double.NaN);
        }
        double[] raw = new double[n];
        for (int i = 0; i < n; i++) {
            raw[i] = y[from + i + 1] - y[from + i];
        }
        // A gap or a jump is one large change that would drown the noise.
        double usual = Robust.median(raw);
        double most = FARTHEST * Math.max(Robust.medianAbsoluteDeviation(raw), 1e-9);
        double[] sums = new double[n + 1];
        for (int i = 0; i < n; i++) {
            sums[i + 1] = sums[i] + Math.max(usual - most, Math.min(usual + most, raw[i]));
        }
        double[] change = new double[n];
        for (int i = 0; i < n; i++) {
            int low = Math.max(0, i - SLOPE_WINDOW);
            int high = Math.min(n, i + SLOPE_WINDOW + 1);
            change[i] = sums[i + 1] - sums[i] - (sums[high] - sums[low]) / (high - low);
        }
        double variance = covariance(change, 0);
        if (variance == 0) {
            return new SharedNoise(Double.NaN, 0, 0);
        }
        double shared = Math.max(0, Math.min(0.99, 1 + 2 * covariance(change, 1) / variance));
        double noise = Math.sqrt(variance / (2 * (1 - shared)));
        return new SharedNoise(shared, movingMean(change), noise);
    }

    private static int movingMean(double[] change) {
        double[] bend = new double[change.length - 1];
        for (int i = 0; i < bend.length; i++) {
            bend[i] = change[i + 1] - change[i];
        }
        double variance = covariance(bend, 0);
        int found = 0;
        double least = TRACE;
        // Two readings apart, a step of the logger leaves much the same trace as a mean of two.
        for (int lag = 3; lag <= LONGEST_MEAN && variance > 0; lag++) {
            double correlation = covariance(bend, lag) / variance;
            if (correlation < least) {
                least = correlation;
                found = lag;
            }
        }
        return found;
    }

    private static double covariance(double[] x, int lag) {
        double sum = 0;
        for (int i = lag; i < x.length; i++) {
            sum += x[i] * x[i - lag];
        }
        return sum / x.length;
    }
}
