package parchment.stats.mixed;

import java.util.Locale;
import parchment.display.Showable;
import parchment.stats.linear.Quantiles;

/**
 * Tests whether several numbers are all 0 together.
 *
 * @param name what was tested
 * @param statistic the F statistic, NaN if nothing could be tested
 * @param numerator degrees of freedom of the numerator: how many numbers
 * @param denominator degrees of freedom of the denominator
 */
public record FTest(String name, double statistic, double numerator, double denominator) implements Showable {

    /** Returns the p-value. */
    public double probability() {
        return Quantiles.fProbability(statistic, numerator, denominator);
    }

    @Override
    public String toString() {
        return Double.isNaN(statistic)
                ? name + ": cannot be tested"
                : String.format(
                        Locale.ROOT,
                        "%s: F(%.0f, %.1f) = %.3f, p = %.4g",
                        name,
                        numerator,
                        denominator,
                        statistic,
                        probability());
    }
}
