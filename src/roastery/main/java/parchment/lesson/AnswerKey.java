package parchment.lesson;

import java.util.ArrayList;
import java.util.List;
import parchment.display.Showable;
import parchment.display.Table;
import parchment.display.answer.Report;
import parchment.display.answer.ShownAs;
import parchment.virtual.written.Overprint;

/**
 * Shows a teacher what is right for one seed of one lesson, the truth of its claims included.
 *
 * <pre>{@code
 * AnswerKey.of(4, 7)
 * }</pre>
 */
public final class AnswerKey implements ShownAs {
    private final Lesson lesson;
    private final List<String> names = new ArrayList<>();
    private final List<String> keys = new ArrayList<>();

    private AnswerKey(Lesson lesson) {
        this.lesson = lesson;
        for (LessonQuestion question : lesson.questions()) {
            names.add(question.name());
            keys.add(question.key());
        }
    }

    /**
     * Works out what is right for the student with a seed.
     *
     * @param number of the lesson
     * @throws IllegalArgumentException if there is no such lesson
     */
    public static AnswerKey of(int number, long seed) {
        return new AnswerKey(Lesson.open(number, seed));
    }

    /**
     * Returns what is right for one question, in words.
     *
     * @throws IllegalArgumentException if the lesson has no such question
     */
    public String key(String question) {
        int place = names.indexOf(question);
        if (place < 0) {
            throw new IllegalArgumentException(LessonWords.noSuchQuestion(lesson.number(), question, names));
        }
        return keys.get(place);
    }

    private Report page() {
        return Report.titled("Key to lesson " + lesson.number() + ": " + lesson.title())
                .add(Table.titled("Right for this seed")
                        .withColumn(parchment.display.Column.text("question", names))
                        .withColumn(parchment.display.Column.text("right", keys)))
                .caution(
                        "For the teacher. Claims are graded by the truth; the other questions by what this logbook shows.");
    }

    @Override
    public Showable shownAs() {
        return Overprint.across(page());
    }

    @Override
    public String toString() {
        return "key to lesson " + lesson.number() + ": " + names.size() + " questions";
    }
}
