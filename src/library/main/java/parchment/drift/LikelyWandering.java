package parchment.drift;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.stream.IntStream;
import org.hipparchus.linear.Array2DRowRealMatrix;
import org.hipparchus.linear.QRDecomposition;
import org.hipparchus.linear.RealMatrix;
import parchment.stats.linear.Vectors;
import parchment.stats.series.WanderingDays;

/**
 * Weighs each kind of resemblance between rows by the first rows of a series (restricted likelihood): none; neighbouring rows by 0.15 to
 * 0.75, whatever lies between them; days that differ, by themselves or wandering.
 */
final class LikelyWandering {
    private static final double[] NEIGHBOURS = {0.15, 0.3, 0.45, 0.6, 0.75};
    private static final double[] RATIOS = {0.4, 1, 2.5};
    private static final double[] CORRELATIONS = {0.3, 0.6};
    /** How much independence weighs beforehand; the other kinds share the rest. */
    private static final double INDEPENDENT = 0.25;
    /** Between neighbouring rows all variance wanders: what is left to the single row, one part in so many, is nothing. */
    private static final double ALL = 1e4;

    private final List<Kind> kinds = new ArrayList<>();
    private final RowsInTime rows;
    private final RowsInTime goneOn;
    private final List<double[]> columns;

    /** One kind of resemblance, with the first rows' columns seen through it. */
    private final class Kind {
        private final double ratio;
        private final WanderingDays.Filter first;
        private final WanderingDays.Filter all;
        private final WanderingDays.Filter onward;
        private final double[][] basis;
        private final double size;

        Kind(double ratio, double length, RowsInTime in, RowsInTime further) {
            this.ratio = ratio;
            this.first = in.head(rows.stretch()).days().filter(ratio, length);
            this.all = in.days().filter(ratio, length);
            this.onward = further.days().filter(ratio, length);
            int stretch = rows.stretch();
            RealMatrix x = new Array2DRowRealMatrix(stretch, columns.size());
            for (int k = 0; k < columns.size(); k++) {
                x.setColumn(k, first.whitened(Arrays.copyOf(columns.get(k), stretch)));
            }
            QRDecomposition qr = new QRDecomposition(x);
            this.basis = new double[columns.size()][];
            double log = first.logDeterminant();
            for (int k = 0; k < columns.size(); k++) {
                basis[k] = qr.getQ().getColumn(k);
                log += 2 * Math.log(Math.abs(qr.getR().getEntry(k, k)));
            }
            this.size = log;
        }

        /** Returns minus twice the restricted log likelihood of the first rows, up to a constant. */
        double restricted(double[] head) {
            double[] white = first.whitened(head);
            double squares = Vectors.dot(white, white);
            for (double[] of : basis) {
                double along = Vectors.dot(of, white);
                squares -= along * along;
            }
            return (head.length - basis.length) * Math.log(Math.max(1e-300, squares)) + size;
        }
    }

    /**
     * @param columns what rows are compared at like
     * @param rows when the rows were roasted
     * @param goneOn the same first rows, and a future of the same kind behind them
     */
    LikelyWandering(List<double[]> columns, RowsInTime rows, RowsInTime goneOn) {
        this.columns = columns;
        this.rows = rows;
        this.goneOn = goneOn;
        double gap = rows.head(rows.stretch()).days().usualGap();
        kinds.add(new Kind(0, 0, rows, goneOn));
        for (double of : NEIGHBOURS) {
            kinds.add(new Kind(ALL, -1 / Math.log(of), rows.oneByOne(), goneOn.oneByOne()));
        }
        for (double ratio : RATIOS) {
            for (double of : CORRELATIONS) {
                kinds.add(new Kind(ratio, of == 0 ? 0 : -gap / Math.log(of), rows, goneOn));
            }
        }
    }

    int size() {
        return kinds.size();
    }

    /** Returns how much a kind weighs beforehand; together 1. */
    double before(int kind) {
        return kind == 0 ? INDEPENDENT : (1 - INDEPENDENT) / (kinds.size() - 1);
    }

    /** Returns how likely each kind is from the first rows of a series; together 1. */
    double[] weights(double[] y) {
        double[] head = Arrays.copyOf(y, rows.stretch());
        double[] criteria = kinds.stream().mapToDouble(k -> k.restricted(head)).toArray();
        double best = Arrays.stream(criteria).min().orElse(0);
        double[] likely = IntStream.range(0, criteria.length)
                .mapToDouble(k -> before(k) * Math.exp(-(criteria[k] - best) / 2))
                .toArray();
        double total = Arrays.stream(likely).sum();
        return Arrays.stream(likely).map(w -> w / total).toArray();
    }

    /** Gives independent values of variance 1 the resemblance of a kind. */
    double[] drawn(int kind, double[] independent) {
        return kinds.get(kind).all.wandering(Arrays.copyOf(independent, rows.size()));
    }

    /** The same first rows with the other future behind them. */
    double[] drawnOnward(int kind, double[] independent) {
        return kinds.get(kind).onward.wandering(Arrays.copyOf(independent, goneOn.size()));
    }

    /** Returns the standard deviation of a drawn row. */
    double spread(int kind) {
        return Math.sqrt(1 + kinds.get(kind).ratio);
    }
}
