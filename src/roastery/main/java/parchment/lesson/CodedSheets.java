package parchment.lesson;

import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.function.BiFunction;
import parchment.display.answer.Spelling;
import parchment.lesson.sheet.GivenAnswer;
import parchment.virtual.classroom.ClassList;

/**
 * Tells whose a sheet is by the code that was handed out, which nobody else has.
 *
 * @param students the class
 * @param code the code of a student's folder of a lesson
 */
record CodedSheets(ClassList students, BiFunction<Integer, String, String> code) implements SheetOwner {
    /** "rosa" with Rosa's code is Rosa: the code says more than a capital letter does. */
    @Override
    public GivenAnswer named(GivenAnswer answer) {
        return students.find(answer.student())
                .filter(known -> answer.code().equals(code.apply(answer.lesson(), known)))
                .map(answer::by)
                .orElse(answer);
    }

    @Override
    public GivenAnswer own(List<GivenAnswer> answers) {
        return answers.stream()
                .filter(answer -> whyNot(answer).isEmpty())
                .findFirst()
                .orElseThrow(() ->
                        new IllegalArgumentException(whyNot(answers.get(0)).orElse("it is nobody's.")));
    }

    private Optional<String> whyNot(GivenAnswer answer) {
        Optional<String> student = students.find(answer.student());
        if (student.isEmpty()) {
            return Optional.of(noSuchStudent(answer.student(), students.names()));
        }
        if (!answer.code().equals(code.apply(answer.lesson(), student.get()))) {
            return Optional.of(
                    "it says that it is that of " + answer.speaksFor() + ", but "
                            + (answer.code().isBlank() ? "bears no code" : "its code is not that")
                            + " of the folder that was handed to that student. Ask for the sheet as lesson.handIn(...) writes it in that folder.");
        }
        return Optional.empty();
    }

    /** Returns the message that a class has no such student, with the nearest name, and not with all of them. */
    static String noSuchStudent(String student, List<String> students) {
        return String.format(
                Locale.ROOT,
                "The class has no student '%s'.%s",
                student,
                Spelling.closest(student, students)
                        .map(near -> " Did you mean '" + near + "'?")
                        .orElse(" Nor has it a name like that; its names are those it was prepared with."));
    }
}
