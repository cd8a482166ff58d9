package parchment.stats;

import java.util.Arrays;
import java.util.Locale;
import parchment.display.Progress;
import parchment.display.Showable;

/**
 * Compares two nested mixed models by their likelihood ratio, with the p-value from responses simulated under the smaller one.
 *
 * <p>Right also where the chi-squared distribution is not: variances that could be 0, few groups.
 *
 * @see <a href="https://doi.org/10.18637/jss.v059.i09">Halekoh and Hojsgaard 2014, J. Stat. Softw. 59(9), section 4</a>
 */
public final class ParametricBootstrap implements Showable {
    private final LikelihoodRatio observed;
    private final double[] simulated;
    private final int asked;
    private final long seed;

    private ParametricBootstrap(LikelihoodRatio observed, double[] simulated, int asked, long seed) {
        this.observed = observed;
        this.simulated = simulated;
        this.asked = asked;
        this.seed = seed;
    }

    /**
     * Runs the comparison; both models are refitted to every simulated response.
     *
     * @param repeats number of simulated responses, 1 or more; 1,000 gives a p-value near 0.05 to about 0.007
     * @throws IllegalArgumentException if {@link LikelihoodRatio#of} cannot compare the models, or repeats is under 1
     */
    public static ParametricBootstrap of(LinearMixedModel smaller, LinearMixedModel larger, int repeats, long seed) {
        LikelihoodRatio observed = LikelihoodRatio.of(smaller, larger);
        if (repeats < 1) {
            throw new IllegalArgumentException(
                    "A parametric bootstrap needs at least 1 simulated response, but was asked for " + repeats + ".");
        }
        double[] statistics = new double[repeats];
        int count = 0;
        try (Progress progress = Progress.of(repeats, "refitting simulated responses")) {
            for (int r = 0; r < repeats; r++) {
                double[] response = smaller.simulate(seed + 0x632BE59BD9B4E019L * r);
                double low = LinearMixedModel.fit(smaller.design().withResponse(response), smaller.likelihood())
                        .criterion();
                double high = LinearMixedModel.fit(larger.design().withResponse(response), larger.likelihood())
                        .criterion();
                if (Double.isFinite(low - high)) {
                    statistics[count++] = Math.max(0, low - high);
                }
                progress.step();
            }
        }
        double[] kept = Arrays.copyOf(statistics, count);
        Arrays.sort(kept);
        return new ParametricBootstrap(observed, kept, repeats, seed);
    }

    /** Returns the likelihood ratio of the data. */
    public LikelihoodRatio observed() {
        return observed;
    }

    /** Returns the simulated statistics, from the smallest up. */
    public double[] simulated() {
        return simulated.clone();
    }

    /** Returns the share of simulated statistics that reach the observed one, the observed counted as one of them. */
    public double probability() {
        // Two models that both sit on the bound differ by rounding only; that is a tie, not a gain.
        double line = observed.statistic() - 1e-7;
        long atLeast = Arrays.stream(simulated).filter(s -> s >= line).count();
        return (1.0 + atLeast) / (1.0 + simulated.length);
    }

    public long seed() {
        return seed;
    }

    @Override
    public String toString() {
        return String.format(
                Locale.ROOT,
                "likelihood ratio %.3f against %d simulated responses (%d could not be fitted, seed %d), p = %.4g; "
                        + "by the chi-squared distribution p = %.4g",
                observed.statistic(),
                simulated.length,
                asked - simulated.length,
                seed,
                probability(),
                observed.probability());
    }
}
