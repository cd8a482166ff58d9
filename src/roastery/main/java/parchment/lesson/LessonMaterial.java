package parchment.lesson;

import java.util.Collection;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import parchment.lesson.sheet.Envelope;
import parchment.lesson.sheet.GivenAnswer;
import parchment.lesson.sheet.StatedClaim;

/**
 * What a lesson asks of one logbook, worked out once for its questions and its key.
 *
 * @param roles the names of the batches that the lesson speaks of, by what it calls them
 * @param questions the questions, in the order of the page
 */
record LessonMaterial(Map<String, String> roles, List<LessonQuestion> questions) {
    LessonMaterial {
        roles = Collections.unmodifiableMap(new LinkedHashMap<>(roles));
        questions = List.copyOf(questions);
    }

    /**
     * Returns a question by its name.
     *
     * @param lesson the lesson's number, for the message
     * @throws IllegalArgumentException if there is none
     */
    LessonQuestion question(int lesson, String name) {
        return questions.stream()
                .filter(question -> question.name().equals(name))
                .findFirst()
                .orElseThrow(() -> new IllegalArgumentException(LessonWords.noSuchQuestion(
                        lesson,
                        name,
                        questions.stream().map(LessonQuestion::name).toList())));
    }

    /**
     * Returns a question that asks for a claim.
     *
     * @throws IllegalArgumentException if there is none, or it asks for an answer
     */
    ClaimQuestion claim(int lesson, String name) {
        if (question(lesson, name) instanceof ClaimQuestion asked) {
            return asked;
        }
        throw new IllegalArgumentException("The question '" + name
                + "' asks for an answer, not for a claim: lesson.check(\"" + name + "\", \"?\").");
    }

    /** Returns the truth of each claim beside what was stated. */
    List<Envelope.Opened> opened(Collection<GivenAnswer> answers) {
        return questions.stream()
                .filter(ClaimQuestion.class::isInstance)
                .map(ClaimQuestion.class::cast)
                .map(asked -> {
                    Optional<StatedClaim> stated = answers.stream()
                            .filter(answer -> answer.question().equals(asked.name()))
                            .findFirst()
                            .flatMap(GivenAnswer::claim);
                    return new Envelope.Opened(
                            asked.name(), asked.key(), stated, stated.flatMap(asked::grade), asked.lesson());
                })
                .toList();
    }
}
