package parchment.evidence;

import java.util.Locale;
import parchment.display.Showable;
import parchment.stats.Interval;

/**
 * Asks whether every difference that the interval allows is too small to matter, by two one-sided tests at 5 %.
 *
 * <p>The difference is that over the middle 80 % of the tried values: the slope times that width, and beside it the depth of the bend.
 *
 * @param margin the smallest difference that matters, in points
 * @param source where the margin comes from, in words
 * @param difference the difference over the tried range
 * @param differenceInterval its 90 % interval
 * @param bendInterval the 90 % interval of the bend's depth over the tried range; its ends are NaN if no bend could be fitted
 * @see <a href="https://doi.org/10.1007/BF01068419">Schuirmann 1987, J. Pharmacokinet. Biopharm. 15(6)</a>
 */
public record Equivalence(
        double margin, String source, Slope difference, Interval differenceInterval, Interval bendInterval)
        implements Showable {
    private static final double TWO_ONE_SIDED = 0.90;

    static Equivalence of(Slope headline, Slope bend, TriedRange range, double margin, String source) {
        double width = range.width();
        Slope difference = headline.per(width);
        return new Equivalence(
                margin,
                source,
                difference,
                difference.interval(TWO_ONE_SIDED),
                bend.per(width * width / 4).interval(TWO_ONE_SIDED));
    }

    /** Says whether no difference as large as the margin is left. */
    public boolean noneThatMatters() {
        return inside(differenceInterval) && (Double.isNaN(bendInterval.lower()) || inside(bendInterval));
    }

    private boolean inside(Interval interval) {
        return interval.lower() > -margin && interval.upper() < margin;
    }

    @Override
    public String toString() {
        if (!difference.known()) {
            return "Whether a difference is too small to matter cannot be said: there is no slope.";
        }
        return String.format(
                Locale.ROOT,
                "Over the middle 80 %% of the tried values the score differs by %s points (90 %% interval %s to %s); the smallest"
                        + " difference that matters is %s points (%s).",
                Wording.signed(difference.estimate()),
                Wording.signed(differenceInterval.lower()),
                Wording.signed(differenceInterval.upper()),
                Wording.points(margin),
                source);
    }
}
