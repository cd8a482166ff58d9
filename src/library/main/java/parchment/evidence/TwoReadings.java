package parchment.evidence;

import java.util.Optional;
import java.util.function.DoubleUnaryOperator;
import parchment.evidence.finding.Slope;
import parchment.evidence.finding.Verdict;
import parchment.stats.Interval;

/**
 * The two readings that an answer is told between, chosen and rounded in one place.
 *
 * @param lower the reading that scored less, in words
 * @param higher the one that scored more
 * @param difference points of the second above the first
 * @param interval of the difference, at the level of the answer
 * @param top the best reading, if the course turns there
 * @param from the place that scored less, as the library keeps the feature
 * @param to the place that scored more
 * @param placesAreReadings whether the places are readings on today's probe; otherwise only how far they lie apart means anything
 */
record TwoReadings(
        String lower,
        String higher,
        Slope difference,
        Interval interval,
        Optional<Double> top,
        double from,
        double to,
        boolean placesAreReadings) {

    /** Returns how far apart the two are, as the library keeps the feature. */
    double apart() {
        return Math.abs(to - from);
    }

    /** Says whether the higher reading is the one that scored more. */
    boolean rises() {
        return to >= from;
    }

    /** Names both readings, the lower one on the scale first. */
    String both(String between) {
        return rises() ? lower + between + higher : higher + between + lower;
    }

    static TwoReadings of(Analysis analysis, Measure measure, Verdict verdict) {
        TriedRange range = analysis.range();
        RoundReadings round = RoundReadings.of(measure, range.low(), range.high());
        double low = round.from(range.low());
        double high = round.to(range.high());
        boolean readings = analysis.places() == TodaysCourse.Places.READINGS;
        FittedCurve curve = analysis.curve();
        double from;
        double to;
        Optional<Double> top = Optional.empty();
        Slope difference;
        if (curve.bent()) {
            Ends ends = ends(curve::at, analysis.peak(), round, low, high);
            from = ends.from();
            to = ends.to();
            top = ends.atTheTop() && readings ? Optional.of(to) : Optional.empty();
            difference = curve.between(from, to);
        } else {
            boolean rises = analysis.headline().estimate() >= 0;
            from = rises ? low : high;
            to = rises ? high : low;
            difference = analysis.headline().per(to - from);
        }
        return new TwoReadings(
                round.words(from),
                round.words(to),
                difference,
                difference.interval(analysis.level()),
                // Asked with "cannot tell" before there is a second answer to ask.
                verdict == Verdict.CANNOT_TELL || analysis.ordinal().bendIsDoubtful() ? Optional.empty() : top,
                from,
                to,
                readings);
    }

    /**
     * Holds the two places along a bend.
     *
     * @param atTheTop whether the second is where the course turns down
     */
    record Ends(double from, double to, boolean atTheTop) {}

    /**
     * Returns the two places along a bend: its top and the end that lies lower, or where it is lowest and highest if it has no top between
     * the two ends.
     */
    static Ends ends(DoubleUnaryOperator course, Peak peak, RoundReadings round, double low, double high) {
        if (peak.answer() == Peak.Answer.INSIDE && peak.best() > low && peak.best() < high) {
            return new Ends(
                    course.applyAsDouble(low) < course.applyAsDouble(high) ? low : high,
                    round.nearest(peak.best()),
                    true);
        }
        double lowest = low;
        double highest = low;
        for (int i = 0; i <= 40; i++) {
            double place = low + (high - low) * i / 40;
            double there = course.applyAsDouble(place);
            lowest = there < course.applyAsDouble(lowest) ? place : lowest;
            highest = there > course.applyAsDouble(highest) ? place : highest;
        }
        return new Ends(round.nearest(lowest), round.nearest(highest), false);
    }
}
