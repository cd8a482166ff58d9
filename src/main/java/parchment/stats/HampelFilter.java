package parchment.stats;

import java.util.Arrays;
import java.util.Locale;
import parchment.display.Showable;

/**
 * Finds single wild readings: those further from the median of their window than a number of robust standard deviations.
 *
 * <p>Defaults: threshold 3, no known resolution. Windows are given in units of x, so unequal spacing is allowed. Rising curves are not
 * harmed, as the median follows them.
 *
 * @see <a href="https://doi.org/10.1080/01621459.1974.10482962">Hampel 1974, J. Am. Stat. Assoc. 69:383</a>; Pearson 2002, IEEE
 *     Trans. Control Syst. Technol. 10:55
 */
public final class HampelFilter {
    private static final int FEWEST = 3;

    private final double halfWindow;
    private final double threshold;
    private final double resolution;

    private HampelFilter(double halfWindow, double threshold, double resolution) {
        this.halfWindow = halfWindow;
        this.threshold = threshold;
        this.resolution = resolution;
    }

    /** Returns a filter whose window reaches so far to either side, in units of x. */
    public static HampelFilter of(double halfWindow) {
        return new HampelFilter(Checks.positive("The half-window", halfWindow), 3, 0);
    }

    /** Returns the same filter that calls a reading wild from so many robust standard deviations on. */
    public HampelFilter withThreshold(double deviations) {
        return new HampelFilter(halfWindow, Checks.positive("The threshold", deviations), resolution);
    }

    /**
     * Returns the same filter for readings rounded to a step: where the window hardly changes, its spread is taken as one step, so
     * that a single step of the readings is never called wild.
     */
    public HampelFilter withResolution(double step) {
        if (!(step >= 0)) {
            throw new IllegalArgumentException(
                    "The step of the readings must be 0 or more, but it is " + Checks.number(step) + ".");
        }
        return new HampelFilter(halfWindow, threshold, step);
    }

    /**
     * Looks at every reading.
     *
     * @param x positions in increasing order, none missing
     * @param y readings, NaN where missing (never called wild)
     */
    public Result apply(double[] x, double[] y) {
        Checks.sameLength("The spike filter", x.length, "y", y.length);
        Checks.increasing("Positions for the spike filter", x);
        double[] medians = new double[x.length];
        boolean[] wild = new boolean[x.length];
        double[] window = new double[x.length];
        int low = 0;
        int high = 0;
        int missing = 0;
        for (int i = 0; i < x.length; i++) {
            while (x[low] < x[i] - halfWindow) {
                low++;
            }
            while (high < x.length && x[high] <= x[i] + halfWindow) {
                high++;
            }
            int count = 0;
            for (int k = low; k < high; k++) {
                if (Double.isFinite(y[k])) {
                    window[count++] = y[k];
                }
            }
            Arrays.sort(window, 0, count);
            double median = Robust.medianOfSorted(window, count);
            medians[i] = median;
            if (!Double.isFinite(y[i])) {
                missing++;
                continue;
            }
            for (int k = 0; k < count; k++) {
                window[k] = Math.abs(window[k] - median);
            }
            Arrays.sort(window, 0, count);
            double spread = Math.max(resolution, Robust.NORMAL * Robust.medianOfSorted(window, count));
            wild[i] = count >= FEWEST && Math.abs(y[i] - median) > threshold * spread;
        }
        return new Result(y.clone(), medians, wild, missing);
    }

    /** Holds which readings were called wild. */
    public static final class Result implements Showable {
        private final double[] readings;
        private final double[] medians;
        private final boolean[] wild;
        private final int missing;

        private Result(double[] readings, double[] medians, boolean[] wild, int missing) {
            this.readings = readings;
            this.medians = medians;
            this.wild = wild;
            this.missing = missing;
        }

        /** Says whether the reading at an index from 0 was called wild. */
        public boolean isWild(int index) {
            return wild[index];
        }

        /** Returns the indices (from 0) of the readings called wild. */
        public int[] wildIndices() {
            return java.util.stream.IntStream.range(0, wild.length)
                    .filter(i -> wild[i])
                    .toArray();
        }

        /** Returns the readings with the wild ones missing. */
        public double[] withoutWild() {
            double[] out = readings.clone();
            for (int index : wildIndices()) {
                out[index] = Double.NaN;
            }
            return out;
        }

        /** Returns the median of the window around every reading. */
        public double[] medians() {
            return medians.clone();
        }

        @Override
        public String toString() {
            return String.format(
                    Locale.ROOT,
                    "%d of %d readings called wild, %d missing",
                    wildIndices().length,
                    readings.length - missing,
                    missing);
        }
    }
}
