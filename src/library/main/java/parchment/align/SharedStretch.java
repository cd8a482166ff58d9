package parchment.align;

import java.util.Arrays;
import parchment.stats.linear.Robust;

/** Chooses the stretch of an axis over which nearly all batches have values, and the positions on it. */
final class SharedStretch {
    /** Share of the batches that may start late, and that may end early; they are left out of means, and counted. */
    private static final double LOST = 0.05;

    private SharedStretch() {}

    /** Returns positions a step apart from where 95 of 100 batches have started to where 95 of 100 have not ended; none if empty. */
    static double[] of(double[] starts, double[] ends, double step) {
        double low = Robust.quantile(starts, 1 - LOST);
        double high = Robust.quantile(ends, LOST);
        return low < high ? Crowd.grid(low, high, step) : new double[0];
    }

    /** Tells whether a curve has a value at every position. */
    static boolean whole(double[] values) {
        return values.length > 0 && Arrays.stream(values).allMatch(Double::isFinite);
    }
}
