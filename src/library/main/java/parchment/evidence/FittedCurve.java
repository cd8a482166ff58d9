package parchment.evidence;

import parchment.evidence.finding.Slope;
import parchment.stats.Interval;

/**
 * The course of the score over the tried range as it is drawn, with the band of its mean.
 *
 * <p>The level is that of an average lot, cupper and cupping; the band is that of the mean of these batches, so it holds no spread of
 * lots, cuppers and cuppings.
 */
final class FittedCurve {
    private static final int POINTS = 41;

    private final FittedScores fitted;
    private final TriedRange range;
    private final double level;

    private FittedCurve(FittedScores fitted, TriedRange range, double level) {
        this.fitted = fitted;
        this.range = range;
        this.level = level;
    }

    static FittedCurve of(FittedScores fitted, TriedRange range, double level) {
        return new FittedCurve(fitted, range, level);
    }

    /** Returns evenly spaced places from the lowest to the highest tried value. */
    double[] places() {
        double[] places = new double[POINTS];
        for (int i = 0; i < POINTS; i++) {
            places[i] = range.lowest() + (range.highest() - range.lowest()) * i / (POINTS - 1.0);
        }
        return places;
    }

    /** Returns the fitted mean score at a place. */
    double at(double place) {
        double x = place - range.center();
        return fitted.intercept()
                + fitted.coefficient(ScoreDesign.FEATURE) * x
                + fitted.coefficient(ScoreDesign.SQUARE) * x * x;
    }

    /** Says whether the course has a bend. */
    boolean bent() {
        return fitted.slope(ScoreDesign.SQUARE).known();
    }

    /** Returns the differences between its places. */
    PairsOfPlaces pairs() {
        return PairsOfPlaces.of(fitted);
    }

    /** Returns the difference from the score at the center of the range, with its error. */
    Slope difference(double place) {
        return between(range.center(), place);
    }

    /** Returns the score at the second place less that at the first, with its error. */
    Slope between(double first, double second) {
        if (bent()) {
            return PairsOfPlaces.of(fitted).between(first - range.center(), second - range.center());
        }
        Slope line = fitted.slope();
        return new Slope(
                at(second) - at(first), Math.abs(second - first) * line.standardError(), line.degreesOfFreedom());
    }

    /**
     * Returns the band of the course at a place, on the scale of the scores: the error of the difference from the center and that of the
     * level of these batches.
     */
    Interval band(double place) {
        Slope difference = difference(place);
        double level2 =
                fitted.batchVariance() / fitted.design().material().batches().size();
        double error = Math.sqrt(difference.standardError() * difference.standardError() + level2);
        Slope shown = new Slope(at(place), error, fitted.slope().degreesOfFreedom());
        return shown.known() ? shown.interval(level) : new Interval(at(place), at(place), level);
    }
}
