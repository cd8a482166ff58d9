package parchment.evidence;

import java.util.Locale;
import java.util.Optional;
import parchment.display.Showable;
import parchment.evidence.finding.Slope;
import parchment.stats.Fieller;
import parchment.stats.Interval;
import parchment.stats.mixed.QuadraticPeak;

/**
 * Decides what may be said of the place where the score is best, if it follows a curve with one bend, by Fieller's set.
 *
 * <p>The set holds every place at which the slope of the fitted curve cannot be told from 0. It is an interval, all places outside an
 * interval, or everywhere; it is always kept, bounded or not. Places are on the scale of the tried range, as the library keeps the
 * feature.
 */
public final class Peak implements Showable {
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

    private static final String NO_CURVE = "a curve could not be fitted";

    private final Answer answer;
    private final Optional<QuadraticPeak> turning;
    private final TriedRange range;
    private final Optional<Told> told;

    /** Holds what the places are of, for the reader. */
    private record Told(String attribute, Measure measure, String whyNoSet) {}

    private Peak(Answer answer, Optional<QuadraticPeak> turning, TriedRange range) {
        this(answer, turning, range, Optional.empty());
    }

    private Peak(Answer answer, Optional<QuadraticPeak> turning, TriedRange range, Optional<Told> told) {
        this.told = told;
        this.answer = answer;
        this.turning = turning;
        this.range = range;
    }

    /** Returns the same with its places told in the reader's unit. */
    Peak told(String attribute, Measure measure) {
        return told(attribute, measure, NO_CURVE);
    }

    /**
     * Returns the same with its places told in the reader's unit.
     *
     * @param whyNoSet why there is no set, where there is none
     */
    Peak told(String attribute, Measure measure, String whyNoSet) {
        return new Peak(answer, turning, range, Optional.of(new Told(attribute, measure, whyNoSet)));
    }

    /** Returns what can be said if no curve could be fitted. */
    static Peak unknown(TriedRange range) {
        return new Peak(Answer.CANNOT_TELL, Optional.empty(), range);
    }

    /** Works out the set from the model with a bend. */
    static Peak of(FittedScores bent, TriedRange range, double level) {
        Slope line = bent.slope();
        Slope square = bent.slope(ScoreDesign.SQUARE);
        return line.known() && square.known()
                ? of(line, square, bent.covariance(ScoreDesign.FEATURE, ScoreDesign.SQUARE), range, level)
                : unknown(range);
    }

    /**
     * Works out the set from the two coefficients.
     *
     * @param line the slope at the center of the range
     * @param square the coefficient of the square
     * @param covariance of the two
     */
    static Peak of(Slope line, Slope square, double covariance, TriedRange range, double level) {
        double[][] both = {
            {line.standardError() * line.standardError(), covariance},
            {covariance, square.standardError() * square.standardError()}
        };
        QuadraticPeak turning = QuadraticPeak.of(
                line.estimate(),
                square.estimate(),
                both,
                Math.min(line.degreesOfFreedom(), square.degreesOfFreedom()),
                level,
                range.center(),
                new Interval(range.lowest(), range.highest(), level));
        return new Peak(answer(turning, line, range), Optional.of(turning), range);
    }

    private static Answer answer(QuadraticPeak turning, Slope line, TriedRange range) {
        if (turning.place() == QuadraticPeak.Place.OUTSIDE) {
            return line.estimate() > 0 ? Answer.RISES_THROUGHOUT : Answer.FALLS_THROUGHOUT;
        }
        if (turning.shape() == QuadraticPeak.Shape.MINIMUM) {
            return Answer.TROUGH;
        }
        return turning.shape() == QuadraticPeak.Shape.MAXIMUM && range.holds(turning.location())
                ? Answer.INSIDE
                : Answer.CANNOT_TELL;
    }

    /** Returns what can be said. */
    public Answer answer() {
        return answer;
    }

    /** Returns the fitted top; NaN unless the answer is {@link Answer#INSIDE}. */
    public double best() {
        return answer == Answer.INSIDE ? turning.map(QuadraticPeak::location).orElse(Double.NaN) : Double.NaN;
    }

    /** Returns Fieller's set; empty if no curve could be fitted. */
    public Optional<Fieller> set() {
        return turning.map(QuadraticPeak::set);
    }

    /** Says whether the set holds a value; true if no curve could be fitted, as then nothing is ruled out. */
    public boolean contains(double value) {
        return set().map(found -> found.contains(value)).orElse(true);
    }

    /** Returns the set and what it means, in the reader's unit. */
    String words(String attribute, Measure measure) {
        return switch (answer) {
            case INSIDE ->
                "In this logbook " + attribute + " was highest at a " + measure.name() + " of " + measure.value(best())
                        + " (" + setWords(measure) + ").";
            case RISES_THROUGHOUT ->
                "No peak inside the tried range: " + attribute + " rises with the " + measure.name()
                        + " all through it, and what lies beyond was not tried (" + setWords(measure) + ").";
            case FALLS_THROUGHOUT ->
                "No peak inside the tried range: " + attribute + " falls with the " + measure.name()
                        + " all through it, and what lies beyond was not tried (" + setWords(measure) + ").";
            case TROUGH ->
                "The fitted curve has a lowest place, not a highest, so no best " + measure.name() + " can be named ("
                        + setWords(measure) + ").";
            case CANNOT_TELL -> "Where " + attribute + " is best cannot be told: " + setWords(measure) + ".";
        };
    }

    /** Returns the answer in a few words for a table. */
    String shortWords(Measure measure) {
        return switch (answer) {
            case INSIDE -> measure.value(best()) + " (" + setWords(measure) + ")";
            case RISES_THROUGHOUT -> "above what was tried";
            case FALLS_THROUGHOUT -> "below what was tried";
            case TROUGH -> "none: lowest inside, not highest";
            case CANNOT_TELL -> "cannot tell";
        };
    }

    /** Returns what to expect of another lot, in the reader's unit. */
    String wordsForNext(String attribute, Measure measure) {
        return switch (answer) {
            case INSIDE ->
                attribute + " may be expected to be highest near a " + measure.name() + " of " + measure.value(best())
                        + " (" + setWords(measure) + ").";
            case RISES_THROUGHOUT ->
                attribute + " may be expected to rise with the " + measure.name() + " over all that was tried.";
            case FALLS_THROUGHOUT ->
                attribute + " may be expected to fall with the " + measure.name() + " over all that was tried.";
            case TROUGH, CANNOT_TELL ->
                "where " + attribute + " will be best cannot be told (" + setWords(measure) + ").";
        };
    }

    private String setWords(Measure measure) {
        if (set().isEmpty()) {
            return told.map(Told::whyNoSet).orElse(NO_CURVE);
        }
        Fieller found = set().get();
        String start = String.format(Locale.ROOT, "%.0f %% Fieller set: ", 100 * found.level());
        return start
                + switch (found.form()) {
                    case EVERYTHING -> "every " + measure.name();
                    case OUTSIDE ->
                        (found.lower() < range.lowest()
                                        ? "places below what was tried"
                                        : "everything up to " + measure.value(found.lower()))
                                + " and "
                                + (found.upper() > range.highest()
                                        ? "places above what was tried"
                                        : "everything from " + measure.value(found.upper()) + " on");
                    case BETWEEN -> between(found, measure);
                };
    }

    private String between(Fieller found, Measure measure) {
        boolean below = found.lower() < range.lowest();
        boolean above = found.upper() > range.highest();
        // Beyond what was tried a number would be that of a parabola and of no roast.
        if (found.upper() < range.lowest() || found.lower() > range.highest()) {
            return below ? "below what was tried" : "above what was tried";
        }
        if (below && above) {
            return "from below what was tried to above it";
        }
        return below
                ? "from below what was tried to " + measure.value(found.upper())
                : above
                        ? "from " + measure.value(found.lower()) + " to above what was tried"
                        : measure.range(found.lower(), found.upper());
    }

    @Override
    public String text() {
        return answer == Answer.INSIDE ? EvidencePage.cautioned(toString()) : toString();
    }

    @Override
    public String toString() {
        if (told.isPresent()) {
            return words(told.get().attribute(), told.get().measure());
        }
        return "best place: " + answer.name().toLowerCase(Locale.ROOT).replace('_', ' ')
                + set().map(found -> ", " + found).orElse("");
    }
}
