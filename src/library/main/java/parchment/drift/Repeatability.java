package parchment.drift;

import java.util.Locale;
import java.util.OptionalDouble;
import org.hipparchus.distribution.continuous.ChiSquaredDistribution;
import parchment.display.Showable;
import parchment.display.answer.InShort;
import parchment.display.answer.Report;
import parchment.display.answer.Sentence;
import parchment.display.answer.ShownAs;
import parchment.feature.Feature;
import parchment.quantity.TemperatureUnit;
import parchment.quantity.Unit;
import parchment.stats.Interval;

/**
 * Measures how far batches that were meant alike lie apart in a feature.
 *
 * @param feature the feature
 * @param standardDeviation within groups of twins, as the library keeps the feature; empty without twins
 * @param degreesOfFreedom batches less groups
 * @param batches how many were used
 * @param groups in how many groups
 * @param reader the scale for temperatures
 */
public record Repeatability(
        Feature feature,
        OptionalDouble standardDeviation,
        int degreesOfFreedom,
        int batches,
        int groups,
        TemperatureUnit reader)
        implements ShownAs {

    /** Returns the interval of the standard deviation, by the chi-squared distribution of normal values. */
    public Interval interval(double level) {
        if (standardDeviation.isEmpty()) {
            return new Interval(Double.NaN, Double.NaN, level);
        }
        ChiSquaredDistribution chi = new ChiSquaredDistribution(degreesOfFreedom);
        double deviation = standardDeviation.getAsDouble();
        return new Interval(
                deviation * Math.sqrt(degreesOfFreedom / chi.inverseCumulativeProbability(0.5 + level / 2)),
                deviation * Math.sqrt(degreesOfFreedom / chi.inverseCumulativeProbability(0.5 - level / 2)),
                level);
    }

    String shownDeviation() {
        return standardDeviation.isEmpty() ? "" : step(standardDeviation.getAsDouble());
    }

    /** Prints a difference in the reader's unit. */
    String step(double difference) {
        return unit().formatStep(difference, reader);
    }

    /** Prints a difference with as many digits as an interval of a width deserves. */
    String step(double difference, double width) {
        return feature.unit()
                .withDigits(SizeWords.digits(feature.unit().shownStep(width, reader)))
                .formatStep(difference, reader);
    }

    String shownInterval() {
        Interval interval = interval(0.90);
        return standardDeviation.isEmpty()
                ? ""
                : unit().formatStep(interval.lower(), reader) + " to " + unit().formatStep(interval.upper(), reader);
    }

    private Unit unit() {
        Unit unit = feature.unit();
        return unit.withDigits(Math.max(1, unit.digits()));
    }

    /** Returns the answer in three sentences: how near to each other half of all pairs came, what that rests on, what to do next. */
    public InShort inShort() {
        return standardDeviation.isEmpty() ? TwinsInShort.withoutPairs(feature.name()) : TwinsInShort.of(this);
    }

    @Override
    public Showable shownAs() {
        return Report.titled("How far batches that were meant alike lie apart: " + feature.name())
                .add(inShort())
                .fold(Report.titled("How this was worked out").say(Sentence.of(toString()) + "."));
    }

    @Override
    public String toString() {
        return standardDeviation.isEmpty()
                ? "Cannot tell how repeatable " + feature.name()
                        + " is: no two batches that were meant alike have it (lot, green mass and planned drop written)"
                : String.format(
                        Locale.ROOT,
                        "%s of batches meant alike: standard deviation %s (90 %% interval %s), from %d batches in %d groups",
                        feature.name(),
                        shownDeviation(),
                        shownInterval(),
                        batches,
                        groups);
    }
}
