package parchment.lesson;

import java.util.List;
import java.util.Optional;
import parchment.display.answer.Spelling;
import parchment.lesson.sheet.Reply;

/**
 * Asks for a word: a batch's name, a person, a verdict, yes or no.
 *
 * @param right the words that are right for this student, worked out when first asked for; the first is the key
 * @param choices every word that can be meant; empty if any word can
 */
record WordQuestion(
        String name,
        String asks,
        Once<List<String>> right,
        List<String> choices,
        String firstHint,
        String secondHint,
        String because)
        implements LessonQuestion {

    @Override
    public Reply reply(String text, int triesBefore) {
        String given = AnswerText.word(text);
        if (right.value().stream().map(AnswerText::word).anyMatch(given::equals)) {
            return new Reply(Reply.Kind.RIGHT, because);
        }
        boolean known =
                choices.isEmpty() || choices.stream().map(AnswerText::word).anyMatch(given::equals);
        if (!known) {
            Optional<String> near = Spelling.closest(given, choices);
            return new Reply(
                    Reply.Kind.NOT_YET,
                    "'" + text.strip() + "' is none of the words that fit here."
                            + near.map(word -> " Did you mean '" + word + "'?").orElse("")
                            + (choices.size() <= 6 ? " One of: " + String.join(", ", choices) + "." : ""));
        }
        return new Reply(Reply.Kind.NOT_YET, LessonQuestion.hint(firstHint, secondHint, triesBefore));
    }

    @Override
    public String key() {
        return String.join(" or ", right.value());
    }
}
