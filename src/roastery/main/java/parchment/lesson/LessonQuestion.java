package parchment.lesson;

import parchment.lesson.sheet.Reply;

/** One question of a lesson: what it asks, and what it says to an answer. */
interface LessonQuestion {
    /** Returns the name under which it is answered. */
    String name();

    /** Returns the question in words. */
    String asks();

    /**
     * Says what it has to say to an answer.
     *
     * @param text what stands between the quotation marks
     * @param triesBefore how many wrong answers were given before this one
     */
    Reply reply(String text, int triesBefore);

    /** Returns the expected answer as a teacher reads it. */
    String key();

    /** Returns the hint after so many wrong answers: the first, then the second for good. */
    static String hint(String first, String second, int triesBefore) {
        return triesBefore == 0 ? first : second;
    }
}
