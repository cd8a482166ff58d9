package parchment.stats.local;

/** Works back from the covariances of residuals to those of the noise, given the weights of the smoother. */
final class ResidualCovariance {
    private static final int MOST_LAGS = 12;

    private final double[] seen;
    private final double[] filter;
    private final int samples;

    private ResidualCovariance(double[] seen, double[] filter, int samples) {
        this.seen = seen;
        this.filter = filter;
        this.samples = samples;
    }

    static ResidualCovariance of(double[] residuals, double[] weights) {
        int half = weights.length / 2;
        int lags = Math.max(1, Math.min(MOST_LAGS, Math.min(half, residuals.length / 4)));
        double[] seen = new double[lags + 1];
        int samples = 0;
        for (int lag = 0; lag <= lags; lag++) {
            double sum = 0;
            int count = 0;
            for (int i = lag; i < residuals.length; i++) {
                double product = residuals[i] * residuals[i - lag];
                if (!Double.isNaN(product)) {
                    sum += product;
                    count++;
                }
            }
            seen[lag] = count == 0 ? 0 : sum / count;
            samples = lag == 0 ? count : samples;
        }
        // What is left over is the noise minus its smooth; G is the autocorrelation of that filter.
        double[] left = new double[weights.length];
        for (int i = 0; i < left.length; i++) {
            left[i] = (i == half ? 1 : 0) - weights[i];
        }
        double[] filter = new double[weights.length];
        for (int d = 0; d < filter.length; d++) {
            for (int i = d; i < left.length; i++) {
                filter[d] += left[i] * left[i - d];
            }
        }
        return new ResidualCovariance(seen, filter, samples);
    }

    Autocovariance fit(double spacing) {
        double best = Double.POSITIVE_INFINITY;
        double[] chosen = {Math.max(0, seen[0] / Math.max(filter[0], 1e-12)), 0, 0};
        for (int step = 0; step <= 49; step++) {
            double correlation = 0.02 * step;
            double[] variances = new double[2];
            double misfit = solve(correlation, variances);
            if (misfit < best * (1 - 1e-9)) {
                best = misfit;
                chosen = new double[] {variances[0], variances[1], correlation};
            }
        }
        if (chosen[1] == 0 || chosen[2] == 0) {
            return Autocovariance.fitted(chosen[0] + chosen[1], 0, 1, samples);
        }
        return Autocovariance.fitted(chosen[0], chosen[1], -spacing / Math.log(chosen[2]), samples);
    }

    /** Least squares for the two variances at one correlation, both kept at 0 or more; returns the sum of squares left. */
    private double solve(double correlation, double[] variances) {
        int lags = seen.length;
        double aa = 0;
        double ab = 0;
        double bb = 0;
        double ay = 0;
        double by = 0;
        double yy = 0;
        double[] expected = expected(correlation);
        for (int lag = 0; lag < lags; lag++) {
            double a = filterAt(lag);
            double b = expected[lag];
            aa += a * a;
            ab += a * b;
            bb += b * b;
            ay += a * seen[lag];
            by += b * seen[lag];
            yy += seen[lag] * seen[lag];
        }
        double determinant = aa * bb - ab * ab;
        double white = determinant > 1e-9 * aa * bb ? (bb * ay - ab * by) / determinant : -1;
        double shared = determinant > 1e-9 * aa * bb ? (aa * by - ab * ay) / determinant : -1;
        if (white < 0 || shared < 0) {
            double onlyWhite = Math.max(0, ay / aa);
            double onlyShared = Math.max(0, by / bb);
            double leftWhite = yy - 2 * onlyWhite * ay + onlyWhite * onlyWhite * aa;
            double leftShared = yy - 2 * onlyShared * by + onlyShared * onlyShared * bb;
            white = leftWhite <= leftShared ? onlyWhite : 0;
            shared = leftWhite <= leftShared ? 0 : onlyShared;
        }
        variances[0] = white;
        variances[1] = shared;
        return yy
                - 2 * white * ay
                - 2 * shared * by
                + white * white * aa
                + 2 * white * shared * ab
                + shared * shared * bb;
    }

    /** Covariances that the smoother would leave over of a shared part with variance 1, for all lags. */
    private double[] expected(double correlation) {
        int reach = filter.length - 1;
        double[] powers = new double[seen.length + reach];
        powers[0] = 1;
        for (int d = 1; d < powers.length; d++) {
            powers[d] = powers[d - 1] * correlation;
        }
        double[] expected = new double[seen.length];
        for (int lag = 0; lag < expected.length; lag++) {
            double sum = filter[0] * powers[lag];
            for (int d = 1; d <= reach; d++) {
                sum += filter[d] * (powers[Math.abs(lag - d)] + powers[lag + d]);
            }
            expected[lag] = sum;
        }
        return expected;
    }

    private double filterAt(int d) {
        int distance = Math.abs(d);
        return distance < filter.length ? filter[distance] : 0;
    }
}
