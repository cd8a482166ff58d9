package parchment.drift;

import java.util.Arrays;
import org.hipparchus.distribution.continuous.TDistribution;
import parchment.feature.Feature;
import parchment.quantity.TemperatureUnit;
import parchment.quantity.Unit;
import parchment.stats.Interval;
import parchment.stats.linear.Robust;

/**
 * Draws the line between usual and unusual in one feature: the median and the spread of the others, on the scale on which the feature can
 * lie anywhere.
 *
 * @param feature the feature
 * @param scale its scale
 * @param known how many of the others have it
 * @param median their median, on the scale; NaN if there are too few
 * @param spread how far they lie from their median, like a standard deviation
 */
record UsualRange(Feature feature, UsualRange.Scale scale, int known, double median, double spread) {
    /** Median and mean absolute deviation of a normal sample, in parts of its standard deviation: one over each. */
    private static final double NORMAL = 1.4826;

    private static final double NORMAL_MEAN = Math.sqrt(Math.PI / 2);

    static UsualRange of(Feature feature, double[] all, int[] rows) {
        Scale scale = Scale.of(feature.unit());
        double[] theirs = Arrays.stream(rows)
                .mapToDouble(row -> scale.from(all[row]))
                .filter(Double::isFinite)
                .toArray();
        if (theirs.length < Usual.ENOUGH) {
            return new UsualRange(feature, scale, theirs.length, Double.NaN, Double.NaN);
        }
        double median = Robust.median(theirs);
        double[] away = Arrays.stream(theirs).map(v -> Math.abs(v - median)).toArray();
        double middle = NORMAL * Robust.median(away);
        // Where more than half are the same, the median of the deviations is no spread; the mean is one.
        double spread = Math.max(
                middle,
                NORMAL_MEAN
                        * Arrays.stream(away)
                                .filter(a -> middle == 0 || a <= Usual.SLIP * middle)
                                .average()
                                .orElse(0));
        return new UsualRange(
                feature, scale, theirs.length, median, Math.max(spread, least(feature.unit(), scale, median)));
    }

    /** Half a printed step: it keeps a feature that never differs from making every batch odd. */
    private static double least(Unit unit, Scale scale, double median) {
        double step = 0.5 * Math.pow(10, -unit.digits()) / unit.shownStep(1, TemperatureUnit.CELSIUS);
        return scale.from(scale.back(median) + step) - median;
    }

    Usual.Compared compare(double value) {
        return new Usual.Compared(
                feature, value, scale.back(median), leavingOut(Usual.LITTLE), leavingOut(Usual.ALARM), known);
    }

    /** Returns the range that is meant to hold this feature of the next batch, where one of all features may lie beyond its own so often. */
    private Interval leavingOut(double alarm) {
        double level = 1 - alarm / Usual.LOOKED_AT.size();
        double half = known < Usual.ENOUGH
                ? Double.NaN
                : spread
                        * Math.sqrt(1 + Math.PI / 2 / known)
                        * new TDistribution(known - 1).inverseCumulativeProbability((1 + level) / 2);
        return new Interval(scale.back(median - half), scale.back(median + half), level);
    }

    /** The scale on which a number can lie anywhere. */
    enum Scale {
        PLAIN,
        LOGARITHM,
        ODDS;

        static Scale of(Unit unit) {
            String symbol = unit.symbol(TemperatureUnit.CELSIUS);
            return symbol.equals(Unit.SECONDS.symbol(TemperatureUnit.CELSIUS))
                    ? LOGARITHM
                    : symbol.equals(Unit.SHARE.symbol(TemperatureUnit.CELSIUS)) ? ODDS : PLAIN;
        }

        /** Returns NaN for what is not possible: a time or a share that is not above 0. */
        double from(double value) {
            return switch (this) {
                case PLAIN -> value;
                case LOGARITHM -> value > 0 ? Math.log(value) : Double.NaN;
                case ODDS -> value > 0 && value < 1 ? Math.log(value / (1 - value)) : Double.NaN;
            };
        }

        double back(double value) {
            return switch (this) {
                case PLAIN -> value;
                case LOGARITHM -> Math.exp(value);
                case ODDS -> 1 / (1 + Math.exp(-value));
            };
        }
    }
}
