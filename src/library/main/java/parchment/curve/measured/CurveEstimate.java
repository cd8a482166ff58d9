package parchment.curve.measured;

import java.util.Locale;
import java.util.Objects;

/**
 * A number read off a curve with its standard error, or the reason why there is none.
 *
 * @param value the number, NaN if missing
 * @param standardError its standard error in the same unit, NaN if missing
 * @param whyMissing a sentence if the number is missing, otherwise empty
 */
public record CurveEstimate(double value, double standardError, String whyMissing) {

    /** @throws IllegalArgumentException if the number is missing without a reason */
    public CurveEstimate {
        Objects.requireNonNull(whyMissing);
        if (Double.isNaN(value) && whyMissing.isBlank()) {
            throw new IllegalArgumentException("A missing number needs a reason; none was given.");
        }
    }

    /** Returns a number with its standard error. */
    public static CurveEstimate of(double value, double standardError) {
        return new CurveEstimate(value, standardError, "");
    }

    /** Returns the reason why there is no number. */
    public static CurveEstimate missing(String why) {
        return new CurveEstimate(Double.NaN, Double.NaN, why);
    }

    /** Returns whether there is no number. */
    public boolean isMissing() {
        return Double.isNaN(value);
    }

    @Override
    public String toString() {
        return isMissing() ? "missing: " + whyMissing : String.format(Locale.ROOT, "%.4g ± %.2g", value, standardError);
    }
}
