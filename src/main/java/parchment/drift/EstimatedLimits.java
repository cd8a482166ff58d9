package parchment.drift;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
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
    private static final double[] RATIOS = {0.15, 0.4, 1, 2.5, 8};
    private static final double[] CORRELATIONS = {0, 0.3, 0.5, 0.7, 0.85};
    private static final double INDEPENDENT = 0.4;

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
        List<WanderingDays.Filter> kinds = new ArrayList<>();
        double[] weights = likely(y, day, dates, kinds);
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
            double[] drawn = kinds.get(kind).wandering(WanderingDays.normals(y.length, random));
            double[] u = watched(design.of(drawn).standard());
            singles[r] = magnitudes(u);
            means[r] = magnitudes(weightedMeans(u));
            sums[r] = larger(sums(u, 1), sums(u, -1));
            double whole = Math.sqrt(1 + ratioOf(kind));
            for (int i = stretch; i < drawn.length; i++) {
                drawn[i] += whole;
            }
            shifted[r] = watched(design.of(drawn).standard());
        }
        double[] scale = spreads(means, watched);
        Blocks alone = new Blocks(watched, series);
        this.single = alone.limits(singles);
        this.falseSingles = alone.signalled();
        divide(means, scale);
        Blocks both = new Blocks(watched, series);
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

    /** Returns how likely each kind of wandering is from the first rows, and the filter of each for all rows. */
    private double[] likely(double[] y, int[] day, double[] dates, List<WanderingDays.Filter> kinds) {
        WanderingDays all = new WanderingDays(day, dates);
        int[] firstDay = Arrays.copyOf(day, stretch);
        WanderingDays first = new WanderingDays(firstDay, Arrays.copyOf(dates, firstDay[stretch - 1] + 1));
        List<Double> criteria = new ArrayList<>();
        for (int k = 0; k < kinds(); k++) {
            double length = lengthOf(k, all.usualGap());
            criteria.add(restricted(first.filter(ratioOf(k), length), Arrays.copyOf(y, stretch)));
            kinds.add(all.filter(ratioOf(k), length));
        }
        double best = criteria.stream().min(Comparator.naturalOrder()).orElse(0.0);
        double[] weights = new double[criteria.size()];
        for (int k = 0; k < weights.length; k++) {
            double before = k == 0 ? INDEPENDENT : (1 - INDEPENDENT) / (kinds() - 1);
            weights[k] = before * Math.exp(-(criteria.get(k) - best) / 2);
        }
        double total = Arrays.stream(weights).sum();
        return Arrays.stream(weights).map(w -> w / total).toArray();
    }

    /** Returns minus twice the restricted log likelihood of the first rows, up to a constant. */
    private double restricted(WanderingDays.Filter filter, double[] head) {
        RealMatrix x = new Array2DRowRealMatrix(stretch, columns.size());
        for (int k = 0; k < columns.size(); k++) {
            x.setColumn(k, filter.whitened(Arrays.copyOf(columns.get(k), stretch)));
        }
        QRDecomposition qr = new QRDecomposition(x);
        double squares = 0;
        double[] turned = qr.getQT().operate(filter.whitened(head));
        for (int i = columns.size(); i < stretch; i++) {
            squares += turned[i] * turned[i];
        }
        double size = filter.logDeterminant();
        for (int k = 0; k < columns.size(); k++) {
            size += 2 * Math.log(Math.abs(qr.getR().getEntry(k, k)));
        }
        return (stretch - columns.size()) * Math.log(squares) + size;
    }

    private static int kinds() {
        return 1 + RATIOS.length * CORRELATIONS.length;
    }

    private static double ratioOf(int kind) {
        return kind == 0 ? 0 : RATIOS[(kind - 1) / CORRELATIONS.length];
    }

    private static double correlationOf(int kind) {
        return kind == 0 ? 0 : CORRELATIONS[(kind - 1) % CORRELATIONS.length];
    }

    private static double lengthOf(int kind, double gap) {
        double correlation = correlationOf(kind);
        return correlation == 0 ? 0 : -gap / Math.log(correlation);
    }

    /** Gives every block of watched rows its limit, so that a fixed share of the series that are left signals in it. */
    private static final class Blocks {
        private final int watched;
        private final boolean[] out;

        Blocks(int watched, int series) {
            this.watched = watched;
            this.out = new boolean[series];
        }

        double[] limits(double[][] one) {
            return limits(one, one)[0];
        }

        /** Two charts together: in each block both get the same share of the series of their own. */
        double[][] limits(double[][] one, double[][] other) {
            double[][] limits = new double[2][watched];
            for (int from = 0; from < watched; from += BLOCK) {
                int to = Math.min(watched, from + BLOCK);
                int[] left = IntStream.range(0, out.length).filter(r -> !out[r]).toArray();
                double[] first = highest(one, left, from, to);
                double[] second = highest(other, left, from, to);
                double[] sortedFirst = sorted(first);
                double[] sortedSecond = sorted(second);
                int[] place = IntStream.range(0, left.length)
                        .map(i -> Math.max(rank(sortedFirst, first[i]), rank(sortedSecond, second[i])))
                        .toArray();
                int[] sortedPlace = place.clone();
                Arrays.sort(sortedPlace);
                // One more series lies at or beyond the k-th largest of n with probability k / (n + 1).
                int reach = (int) Math.max(1, Math.round(RATE * (to - from) / BLOCK * (left.length + 1)));
                int limit = sortedPlace[left.length - reach];
                Arrays.fill(limits[0], from, to, sortedFirst[limit]);
                Arrays.fill(limits[1], from, to, sortedSecond[limit]);
                for (int i = 0; i < left.length; i++) {
                    out[left[i]] = place[i] >= limit;
                }
            }
            return limits;
        }

        /** Returns the share of the series that signalled. */
        double signalled() {
            return (double) IntStream.range(0, out.length).filter(r -> out[r]).count() / out.length;
        }

        private static double[] highest(double[][] charts, int[] left, int from, int to) {
            return Arrays.stream(left)
                    .mapToDouble(r -> Arrays.stream(charts[r], from, to).max().orElse(0))
                    .toArray();
        }

        private static double[] sorted(double[] values) {
            double[] sorted = values.clone();
            Arrays.sort(sorted);
            return sorted;
        }

        private static int rank(double[] sorted, double value) {
            int at = Arrays.binarySearch(sorted, value);
            while (at > 0 && sorted[at - 1] == value) {
                at--;
            }
            return at;
        }
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
