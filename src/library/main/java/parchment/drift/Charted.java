package parchment.drift;

import java.util.Arrays;

/** The weighted mean and the cumulated sums of deviations in standard deviations; a chart's highest values in blocks of rows. */
final class Charted {
    /** How many watched rows share a limit. */
    static final int BLOCK = 10;
    /** Weight of the newest row in the weighted mean. */
    static final double WEIGHT = 0.2;
    /** What is allowed for before the sum grows, in standard deviations. */
    static final double ALLOWANCE = 0.5;

    private Charted() {}

    static double[] weightedMeans(double[] u) {
        double[] means = new double[u.length];
        double mean = 0;
        for (int i = 0; i < u.length; i++) {
            mean = WEIGHT * u[i] + (1 - WEIGHT) * mean;
            means[i] = mean;
        }
        return means;
    }

    static double[] sums(double[] u, int side) {
        double[] sums = new double[u.length];
        double sum = 0;
        for (int i = 0; i < u.length; i++) {
            sum = Math.max(0, sum + side * u[i] - ALLOWANCE);
            sums[i] = sum;
        }
        return sums;
    }

    static int blocks(int rows) {
        return (rows + BLOCK - 1) / BLOCK;
    }

    /** Returns the logarithm of the highest magnitude in each block. */
    static double[] highest(double[] chart) {
        double[] high = new double[blocks(chart.length)];
        Arrays.fill(high, 1e-9);
        for (int i = 0; i < chart.length; i++) {
            high[i / BLOCK] = Math.max(high[i / BLOCK], Math.abs(chart[i]));
        }
        return Arrays.stream(high).map(Math::log).toArray();
    }

    /** Returns, for single rows, the chart of a series. */
    static double[][] single(double[] u) {
        return new double[][] {highest(u)};
    }

    /** Returns the two charts that show a shift: weighted mean, cumulated sum (of both sides the higher). */
    static double[][] shift(double[] u) {
        double[] above = highest(sums(u, 1));
        double[] below = highest(sums(u, -1));
        for (int b = 0; b < above.length; b++) {
            above[b] = Math.max(above[b], below[b]);
        }
        return new double[][] {highest(weightedMeans(u)), above};
    }
}
