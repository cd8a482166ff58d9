package parchment.evidence;

import java.util.Locale;
import parchment.display.Showable;
import parchment.evidence.finding.Slope;
import parchment.evidence.finding.Wording;
import parchment.stats.Interval;

/**
 * Asks whether every difference that the scores allow over the tried range is too small to matter, by two one-sided tests at 5 %.
 *
 * <p>The difference is the largest between any two places of the drawn course, from the lowest batch to the highest, with the bend where
 * one is drawn. None that matters is left only if the 90 % interval between <em>every</em> two places lies inside the margin (an
 * intersection-union test, so at 5 % too). Where a line is drawn the pairs are those of the line and those of the course with the bend that was
 * not seen, and the depth of that bend is held as well; a bend that the data could not carry is open.
 *
 * @param margin the smallest difference that matters, in points
 * @param source where the margin comes from, in words
 * @param low the place where the drawn course is lowest, as the library keeps the feature
 * @param high the place where it is highest
 * @param difference the score at the second less that at the first of the two places, from the lower to the higher value of the feature
 * @param differenceInterval its 90 % interval
 * @param everyInterval the lowest and the highest difference that the 90 % intervals between any two places hold
 * @param bendInterval the 90 % interval of the depth of a bend that is not drawn, over the tried range; its ends are NaN if one is
 *     drawn and infinite if none could be fitted
 * @see <a href="https://doi.org/10.1007/BF01068419">Schuirmann 1987, J. Pharmacokinet. Biopharm. 15(6)</a>
 */
record Equivalence(
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
     * @param bent the differences along the course with a bend, of use where a line is drawn; a bend that could not be fitted is open
     */
    static Equivalence of(
            FittedCurve curve, Slope told, PairsOfPlaces bent, TriedRange range, SmallestDifference margin) {
        double width = range.highest() - range.lowest();
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
                    bent.every(range.lowest() - range.center(), range.highest() - range.center(), interval),
                    bent.depth(width));
        }
        double[] places = curve.places();
        Slope largest = Slope.MISSING;
        double from = range.lowest();
        double to = range.highest();
        for (int i = 0; i < places.length; i++) {
            for (int j = i + 1; j < places.length; j++) {
                Slope between = curve.between(places[i], places[j]);
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
                curve.pairs()
                        .every(
                                range.lowest() - range.center(),
                                range.highest() - range.center(),
                                largest.interval(TWO_ONE_SIDED)),
                new Interval(Double.NaN, Double.NaN, TWO_ONE_SIDED));
    }

    /** Says whether no difference as large as the margin is left. */
    public boolean noneThatMatters() {
        return PairsOfPlaces.inside(everyInterval, margin) && !bendIsOpen();
    }

    /** Says whether a bend that is not drawn may still make two places differ by the margin, by its own depth or together with the line. */
    boolean bendIsOpen() {
        return !Double.isNaN(bendInterval.lower())
                && (!PairsOfPlaces.inside(bendInterval, margin)
                        || PairsOfPlaces.inside(differenceInterval, margin)
                                && !PairsOfPlaces.inside(everyInterval, margin));
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
        Interval shown = new Interval(Math.min(first, second), Math.max(first, second), differenceInterval.level());
        return String.format(
                Locale.ROOT,
                "Over the whole tried range the drawn course differs most between %s and %s: the first scored %s points above the second"
                        + " (90 %% interval %s). The smallest difference that matters is %s points (%s).",
                best,
                worst,
                Wording.signed(sign * difference.estimate(), shown).replaceFirst("^\\+", ""),
                Wording.signed(shown),
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
