package parchment.lesson;

import java.util.List;
import java.util.Locale;

/** Lists the lessons in their order. */
final class Course {
    private static final List<LessonPlan> LESSONS = List.of(
            new ReadingARoast(),
            new PhasesAndMarks(),
            new TheSameClock(),
            new OneCup(),
            new DropAndScore(),
            new TwoThingsTogether(),
            new FortyLooks(),
            new BeanMachineOrWeather(),
            new FiveBatches());

    private Course() {}

    /** Returns how many lessons there are; lesson zero, which only starts the program, has no batches and is not counted. */
    static int size() {
        return LESSONS.size();
    }

    /**
     * Returns a lesson by its number.
     *
     * @throws IllegalArgumentException if there is none
     */
    static LessonPlan lesson(int number) {
        if (number < 1 || number > LESSONS.size()) {
            throw new IllegalArgumentException(String.format(
                    Locale.ROOT,
                    "There is no lesson %d with batches of its own; the lessons are numbered from 1 to %d.",
                    number,
                    LESSONS.size()));
        }
        return LESSONS.get(number - 1);
    }
}
