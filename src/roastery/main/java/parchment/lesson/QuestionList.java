package parchment.lesson;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.function.Supplier;
import parchment.evidence.finding.Verdict;
import parchment.lesson.sheet.Grade;
import parchment.quantity.TemperatureUnit;
import parchment.quantity.Unit;

/** Gathers the questions of a lesson. What is expected is worked out only when it is asked for. */
final class QuestionList {
    /** The verdicts, as choices of an answer. */
    static final List<String> VERDICTS =
            Arrays.stream(Verdict.values()).map(Verdict::words).toList();

    private final TemperatureUnit reader;
    private final List<LessonQuestion> questions = new ArrayList<>();

    QuestionList(TemperatureUnit reader) {
        this.reader = reader;
    }

    /** What is said to an answer: two hints, then why it is right. */
    record Words(String firstHint, String secondHint, String because) {}

    QuestionList number(String name, String asks, Supplier<Double> expected, double tolerance, Unit unit, Words words) {
        questions.add(new NumberQuestion(
                name,
                asks,
                Once.of(expected),
                tolerance,
                unit,
                reader,
                words.firstHint(),
                words.secondHint(),
                words.because()));
        return this;
    }

    QuestionList word(String name, String asks, Supplier<List<String>> right, List<String> choices, Words words) {
        questions.add(new WordQuestion(
                name, asks, Once.of(right), choices, words.firstHint(), words.secondHint(), words.because()));
        return this;
    }

    QuestionList yesOrNo(String name, String asks, Supplier<Boolean> yes, Words words) {
        return word(name, asks, () -> List.of(yes.get() ? "yes" : "no"), List.of("yes", "no"), words);
    }

    /** Adds a claim whose truth is worked out from what is behind the logbook, if that is here. */
    QuestionList claim(
            String name,
            String asks,
            ClaimQuestion.Scale scale,
            Supplier<Double> sayingNothing,
            Optional<Supplier<Double>> truth,
            Supplier<Grade.Telling> telling,
            String lesson) {
        questions.add(new ClaimQuestion(
                name,
                asks,
                scale.unit(reader),
                scale,
                Once.of(sayingNothing),
                truth.map(Once::of),
                Once.of(telling),
                reader,
                lesson));
        return this;
    }

    List<LessonQuestion> all() {
        return List.copyOf(questions);
    }
}
