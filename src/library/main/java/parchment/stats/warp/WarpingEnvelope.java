package parchment.stats.warp;

/**
 * Bounds a warping distance from below without working it out, by the highest and lowest values of a curve within a band around each
 * sample.
 */
final class WarpingEnvelope {
    private final double[] lowest;
    private final double[] highest;

    private WarpingEnvelope(double[] lowest, double[] highest) {
        this.lowest = lowest;
        this.highest = highest;
    }

    static WarpingEnvelope of(double[] curve, int radius) {
        return new WarpingEnvelope(extremes(curve, radius, -1), extremes(curve, radius, 1));
    }

    /** Running extremes with a queue of the samples that can still matter, in the order of their values (Lemire 2009). */
    private static double[] extremes(double[] curve, int radius, int sign) {
        int n = curve.length;
        double[] extremes = new double[n];
        int[] queue = new int[n];
        int head = 0;
        int tail = 0;
        int next = 0;
        for (int i = 0; i < n; i++) {
            int last = Math.min(n - 1, i + Math.min(radius, n));
            for (; next <= last; next++) {
                while (tail > head && sign * curve[queue[tail - 1]] <= sign * curve[next]) {
                    tail--;
                }
                queue[tail++] = next;
            }
            while (queue[head] < i - radius) {
                head++;
            }
            extremes[i] = curve[queue[head]];
        }
        return extremes;
    }

    /** Sums how far another curve lies outside: no warping inside the band can cost less. Stops early beyond a limit. */
    double outside(double[] curve, double limit) {
        double sum = 0;
        for (int i = 0; i < curve.length && sum <= limit; i++) {
            sum += outside(i, curve[i]);
        }
        return sum;
    }

    /** Fills in, for each sample, how far the curve lies outside from there on; one place more, with 0, at the end. */
    double outsideFrom(double[] curve, double[] rest) {
        rest[curve.length] = 0;
        for (int i = curve.length - 1; i >= 0; i--) {
            rest[i] = rest[i + 1] + outside(i, curve[i]);
        }
        return rest[0];
    }

    private double outside(int i, double value) {
        return value > highest[i] ? value - highest[i] : value < lowest[i] ? lowest[i] - value : 0;
    }
}
