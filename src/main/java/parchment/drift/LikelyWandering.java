package parchment.drift;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import org.hipparchus.linear.Array2DRowRealMatrix;
import org.hipparchus.linear.QRDecomposition;
import org.hipparchus.linear.RealMatrix;
import parchment.stats.series.WanderingDays;

/** Says how likely each kind of wandering days is from the first rows of a series: a grid of variances between days and of lengths. */
final class LikelyWandering {
    private static final double[] RATIOS = {0.15, 0.4, 1, 2.5, 8};
    private static final double[] CORRELATIONS = {0, 0.3, 0.5, 0.7, 0.85};
    private static final double INDEPENDENT = 0.4;

    private final List<WanderingDays.Filter> filters = new ArrayList<>();
    private final double[] weights;
    private final int stretch;
    private final List<double[]> columns;

    /**
     * Weighs the kinds.
     *
     * @param y rows in order of time
     * @param columns what rows are compared at like
     * @param day number of each row's roast day, from 0, never falling
     * @param dates date of each roast day, in days
     * @param stretch how many of the first rows to weigh by
     */
    LikelyWandering(double[] y, List<double[]> columns, int[] day, double[] dates, int stretch) {
        this.columns = columns;
        this.stretch = stretch;
        this.weights = likely(y, day, dates);
    }

    /** Returns how likely each kind is; together 1. */
    double[] weights() {
        return weights.clone();
    }

    /** Returns the filter of a kind for all rows. */
    WanderingDays.Filter filter(int kind) {
        return filters.get(kind);
    }

    /** Returns the variance between days of a kind, in parts of that within days. */
    double ratio(int kind) {
        return ratioOf(kind);
    }

    private double[] likely(double[] y, int[] day, double[] dates) {
        WanderingDays all = new WanderingDays(day, dates);
        int[] firstDay = Arrays.copyOf(day, stretch);
        WanderingDays first = new WanderingDays(firstDay, Arrays.copyOf(dates, firstDay[stretch - 1] + 1));
        List<Double> criteria = new ArrayList<>();
        for (int k = 0; k < kinds(); k++) {
            double length = lengthOf(k, all.usualGap());
            criteria.add(restricted(first.filter(ratioOf(k), length), Arrays.copyOf(y, stretch)));
            filters.add(all.filter(ratioOf(k), length));
        }
        double best = criteria.stream().min(Comparator.naturalOrder()).orElse(0.0);
        double[] likely = new double[criteria.size()];
        for (int k = 0; k < likely.length; k++) {
            double before = k == 0 ? INDEPENDENT : (1 - INDEPENDENT) / (kinds() - 1);
            likely[k] = before * Math.exp(-(criteria.get(k) - best) / 2);
        }
        double total = Arrays.stream(likely).sum();
        return Arrays.stream(likely).map(w -> w / total).toArray();
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
}
