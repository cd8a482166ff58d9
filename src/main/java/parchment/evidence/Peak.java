package parchment.evidence;

import java.util.Locale;
import parchment.display.Showable;
import parchment.stats.Interval;

/**
 * Says where the score is best if it follows a curve with one bend, by Fieller's set.
 *
 * <p>The set holds every place at which the slope of the fitted curve cannot be told from 0. It is an interval, all places outside an
 * interval, or everywhere; it is always kept, bounded or not.
 *
 * @param answer what can be said
 * @param best the fitted top on the scale of the tried range; NaN unless the answer is {@link Answer#INSIDE}
 * @param set the two ends of Fieller's set, on the same scale; if the set is the outside of an interval, lower is above upper
 * @param level the level of the set, as in 0.90
 * @see <a href="https://doi.org/10.1111/j.2517-6161.1954.tb00159.x">Fieller 1954, J. R. Stat. Soc. B 16(2)</a>
 */
public record Peak(Answer answer, double best, Interval set, double level) implements Showable {
    /** What can be said of the best place. */
    public enum Answer {
        /** The best lies inside the tried range, as far as the set shows. */
        INSIDE,
        /** The score rises over the whole tried range: no peak inside it. */
        RISES_THROUGHOUT,
        /** The score falls over the whole tried range: no peak inside it. */
        FALLS_THROUGHOUT,
        /** The curve has a lowest place and no highest. */
        TROUGH,
        /** The data do not tell. */
        CANNOT_TELL
    }

    /**
     * Works out the set.
     *
     * @param line the coefficient of the measure
     * @param square the coefficient of its square
     * @param covariance of the two
     * @param range the tried range; coefficients count from its center
     */
    static Peak of(Slope line, Slope square, double covariance, TriedRange range, double level) {
        Interval nothing = new Interval(Double.NaN, Double.NaN, level);
        if (!line.known() || !square.known()) {
            return new Peak(Answer.CANNOT_TELL, Double.NaN, nothing, level);
        }
        double degrees = Math.min(line.degreesOfFreedom(), square.degreesOfFreedom());
        double t2 = Math.pow(StudentT.quantile(0.5 + level / 2, degrees), 2);
        double b1 = line.estimate();
        double b2 = square.estimate();
        // The places v with (b1 + 2 b2 v)^2 <= t^2 Var(b1 + 2 b2 v): a v^2 + b v + c <= 0.
        double a = 4 * (b2 * b2 - t2 * square.standardError() * square.standardError());
        double b = 4 * (b1 * b2 - t2 * covariance);
        double c = b1 * b1 - t2 * line.standardError() * line.standardError();
        double discriminant = b * b - 4 * a * c;
        if (discriminant < 0 || a == 0) {
            Interval everywhere = new Interval(Double.NEGATIVE_INFINITY, Double.POSITIVE_INFINITY, level);
            return new Peak(Answer.CANNOT_TELL, Double.NaN, everywhere, level);
        }
        double root = Math.sqrt(discriminant);
        double first = range.center() + (-b - root) / (2 * a);
        double second = range.center() + (-b + root) / (2 * a);
        Interval set = new Interval(first, second, level);
        boolean bounded = a > 0;
        // With a < 0 the set is everything outside the roots, and the first root is the larger one.
        boolean reaches = bounded
                ? first <= range.highest() && second >= range.lowest()
                : range.lowest() <= second || range.highest() >= first;
        if (!reaches) {
            return new Peak(b1 > 0 ? Answer.RISES_THROUGHOUT : Answer.FALLS_THROUGHOUT, Double.NaN, set, level);
        }
        double top = range.center() - b1 / (2 * b2);
        if (!bounded || (b2 < 0 && !range.holds(top))) {
            return new Peak(Answer.CANNOT_TELL, Double.NaN, set, level);
        }
        return b2 > 0 ? new Peak(Answer.TROUGH, Double.NaN, set, level) : new Peak(Answer.INSIDE, top, set, level);
    }

    /** Says whether Fieller's set holds a value. */
    public boolean contains(double value) {
        if (Double.isNaN(set.lower())) {
            return true;
        }
        return set.lower() <= set.upper() ? set.contains(value) : value <= set.upper() || value >= set.lower();
    }

    /** Says whether the set is an interval with two ends. */
    public boolean bounded() {
        return set.lower() <= set.upper() && Double.isFinite(set.lower()) && Double.isFinite(set.upper());
    }

    /** Returns the set and what it means, in the reader's unit. */
    String words(String attribute, Measure measure, TriedRange range) {
        String percent = String.format(Locale.ROOT, "%.0f %%", 100 * level);
        return switch (answer) {
            case INSIDE ->
                String.format(
                        Locale.ROOT,
                        "In this logbook %s was highest at a %s of %s (%s Fieller interval %s)%s.",
                        attribute,
                        measure.name(),
                        measure.value(best),
                        percent,
                        measure.range(set.lower(), set.upper()),
                        set.lower() < range.lowest() || set.upper() > range.highest()
                                ? "; a part of that interval was never tried"
                                : "");
            case RISES_THROUGHOUT ->
                "No peak inside the tried range: " + attribute + " rises with the " + measure.name()
                        + " all through it, and what lies beyond was not tried.";
            case FALLS_THROUGHOUT ->
                "No peak inside the tried range: " + attribute + " falls with the " + measure.name()
                        + " all through it, and what lies beyond was not tried.";
            case TROUGH ->
                String.format(
                        Locale.ROOT,
                        "The fitted curve has a lowest place, not a highest (%s Fieller interval of the lowest: %s), so no best %s can"
                                + " be named.",
                        percent,
                        measure.range(set.lower(), set.upper()),
                        measure.name());
            case CANNOT_TELL -> "Where " + attribute + " is best cannot be told: " + setWords(percent, measure);
        };
    }

    private String setWords(String percent, Measure measure) {
        if (Double.isNaN(set.lower())) {
            return "a curve could not be fitted.";
        }
        if (Double.isInfinite(set.lower())) {
            if (bounded()) {
                return "the " + percent + " Fieller interval is " + measure.range(set.lower(), set.upper())
                        + " and its middle lies beyond what was tried.";
            }
            return "the " + percent + " Fieller set holds every " + measure.name() + ".";
        }
        if (bounded()) {
            return "the " + percent + " Fieller interval is " + measure.range(set.lower(), set.upper())
                    + " and its middle lies beyond what was tried.";
        }
        return "the " + percent + " Fieller set holds every " + measure.name() + " up to " + measure.value(set.upper())
                + " and from " + measure.value(set.lower()) + " on.";
    }

    @Override
    public String toString() {
        return String.format(
                        Locale.ROOT,
                        "best place: %s, Fieller set %s",
                        answer.name().toLowerCase(Locale.ROOT),
                        set)
                .replace('_', ' ');
    }
}
