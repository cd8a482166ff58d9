package parchment.curve;

import java.util.Arrays;
import parchment.curve.measured.Cleaning;
import parchment.stats.linear.Robust;

/**
 * Finds spikes with a Hampel filter on what is left after the line through a reading's neighbours is taken away.
 *
 * <p>Hampel's filter compares a reading with the median of its window; on a steep curve the window's own rise would hide spikes, so
 * the median of the means of symmetric neighbours stands in for it. A fall at charge is no spike: a spike comes back, so it must lie
 * further from the line between the readings around it than those two lie from each other. The corner at the drop, where readings rise
 * and then fall, comes back as well, but is no spike either: its readings lie on the course before it, and those after it keep falling.
 * Nor is a bend, such as a turning point that few readings show: the readings on both sides go on away from it.
 */
final class Spikes {
    private static final int HALF_WINDOW = 4;
    private static final int SCALE_WINDOW = 15;
    private static final double FEWEST_STEPS = 3;

    private Spikes() {}

    static boolean[] find(double[] x, double[] y, double step, Cleaning cleaning) {
        int n = y.length;
        boolean[] spike = new boolean[n];
        if (n < 2 * HALF_WINDOW + 1) {
            return spike;
        }
        double[] off = new double[n];
        for (int i = 0; i < n; i++) {
            off[i] = offNeighbours(y, i);
        }
        double[] limit = new double[n];
        boolean[] far = new boolean[n];
        for (int i = 0; i < n; i++) {
            double[] window = Arrays.copyOfRange(off, Math.max(0, i - SCALE_WINDOW), Math.min(n, i + SCALE_WINDOW + 1));
            double scale = Robust.medianAbsoluteDeviation(window);
            limit[i] = Math.max(cleaning.spikeThreshold() * scale, FEWEST_STEPS * Math.max(step, 1e-9));
            far[i] = Math.abs(off[i]) > limit[i];
        }
        for (int from = 0; from < n; from++) {
            // The neighbours of a spike lie off their own neighbours too, so every short run is tried, the widest that
            // holds first.
            if (!far[from]) {
                continue;
            }
            for (int width = cleaning.widestSpike(); width >= 1; width--) {
                if (comesBack(x, y, from, from + width - 1, limit)) {
                    Arrays.fill(spike, from, from + width, true);
                    from += width - 1;
                    break;
                }
            }
        }
        return spike;
    }

    private static double offNeighbours(double[] y, int i) {
        int half = Math.min(HALF_WINDOW, Math.min(i, y.length - 1 - i));
        if (half == 0) {
            // The first and the last reading have neighbours on one side only.
            return i == 0 ? y[0] - (2 * y[1] - y[2]) : y[i] - (2 * y[i - 1] - y[i - 2]);
        }
        double sum = 0;
        double least = Double.POSITIVE_INFINITY;
        double most = Double.NEGATIVE_INFINITY;
        for (int k = 1; k <= half; k++) {
            double mean = 0.5 * (y[i - k] + y[i + k]);
            sum += mean;
            least = Math.min(least, mean);
            most = Math.max(most, mean);
        }
        // The median of up to four numbers, without sorting.
        double median = half <= 2 ? sum / half : (sum - least - most) / (half - 2);
        return y[i] - median;
    }

    private static boolean comesBack(double[] x, double[] y, int from, int to, double[] limit) {
        if (from == 0 || to >= y.length - 1) {
            return false;
        }
        double before = y[from - 1];
        double after = y[to + 1];
        double rise = (after - before) / (x[to + 1] - x[from - 1]);
        double sign = Math.signum(y[from] - before);
        double furthest = 0;
        for (int i = from; i <= to; i++) {
            double off = sign * (y[i] - before - rise * (x[i] - x[from - 1]));
            if (!(off > limit[i]) || !(off > 1.5 * Math.abs(after - before))) {
                return false;
            }
            furthest = Math.max(furthest, off);
        }
        // As far out again as the run is wide, and one reading more: there a bend has left the line further than the
        // run.
        int left = Math.max(0, from - 1 - (to - from + 2));
        int right = Math.min(y.length - 1, to + 1 + (to - from + 2));
        double below = Math.min(
                sign * (before + rise * (x[left] - x[from - 1]) - y[left]),
                sign * (before + rise * (x[right] - x[from - 1]) - y[right]));
        return below < furthest
                && !isCorner(x, y, from, to, 1, limit[from])
                && !isCorner(x, y, from, to, -1, limit[from]);
    }

    /**
     * Whether a run is where the curve turns for good: it goes on along the course of the readings on one side, and on its other side they
     * leave the line between its neighbours, and stay off it, away from the run. What does so one way may do so the other.
     */
    private static boolean isCorner(double[] x, double[] y, int from, int to, int ahead, double limit) {
        int near = ahead > 0 ? from - 1 : to + 1;
        int far = ahead > 0 ? to + 1 : from - 1;
        int course = Math.max(0, Math.min(y.length - 1, near - ahead * HALF_WINDOW));
        int last = Math.max(0, Math.min(y.length - 1, far + 2 * ahead));
        if (course == near || last == far) {
            return false;
        }
        double slope = (y[near] - y[course]) / (x[near] - x[course]);
        for (int i = from; i <= to; i++) {
            if (Math.abs(y[i] - y[near] - slope * (x[i] - x[near])) > limit) {
                return false;
            }
        }
        double line = (y[far] - y[near]) / (x[far] - x[near]);
        double side = Math.signum(y[from] - y[near] - line * (x[from] - x[near]));
        for (int i = far + ahead; i != last + ahead; i += ahead) {
            if (side * (y[far] + line * (x[i] - x[far]) - y[i]) <= limit) {
                return false;
            }
        }
        return true;
    }
}
