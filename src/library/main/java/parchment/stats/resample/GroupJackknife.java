package parchment.stats.resample;

import java.util.Arrays;
import parchment.stats.Estimate;

/**
 * Works out how sure a statistic of grouped rows is by leaving out one group at a time (Tukey's jackknife).
 *
 * <p>Nothing is drawn, and every group is left out once, so the answer depends on neither the order nor the names of the groups. Groups
 * that carry more weigh more in the error; where a few carry most of it, that error is itself uncertain, and its degrees of freedom are
 * Satterthwaite's: 2 (sum of d^2)^2 / sum of d^4 with d the distances of the left-out values from their mean, at most groups less one.
 * (The fourth powers of few groups come out too low; leaving away what is usually taken off them stays on the safe side of that.)
 *
 * <p>It needs a smooth statistic: a median or a largest value will not do.
 *
 * @see <a href="https://doi.org/10.1137/1.9781611970319">Efron 1982, The Jackknife, the Bootstrap and Other Resampling Plans, chapter 3</a>
 * @see <a href="https://doi.org/10.2307/3002019">Satterthwaite 1946, Biometrics Bulletin 2:110</a>
 */
public final class GroupJackknife {
    private GroupJackknife() {}

    /**
     * Returns the statistic with its standard error and degrees of freedom.
     *
     * @param name what is estimated
     * @param whole the statistic of all groups
     * @param leftOut the statistic without each of the groups in turn
     * @return an estimate whose error is missing if there are fewer than two groups or one of the values is missing or infinite
     */
    public static Estimate estimate(String name, double whole, double[] leftOut) {
        int groups = leftOut.length;
        if (groups < 2 || !Double.isFinite(whole) || !Arrays.stream(leftOut).allMatch(Double::isFinite)) {
            return new Estimate(name, whole, Double.NaN, Double.NaN);
        }
        double mean = Arrays.stream(leftOut).sorted().sum() / groups;
        double[] squares = Arrays.stream(leftOut)
                .map(value -> (value - mean) * (value - mean))
                .sorted()
                .toArray();
        double sum = Arrays.stream(squares).sum();
        double fourth = Arrays.stream(squares).map(square -> square * square).sum();
        double degrees = fourth > 0 ? Math.max(1, Math.min(groups - 1.0, 2 * sum * sum / fourth)) : groups - 1.0;
        return new Estimate(name, whole, Math.sqrt(sum * (groups - 1) / groups), degrees);
    }
}
