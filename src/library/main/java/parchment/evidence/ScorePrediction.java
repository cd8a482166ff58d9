package parchment.evidence;

import java.util.List;
import parchment.display.Showable;
import parchment.evidence.finding.Slope;
import parchment.evidence.finding.Wording;
import parchment.stats.Interval;

/**
 * Foretells the score that goes with a value of the feature, if that value was tried.
 *
 * @param tried whether the value lies inside the tried range
 * @param difference the difference from the score at the mean of the feature, in points; NaN if not tried
 * @param interval of the difference; NaN ends if not tried
 * @param nearest the names of the nearest batches that were tried
 * @param words the answer as a sentence
 */
public record ScorePrediction(Tried tried, double difference, Interval interval, List<String> nearest, String words)
        implements Showable {
    /** Says whether a value was tried. */
    public enum Tried {
        /** It lies between the lowest and the highest batch. */
        YES,
        /** It lies outside, or nothing could be fitted; no score is foretold. */
        NO
    }

    /** Copies the names. */
    public ScorePrediction {
        nearest = List.copyOf(nearest);
    }

    static ScorePrediction of(Analysis analysis, Measure measure, String attribute, double value) {
        TriedRange range = analysis.range();
        List<String> nearest = range.nearest(analysis.drawn().design(), value, 3).stream()
                .map(TastedBatch::name)
                .toList();
        if (!range.holds(value)) {
            String words =
                    "A " + measure.name() + " of " + measure.value(value) + " was not tried: the batches reach from "
                            + measure.range(range.lowest(), range.highest())
                            + ". No score is foretold outside it. The nearest tried batches: "
                            + Wording.list(nearest) + ".";
            return new ScorePrediction(Tried.NO, Double.NaN, new Interval(Double.NaN, Double.NaN, 0.9), nearest, words);
        }
        Slope difference = analysis.curve().difference(value);
        Interval shown = difference.interval(analysis.level());
        String words = "At a " + measure.name() + " of " + measure.value(value) + " the mean " + attribute + " is "
                + Wording.signed(difference.estimate(), shown) + " points from that at " + measure.value(range.center())
                + " ("
                + Wording.percent(shown.level()) + " interval " + Wording.signed(shown)
                + "), as seen in this logbook. The nearest tried batches: "
                + Wording.list(nearest) + ".";
        return new ScorePrediction(Tried.YES, difference.estimate(), shown, nearest, words);
    }

    @Override
    public String text() {
        return EvidencePage.cautioned(words);
    }

    @Override
    public String toString() {
        return words;
    }
}
