package parchment.lesson;

import java.io.IOException;
import java.io.Reader;
import java.io.StringReader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalLong;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVParser;
import org.apache.commons.csv.CSVRecord;
import parchment.display.Report;
import parchment.display.Showable;
import parchment.display.ShownAs;
import parchment.display.Table;
import parchment.logbook.CsvText;
import parchment.file.WholeFile;
import parchment.quantity.TemperatureUnit;

/**
 * Holds the answers of one student to one lesson, as they are handed in: one row of a CSV file per question that was answered.
 *
 * @param answers the rows
 */
public record AnswerSheet(List<GivenAnswer> answers) implements ShownAs {
    private static final String[] HEADERS = {
        "lesson", "student", "seed", "degrees", "question", "tries", "right", "answer", "lower", "upper", "cannot tell"
    };

    /** Copies the list. */
    public AnswerSheet {
        answers = List.copyOf(answers);
    }

    /** Returns the same answers as those of a student. */
    AnswerSheet by(String student) {
        return new AnswerSheet(answers.stream()
                .map(a -> new GivenAnswer(
                        a.lesson(),
                        student,
                        a.seed(),
                        a.degrees(),
                        a.question(),
                        a.tries(),
                        a.right(),
                        a.answer(),
                        a.claim()))
                .toList());
    }

    /** Writes the sheet into a folder, over an earlier one of the same student and lesson, and returns the file. */
    Path writeTo(Path folder, int lesson, String student) throws IOException {
        Path file =
                Files.createDirectories(folder).resolve("lesson-" + lesson + "-" + Checks.inFileName(student) + ".csv");
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
     * @throws IOException if the file cannot be read, or is not a sheet of answers; the message says which line
     */
    public static AnswerSheet read(Path file) throws IOException {
        return parse(Files.readString(file, StandardCharsets.UTF_8), file.toString());
    }

    static AnswerSheet parse(String written, String name) throws IOException {
        String text = written.startsWith("\uFEFF") ? written.substring(1) : written;
        String firstLine = text.lines().findFirst().orElse("");
        CSVFormat format = CSVFormat.RFC4180
                .builder()
                .setDelimiter(firstLine.contains(";") ? ';' : ',')
                .setHeader()
                .setSkipHeaderRecord(true)
                .get();
        List<GivenAnswer> answers = new ArrayList<>();
        try (Reader reader = new StringReader(text);
                CSVParser parser = CSVParser.parse(reader, format)) {
            if (!parser.getHeaderNames().containsAll(List.of(HEADERS))) {
                throw new IOException(
                        name + " is not a sheet of answers: its columns should be " + String.join(", ", HEADERS) + ".");
            }
            for (CSVRecord row : parser) {
                try {
                    answers.add(answer(row));
                } catch (IllegalArgumentException e) {
                    throw new IOException(
                            name + ", line " + parser.getCurrentLineNumber() + ", cannot be read: " + e.getMessage(),
                            e);
                }
            }
        } catch (UncheckedIOException | IllegalStateException e) {
            throw new IOException(name + " breaks off or has a quotation mark too few: ask for it again.", e);
        }
        return new AnswerSheet(answers);
    }

    private static double number(String text) {
        return Double.parseDouble(text.replace(',', '.'));
    }

    private static String cell(CSVRecord row, String column) {
        return CsvText.cell(row.get(column));
    }

    private static GivenAnswer answer(CSVRecord row) {
        String cannotTell = cell(row, "cannot tell");
        Optional<StatedClaim> claim = cannotTell.isEmpty()
                ? Optional.empty()
                : Optional.of(
                        cannotTell.equals("yes")
                                ? StatedClaim.cannotTell()
                                : StatedClaim.between(number(cell(row, "lower")), number(cell(row, "upper"))));
        String right = cell(row, "right");
        return new GivenAnswer(
                Integer.parseInt(cell(row, "lesson")),
                cell(row, "student"),
                cell(row, "seed").isEmpty() ? OptionalLong.empty() : OptionalLong.of(Long.parseLong(cell(row, "seed"))),
                TemperatureUnit.valueOf(cell(row, "degrees").toUpperCase(Locale.ROOT)),
                cell(row, "question"),
                Integer.parseInt(cell(row, "tries")),
                right.isEmpty()
                        ? Optional.empty()
                        : Optional.of(GivenAnswer.Right.valueOf(right.toUpperCase(Locale.ROOT))),
                cell(row, "answer"),
                claim);
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
                : table();
    }

    @Override
    public String toString() {
        long right = answers.stream()
                .filter(a -> a.right().equals(Optional.of(GivenAnswer.Right.YES)))
                .count();
        long claims = answers.stream().filter(a -> a.claim().isPresent()).count();
        return answers.size() + (answers.size() == 1 ? " answer, " : " answers, ") + right + " of them right, " + claims
                + (claims == 1 ? " claim" : " claims");
    }
}
