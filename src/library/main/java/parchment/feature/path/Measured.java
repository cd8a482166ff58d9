package parchment.feature.path;

import java.util.Locale;
import java.util.Objects;
import parchment.curve.measured.CurveEstimate;

/**
 * A feature as measured on one batch, or the reason why it could not be.
 *
 * @param value the number as the library keeps it, NaN if missing
 * @param standardError its standard error, 0 if it is exact or its error is not known, NaN if missing
 * @param error whether that error is known
 * @param whyMissing a sentence if the number is missing, otherwise empty
 */
public record Measured(double value, double standardError, ErrorKnown error, String whyMissing) {
    /** Says whether the error of a number is known. */
    public enum ErrorKnown {
        /** The standard error is known; 0 for a count. */
        YES,
        /** The number was written by somebody, and how well it was read nobody wrote; the standard error is told as 0. */
        NO
    }

    /** @throws IllegalArgumentException if the number is missing without a reason */
    public Measured {
        Objects.requireNonNull(whyMissing);
        if (Double.isNaN(value) && whyMissing.isBlank()) {
            throw new IllegalArgumentException("A missing measure needs a reason; none was given.");
        }
    }

    /** Returns a number with its standard error. */
    public static Measured of(double value, double standardError) {
        return new Measured(value, standardError, ErrorKnown.YES, "");
    }

    /** Returns a number that was counted, or taken as exact. */
    public static Measured exact(double value) {
        return new Measured(value, 0, ErrorKnown.YES, "");
    }

    /** Returns a number as it was written, of which nobody knows the error. */
    public static Measured written(double value) {
        return new Measured(value, 0, ErrorKnown.NO, "");
    }

    /** Returns the reason why there is no number. */
    public static Measured missing(String why) {
        return new Measured(Double.NaN, Double.NaN, ErrorKnown.NO, why);
    }

    public static Measured of(CurveEstimate estimate) {
        return new Measured(estimate.value(), estimate.standardError(), ErrorKnown.YES, estimate.whyMissing());
    }

    /** Returns whether there is no number. */
    public boolean isMissing() {
        return Double.isNaN(value);
    }

    /** Returns the number on another scale; missing if it is not known by how much the scales differ. */
    public Measured movedBy(double added) {
        return Double.isFinite(added)
                ? new Measured(value + added, standardError, error, whyMissing)
                : missing("the probe was changed since, and by how much that changes the number is not known.");
    }

    /** Returns the same number with another standard error. */
    public Measured withStandardError(double other) {
        return new Measured(value, other, ErrorKnown.YES, whyMissing);
    }

    @Override
    public String toString() {
        return isMissing() ? "missing: " + whyMissing : String.format(Locale.ROOT, "%.4g ± %.2g", value, standardError);
    }
}
