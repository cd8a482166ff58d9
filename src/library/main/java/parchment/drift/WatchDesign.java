package parchment.drift;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;
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
    final ChartLimits shift;
    private final Foretold onward;
    private final DrawnKinds drawn;
    private final int stretch;
    private final int watched;
    private final int longest;
    private Optional<Rest> rest = Optional.empty();

    /**
     * What a page of one watch tells and a week of many does not ask for.
     *
     * @param single limits of single rows
     * @param seen how often a shift of each size is seen soon
     */
    private record Rest(ChartLimits single, List<LikelyRate> seen) {}

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
        this.longest = Math.max(rows.size(), goneOn.size());
        this.onward = new Foretold(atTheMean(columns, stretch, goneOn.size()), stretch);
        this.kinds = new LikelyWandering(columns, rows, goneOn);
        this.drawn = new DrawnKinds(kinds, series);
        double[][][] shiftOnward = new double[series][][];
        double[][][] shifts = new double[series][][];
        for (int r = 0; r < series; r++) {
            double[] normals = drawn.normals(r, longest);
            double[] y = kinds.drawn(drawn.kind(r), normals);
            drawn.weigh(r, y);
            shiftOnward[r] = Charted.shift(onward(r, normals));
            shifts[r] = Charted.shift(foretold.of(y).watched(stretch));
        }
        this.shift = new ChartLimits(drawn, shiftOnward, shifts, watched);
    }

    /** How a series lies in a future like its stretch, in standard deviations. */
    private double[] onward(int r, double[] normals) {
        return onward.of(kinds.drawnOnward(drawn.kind(r), normals)).watched(stretch);
    }

    /** Draws the same series again, for to keep them all would take more room than it saves time. */
    private synchronized Rest rest() {
        if (rest.isEmpty()) {
            rest = Optional.of(worked());
        }
        return rest.get();
    }

    private Rest worked() {
        int series = drawn.series();
        double[][][] singleOnward = new double[series][][];
        double[][][] singles = new double[series][][];
        boolean[][] found = new boolean[SIZES.length][series];
        for (int r = 0; r < series; r++) {
            double[] normals = drawn.normals(r, longest);
            Foretold.Deviations own = foretold.of(kinds.drawn(drawn.kind(r), normals));
            double[] u = own.watched(stretch);
            singleOnward[r] = Charted.single(onward(r, normals));
            singles[r] = Charted.single(u);
            for (int s = 0; s < SIZES.length; s++) {
                double[] soon = Arrays.copyOf(u, soon());
                for (int i = 0; i < soon.length; i++) {
                    soon[i] += SIZES[s] * kinds.spread(drawn.kind(r)) / (own.spread() * foretold.error(i));
                }
                found[s][r] = shift.crossed(r, Charted.shift(soon));
            }
        }
        return new Rest(
                new ChartLimits(drawn, singleOnward, singles, watched),
                Arrays.stream(found).map(drawn::rate).toList());
    }

    /** Returns the limits of single rows; worked out when first asked for. */
    ChartLimits single() {
        return rest().single();
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
        return rest().seen().get(0).rate(likely);
    }

    /** Returns the least shift that shows soon in a share of charts, in standard deviations; infinite beyond the largest tried. */
    double leastSeen(double share, double[] likely) {
        double size = 0;
        double seenAt = 0;
        for (int s = 0; s < SIZES.length; s++) {
            double rate = rest().seen().get(s).rate(likely);
            if (rate >= share) {
                return size + (SIZES[s] - size) * (share - seenAt) / (rate - seenAt);
            }
            size = SIZES[s];
            seenAt = rate;
        }
        return Double.POSITIVE_INFINITY;
    }
}
