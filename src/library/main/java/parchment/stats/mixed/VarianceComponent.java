package parchment.stats.mixed;

import java.util.Locale;
import parchment.display.Showable;

/**
 * One estimated variance or covariance of a mixed model, for its table of random terms.
 *
 * @param term the random term, or "Residual"
 * @param effect the effect within a group, as "(Intercept)"
 * @param otherEffect the second effect of a covariance, the same as effect for a variance
 * @param variance the variance or covariance, in squared units of the response
 * @param boundary plain words if the estimate lies on its bound, otherwise empty
 */
public record VarianceComponent(String term, String effect, String otherEffect, double variance, String boundary)
        implements Showable {

    /** Says whether this is a covariance of two effects. */
    public boolean isCovariance() {
        return !effect.equals(otherEffect);
    }

    /** Returns the standard deviation of a variance; NaN for a covariance. */
    public double standardDeviation() {
        return isCovariance() ? Double.NaN : Math.sqrt(variance);
    }

    @Override
    public String toString() {
        String what = isCovariance()
                ? String.format(Locale.ROOT, "%s: covariance of %s and %s %.4g", term, effect, otherEffect, variance)
                : String.format(
                        Locale.ROOT,
                        "%s: standard deviation %.4g",
                        term.equals(effect) ? term : term + " " + effect,
                        standardDeviation());
        return boundary.isEmpty() ? what : what + " (" + boundary + ")";
    }
}
