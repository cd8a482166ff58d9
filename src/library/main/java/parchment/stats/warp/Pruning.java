package parchment.stats.warp;

/** Chooses whether pairs that no best path can visit are skipped. The answer is the same either way. */
public enum Pruning {
    /** Every pair inside the window is visited. */
    NONE,
    /**
     * Pairs whose cheapest path already costs more than a path that is known to exist are skipped. Exact; pays when the curves are
     * alike, costs a little when they are not.
     *
     * @see <a href="https://doi.org/10.1137/1.9781611974348.94">Silva and Batista 2016, Speeding up all-pairwise dynamic time warping
     *     matrix calculation</a>
     */
    UPPER_BOUND
}
