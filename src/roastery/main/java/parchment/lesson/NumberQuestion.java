package parchment.lesson;

import java.util.Locale;
import java.util.OptionalDouble;
import parchment.lesson.sheet.Reply;
import parchment.quantity.TemperatureUnit;
import parchment.quantity.Unit;

/**
 * Asks for a number that stands on the page or follows from numbers that do.
 *
 * @param expected the number as the library keeps it, worked out from this student's logbook when it is first asked for
 * @param tolerance how far off still counts as right, as the library keeps it; covers rounding on the page
 * @param unit what it is measured in
 * @param reader the scale on which the page shows temperatures
 */
record NumberQuestion(
        String name,
        String asks,
        Once<Double> expected,
        double tolerance,
        Unit unit,
        TemperatureUnit reader,
        String firstHint,
        String secondHint,
        String because)
        implements LessonQuestion {

    @Override
    public Reply reply(String text, int triesBefore) {
        OptionalDouble given =
                unit == Unit.TEMPERATURE ? AnswerText.temperature(text, reader) : AnswerText.number(text);
        if (given.isEmpty()) {
            return new Reply(
                    Reply.Kind.NOT_YET, "A number is asked for here, as in \"12.5\"; what stands there is no number.");
        }
        double expectedShown = unit.shown(expected.value(), reader);
        double allowed = unit.shownStep(tolerance, reader) + 1e-9;
        return StrictMath.abs(given.getAsDouble() - expectedShown) <= allowed
                ? new Reply(Reply.Kind.RIGHT, because)
                : new Reply(Reply.Kind.NOT_YET, LessonQuestion.hint(firstHint, secondHint, triesBefore));
    }

    @Override
    public String key() {
        return String.format(
                Locale.ROOT,
                "%s, give or take %s",
                unit.format(expected.value(), reader),
                unit.withDigits(Math.max(1, unit.digits())).formatStep(tolerance, reader));
    }
}
