package parchment.stats.mixed;

import java.util.Locale;
import org.hipparchus.distribution.continuous.ChiSquaredDistribution;
import parchment.display.Showable;

/**
 * Compares two nested mixed models by twice the difference of their log likelihoods.
 *
 * @param statistic twice the gain in log likelihood, 0 or more
 * @param degreesOfFreedom how many parameters the larger model has more
 */
public record LikelihoodRatio(double statistic, int degreesOfFreedom) implements Showable {

    /**
     * Compares a smaller with a larger model of the same rows. Models with different fixed terms must be fitted by
     * {@link Likelihood#FULL}.
     *
     * @throws IllegalArgumentException if the models' rows or likelihoods differ, or REML fits differ in their fixed columns
     */
    public static LikelihoodRatio of(LinearMixedModel smaller, LinearMixedModel larger) {
        if (smaller.used() != larger.used() || smaller.likelihood() != larger.likelihood()) {
            throw new IllegalArgumentException(
                    "A likelihood-ratio test needs two models of the same rows by the same likelihood, but they have "
                            + smaller.used() + " rows (" + smaller.likelihood() + ") and " + larger.used() + " rows ("
                            + larger.likelihood() + ").");
        }
        if (smaller.likelihood() == Likelihood.RESTRICTED
                && !smaller.columnNames().equals(larger.columnNames())) {
            throw new IllegalArgumentException(
                    "Models fitted by restricted likelihood can only be compared if their fixed columns are the same; "
                            + "fit both by full likelihood.");
        }
        int extra = larger.parameterCount() - smaller.parameterCount();
        if (extra <= 0) {
            throw new IllegalArgumentException("The larger model must have more parameters, but it has "
                    + larger.parameterCount() + " against " + smaller.parameterCount() + ".");
        }
        return new LikelihoodRatio(Math.max(0, smaller.criterion() - larger.criterion()), extra);
    }

    /**
     * Returns the p-value by the chi-squared distribution. For a variance that could be 0 it is too large, up to twofold for one
     * variance (Self and Liang 1987).
     */
    public double probability() {
        return 1 - new ChiSquaredDistribution(degreesOfFreedom).cumulativeProbability(statistic);
    }

    @Override
    public String toString() {
        return String.format(
                Locale.ROOT,
                "likelihood ratio %.3f on %d degrees of freedom, p = %.4g",
                statistic,
                degreesOfFreedom,
                probability());
    }
}
