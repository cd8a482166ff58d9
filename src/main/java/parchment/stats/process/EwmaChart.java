package parchment.stats.process;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import parchment.display.Showable;

/**
 * Watches the exponentially weighted moving average of values, which notices a small lasting shift sooner than single values do.
 *
 * <p>Each charted number is w times the newest value plus 1 - w times the charted number before; it starts at the center. The limits
 * widen from the first value on to center ± width × s × sqrt(w / (2 - w)). Values are taken as independent.
 *
 * @see <a href="https://www.itl.nist.gov/div898/handbook/pmc/section3/pmc324.htm">NIST/SEMATECH e-Handbook 6.3.2.4</a>
 */
public final class EwmaChart implements Showable {
    /** The weight of the newest value where none is given. */
    public static final double USUAL_WEIGHT = 0.2;

    /** The width in standard deviations with one false alarm in 500 values at the usual weight (Lucas and Saccucci 1990). */
    public static final double USUAL_WIDTH = 2.962;

    /** How the limits begin. */
    public enum Limits {
        /** The width at the start is what one value has, and grows: the exact ones. */
        FROM_THE_START,
        /** The final width throughout, as the published run lengths have it. */
        SETTLED
    }

    private final double[] values;
    private final double center;
    private final double standardDeviation;
    private final double weight;
    private final double width;
    private final Limits limits;

    private EwmaChart(
            double[] values, double center, double standardDeviation, double weight, double width, Limits limits) {
        this.values = values;
        this.center = center;
        this.standardDeviation = standardDeviation;
        this.weight = weight;
        this.width = width;
        this.limits = limits;
    }

    /**
     * Watches values with weight 0.2 and width 2.962.
     *
     * @param values in order of time, at least 1, none missing
     * @param center the usual level
     * @param standardDeviation the usual spread of single values, above 0
     */
    public static EwmaChart of(double[] values, double center, double standardDeviation) {
        return new EwmaChart(
                Checks.series("A chart of weighted means", 1, values),
                Checks.finite("The center", center),
                Checks.positive("The standard deviation", standardDeviation),
                USUAL_WEIGHT,
                USUAL_WIDTH,
                Limits.FROM_THE_START);
    }

    /**
     * Returns the same chart with another memory.
     *
     * @param weight of the newest value, above 0 to 1; small remembers long
     * @param width of the limits in standard deviations of the weighted mean
     */
    public EwmaChart with(double weight, double width) {
        return new EwmaChart(
                values, center, standardDeviation, Checks.weight(weight), Checks.positive("The width", width), limits);
    }

    /** Returns the same chart with limits that begin otherwise. */
    public EwmaChart with(Limits begin) {
        return new EwmaChart(values, center, standardDeviation, weight, width, begin);
    }

    /** Returns the weighted mean after each value. */
    public double[] charted() {
        double[] charted = new double[values.length];
        double mean = center;
        for (int i = 0; i < values.length; i++) {
            mean = weight * values[i] + (1 - weight) * mean;
            charted[i] = mean;
        }
        return charted;
    }

    public double center() {
        return center;
    }

    /** Returns the distance from center to limit at a value, counted from 1. */
    public double halfWidth(int position) {
        double settled = weight / (2 - weight);
        double share = limits == Limits.SETTLED
                ? settled
                : settled * (1 - Math.pow(1 - weight, 2.0 * Checks.atLeast(1, "A position", position)));
        return width * standardDeviation * Math.sqrt(share);
    }

    /** Returns the values at which the weighted mean is outside its limits, oldest first. */
    public List<Signal> signals() {
        List<Signal> signals = new ArrayList<>();
        double[] charted = charted();
        for (int i = 0; i < charted.length; i++) {
            if (Math.abs(charted[i] - center) > halfWidth(i + 1)) {
                signals.add(new Signal(i + 1, charted[i], charted[i] > center ? Signal.Side.ABOVE : Signal.Side.BELOW));
            }
        }
        return List.copyOf(signals);
    }

    /** Returns what this chart promises: how long until it signals, rightly or falsely. */
    public RunLength runLength() {
        return RunLength.ofEwma(weight, width);
    }

    @Override
    public String toString() {
        return String.format(
                Locale.ROOT,
                "%d values, weighted mean with weight %.2g around %.4g ± %.3g, %d outside",
                values.length,
                weight,
                center,
                halfWidth(values.length),
                signals().size());
    }
}
