package parchment.evidence;

import parchment.evidence.finding.Slope;
import parchment.stats.Interval;

/**
 * Asks of every two places along a course with a line and a bend how far their scores may differ.
 *
 * @param line the slope at the place from which the others are counted
 * @param square the coefficient of the square, from the same place
 * @param covariance of the two
 */
record PairsOfPlaces(Slope line, Slope square, double covariance) {
    static final PairsOfPlaces UNKNOWN = new PairsOfPlaces(Slope.MISSING, Slope.MISSING, Double.NaN);

    /** Two one-sided tests at 5 %, as one interval. */
    private static final double TWO_ONE_SIDED = 0.90;

    private static final int PLACES = 41;

    static PairsOfPlaces of(FittedScores bent) {
        Slope line = bent.slope();
        Slope square = bent.slope(ScoreDesign.SQUARE);
        return line.known() && square.known()
                ? new PairsOfPlaces(line, square, bent.covariance(ScoreDesign.FEATURE, ScoreDesign.SQUARE))
                : UNKNOWN;
    }

    /** Says whether a bend could be fitted. */
    boolean known() {
        return line.known() && square.known();
    }

    /** Returns the score at the second place less that at the first, with its error. */
    Slope between(double from, double to) {
        double along = to - from;
        double squared = to * to - from * from;
        double variance = along * along * line.standardError() * line.standardError()
                + squared * squared * square.standardError() * square.standardError()
                + 2 * along * squared * covariance;
        return new Slope(
                along * line.estimate() + squared * square.estimate(),
                Math.sqrt(Math.max(0, variance)),
                Math.min(line.degreesOfFreedom(), square.degreesOfFreedom()));
    }

    /**
     * Returns the lowest and the highest difference that the 90 % intervals between any two places hold.
     *
     * @param straight the same between the two ends by the line alone, which is held too
     */
    Interval every(double low, double high, Interval straight) {
        double lower = Math.min(0, straight.lower());
        double upper = Math.max(0, straight.upper());
        for (int i = 0; known() && i < PLACES; i++) {
            for (int j = i + 1; j < PLACES; j++) {
                double width = high - low;
                Interval interval = between(low + width * i / (PLACES - 1.0), low + width * j / (PLACES - 1.0))
                        .interval(TWO_ONE_SIDED);
                lower = Math.min(lower, interval.lower());
                upper = Math.max(upper, interval.upper());
            }
        }
        return new Interval(lower, upper, TWO_ONE_SIDED);
    }

    /** Returns the 90 % interval of the depth of the bend over a width; anything where none could be fitted, as none is ruled out. */
    Interval depth(double width) {
        return known()
                ? square.per(width * width / 4).interval(TWO_ONE_SIDED)
                : new Interval(Double.NEGATIVE_INFINITY, Double.POSITIVE_INFINITY, TWO_ONE_SIDED);
    }

    /**
     * Says whether no two places differ by as much as the margin, by two one-sided tests at 5 % of every pair (an intersection-union test), the
     * line alone included.
     */
    boolean noneThatMatters(double low, double high, Interval straight, double margin) {
        return inside(every(low, high, straight), margin) && inside(depth(high - low), margin);
    }

    static boolean inside(Interval interval, double margin) {
        return interval.lower() > -margin && interval.upper() < margin;
    }
}
