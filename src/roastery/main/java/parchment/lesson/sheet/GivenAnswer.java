package parchment.lesson.sheet;

import java.util.Optional;
import java.util.OptionalLong;
import parchment.quantity.TemperatureUnit;

/**
 * What a student last answered to one question: a row of the file that is handed in.
 *
 * @param lesson the lesson's number
 * @param student the student's number or name
 * @param seed the seed that the lesson was opened with; empty in a class whose seeds are secret
 * @param code what the folder that the teacher handed out says of itself, so that its answers are known to come from it; blank for
 *     work alone
 * @param degrees the scale of temperature that the answer is on
 * @param question the question's name
 * @param tries how many answers were given, blank ones not counted
 * @param right whether the last one was right; empty for a claim, which the envelope grades
 * @param answer the last answer as written, empty for a claim
 * @param claim the claim, if one was asked for
 */
public record GivenAnswer(
        int lesson,
        String student,
        OptionalLong seed,
        String code,
        TemperatureUnit degrees,
        String question,
        int tries,
        Optional<Right> right,
        String answer,
        Optional<StatedClaim> claim) {
    /** Says whether an answer was right. */
    public enum Right {
        YES,
        NO
    }

    /** Returns the same answer as that of a student. */
    public GivenAnswer by(String other) {
        return new GivenAnswer(lesson, other, seed, code, degrees, question, tries, right, answer, claim);
    }

    /** Tells whether another answer is for the same lesson, of the same student with the same number and code. */
    public boolean isOfSameSheet(GivenAnswer other) {
        return lesson == other.lesson
                && student.equals(other.student)
                && seed.equals(other.seed)
                && code.equals(other.code);
    }

    /** Returns whose answer it is and to which lesson, in words. */
    public String speaksFor() {
        return "'" + student + "', lesson " + lesson;
    }
}
