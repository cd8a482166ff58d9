package parchment.stats.series;

import java.util.ArrayList;
import java.util.List;
import parchment.stats.linear.Vectors;

/**
 * Gives, for any readings over the same columns, the best criterion with a step before each roast day, the variances chosen anew for
 * each day over the coarse grid of {@link DayRegression}.
 *
 * <p>What depends on the columns alone is worked out once; then one pass over the rows per point of the grid serves every day, since a
 * step is a sum of rows. A bootstrap repeats this hundreds of times.
 */
public final class StepProfile {
    /** Least share of a step that must be its own for it to be tried. */
    private static final double OWN = 1e-4;

    private record Point(WanderingDays.Filter filter, DayRegression.Projection projection, double[] own) {}

    private final int[] firstRow;
    private final List<Point> points = new ArrayList<>();

    /**
     * Prepares.
     *
     * @param firstRow for each roast day the first row on or after it; the number of rows if there is none
     */
    public StepProfile(WanderingDays days, List<double[]> columns, int[] firstRow) {
        this.firstRow = firstRow.clone();
        for (double ratio : DayRegression.RATIOS) {
            for (double correlation : DayRegression.CORRELATIONS) {
                if (ratio == 0 && correlation > 0) {
                    continue;
                }
                double length = correlation == 0 ? 0 : -days.usualGap() / Math.log(correlation);
                WanderingDays.Filter filter = days.filter(ratio, length);
                DayRegression.Projection projection = DayRegression.projection(filter, columns);
                points.add(new Point(filter, projection, own(filter, projection, days.rows())));
            }
        }
    }

    private double[] own(WanderingDays.Filter filter, DayRegression.Projection projection, int rows) {
        double[] own = new double[firstRow.length];
        for (int day = 0; day < own.length; day++) {
            double[] step = new double[rows];
            for (int i = firstRow[day]; i < rows; i++) {
                step[i] = 1;
            }
            double[] white = filter.whitened(step);
            double[] rest = projection.rest(white);
            double squares = Vectors.dot(rest, rest);
            own[day] = squares > OWN * Vectors.dot(white, white) ? squares : Double.NaN;
        }
        return own;
    }

    /**
     * The best criteria for some readings.
     *
     * @param without with no further step
     * @param with with a step before each roast day, NaN where the columns determine it
     */
    public record Best(double without, double[] with) {}

    /** Returns the best criteria for readings over the columns. */
    public Best of(double[] y) {
        double without = Double.POSITIVE_INFINITY;
        double[] with = new double[firstRow.length];
        java.util.Arrays.fill(with, Double.NaN);
        for (Point point : points) {
            double[] rest = point.projection.rest(point.filter.whitened(y));
            double squares = Vectors.dot(rest, rest);
            without = Math.min(without, DayRegression.criterion(y.length, squares, point.filter));
            double[] along = point.filter.transposed(rest);
            for (int i = along.length - 2; i >= 0; i--) {
                along[i] += along[i + 1];
            }
            double[] own = point.own;
            for (int day = 0; day < with.length; day++) {
                if (!Double.isNaN(own[day]) && firstRow[day] < along.length) {
                    double gain = along[firstRow[day]] * along[firstRow[day]] / own[day];
                    double value = DayRegression.criterion(y.length, squares - gain, point.filter);
                    with[day] = Double.isNaN(with[day]) ? value : Math.min(with[day], value);
                }
            }
        }
        return new Best(without, with);
    }
}
