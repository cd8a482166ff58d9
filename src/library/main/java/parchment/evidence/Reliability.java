package parchment.evidence;

import java.util.Arrays;
import java.util.Locale;
import parchment.display.Showable;
import parchment.evidence.finding.Slope;
import parchment.stats.MeasurementError;
import parchment.stats.linear.Robust;

/**
 * Decides whether a measure is good enough for a slope, by how much of its spread is the batches' own and how much is error of measuring.
 *
 * <p>The reliability is 1 - error variance / variance of the feature inside its lots. Under 0.9 the slope is divided by it
 * (regression calibration; Carroll, Ruppert, Stefanski and Crainiceanu 2006, Measurement Error in Nonlinear Models, section 4),
 * under 0.5 nothing is said. The variance is weighted as the model weighs it: a difference between roast days counts less than one
 * inside a day when the days themselves differ.
 *
 * @param value from 0 (all error) to 1 (no error); NaN if the feature's own error is not known
 * @param ownError the root mean square of the batches' standard errors
 * @param spread the distance from the 10th to the 90th percentile inside lots
 * @param batches how many batches the variance rests on
 */
record Reliability(double value, double ownError, double spread, int batches) implements Showable {
    /** Under this a slope says nothing. */
    static final double TOO_LOW = MeasurementError.LEAST_RELIABILITY;

    /** Under this a slope is corrected. */
    static final double CORRECTED = MeasurementError.GOOD_RELIABILITY;

    /** The tried spread has to be at least this many of the measure's own errors. */
    static final double ERRORS_IN_SPREAD = 3;

    /**
     * Works out the reliability.
     *
     * @param within each batch's measure from its lot's mean
     * @param errors each batch's standard error
     * @param variance the variance of the measure that the model's slope rests on
     */
    static Reliability of(double[] within, double[] errors, double variance) {
        double[] known = Arrays.stream(errors).filter(Double::isFinite).toArray();
        double meanSquare =
                Arrays.stream(known).map(error -> error * error).average().orElse(Double.NaN);
        double value = Double.isNaN(meanSquare) ? Double.NaN : Math.max(0, 1 - meanSquare / variance);
        return new Reliability(value, Math.sqrt(meanSquare), spread(within), within.length);
    }

    /** Returns the distance from the 10th to the 90th percentile. */
    static double spread(double[] values) {
        return Robust.quantile(values, 0.9) - Robust.quantile(values, 0.1);
    }

    /** Says whether the tried spread is too small for the measure's own error. */
    boolean tooNarrow() {
        return spread < ERRORS_IN_SPREAD * ownError;
    }

    boolean tooLow() {
        return value < TOO_LOW;
    }

    boolean corrects() {
        return value < CORRECTED && !tooLow();
    }

    /**
     * Returns a slope corrected for the error of the measure, with the wider error: that of the reliability itself is added by the
     * delta method.
     */
    Slope corrected(Slope fitted) {
        double relative = Math.sqrt(2.0 / Math.max(1, batches - 1)) * (1 - value);
        double slopePart = fitted.standardError() / value;
        double reliabilityPart = fitted.estimate() / (value * value) * relative;
        return new Slope(fitted.estimate() / value, Math.hypot(slopePart, reliabilityPart), fitted.degreesOfFreedom());
    }

    @Override
    public String toString() {
        return Double.isNaN(value)
                ? "The measure's own error is not known, so the slope is not corrected for it."
                : String.format(
                        Locale.ROOT,
                        "Reliability %.2f: %.0f %% of the spread inside lots is error of measuring (%d batches).",
                        value,
                        100 * (1 - value),
                        batches);
    }
}
