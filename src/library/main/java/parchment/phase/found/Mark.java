package parchment.phase.found;

import java.util.Locale;
import java.util.Optional;
import parchment.display.Showable;
import parchment.logbook.MarkKind;
import parchment.quantity.Elapsed;
import parchment.quantity.Temperature;
import parchment.quantity.TemperatureUnit;
import parchment.quantity.Unit;

/**
 * A named instant of a batch, with where it comes from and its seconds of error.
 *
 * @param kind what happened
 * @param at when, since charge
 * @param standardError how uncertain the time is, in seconds, as a standard error
 * @param source where the mark comes from
 * @param probe what the smoothed bean probe read then; empty without a curve there
 * @param how a few words on how it was found, empty if the source says it all
 */
public record Mark(
        MarkKind kind, Elapsed at, double standardError, Source source, Optional<ProbeReading> probe, String how)
        implements Showable {

    /** @throws IllegalArgumentException if the standard error is missing or negative */
    public Mark {
        if (!(standardError >= 0)) {
            throw new IllegalArgumentException(String.format(
                    Locale.ROOT,
                    "The mark '%s' needs a standard error of 0 s or more; it was given %s.",
                    kind.words(),
                    standardError));
        }
    }

    /** Begins what {@link #how} says of a temperature that was looked for and is missing. */
    public static final String NO_TEMPERATURE = "no temperature: ";

    /** Returns why the mark has no temperature although the bean temperature was logged, in a few words; empty if it has one. */
    public Optional<String> whyNoTemperature() {
        int from = how.indexOf(NO_TEMPERATURE);
        return from < 0 ? Optional.empty() : Optional.of(how.substring(from + NO_TEMPERATURE.length()));
    }

    /** Returns when it happened, in seconds since charge. */
    public double seconds() {
        return at.seconds();
    }

    /** Returns what the smoothed bean probe read then. */
    public Optional<Temperature> beanTemperature() {
        return probe.map(p -> Temperature.celsius(p.celsius()));
    }

    /** Returns the bean temperature's standard error in °C, the uncertainty of its instant included; NaN without a curve. */
    public double beanTemperatureStandardError() {
        return probe.map(p -> Math.hypot(p.standardError(), p.rateOfRise() / 60 * p.follows() * standardError))
                .orElse(Double.NaN);
    }

    /** Prints the mark with its uncertainty, source and temperature on the given scale. */
    public String text(TemperatureUnit reader) {
        StringBuilder text = new StringBuilder(
                kind.words() + " at " + at + Unit.SECONDS.formatError(standardError, reader) + ", " + source.words());
        if (!how.isEmpty()) {
            text.append(" (").append(how).append(')');
        }
        beanTemperature().ifPresent(t -> text.append(", bean temperature ").append(t.format(reader)));
        return text.toString();
    }

    @Override
    public String toString() {
        return text(TemperatureUnit.CELSIUS);
    }
}
