package parchment.drift;

import java.util.Arrays;
import java.util.List;
import java.util.Random;
import java.util.stream.IntStream;
import org.hipparchus.linear.Array2DRowRealMatrix;
import org.hipparchus.linear.QRDecomposition;
import org.hipparchus.linear.RealMatrix;
import org.hipparchus.linear.RealVector;
import parchment.stats.series.WanderingDays;

/**
 * Sets limits for a series from its first rows, so that false signals come as rarely as is stated although the level, its slopes, the
 * spread and the resemblance of neighbours are only estimated there.
 *
 * <p>Limits that are taken as known signal too often, worst of all with few rows to estimate from (Jensen, Jones-Farmer, Champ and
 * Woodall 2006, J. Quality Technology 38:349). Here the whole procedure is repeated on series drawn without any change: estimated from
 * their first rows, watched on the others. Every stretch of ten watched rows gets the limit that one in a hundred of the series signals
 * at that did not signal before (limits of a fixed conditional rate, as in Shen, Zou, Jiang and Tsung 2013, Naval Research Logistics
 * 60:625; both from memory). Limits of earlier rows stay as they are when rows are added.
 *
 * <p>How far neighbours resemble each other is not known either: the drawn series take it from a grid of variances between days and
 * lengths of wandering, each as often as the first rows make it likely (restricted likelihood). Beforehand independence weighs two
 * fifths and all kinds of wandering together three: of the weights tried this one kept the stated rate both with and without resemblance.
 */
final class EstimatedLimits {
    /** Share of unchanged series that signal in ten watched rows. */
    static final double RATE = 0.01;
    /** How many watched rows share a limit. */
    static final int BLOCK = 10;
    /** Weight of the newest row in the weighted mean. */
    static final double WEIGHT = 0.2;
    /** What is allowed for before the sum grows, in standard deviations. */
    static final double ALLOWANCE = 0.5;

    private static final int SERIES = 6000;
    private static final long SEED = 20260301;

    private final int stretch;
    private final int series;
    private final List<double[]> columns;
    private final Deviations own;
    private final double[] single;
    private final double[] mean;
    private final double[] sum;
    private final double falseSingles;
    private final double falseShifts;
    private final double seen;

    /** Deviations of a series from what its first rows foretell, in standard deviations of a new row. */
    private record Deviations(double[] raw, double[] standard, double spread) {}

    /** What is the same for every series of one design: the projection of the first rows, and how well each row is foretold. */
    private final class Design {
        private final RealMatrix solve;
        private final double[] foretold;

        Design() {
            double[][] first = new double[stretch][columns.size()];
            for (int i = 0; i < stretch; i++) {
                for (int k = 0; k < columns.size(); k++) {
                    first[i][k] = columns.get(k)[i];
                }
            }
            RealMatrix x = new Array2DRowRealMatrix(first, false);
            RealMatrix inverse =
                    new QRDecomposition(x.transposeMultiply(x)).getSolver().getInverse();
            this.solve = inverse.multiplyTransposed(x);
            this.foretold = new double[columns.get(0).length];
            for (int i = 0; i < foretold.length; i++) {
                int row = i;
                RealVector z = new org.hipparchus.linear.ArrayRealVector(
                        columns.stream().mapToDouble(c -> c[row]).toArray(), false);
                foretold[i] = Math.sqrt(1 + inverse.operate(z).dotProduct(z));
            }
        }

        Deviations of(double[] y) {
            double[] raw = y.clone();
            for (int k = 0; k < columns.size(); k++) {
                double coefficient = 0;
                for (int i = 0; i < stretch; i++) {
                    coefficient += solve.getEntry(k, i) * y[i];
                }
                double[] column = columns.get(k);
                for (int i = 0; i < raw.length; i++) {
                    raw[i] -= coefficient * column[i];
                }
            }
            double squares = 0;
            for (int i = 0; i < stretch; i++) {
                squares += raw[i] * raw[i];
            }
            double spread = Math.sqrt(squares / (stretch - columns.size()));
            double[] standard = new double[raw.length];
            for (int i = 0; i < raw.length; i++) {
                standard[i] = raw[i] / (spread * foretold[i]);
            }
            return new Deviations(raw, standard, spread);
        }
    }

    private final Design design;

    private EstimatedLimits(double[] y, List<double[]> columns, int[] day, double[] dates, int stretch, int series) {
        this.stretch = stretch;
        this.series = series;
        this.columns = List.copyOf(columns);
        this.design = new Design();
        this.own = design.of(y);
        int watched = y.length - stretch;
        if (watched == 0) {
            this.single = new double[0];
            this.mean = new double[0];
            this.sum = new double[0];
            this.falseSingles = 0;
            this.falseShifts = 0;
            this.seen = Double.NaN;
            return;
        }
        LikelyWandering kinds = new LikelyWandering(y, columns, day, dates, stretch);
        double[] weights = kinds.weights();
        Random random = new Random(SEED);
        double[][] singles = new double[series][];
        double[][] means = new double[series][];
        double[][] sums = new double[series][];
        boolean[] shiftSeen = new boolean[series];
        double[][] shifted = new double[series][];
        int kind = 0;
        double reached = weights[0];
        for (int r = 0; r < series; r++) {
            // Systematic: each kind of wandering gets its share of the series.
            while ((r + 0.5) / series > reached && kind < weights.length - 1) {
                reached += weights[++kind];
            }
            double[] drawn = kinds.filter(kind).wandering(WanderingDays.normals(y.length, random));
            double[] u = watched(design.of(drawn).standard());
            singles[r] = magnitudes(u);
            means[r] = magnitudes(weightedMeans(u));
            sums[r] = larger(sums(u, 1), sums(u, -1));
            double whole = Math.sqrt(1 + kinds.ratio(kind));
            for (int i = stretch; i < drawn.length; i++) {
                drawn[i] += whole;
            }
            shifted[r] = watched(design.of(drawn).standard());
        }
        double[] scale = spreads(means, watched);
        BlockLimits alone = new BlockLimits(watched, series);
        this.single = alone.limits(singles);
        this.falseSingles = alone.signalled();
        divide(means, scale);
        BlockLimits both = new BlockLimits(watched, series);
        double[][] limits = both.limits(means, sums);
        this.falseShifts = both.signalled();
        this.mean = IntStream.range(0, watched)
                .mapToDouble(i -> limits[0][i] * scale[i])
                .toArray();
        this.sum = limits[1];
        int soon = Math.min(2 * BLOCK, watched);
        int found = 0;
        for (int r = 0; r < series; r++) {
            double[] e = weightedMeans(shifted[r]);
            double[] up = sums(shifted[r], 1);
            for (int i = 0; i < soon && !shiftSeen[r]; i++) {
                shiftSeen[r] = Math.abs(e[i]) > mean[i] || up[i] > sum[i];
            }
            found += shiftSeen[r] ? 1 : 0;
        }
        this.seen = (double) found / series;
    }

    /**
     * Sets limits.
     *
     * @param y rows in order of time
     * @param columns what rows are compared at like, the first of them all ones; free of each other in the first rows
     * @param day number of each row's roast day, from 0, never falling
     * @param dates date of each roast day, in days
     * @param stretch how many of the first rows to estimate from
     */
    static EstimatedLimits of(double[] y, List<double[]> columns, int[] day, double[] dates, int stretch) {
        return of(y, columns, day, dates, stretch, SERIES);
    }

    /** Sets limits from fewer or more drawn series. */
    static EstimatedLimits of(double[] y, List<double[]> columns, int[] day, double[] dates, int stretch, int series) {
        return new EstimatedLimits(y, columns, day, dates, stretch, series);
    }

    private double[] watched(double[] all) {
        return Arrays.copyOfRange(all, stretch, all.length);
    }

    private static double[] spreads(double[][] charts, int watched) {
        double[] squares = new double[watched];
        for (double[] chart : charts) {
            for (int i = 0; i < watched; i++) {
                squares[i] += chart[i] * chart[i];
            }
        }
        return Arrays.stream(squares).map(s -> Math.sqrt(s / charts.length)).toArray();
    }

    private static void divide(double[][] charts, double[] by) {
        for (double[] chart : charts) {
            for (int i = 0; i < chart.length; i++) {
                chart[i] /= by[i];
            }
        }
    }

    private static double[] weightedMeans(double[] u) {
        double[] means = new double[u.length];
        double mean = 0;
        for (int i = 0; i < u.length; i++) {
            mean = WEIGHT * u[i] + (1 - WEIGHT) * mean;
            means[i] = mean;
        }
        return means;
    }

    private static double[] sums(double[] u, int side) {
        double[] sums = new double[u.length];
        double sum = 0;
        for (int i = 0; i < u.length; i++) {
            sum = Math.max(0, sum + side * u[i] - ALLOWANCE);
            sums[i] = sum;
        }
        return sums;
    }

    private static double[] magnitudes(double[] values) {
        return Arrays.stream(values).map(Math::abs).toArray();
    }

    private static double[] larger(double[] a, double[] b) {
        return IntStream.range(0, a.length)
                .mapToDouble(i -> Math.max(a[i], b[i]))
                .toArray();
    }

    /** Returns how far each row lies from what the first rows foretell of it, in the unit of the rows. */
    double[] deviations() {
        return own.raw().clone();
    }

    /** Returns the standard deviation of rows about what is foretold, from the first rows. */
    double spread() {
        return own.spread();
    }

    /** Returns half of the width of the limits of single rows, in the unit of the rows; one for each watched row. */
    double[] singleLimits() {
        return IntStream.range(0, single.length)
                .mapToDouble(i -> single[i] * own.spread() * design.foretold[stretch + i])
                .toArray();
    }

    /** Returns the watched rows' deviations in standard deviations of a new row. */
    double[] standard() {
        return watched(own.standard());
    }

    /** Returns the limits of single rows in standard deviations of a new row. */
    double[] singleStandardLimits() {
        return single.clone();
    }

    /** Returns the weighted mean of the watched rows, in standard deviations. */
    double[] weightedMean() {
        return weightedMeans(standard());
    }

    /** Returns half of the width of the weighted mean's limits, in standard deviations. */
    double[] weightedMeanLimits() {
        return mean.clone();
    }

    /** Returns the sum of what lay above, in standard deviations. */
    double[] sumAbove() {
        return sums(standard(), 1);
    }

    /** Returns the sum of what lay below, in standard deviations. */
    double[] sumBelow() {
        return sums(standard(), -1);
    }

    /** Returns the limits of the sums, in standard deviations. */
    double[] sumLimits() {
        return sum.clone();
    }

    /** Returns the share of charts of this length with a single row outside although nothing changed. */
    double falseSingles() {
        return falseSingles;
    }

    /** Returns the share of charts of this length that show a shift although nothing changed. */
    double falseShifts() {
        return falseShifts;
    }

    /** Returns how often a shift of one standard deviation that comes with the first watched row shows within 20 rows, or all if fewer. */
    double shiftSeenSoon() {
        return seen;
    }
}
