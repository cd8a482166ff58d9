package parchment.curve;

import parchment.curve.measured.Cleaning;

/**
 * Finds runs of identical readings during which the curve must have moved on.
 *
 * <p>A logger with a coarse step repeats a reading for as long as the curve needs to move by that step; this is not a fault. A run is
 * called stuck only if the slower of the rates before and after it, over the run's length, amounts to several steps, and if the curve
 * then jumps by at least half of that: an idle drum before charge stands still too, but does not jump. At the ends of the log one side
 * has to do. A run around a turn of the curve, where the two rates have different signs, is left alone.
 */
final class StuckRuns {
    private static final double LOOK_AROUND_SECONDS = 20;
    private static final int FEWEST_READINGS = 4;

    /** Where no step is seen, in the curve's unit. */
    private static final double SMALLEST_STEP = 0.05;

    private StuckRuns() {}

    static boolean[] find(double[] x, double[] y, double step, Cleaning cleaning) {
        int n = y.length;
        boolean[] stuck = new boolean[n];
        int from = 0;
        while (from < n) {
            int to = from;
            while (to + 1 < n && y[to + 1] == y[from]) {
                to++;
            }
            double length = x[to] - x[from];
            boolean longEnough = to - from + 1 >= FEWEST_READINGS && length >= cleaning.shortestStuck();
            double missed = longEnough ? missed(x, y, from, to) : 0;
            boolean jumps = to + 1 == n || Math.abs(y[to + 1] - y[to]) >= 0.5 * missed;
            if (jumps && missed > cleaning.stuckSteps() * Math.max(step, SMALLEST_STEP)) {
                for (int i = from + 1; i <= to; i++) {
                    stuck[i] = true;
                }
            }
            from = to + 1;
        }
        return stuck;
    }

    /** Returns by how much the curve should have moved during the run, at the slower of the rates around it. */
    private static double missed(double[] x, double[] y, int from, int to) {
        double length = x[to] - x[from];
        double before = rate(x, y, from, -1);
        double after = to + 1 < x.length ? rate(x, y, to + 1, 1) : Double.NaN;
        if (Double.isNaN(before) && Double.isNaN(after)) {
            return 0;
        }
        if (Double.isNaN(before) || Double.isNaN(after)) {
            return length * Math.abs(Double.isNaN(before) ? after : before);
        }
        return before * after <= 0 ? 0 : length * Math.min(Math.abs(before), Math.abs(after));
    }

    /** Returns the mean rate over the seconds on one side; NaN if there are hardly any readings. */
    private static double rate(double[] x, double[] y, int at, int direction) {
        int far = at;
        while (far + direction >= 0
                && far + direction < x.length
                && Math.abs(x[far + direction] - x[at]) <= LOOK_AROUND_SECONDS) {
            far += direction;
        }
        return Math.abs(far - at) < 3 ? Double.NaN : (y[far] - y[at]) / (x[far] - x[at]);
    }
}
