package parchment.stats.series;

import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import parchment.stats.Estimate;
import parchment.stats.linear.Vectors;

/**
 * Fits a regression whose days wander: generalised least squares with the two variances and the length of the wandering chosen by
 * likelihood over a fixed grid.
 *
 * <p>The grid makes the same data give the same answer and keeps the search cheap enough for a bootstrap that repeats it. Columns that
 * others determine are dropped.
 */
public final class DayRegression {
    /** Variance of days over variance within days. */
    static final double[] RATIOS = {0, 0.1, 0.3, 0.8, 2, 5};
    /** Correlation of neighbouring roast days. */
    static final double[] CORRELATIONS = {0, 0.3, 0.55, 0.75, 0.9};

    private static final double[] FINE_RATIOS = {0, 0.05, 0.1, 0.2, 0.4, 0.8, 1.5, 3, 6};
    private static final double[] FINE_CORRELATIONS = {0, 0.2, 0.4, 0.55, 0.7, 0.8, 0.88, 0.94};

    private static final double ALIASED = 1e-7;

    /** By what the variances are chosen. */
    public enum By {
        /** The full likelihood over a coarse grid, to compare fits. */
        LIKELIHOOD,
        /** The restricted likelihood over a finer grid, to estimate: variances are then not too small where columns are many. */
        RESTRICTED
    }

    private final WanderingDays days;
    private final double[] y;
    private final List<double[]> columns;
    private final double ratio;
    private final double length;
    private final double criterion;
    private final WanderingDays.Filter filter;
    private final Projection projection;
    private final double[] left;
    private final double leftSquares;

    /** Columns made orthonormal one after the other; a null stands for a dropped column. */
    public static final class Projection {
        private final List<double @Nullable []> basis = new ArrayList<>();
        private final List<double[]> upper = new ArrayList<>();
        private int rank;
        private double logSize;

        public void add(double[] column) {
            double[] rest = column.clone();
            double[] coefficients = new double[basis.size() + 1];
            double before = Vectors.dot(rest, rest);
            for (int k = 0; k < basis.size(); k++) {
                double[] direction = basis.get(k);
                if (direction != null) {
                    double along = Vectors.dot(direction, rest);
                    coefficients[k] = along;
                    subtract(rest, direction, along);
                }
            }
            double after = Vectors.dot(rest, rest);
            if (!(after > ALIASED * before) || before == 0) {
                basis.add(null);
            } else {
                double size = Math.sqrt(after);
                coefficients[basis.size()] = size;
                for (int i = 0; i < rest.length; i++) {
                    rest[i] /= size;
                }
                basis.add(rest);
                rank++;
                logSize += Math.log(size);
            }
            upper.add(coefficients);
        }

        /** Takes out of a column what the basis explains. */
        public double[] rest(double[] column) {
            double[] rest = column.clone();
            for (double[] direction : basis) {
                if (direction != null) {
                    subtract(rest, direction, Vectors.dot(direction, rest));
                }
            }
            return rest;
        }

        public int rank() {
            return rank;
        }

        public boolean kept(int column) {
            return basis.get(column) != null;
        }

        /** Returns the weights on the rows that give each kept column's coefficient: the rows of the pseudo-inverse, NaN if dropped. */
        public double[][] weights() {
            int p = basis.size();
            double[][] inverse = new double[p][];
            for (int k = p - 1; k >= 0; k--) {
                double[] direction = basis.get(k);
                if (direction == null) {
                    continue;
                }
                double[] row = direction.clone();
                for (int j = k + 1; j < p; j++) {
                    double[] later = inverse[j];
                    if (later != null) {
                        subtract(row, later, upper.get(j)[k]);
                    }
                }
                double pivot = upper.get(k)[k];
                for (int i = 0; i < row.length; i++) {
                    row[i] /= pivot;
                }
                inverse[k] = row;
            }
            return inverse;
        }
    }

    private DayRegression(
            WanderingDays days, double[] y, List<double[]> columns, double ratio, double length, double criterion) {
        this.days = days;
        this.y = y;
        this.columns = columns;
        this.ratio = ratio;
        this.length = length;
        this.criterion = criterion;
        this.filter = days.filter(ratio, length);
        this.projection = projection(filter, columns);
        this.left = projection.rest(filter.whitened(y));
        this.leftSquares = Vectors.dot(left, left);
    }

    /** Chooses the variances over the coarse grid by the full likelihood, and fits. */
    public static DayRegression fit(WanderingDays days, double[] y, List<double[]> columns) {
        return fit(days, y, columns, By.LIKELIHOOD);
    }

    /** Chooses the variances over a grid and fits. */
    public static DayRegression fit(WanderingDays days, double[] y, List<double[]> columns, By by) {
        double best = Double.POSITIVE_INFINITY;
        double ratio = 0;
        double length = 0;
        for (double r : by == By.LIKELIHOOD ? RATIOS : FINE_RATIOS) {
            for (double c : by == By.LIKELIHOOD ? CORRELATIONS : FINE_CORRELATIONS) {
                if (r == 0 && c > 0) {
                    continue;
                }
                double l = c == 0 ? 0 : -days.usualGap() / Math.log(c);
                double value =
                        by == By.LIKELIHOOD ? criterion(days, y, columns, r, l) : restricted(days, y, columns, r, l);
                if (value < best) {
                    best = value;
                    ratio = r;
                    length = l;
                }
            }
        }
        return new DayRegression(days, y, columns, ratio, length, criterion(days, y, columns, ratio, length));
    }

    private static double restricted(
            WanderingDays days, double[] y, List<double[]> columns, double ratio, double length) {
        WanderingDays.Filter filter = days.filter(ratio, length);
        Projection projection = projection(filter, columns);
        double[] rest = projection.rest(filter.whitened(y));
        int free = Math.max(1, y.length - projection.rank);
        return free * Math.log(Math.max(Vectors.dot(rest, rest), 1e-12) / free)
                + filter.logDeterminant()
                + 2 * projection.logSize;
    }

    /** Fits with the variances of another fit of the same rows. */
    public DayRegression with(double[] otherY, List<double[]> otherColumns) {
        return new DayRegression(
                days, otherY, otherColumns, ratio, length, criterion(days, otherY, otherColumns, ratio, length));
    }

    private static double criterion(
            WanderingDays days, double[] y, List<double[]> columns, double ratio, double length) {
        WanderingDays.Filter filter = days.filter(ratio, length);
        double[] rest = projection(filter, columns).rest(filter.whitened(y));
        return criterion(y.length, Vectors.dot(rest, rest), filter);
    }

    public static double criterion(int rows, double squares, WanderingDays.Filter filter) {
        return rows * Math.log(Math.max(squares, 1e-12) / rows) + filter.logDeterminant();
    }

    public static Projection projection(WanderingDays.Filter filter, List<double[]> columns) {
        Projection projection = new Projection();
        for (double[] column : columns) {
            projection.add(filter.whitened(column));
        }
        return projection;
    }

    /** Returns minus twice the log likelihood, up to a constant that depends on the number of rows only. */
    public double criterion() {
        return criterion;
    }

    /** Returns the criterion with one more column, at the same variances; NaN if the columns there determine it. */
    public double criterionWith(double[] column) {
        double[] white = filter.whitened(column);
        double[] rest = projection.rest(white);
        double own = Vectors.dot(rest, rest);
        if (!(own > 1e-4 * Vectors.dot(white, white))) {
            return Double.NaN;
        }
        double along = Vectors.dot(rest, left);
        return criterion(y.length, leftSquares - along * along / own, filter);
    }

    /** Returns the information about one more column's coefficient: its squared length once the others are taken out. */
    public double informationOn(double[] column) {
        double[] rest = projection.rest(filter.whitened(column));
        return Vectors.dot(rest, rest);
    }

    public int degreesOfFreedom() {
        return Math.max(1, y.length - projection.rank());
    }

    /** Returns the standard deviation of batches within a day. */
    public double batchDeviation() {
        return Math.sqrt(leftSquares / degreesOfFreedom());
    }

    public double dayDeviation() {
        return Math.sqrt(ratio) * batchDeviation();
    }

    /** Returns the correlation of neighbouring roast days. */
    public double neighbourCorrelation() {
        return length == 0 || ratio == 0 ? 0 : Math.exp(-days.usualGap() / length);
    }

    /** Returns degrees of freedom for a column that is constant within days: those the days leave. */
    public double degreesBetweenDays() {
        double independent = days.days() * (1 - neighbourCorrelation()) / (1 + neighbourCorrelation());
        return Math.max(2, Math.min(degreesOfFreedom(), ratio == 0 ? degreesOfFreedom() : independent - 2));
    }

    public double[] fittedRows() {
        double[] coefficients = coefficients();
        double[] out = new double[y.length];
        for (int k = 0; k < columns.size(); k++) {
            if (projection.kept(k)) {
                for (int i = 0; i < out.length; i++) {
                    out[i] += coefficients[k] * columns.get(k)[i];
                }
            }
        }
        return out;
    }

    /** Returns the coefficients, 0 where a column was dropped. */
    public double[] coefficients() {
        double[] white = filter.whitened(y);
        double[][] weights = projection.weights();
        double[] out = new double[columns.size()];
        for (int k = 0; k < out.length; k++) {
            out[k] = projection.kept(k) ? Vectors.dot(weights[k], white) : 0;
        }
        return out;
    }

    public boolean kept(int column) {
        return projection.kept(column);
    }

    /** Estimates a sum of coefficients; NaN if it rests on a dropped column. */
    public Estimate contrast(String name, double[] multipliers) {
        double[] white = filter.whitened(y);
        double[][] weights = projection.weights();
        double[] row = new double[y.length];
        for (int k = 0; k < multipliers.length; k++) {
            if (multipliers[k] != 0) {
                if (!projection.kept(k)) {
                    return new Estimate(name, Double.NaN, Double.NaN, Double.NaN);
                }
                subtract(row, weights[k], -multipliers[k]);
            }
        }
        return new Estimate(
                name,
                Vectors.dot(row, white),
                batchDeviation() * Math.sqrt(Vectors.dot(row, row)),
                degreesBetweenDays());
    }

    public Estimate term(String name, int column) {
        double[] one = new double[columns.size()];
        one[column] = 1;
        return contrast(name, one);
    }

    /** Returns the surprises of the rows, in standard deviations: about independent if the model holds. */
    public double[] surprises() {
        double scale = batchDeviation();
        double[] out = left.clone();
        for (int i = 0; i < out.length; i++) {
            out[i] /= scale;
        }
        return out;
    }

    /** Draws rows from the fit, from independent values of variance 1. */
    public double[] drawn(double[] independent) {
        double[] wandering = filter.wandering(independent);
        double[] out = fittedRows();
        double scale = Math.sqrt(leftSquares / degreesOfFreedom());
        for (int i = 0; i < out.length; i++) {
            out[i] += scale * wandering[i];
        }
        return out;
    }

    private static void subtract(double[] from, double[] direction, double times) {
        for (int i = 0; i < from.length; i++) {
            from[i] -= times * direction[i];
        }
    }
}
