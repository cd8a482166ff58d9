package parchment.lesson;

import java.util.Optional;
import java.util.OptionalLong;
import parchment.quantity.TemperatureUnit;

/**
 * Holds what a student last answered to one question: a row of the file that is handed in.
 *
 * @param lesson the lesson's number
 * @param student the student's number or name
 * @param seed the seed that the lesson was opened with; empty in a class whose seeds are secret
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
}
