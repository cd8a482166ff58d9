package parchment.drift;

import java.util.Arrays;
import java.util.List;
import java.util.stream.IntStream;

/**
 * What is found out about a watch before its measurements are looked at: from when the rows were roasted and from what they are compared
 * at like, by drawing series without any change, estimating from their first rows, and watching the others.
 */
final class WatchDesign {
    /** How many series are drawn. */
    static final int SERIES = 6000;
    /** How far a future like the stretch goes. */
    private static final int ONWARD = 60;
    /** Sizes of the shifts that are looked for, in standard deviations of a batch. */
    private static final double[] SIZES = {1, 1.5, 2, 3, 4, 6};

    /** The largest shift that is tried, in standard deviations of a batch. */
    static final double LARGEST = SIZES[SIZES.length - 1];

    final Foretold foretold;
    final LikelyWandering kinds;
    final ChartLimits single;
    final ChartLimits shift;
    private final LikelyRate[] seen = new LikelyRate[SIZES.length];
    private final int stretch;
    private final int watched;

    /**
     * @param columns what rows are compared at like, the first of them all ones; free of each other in the first rows
     * @param rows when they were roasted; at least one lies after the stretch
     * @param series how many to draw
     */
    WatchDesign(List<double[]> columns, RowsInTime rows, int series) {
        this.stretch = rows.stretch();
        this.watched = rows.size() - stretch;
        this.foretold = new Foretold(columns, stretch);
        RowsInTime goneOn = rows.goingOn(ONWARD);
        Foretold onward = new Foretold(atTheMean(columns, stretch, goneOn.size()), stretch);
        this.kinds = new LikelyWandering(columns, rows, goneOn);
        DrawnKinds drawn = new DrawnKinds(kinds, series);
        double[][][] singleOnward = new double[series][][];
        double[][][] shiftOnward = new double[series][][];
        double[][][] singles = new double[series][][];
        double[][][] shifts = new double[series][][];
        double[][][][] shifted = new double[SIZES.length][series][][];
        for (int r = 0; r < series; r++) {
            double[] normals = drawn.normals(r, Math.max(rows.size(), goneOn.size()));
            double[] y = kinds.drawn(drawn.kind(r), normals);
            drawn.weigh(r, y);
            double[] like = onward.of(kinds.drawnOnward(drawn.kind(r), normals)).watched(stretch);
            singleOnward[r] = Charted.single(like);
            shiftOnward[r] = Charted.shift(like);
            Foretold.Deviations own = foretold.of(y);
            double[] u = own.watched(stretch);
            singles[r] = Charted.single(u);
            shifts[r] = Charted.shift(u);
            for (int s = 0; s < SIZES.length; s++) {
                double[] soon = Arrays.copyOf(u, Math.min(u.length, soon()));
                for (int i = 0; i < soon.length; i++) {
                    soon[i] += SIZES[s] * kinds.spread(drawn.kind(r)) / (own.spread() * foretold.error(i));
                }
                shifted[s][r] = Charted.shift(soon);
            }
        }
        this.single = new ChartLimits(drawn, singleOnward, singles, watched);
        this.shift = new ChartLimits(drawn, shiftOnward, shifts, watched);
        for (int s = 0; s < SIZES.length; s++) {
            boolean[] found = new boolean[series];
            for (int r = 0; r < series; r++) {
                found[r] = shift.crossed(r, shifted[s][r]);
            }
            seen[s] = drawn.rate(found);
        }
    }

    /** Carries the columns on from the stretch: the level, and the others at their mean in the stretch, which is zero. */
    private static List<double[]> atTheMean(List<double[]> columns, int stretch, int rows) {
        return IntStream.range(0, columns.size())
                .mapToObj(k -> {
                    double[] longer = Arrays.copyOf(Arrays.copyOf(columns.get(k), stretch), rows);
                    Arrays.fill(longer, stretch, rows, k == 0 ? 1 : 0);
                    return longer;
                })
                .toList();
    }

    /** Returns within how many watched rows a shift is looked for. */
    int soon() {
        return Math.min(2 * Charted.BLOCK, watched);
    }

    /** Returns how often a shift of one standard deviation that comes with the first watched row shows soon. */
    double seenSoon(double[] likely) {
        return seen[0].rate(likely);
    }

    /** Returns the least shift that shows soon in a share of charts, in standard deviations; infinite beyond the largest tried. */
    double leastSeen(double share, double[] likely) {
        double size = 0;
        double seenAt = 0;
        for (int s = 0; s < SIZES.length; s++) {
            double rate = seen[s].rate(likely);
            if (rate >= share) {
                return size + (SIZES[s] - size) * (share - seenAt) / (rate - seenAt);
            }
            size = SIZES[s];
            seenAt = rate;
        }
        return Double.POSITIVE_INFINITY;
    }
}
