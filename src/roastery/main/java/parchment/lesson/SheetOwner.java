package parchment.lesson;

import java.util.List;
import parchment.lesson.sheet.GivenAnswer;

/** Tells whose a sheet of answers is. */
@FunctionalInterface
interface SheetOwner {
    /**
     * Returns the answer that says whose the sheet is; answers of anybody else on it do not count.
     *
     * @param answers all answers of the sheet, at least one
     * @throws IllegalArgumentException if the sheet is nobody's; the message says why
     */
    GivenAnswer own(List<GivenAnswer> answers);

    /** Returns an answer under the name that its student has in the class; where nothing binds sheets to students, as it is. */
    default GivenAnswer named(GivenAnswer answer) {
        return answer;
    }

    /** Returns the owner of sheets that nothing binds to their student: whoever the first answer names. */
    static SheetOwner named() {
        return answers -> answers.get(0);
    }
}
