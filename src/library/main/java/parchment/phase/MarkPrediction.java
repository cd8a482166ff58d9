package parchment.phase;

import java.util.Locale;
import parchment.display.Showable;
import parchment.display.answer.InShort;
import parchment.display.answer.Report;
import parchment.display.answer.Sentence;
import parchment.display.answer.ShownAs;
import parchment.logbook.MarkKind;
import parchment.quantity.Elapsed;
import parchment.quantity.TemperatureUnit;
import parchment.quantity.Unit;

/**
 * Foretells when this roaster would have written a mark of a batch, and how sure that is.
 *
 * <p>It is about the writing, not about the beans: a roaster who writes first crack ten seconds late is foretold ten seconds late. All
 * times are seconds since charge. Where the curve is flat there is no honest "± seconds": the interval of passage stands alone.
 *
 * <pre>{@code
 * var habit = LearntHabit.of(logbook);
 * habit.predict(batch, MarkKind.FIRST_CRACK_START)   // 10:12 ± 8 s, 9 in 10 between 9:59 and 10:26
 * }</pre>
 *
 * @param batch the batch's name
 * @param kind which mark
 * @param basis what the prediction rests on
 * @param seconds when; NaN if it cannot be told
 * @param standardError in seconds; NaN where the curve is flat or too short, see the intervals
 * @param half the interval that holds 1 in 2
 * @param most the interval that holds 9 in 10
 * @param celsius the bean temperature at which it is expected, in °C
 * @param temperatureStandardError how far the written temperature may lie off, as a standard deviation in °C
 * @param shape what the curve does there
 * @param reader the scale temperatures are shown on
 */
public record MarkPrediction(
        String batch,
        MarkKind kind,
        Basis basis,
        double seconds,
        double standardError,
        Passing half,
        Passing most,
        double celsius,
        double temperatureStandardError,
        Shape shape,
        TemperatureUnit reader)
        implements ShownAs {

    /** Says what a prediction rests on. */
    public enum Basis {
        /** Written marks of this logbook, from other days. */
        HABIT("this logbook's written marks"),
        /** A stated range of common practice, moved towards the few marks that were written. */
        ASSUMED("assumed: common practice, no source");

        private final String words;

        Basis(String words) {
            this.words = words;
        }

        /** Returns the basis in words. */
        public String words() {
            return words;
        }

        @Override
        public String toString() {
            return words;
        }
    }

    /** Says what the curve does where a mark is expected. */
    public enum Shape {
        /** It rises through the temperature. */
        RISING,
        /** It rises so slowly, or bends so much, that only the interval of passage can be told. */
        FLAT,
        /** The batch ended before the curve got there. */
        NEVER_REACHED,
        /** The batch has no bean-temperature curve that rises. */
        NO_CURVE
    }

    /**
     * Holds from when to when the curve passes an interval of temperatures; ends are those of the rising curve at most.
     *
     * @param from in seconds since charge
     * @param to in seconds since charge
     */
    public record Passing(double from, double to) {
        /** Tells whether a time lies within, both ends included. */
        public boolean contains(double seconds) {
            return seconds >= from && seconds <= to;
        }

        @Override
        public String toString() {
            return Double.isNaN(from) ? "missing" : Elapsed.seconds(from) + " to " + Elapsed.seconds(to);
        }
    }

    /** Returns whether no time can be told. */
    public boolean isMissing() {
        return Double.isNaN(seconds);
    }

    private String text(TemperatureUnit reader) {
        String where =
                Unit.TEMPERATURE.withDigitsFor(temperatureStandardError, reader).format(celsius, reader)
                        + Unit.TEMPERATURE_STEP.formatError(temperatureStandardError, reader);
        return switch (shape) {
            case NO_CURVE ->
                String.format(
                        Locale.ROOT,
                        "%s of batch %s cannot be told: it has no bean temperature that rises for a minute.",
                        kind.words(),
                        batch);
            case NEVER_REACHED ->
                String.format(
                        Locale.ROOT,
                        "%s of batch %s cannot be told: the bean temperature never reached %s, where it is expected (%s).",
                        kind.words(),
                        batch,
                        where,
                        basis.words());
            case FLAT ->
                String.format(
                        Locale.ROOT,
                        "%s of batch %s: the curve is flat there, it passes between %s (9 in 10), at %s, from %s.",
                        kind.words(),
                        batch,
                        most,
                        where,
                        basis.words());
            case RISING ->
                String.format(
                        Locale.ROOT,
                        "%s of batch %s at %s%s, 1 in 2 from %s, 9 in 10 from %s, at %s, from %s.",
                        kind.words(),
                        batch,
                        Elapsed.seconds(seconds),
                        Unit.SECONDS.formatError(standardError, reader),
                        half,
                        most,
                        where,
                        basis.words());
        };
    }

    @Override
    public String toString() {
        return text(reader);
    }

    /** Returns the answer in three sentences: when it would have been written, how sure that is, what to do next. */
    public InShort inShort() {
        return ForetoldInShort.of(this);
    }

    @Override
    public Showable shownAs() {
        return Report.titled(Sentence.of(kind.words()) + " of batch " + batch)
                .add(inShort())
                .fold(Report.titled("How this was worked out").say(Sentence.of(toString())));
    }
}
