package parchment.stats.process;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import parchment.display.Showable;

/**
 * Sets limits for a process that gives one value at a time, as wide as neighbouring values usually differ.
 *
 * <p>The limits come from the mean moving range of neighbours, so that a slow drift does not hide itself by widening them. If
 * neighbours resemble each other (serial correlation) the limits are too narrow. Missing values are not taken: leave them out first.
 *
 * @see <a href="https://www.itl.nist.gov/div898/handbook/pmc/section3/pmc322.htm">NIST/SEMATECH e-Handbook 6.3.2.2</a>
 */
public final class IndividualsChart implements Showable {
    /** Mean range of two normal values in standard deviations, 2 / sqrt(pi); printed as 1.128 in tables of control charts (d2). */
    private static final double RANGE_OF_TWO = 2 / Math.sqrt(Math.PI);

    private final double[] values;
    private final double center;
    private final double standardDeviation;

    private IndividualsChart(double[] values, double center, double standardDeviation) {
        this.values = values;
        this.center = center;
        this.standardDeviation = standardDeviation;
    }

    /**
     * Sets the limits from the values themselves.
     *
     * @param values in order of time, at least 2, none missing
     * @throws parchment.stats.CannotFitException if there are fewer
     * @throws IllegalArgumentException if one is missing or infinite
     */
    public static IndividualsChart of(double[] values) {
        double[] kept = Checks.series("An individuals chart", 2, values);
        double sum = kept[0];
        double ranges = 0;
        for (int i = 1; i < kept.length; i++) {
            sum += kept[i];
            ranges += Math.abs(kept[i] - kept[i - 1]);
        }
        return new IndividualsChart(kept, sum / kept.length, ranges / (kept.length - 1) / RANGE_OF_TWO);
    }

    /** Puts other values between these limits: the limits of a stable stretch, applied to what came later. */
    public IndividualsChart watching(double[] later) {
        return new IndividualsChart(Checks.series("An individuals chart", 1, later), center, standardDeviation);
    }

    /** Returns the values on the chart. */
    public double[] values() {
        return values.clone();
    }

    /** Returns the mean of the values that set the limits. */
    public double center() {
        return center;
    }

    /** Returns the standard deviation that the moving ranges imply. */
    public double standardDeviation() {
        return standardDeviation;
    }

    public double lowerLimit() {
        return center - 3 * standardDeviation;
    }

    public double upperLimit() {
        return center + 3 * standardDeviation;
    }

    /** Returns the values outside the limits, oldest first; empty if there are none. */
    public List<Signal> signals() {
        List<Signal> signals = new ArrayList<>();
        for (int i = 0; i < values.length; i++) {
            if (values[i] > upperLimit()) {
                signals.add(new Signal(i + 1, values[i], Signal.Side.ABOVE));
            } else if (values[i] < lowerLimit()) {
                signals.add(new Signal(i + 1, values[i], Signal.Side.BELOW));
            }
        }
        return List.copyOf(signals);
    }

    @Override
    public String toString() {
        return String.format(
                Locale.ROOT,
                "%d values, center %.4g, limits %.4g to %.4g, %d outside",
                values.length,
                center,
                lowerLimit(),
                upperLimit(),
                signals().size());
    }
}
