package parchment.stats.mixed;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import parchment.stats.Estimate;

/**
 * Estimates of the same number in several groups, drawn towards their mean as far as they are alike.
 *
 * <p>Two stages: each group's own estimate with its error, then a normal distribution of groups whose variance is found by moments
 * (DerSimonian and Laird 1986, Control. Clin. Trials 7:177). The error of a drawn estimate includes that of the mean.
 */
public final class PartialPooling {
    private static final int FEWEST = 3;

    private PartialPooling() {}

    /** Returns the estimates drawn towards their mean, by name, in their order; empty of fewer than 3. */
    public static Map<String, Estimate> of(List<Estimate> own) {
        if (own.size() < FEWEST) {
            return Map.of();
        }
        double weights = 0;
        double squaredWeights = 0;
        double sum = 0;
        for (Estimate e : own) {
            double w = 1 / (e.standardError() * e.standardError());
            weights += w;
            squaredWeights += w * w;
            sum += w * e.estimate();
        }
        double mean = sum / weights;
        double q = 0;
        for (Estimate e : own) {
            q += Math.pow((e.estimate() - mean) / e.standardError(), 2);
        }
        double between = Math.max(0, (q - (own.size() - 1)) / (weights - squaredWeights / weights));
        double pooledWeights = 0;
        double pooledSum = 0;
        for (Estimate e : own) {
            double w = 1 / (e.standardError() * e.standardError() + between);
            pooledWeights += w;
            pooledSum += w * e.estimate();
        }
        double center = pooledSum / pooledWeights;
        Map<String, Estimate> drawn = new LinkedHashMap<>();
        for (Estimate e : own) {
            double variance = e.standardError() * e.standardError();
            double towards = variance / (variance + between);
            drawn.put(
                    e.name(),
                    new Estimate(
                            e.name(),
                            towards * center + (1 - towards) * e.estimate(),
                            Math.sqrt((1 - towards) * variance + towards * towards / pooledWeights),
                            e.degreesOfFreedom()));
        }
        return drawn;
    }
}
