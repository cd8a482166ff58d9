package parchment.stats.process;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import parchment.display.Showable;

/**
 * Adds up how far values lie beyond an allowance from their target, above and below apart: the sum grows once the level has moved.
 *
 * <p>Tabular form: up = max(0, up + x - target - allowance), down = max(0, down + target - allowance - x); a sum beyond the decision
 * interval is a signal. Values are taken as independent.
 *
 * @see <a href="https://www.itl.nist.gov/div898/handbook/pmc/section3/pmc323.htm">NIST/SEMATECH e-Handbook 6.3.2.3</a>
 */
public final class CusumChart implements Showable {
    /** Half of the shift to be noticed, in standard deviations, where none is given: a shift of one is watched for. */
    public static final double USUAL_ALLOWANCE = 0.5;

    /** The decision interval in standard deviations where none is given: one false alarm in about 465 values. */
    public static final double USUAL_DECISION = 5;

    private final double[] values;
    private final double target;
    private final double standardDeviation;
    private final double allowance;
    private final double decision;

    private CusumChart(double[] values, double target, double standardDeviation, double allowance, double decision) {
        this.values = values;
        this.target = target;
        this.standardDeviation = standardDeviation;
        this.allowance = allowance;
        this.decision = decision;
    }

    /**
     * Watches values with an allowance of half a standard deviation and a decision interval of five.
     *
     * @param values in order of time, at least 1, none missing
     * @param target the usual level
     * @param standardDeviation the usual spread of single values, above 0
     */
    public static CusumChart of(double[] values, double target, double standardDeviation) {
        return new CusumChart(
                Checks.series("A chart of sums", 1, values),
                Checks.finite("The target", target),
                Checks.positive("The standard deviation", standardDeviation),
                USUAL_ALLOWANCE,
                USUAL_DECISION);
    }

    /**
     * Returns the same chart with other settings, both in standard deviations.
     *
     * @param allowance half of the shift to be noticed (k)
     * @param decision the sum at which it signals (h)
     */
    public CusumChart with(double allowance, double decision) {
        return new CusumChart(
                values,
                target,
                standardDeviation,
                Checks.positive("The allowance", allowance),
                Checks.positive("The decision interval", decision));
    }

    /** Returns the sum of what lay above the target, after each value, in the unit of the values. */
    public double[] above() {
        return sums(1);
    }

    /** Returns the sum of what lay below the target, after each value, in the unit of the values. */
    public double[] below() {
        return sums(-1);
    }

    private double[] sums(int side) {
        double[] sums = new double[values.length];
        double sum = 0;
        for (int i = 0; i < values.length; i++) {
            sum = Math.max(0, sum + side * (values[i] - target) - allowance * standardDeviation);
            sums[i] = sum;
        }
        return sums;
    }

    /** Returns the sum beyond which the chart signals, in the unit of the values. */
    public double limit() {
        return decision * standardDeviation;
    }

    /** Returns the values at which a sum is beyond the limit, oldest first. */
    public List<Signal> signals() {
        List<Signal> signals = new ArrayList<>();
        double[] above = above();
        double[] below = below();
        for (int i = 0; i < values.length; i++) {
            if (above[i] > limit()) {
                signals.add(new Signal(i + 1, above[i], Signal.Side.ABOVE));
            }
            if (below[i] > limit()) {
                signals.add(new Signal(i + 1, below[i], Signal.Side.BELOW));
            }
        }
        return List.copyOf(signals);
    }

    /**
     * Returns when the level most likely began to move, for a signal of this chart: the value after the sum was last zero (Montgomery,
     * Statistical Quality Control, chapter on cumulative sums).
     *
     * @return the position of the first value of the new level, counted from 1
     */
    public int began(Signal signal) {
        double[] sums = signal.side() == Signal.Side.ABOVE ? above() : below();
        int i = signal.position() - 1;
        while (i >= 0 && sums[i] > 0) {
            i--;
        }
        return i + 2;
    }

    /** Returns what this chart promises: how long until it signals, rightly or falsely. */
    public RunLength runLength() {
        return RunLength.ofCusum(allowance, decision);
    }

    @Override
    public String toString() {
        return String.format(
                Locale.ROOT,
                "%d values, sums of what is more than %s from %s, limit %s, %d outside",
                values.length,
                Checks.number(allowance * standardDeviation),
                Checks.number(target),
                Checks.number(limit()),
                signals().size());
    }
}
