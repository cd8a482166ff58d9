package parchment.stats;

import java.util.Arrays;
import java.util.Locale;
import parchment.display.Showable;
import parchment.stats.linear.Checks;
import parchment.stats.linear.Vectors;

/**
 * Corrects a slope for errors in the feature itself (classical error: what was written is the truth plus noise), which pull it
 * towards 0.
 *
 * <p>Not for features that were inferred from a model (Berkson error): those do not shrink slopes this way.
 *
 * @see <a href="https://doi.org/10.1201/9781420010138">Carroll, Ruppert, Stefanski and Crainiceanu 2006, Measurement Error in Nonlinear
 *     Models, chapter 4</a>
 */
public final class MeasurementError implements Showable {
    /** Under this reliability a corrected slope would be mostly correction. */
    public static final double LEAST_RELIABILITY = 0.5;
    /** From this reliability on the correction is smaller than other doubts and may be left out. */
    public static final double GOOD_RELIABILITY = 0.9;

    private final double errorStandardDeviation;
    private final double reliability;

    private MeasurementError(double errorStandardDeviation, double reliability) {
        this.errorStandardDeviation = errorStandardDeviation;
        this.reliability = reliability;
    }

    /**
     * Returns the error of a feature.
     *
     * @param adjusted the feature after taking out what the model adjusts for (its residuals on the other terms), as only that part counts
     * @param errorStandardDeviation standard deviation of the error, in units of the feature
     */
    public static MeasurementError of(double[] adjusted, double errorStandardDeviation) {
        if (!(errorStandardDeviation >= 0)) {
            throw new IllegalArgumentException(
                    "The standard deviation of a measure's error must be 0 or more, but it is "
                            + Checks.number(errorStandardDeviation) + ".");
        }
        double[] finite = Vectors.finite(adjusted);
        double mean = Arrays.stream(finite).average().orElse(Double.NaN);
        double variance =
                Arrays.stream(finite).map(v -> (v - mean) * (v - mean)).sum() / (finite.length - 1);
        double share = finite.length < 2 || !(variance > 0)
                ? 0
                : 1 - errorStandardDeviation * errorStandardDeviation / variance;
        return new MeasurementError(errorStandardDeviation, Math.max(0, share));
    }

    /** Returns the share of the feature's variation that is not error, 0 to 1. */
    public double reliability() {
        return reliability;
    }

    /** Says whether a slope can be corrected at all. */
    public boolean canBeCorrected() {
        return reliability >= LEAST_RELIABILITY;
    }

    /**
     * Corrects a slope by regression calibration: slope and standard error are divided by the reliability, which is taken as known.
     * An estimate of NaN if the reliability is under one half.
     */
    public Estimate calibrated(Estimate naive) {
        return canBeCorrected()
                ? new Estimate(
                        naive.name(),
                        naive.estimate() / reliability,
                        naive.standardError() / reliability,
                        naive.degreesOfFreedom())
                : new Estimate(naive.name(), Double.NaN, Double.NaN, naive.degreesOfFreedom());
    }

    @Override
    public String toString() {
        return String.format(
                Locale.ROOT,
                "error with standard deviation %s, reliability %.2f%s",
                Checks.number(errorStandardDeviation),
                reliability,
                canBeCorrected() ? "" : ": too low to correct for, cannot tell");
    }
}
