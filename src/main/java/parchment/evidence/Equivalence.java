package parchment.evidence;

import java.util.Locale;
import parchment.display.Showable;
import parchment.stats.Interval;

/**
 * Asks whether every difference that the scores allow over the tried range is too small to matter, by two one-sided tests at 5 %.
 *
 * <p>The difference is the largest between any two places of the drawn course, from the lowest batch to the highest, with the bend where
 * one is drawn. None that matters is left only if the 90 % interval between <em>every</em> two places lies inside the margin (an
 * intersection-union test, so at 5 % too), and where a line is drawn, the depth of the bend that was not seen as well.
 *
 * @param margin the smallest difference that matters, in points
 * @param source where the margin comes from, in words
 * @param low the place where the drawn course is lowest, as the library keeps the feature
 * @param high the place where it is highest
 * @param difference the score at the second less that at the first of the two places, from the lower to the higher value of the feature
 * @param differenceInterval its 90 % interval
 * @param everyInterval the lowest and the highest difference that the 90 % intervals between any two places hold
 * @param bendInterval the 90 % interval of the depth of a bend that is not drawn, over the tried range; its ends are NaN if one is drawn or
 *     none could be fitted
 * @see <a href="https://doi.org/10.1007/BF01068419">Schuirmann 1987, J. Pharmacokinet. Biopharm. 15(6)</a>
 */
public record Equivalence(
        double margin,
        String source,
        double low,
        double high,
        Slope difference,
        Interval differenceInterval,
        Interval everyInterval,
        Interval bendInterval)
        implements Showable {
    private static final double TWO_ONE_SIDED = 0.90;

    /**
     * Compares the drawn course with the margin.
     *
     * @param told the slope that is told, corrected for the measure's error; a line's difference is taken from it
     * @param unseenBend the bend's coefficient if a line is drawn
     */
    static Equivalence of(
            FittedCurve curve, Slope told, Slope unseenBend, TriedRange range, SmallestDifference margin) {
        double width = range.highest() - range.lowest();
        Interval bend = unseenBend.per(width * width / 4).interval(TWO_ONE_SIDED);
        if (!curve.bent()) {
            Slope difference = told.per(width);
            boolean rises = difference.estimate() >= 0;
            Interval interval = difference.interval(TWO_ONE_SIDED);
            return new Equivalence(
                    margin.points(),
                    margin.source(),
                    rises ? range.lowest() : range.highest(),
                    rises ? range.highest() : range.lowest(),
                    difference,
                    interval,
                    new Interval(Math.min(0, interval.lower()), Math.max(0, interval.upper()), TWO_ONE_SIDED),
                    bend);
        }
        double[] places = curve.places();
        Slope largest = Slope.MISSING;
        double from = range.lowest();
        double to = range.highest();
        double lower = 0;
        double upper = 0;
        for (int i = 0; i < places.length; i++) {
            for (int j = i + 1; j < places.length; j++) {
                Slope between = curve.between(places[i], places[j]);
                Interval interval = between.interval(TWO_ONE_SIDED);
                lower = Math.min(lower, interval.lower());
                upper = Math.max(upper, interval.upper());
                if (!largest.known() || Math.abs(between.estimate()) > Math.abs(largest.estimate())) {
                    largest = between;
                    from = places[i];
                    to = places[j];
                }
            }
        }
        boolean rises = largest.estimate() >= 0;
        return new Equivalence(
                margin.points(),
                margin.source(),
                rises ? from : to,
                rises ? to : from,
                largest,
                largest.interval(TWO_ONE_SIDED),
                new Interval(lower, upper, TWO_ONE_SIDED),
                new Interval(Double.NaN, Double.NaN, TWO_ONE_SIDED));
    }

    /** Says whether no difference as large as the margin is left. */
    public boolean noneThatMatters() {
        return inside(everyInterval) && !bendIsOpen();
    }

    /** Says whether a bend that is not drawn may still be as deep as the margin. */
    boolean bendIsOpen() {
        return !Double.isNaN(bendInterval.lower()) && !inside(bendInterval);
    }

    private boolean inside(Interval interval) {
        return interval.lower() > -margin && interval.upper() < margin;
    }

    /** Returns the sentence in the reader's unit. */
    String words(Measure measure) {
        return difference.known()
                ? sentence(measure.value(high), measure.value(low))
                : "Whether a difference is too small to matter cannot be said: there is no slope.";
    }

    private String sentence(String best, String worst) {
        boolean upward = difference.estimate() >= 0;
        double sign = upward ? 1 : -1;
        double first = sign * differenceInterval.lower();
        double second = sign * differenceInterval.upper();
        return String.format(
                Locale.ROOT,
                "Over the whole tried range the drawn course differs most between %s and %s: the first scored %s points above the second"
                        + " (90 %% interval %s to %s). The smallest difference that matters is %s points (%s).",
                best,
                worst,
                Wording.points(sign * difference.estimate()),
                Wording.signed(Math.min(first, second)),
                Wording.signed(Math.max(first, second)),
                Wording.points(margin),
                source);
    }

    @Override
    public String toString() {
        return difference.known()
                ? sentence(String.format(Locale.ROOT, "%.4g", high), String.format(Locale.ROOT, "%.4g", low))
                : "Whether a difference is too small to matter cannot be said: there is no slope.";
    }
}
