package parchment.curve;

/**
 * Estimates how much of its noise a reading shares with the next one, from second differences.
 *
 * <p>Second differences hardly feel the curve itself. For noise whose correlation falls by a factor f with every reading, their
 * correlations at lags 1 and 2 follow from f: -2/3 and 1/6 for independent noise, -1/2 and 0 as f nears 1. The factor that comes
 * nearest to both is taken. A log that was smoothed before it was saved shows as a large factor; rounding can hide it.
 */
record SharedNoise(double correlation, double standardDeviation, int readings) {
    private static final int FEWEST = 60;
    private static final double[][] LAGGED = lagged();

    static SharedNoise of(double[] y) {
        // The later part, where a roast's curve bends little.
        int from = (int) (0.4 * y.length);
        int n = y.length - from - 2;
        if (n < FEWEST) {
            return new SharedNoise(Double.NaN, Double.NaN, Math.max(0, n));
        }
        double[] second = new double[n];
        double mean = 0;
        for (int i = 0; i < n; i++) {
            second[i] = y[from + i] - 2 * y[from + i + 1] + y[from + i + 2];
            mean += second[i] / n;
        }
        double[] sums = new double[3];
        for (int lag = 0; lag < 3; lag++) {
            for (int i = lag; i < n; i++) {
                sums[lag] += (second[i] - mean) * (second[i - lag] - mean);
            }
        }
        if (sums[0] == 0) {
            return new SharedNoise(Double.NaN, 0, n);
        }
        double best = Double.POSITIVE_INFINITY;
        int chosen = 0;
        for (int i = 0; i < LAGGED.length; i++) {
            double misfit = square(sums[1] / sums[0] - LAGGED[i][1] / LAGGED[i][0])
                    + square(sums[2] / sums[0] - LAGGED[i][2] / LAGGED[i][0]);
            if (misfit < best) {
                best = misfit;
                chosen = i;
            }
        }
        return new SharedNoise(0.01 * chosen, Math.sqrt(sums[0] / n / LAGGED[chosen][0]), n);
    }

    /** Covariances of second differences at lags 0, 1 and 2, for noise of variance 1 with correlations f^|k| in hundredths of f. */
    private static double[][] lagged() {
        double[][] table = new double[96][3];
        for (int i = 0; i < table.length; i++) {
            double f = 0.01 * i;
            for (int lag = 0; lag < 3; lag++) {
                table[i][lag] = 6 * Math.pow(f, lag)
                        - 4 * (Math.pow(f, Math.abs(lag - 1)) + Math.pow(f, lag + 1))
                        + Math.pow(f, Math.abs(lag - 2))
                        + Math.pow(f, lag + 2);
            }
        }
        return table;
    }

    private static double square(double x) {
        return x * x;
    }
}
