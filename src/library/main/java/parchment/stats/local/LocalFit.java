package parchment.stats.local;

import java.util.Arrays;
import java.util.Locale;
import parchment.display.Showable;
import parchment.stats.Interval;
import parchment.stats.linear.Checks;
import parchment.stats.linear.Quantiles;

/**
 * The result of a {@link LocalRegression}: value, slope and standard errors at its points. Positions count from 0, as arrays do.
 *
 * <p>The slope is in units of y per unit of x.
 */
public final class LocalFit implements Showable {

    /** Says whether the readings' step lets a slope be seen. */
    public enum SlopeQuality {
        /** The slope is estimated. */
        SEEN,
        /** The readings would change by less than one step over half the window: only bounds can be given. */
        BELOW_RESOLUTION,
        /** There are too few samples in the window, or the point lies outside the samples. */
        MISSING
    }

    /**
     * One point of the fit.
     *
     * @param x where
     * @param value the curve's height, NaN if missing
     * @param valueStandardError its standard error
     * @param slope the curve's slope, NaN if missing
     * @param slopeStandardError its standard error
     * @param samples how many samples the window held
     * @param quality whether the slope is seen
     */
    public record Point(
            double x,
            double value,
            double valueStandardError,
            double slope,
            double slopeStandardError,
            int samples,
            SlopeQuality quality) {}

    private final LocalRegression settings;
    private final double[] x;
    private final double[] y;
    private final double[] at;
    private final double[][] rows;
    private final Autocovariance covariance;
    private final int leftOut;

    LocalFit(
            LocalRegression settings,
            double[] x,
            double[] y,
            double[] at,
            double[][] rows,
            Autocovariance covariance,
            int leftOut) {
        this.settings = settings;
        this.x = x;
        this.y = y;
        this.at = at;
        this.rows = rows;
        this.covariance = covariance;
        this.leftOut = leftOut;
    }

    /** Returns the number of points at which the curve was asked for. */
    public int size() {
        return at.length;
    }

    /** Returns one point; index from 0. */
    public Point point(int index) {
        double[] row = rows[index];
        return new Point(
                at[index],
                row[LocalWindow.VALUE],
                row[LocalWindow.VALUE_ERROR],
                row[LocalWindow.SLOPE],
                row[LocalWindow.SLOPE_ERROR],
                (int) row[LocalWindow.POINTS],
                quality(index));
    }

    /** Returns the values at all points, NaN where missing. */
    public double[] values() {
        return column(LocalWindow.VALUE);
    }

    /** Returns the slopes at all points, NaN where missing. */
    public double[] slopes() {
        return column(LocalWindow.SLOPE);
    }

    /** Returns the standard errors of the values. */
    public double[] valueStandardErrors() {
        return column(LocalWindow.VALUE_ERROR);
    }

    /** Returns the standard errors of the slopes. */
    public double[] slopeStandardErrors() {
        return column(LocalWindow.SLOPE_ERROR);
    }

    /**
     * Returns the normal interval of a slope; where the slope lies below the resolution it is widened to what the step allows
     * (one step over the whole window on either side).
     *
     * @param level as in 0.90
     */
    public Interval slopeInterval(int index, double level) {
        double[] row = rows[index];
        double half = Quantiles.normalTwoSided(level) * row[LocalWindow.SLOPE_ERROR];
        if (quality(index) == SlopeQuality.BELOW_RESOLUTION) {
            half = Math.max(half, settings.resolution() / (2 * settings.bandwidth()));
        }
        return new Interval(row[LocalWindow.SLOPE] - half, row[LocalWindow.SLOPE] + half, level);
    }

    /**
     * Estimates how far the slopes are off because the curve bends within the window, by comparing with half the window.
     *
     * <p>The difference between both windows is scaled by 4/3 (16/15 for degree 3), as the error shrinks with the square (fourth power)
     * of the window in the middle of the samples; near the ends it is only a rough guide. It carries the noise of the smaller
     * window: compare it with {@link #slopeStandardErrors()}. NaN where half the window holds too few samples.
     */
    public double[] slopeBias() {
        double scale = settings.degree() == 3 ? 16.0 / 15 : 4.0 / 3;
        LocalWindow narrow = settings.withBandwidth(settings.bandwidth() / 2).window(x, y, covariance);
        double[] bias = new double[at.length];
        for (int i = 0; i < bias.length; i++) {
            bias[i] = scale * (rows[i][LocalWindow.SLOPE] - narrow.estimate(at[i])[LocalWindow.SLOPE]);
        }
        return bias;
    }

    /** Returns reading minus fitted value at the samples, in their order, without the missing ones. */
    public double[] residuals() {
        LocalWindow window = settings.window(x, y, covariance);
        double[] residuals = new double[x.length];
        for (int i = 0; i < residuals.length; i++) {
            residuals[i] = y[i] - window.estimate(x[i])[LocalWindow.VALUE];
        }
        return residuals;
    }

    /** Returns the noise behind the standard errors; estimates of several curves can be pooled and given back. */
    public Autocovariance autocovariance() {
        return covariance;
    }

    /** Returns how many samples were used. */
    public int used() {
        return x.length;
    }

    /** Returns how many samples were missing and left out. */
    public int leftOut() {
        return leftOut;
    }

    private SlopeQuality quality(int index) {
        double slope = rows[index][LocalWindow.SLOPE];
        if (Double.isNaN(slope)) {
            return SlopeQuality.MISSING;
        }
        // One step takes longer than half the window: the window may hold no change at all.
        return settings.resolution() > Math.abs(slope) * settings.bandwidth()
                ? SlopeQuality.BELOW_RESOLUTION
                : SlopeQuality.SEEN;
    }

    private double[] column(int which) {
        return Arrays.stream(rows).mapToDouble(row -> row[which]).toArray();
    }

    @Override
    public String toString() {
        int missing = (int) Arrays.stream(rows)
                .filter(row -> Double.isNaN(row[LocalWindow.SLOPE]))
                .count();
        return String.format(
                Locale.ROOT,
                "local regression at %d points (%d without an answer) from %d samples, %d left out, half-window %s, %s",
                at.length,
                missing,
                x.length,
                leftOut,
                Checks.number(settings.bandwidth()),
                covariance);
    }
}
