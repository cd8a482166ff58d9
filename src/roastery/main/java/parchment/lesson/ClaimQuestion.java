package parchment.lesson;

import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import parchment.lesson.sheet.Grade;
import parchment.lesson.sheet.Reply;
import parchment.lesson.sheet.StatedClaim;
import parchment.quantity.TemperatureUnit;

/**
 * Asks for a claim: an interval, or "cannot tell".
 *
 * @param unit what the claim is stated in, in words, with the reader's degrees
 * @param scale how it follows the reader's scale of temperature
 * @param sayingNothing width of an interval that says nothing, as the library keeps it
 * @param truth the truth as the library keeps it; empty where it stays with the teacher
 * @param telling whether the logbook could tell, worked out when first asked for
 * @param lesson what is to be learnt from it, told with the truth
 */
record ClaimQuestion(
        String name,
        String asks,
        String unit,
        Scale scale,
        Once<Double> sayingNothing,
        Optional<Once<Double>> truth,
        Once<Grade.Telling> telling,
        TemperatureUnit reader,
        String lesson)
        implements LessonQuestion {

    /** Says how a claim's numbers follow the reader's scale of temperature. */
    enum Scale {
        POINTS,
        SECONDS,
        DEGREES,
        POINTS_PER_DEGREE;

        String unit(TemperatureUnit reader) {
            return switch (this) {
                case POINTS -> "points";
                case SECONDS -> "s";
                case DEGREES -> reader.symbol();
                case POINTS_PER_DEGREE -> "points per " + reader.symbol();
            };
        }

        double shown(double kept, TemperatureUnit reader) {
            return switch (this) {
                case POINTS, SECONDS -> kept;
                case DEGREES -> reader.stepFromCelsius(kept);
                case POINTS_PER_DEGREE -> kept / reader.stepFromCelsius(1);
            };
        }
    }

    @Override
    public Reply reply(String text, int triesBefore) {
        return new Reply(
                Reply.Kind.NOTHING_YET,
                "This question is answered with a claim: lesson.claim(\"" + name + "\", \"lower\", \"upper\") or"
                        + " lesson.cannotTell(\"" + name + "\").");
    }

    OptionalDouble shownTruth() {
        return truth.isEmpty()
                ? OptionalDouble.empty()
                : OptionalDouble.of(scale.shown(truth.get().value(), reader));
    }

    /** Grades a claim that was stated in the reader's unit; empty where the truth stays with the teacher. */
    Optional<Grade> grade(StatedClaim claim) {
        OptionalDouble shown = shownTruth();
        return shown.isEmpty()
                ? Optional.empty()
                : Optional.of(Grade.of(
                        claim, shown.getAsDouble(), scale.shown(sayingNothing.value(), reader), telling.value()));
    }

    @Override
    public String key() {
        OptionalDouble shown = shownTruth();
        return (shown.isEmpty() ? "sealed" : String.format(Locale.ROOT, "%+.2f %s", shown.getAsDouble(), unit))
                + (telling.value() == Grade.Telling.CANNOT_TELL ? "; cannot be told" : "; can be told");
    }
}
