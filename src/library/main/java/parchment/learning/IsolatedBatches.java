package parchment.learning;

import java.util.List;
import smile.anomaly.IsolationForest;

/**
 * Tells how soon each row is alone when rows are cut apart at random: an isolation forest (Liu, Ting and Zhou 2008), by Smile.
 *
 * <p>A score near 1 is of a row that a few cuts set apart, one of 0.5 of a row that takes as many as rows drawn evenly would.
 */
final class IsolatedBatches {
    private static final int TREES = 200;
    /** Rows per tree; Liu, Ting and Zhou 2008, section 4.2, found 256 to be enough. */
    private static final int ROWS = 256;

    private IsolatedBatches() {}

    /** Returns the score of each row, 0 to 1; nothing missing. */
    static double[] scores(List<double[]> rows, long seed) {
        double[][] all = rows.toArray(double[][]::new);
        double share = Math.min(0.99, (double) ROWS / all.length);
        int depth = (int) Math.ceil(Math.log(Math.max(2, Math.min(ROWS, all.length))) / Math.log(2));
        return SeededRun.of(
                seed, () -> IsolationForest.fit(all, TREES, depth, share, 0).score(all));
    }
}
