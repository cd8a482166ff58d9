package parchment.lesson;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import parchment.display.Showable;
import parchment.display.Table;
import parchment.display.answer.Report;
import parchment.display.answer.ShownAs;
import parchment.file.WholeFile;
import parchment.lesson.sheet.GivenAnswer;
import parchment.lesson.sheet.StatedClaim;
import parchment.sheet.CsvText;
import parchment.virtual.classroom.ClassList;
import parchment.virtual.written.Overprint;

/**
 * The answers of one student to one lesson, as they are handed in: one row of a CSV file per question that was answered.
 *
 * @param answers the rows
 */
public record AnswerSheet(List<GivenAnswer> answers) implements ShownAs {
    static final String[] HEADERS = {
        "lesson",
        "student",
        "seed",
        "code",
        "degrees",
        "question",
        "tries",
        "right",
        "answer",
        "lower",
        "upper",
        "cannot tell"
    };

    /** Copies the list. */
    public AnswerSheet {
        answers = List.copyOf(answers);
    }

    /** Returns the same answers as those of a student. */
    AnswerSheet by(String student) {
        return new AnswerSheet(
                answers.stream().map(answer -> answer.by(student)).toList());
    }

    /** Writes the sheet into a folder, over an earlier one of the same student and lesson, and returns the file. */
    Path writeTo(Path folder, int lesson, String student) throws IOException {
        Path file = Files.createDirectories(folder)
                .resolve("lesson-" + lesson + "-" + ClassList.inFileName(student) + ".csv");
        return WholeFile.at(file).write(csv());
    }

    /** Returns the sheet as the text of a CSV file. */
    public String csv() {
        List<List<String>> rows = new ArrayList<>();
        rows.add(List.of(HEADERS));
        for (GivenAnswer answer : answers) {
            rows.add(List.of(
                    Integer.toString(answer.lesson()),
                    answer.student(),
                    answer.seed().isPresent() ? Long.toString(answer.seed().getAsLong()) : "",
                    answer.code(),
                    answer.degrees().name().toLowerCase(Locale.ROOT),
                    answer.question(),
                    Integer.toString(answer.tries()),
                    answer.right().map(r -> r.name().toLowerCase(Locale.ROOT)).orElse(""),
                    answer.answer(),
                    end(answer, StatedClaim.Kind.INTERVAL, StatedClaim::lower),
                    end(answer, StatedClaim.Kind.INTERVAL, StatedClaim::upper),
                    answer.claim()
                            .map(claim -> claim.kind() == StatedClaim.Kind.CANNOT_TELL ? "yes" : "no")
                            .orElse("")));
        }
        return CsvText.of(rows);
    }

    private static String end(
            GivenAnswer answer, StatedClaim.Kind kind, java.util.function.ToDoubleFunction<StatedClaim> end) {
        return answer.claim()
                .filter(claim -> claim.kind() == kind)
                .map(claim -> Double.toString(end.applyAsDouble(claim)))
                .orElse("");
    }

    /**
     * Reads a file that was handed in, also after a spreadsheet has saved it with semicolons and decimal commas.
     *
     * @throws IOException if the file cannot be read, is larger than 1 MB, or is not a sheet of answers; the message says which line
     */
    public static AnswerSheet read(Path file) throws IOException {
        return parse(SheetText.read(file), file.toString());
    }

    static AnswerSheet parse(String written, String name) throws IOException {
        return new SheetReader(name).read(written);
    }

    private Table table() {
        return Table.titled("Answers so far")
                .withText("question", answers, GivenAnswer::question)
                .withText(
                        "answer",
                        answers,
                        a -> a.claim().map(StatedClaim::toString).orElse(a.answer()))
                .withText(
                        "right",
                        answers,
                        a -> a.right()
                                .map(r -> r.name().toLowerCase(Locale.ROOT))
                                .orElse("in the envelope"))
                .withNumber("tries", "", 0, answers, GivenAnswer::tries);
    }

    @Override
    public Showable shownAs() {
        return answers.isEmpty()
                ? Report.titled("Answers so far")
                        .say("None yet. Fill in a blank, run its cell, and then run this one again.")
                : Overprint.across(table());
    }

    @Override
    public String toString() {
        long right = answers.stream()
                .filter(a -> a.right().filter(r -> r == GivenAnswer.Right.YES).isPresent())
                .count();
        long claims = answers.stream().filter(a -> a.claim().isPresent()).count();
        return LessonWords.count(answers.size(), "answer", "answers") + ", " + right + " of them right, "
                + LessonWords.count(claims, "claim", "claims");
    }
}
