package parchment.evidence;

import java.util.Locale;
import parchment.display.Showable;
import parchment.evidence.finding.Slope;
import parchment.stats.RobustnessValue;

/**
 * Tells how strong an unmeasured cause would have to be to erase a slope.
 *
 * <p>The robustness value is the share of what is left unexplained, of the measure and of the score alike, that a hidden cause would
 * have to account for. Only the slope, its error and its degrees of freedom enter.
 *
 * @param toErase the share that would bring the estimate to 0
 * @param toBlur the share that would make the interval of the stated level touch 0; 0 if it does already
 * @param level the level of that interval, as in 0.90
 * @see <a href="https://doi.org/10.1111/rssb.12348">Cinelli and Hazlett 2020, J. R. Stat. Soc. B 82(1), section 4.2</a>
 */
record HiddenCause(double toErase, double toBlur, double level) implements Showable {

    static HiddenCause of(Slope slope, double level) {
        if (!slope.known() || slope.degreesOfFreedom() <= 1) {
            return new HiddenCause(Double.NaN, Double.NaN, level);
        }
        RobustnessValue cause = RobustnessValue.of(slope.asEstimate());
        return new HiddenCause(cause.robustness(), cause.robustnessOfInterval(level), level);
    }

    @Override
    public String toString() {
        if (Double.isNaN(toErase)) {
            return "How strong a hidden cause would have to be cannot be said: there is no slope.";
        }
        return String.format(
                Locale.ROOT,
                "A hidden cause that accounts for %.0f %% of what is left unexplained, both of the measure and of the score, would"
                        + " erase this; %s",
                100 * toErase,
                toBlur > 0
                        ? String.format(
                                Locale.ROOT,
                                "one that accounts for %.0f %% would make the %.0f %% interval touch zero.",
                                100 * toBlur,
                                100 * level)
                        : String.format(Locale.ROOT, "the %.0f %% interval holds zero already.", 100 * level));
    }
}
