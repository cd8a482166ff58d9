package parchment.curve;

import java.util.Arrays;

/** Finds the step that a logger rounds its readings to. */
final class LoggerStep {
    private static final int FEWEST_CHANGES = 5;
    private static final double SHARE_ON_GRID = 0.97;
    private static final double OFF_GRID = 0.02;

    private LoggerStep() {}

    /** Returns the step in the readings' unit; 0 if the readings do not lie on a grid or change too seldom to tell. */
    static double of(double[] values) {
        double[] changes = new double[Math.max(0, values.length - 1)];
        int count = 0;
        for (int i = 1; i < values.length; i++) {
            double change = Math.abs(values[i] - values[i - 1]);
            if (change > 1e-7) {
                changes[count++] = change;
            }
        }
        changes = Arrays.copyOf(changes, count);
        if (count < FEWEST_CHANGES) {
            return 0;
        }
        Arrays.sort(changes);
        // The smallest change seen may be several steps, so its small fractions are tried too.
        for (int parts : new int[] {1, 2, 3, 4, 5, 10}) {
            double step = changes[0] / parts;
            if (onGrid(changes, step) >= SHARE_ON_GRID) {
                return refine(changes, step);
            }
        }
        return 0;
    }

    private static double onGrid(double[] changes, double step) {
        int on = 0;
        for (double change : changes) {
            double steps = change / step;
            if (Math.abs(steps - Math.rint(steps)) < OFF_GRID * Math.max(1, steps / 50)) {
                on++;
            }
        }
        return (double) on / changes.length;
    }

    /** Least squares of the changes on whole numbers of steps, then without the last digits that units and rounding leave. */
    private static double refine(double[] changes, double step) {
        double products = 0;
        double squares = 0;
        for (double change : changes) {
            double steps = Math.rint(change / step);
            products += steps * change;
            squares += steps * steps;
        }
        double refined = products / squares;
        double scale = Math.pow(10, 5 - Math.floor(Math.log10(refined)));
        return Math.rint(refined * scale) / scale;
    }
}
