package parchment.lesson;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.OptionalLong;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import parchment.lesson.sheet.GivenAnswer;
import parchment.lesson.sheet.GivenAnswer.Right;
import parchment.lesson.sheet.StatedClaim;
import parchment.quantity.TemperatureUnit;

class AnswerSheetTest {
    private static final String HEADINGS =
            "lesson,student,seed,code,degrees,question,tries,right,answer,lower,upper,cannot tell\n";

    private static GivenAnswer answer(String question, int tries, Right right, String written) {
        return new GivenAnswer(
                2,
                "ann",
                OptionalLong.of(7),
                "",
                TemperatureUnit.CELSIUS,
                question,
                tries,
                Optional.of(right),
                written,
                Optional.empty());
    }

    private static GivenAnswer claim(String question, int tries, StatedClaim claim) {
        return new GivenAnswer(
                2,
                "ann",
                OptionalLong.empty(),
                "c0de",
                TemperatureUnit.FAHRENHEIT,
                question,
                tries,
                Optional.empty(),
                "",
                Optional.of(claim));
    }

    private static final List<GivenAnswer> ALL = List.of(
            answer("development", 3, Right.YES, "1:45"),
            answer("colder, or not", 1, Right.NO, "a \"bit\""),
            claim("lateness", 2, StatedClaim.between(-1.5, 4)),
            claim("probe", 1, StatedClaim.cannotTell()));

    @Test
    void isWrittenWithARowForEachAnswer() {
        assertEquals(
                HEADINGS
                        + "2,ann,7,,celsius,development,3,yes,1:45,,,\n"
                        + "2,ann,7,,celsius,\"colder, or not\",1,no,\"a \"\"bit\"\"\",,,\n"
                        + "2,ann,,c0de,fahrenheit,lateness,2,,,-1.5,4.0,no\n"
                        + "2,ann,,c0de,fahrenheit,probe,1,,,,,yes\n",
                new AnswerSheet(ALL).csv());
    }

    @Test
    void readsBackWhatItWrote() throws IOException {
        assertEquals(ALL, AnswerSheet.parse(new AnswerSheet(ALL).csv(), "a.csv").answers());
        assertEquals(List.of(), AnswerSheet.parse(HEADINGS, "a.csv").answers());
    }

    @Test
    void readsWhatASpreadsheetSavedWithSemicolonsAndDecimalCommas() throws IOException {
        String saved = "\uFEFF" + HEADINGS.replace(',', ';') + "2;ann;;c0de;FAHRENHEIT;lateness;2;;;-1,5;4,0;no\n";
        assertEquals(List.of(ALL.get(2)), AnswerSheet.parse(saved, "a.csv").answers());
    }

    @Test
    void columnsMayStandInAnotherOrderAndMayBeMore() throws IOException {
        String turned = "seen,cannot tell,upper,lower,answer,right,tries,question,degrees,code,seed,student,lesson\n"
                + "x,yes,,,,,1,probe,fahrenheit,c0de,,ann,2\n";
        assertEquals(List.of(ALL.get(3)), AnswerSheet.parse(turned, "a.csv").answers());
    }

    @Test
    void saysWhatIsNoSheetOfAnswers() {
        assertEquals(
                "a.csv is not a sheet of answers: its columns should be lesson, student, seed, code, degrees, question, tries, right, answer,"
                        + " lower, upper, cannot tell.",
                assertThrows(IOException.class, () -> AnswerSheet.parse("batch,date\n1,2\n", "a.csv"))
                        .getMessage());
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "2,ann,7,,celsius,development,3,yes,1:45,,,|2,ann,7,,celsius,development,three,yes,1:45,,,",
                "2,ann,7,,celsius,development,3,yes,1:45,,,|2,ann,7,,warm,development,3,yes,1:45,,,",
                "2,ann,7,,celsius,development,3,yes,1:45,,,|2,ann,7,,celsius,development,3,perhaps,1:45,,,",
                "2,ann,7,,celsius,development,3,yes,1:45,,,|2,ann,,c0de,celsius,probe,1,,,5,4,no",
                "2,ann,7,,celsius,development,3,yes,1:45,,,|2,ann,,c0de,celsius,probe,1,,,,,no",
            })
    void saysWhichLineCannotBeRead(String good, String bad) {
        String message = assertThrows(
                        IOException.class, () -> AnswerSheet.parse(HEADINGS + good + "\n" + bad + "\n", "a.csv"))
                .getMessage();
        assertTrue(message.startsWith("a.csv, line 3, cannot be read: "), message);
    }

    @Test
    void saysThatAFileBreaksOff() {
        assertEquals(
                "a.csv breaks off or has a quotation mark too few: ask for it again.",
                assertThrows(
                                IOException.class,
                                () -> AnswerSheet.parse(HEADINGS + "2,ann,7,,celsius,\"development,3\n", "a.csv"))
                        .getMessage());
    }

    @Test
    void isWrittenUnderTheLessonAndTheStudentOverAnEarlierOne(@TempDir Path folder) throws IOException {
        Path into = folder.resolve("collected");
        new AnswerSheet(ALL).writeTo(into, 2, "ann");
        Path file = new AnswerSheet(ALL.subList(0, 1)).writeTo(into, 2, "ann");
        assertEquals("lesson-2-ann.csv", file.getFileName().toString());
        assertEquals(ALL.subList(0, 1), AnswerSheet.read(file).answers());
        try (var files = Files.list(into)) {
            assertEquals(1, files.count());
        }
        Files.writeString(file, "no sheet\n");
        assertTrue(assertThrows(IOException.class, () -> AnswerSheet.read(file))
                .getMessage()
                .startsWith(file + " is not a sheet of answers"));
    }

    @Test
    void changesTheStudentAndNothingElse() {
        AnswerSheet ben = new AnswerSheet(ALL).by("ben");
        assertEquals(new AnswerSheet(ALL).csv().replace(",ann,", ",ben,"), ben.csv());
    }

    @Test
    void countsInASentence() {
        assertEquals("4 answers, 1 of them right, 2 claims", new AnswerSheet(ALL).toString());
        assertEquals("1 answer, 1 of them right, 0 claims", new AnswerSheet(ALL.subList(0, 1)).toString());
        assertEquals("1 answer, 0 of them right, 1 claim", new AnswerSheet(ALL.subList(2, 3)).toString());
        assertEquals("0 answers, 0 of them right, 0 claims", new AnswerSheet(List.of()).toString());
    }

    @Test
    void showsATableInWhichAClaimWaitsForTheEnvelope() {
        List<String> lines = new AnswerSheet(ALL)
                .text()
                .lines()
                .map(line -> line.strip().replaceAll("\\s{2,}", "|"))
                .toList();
        assertTrue(lines.contains("development|1:45|yes|3"), lines::toString);
        assertTrue(lines.contains("colder, or not|a \"bit\"|no|1"), lines::toString);
        assertTrue(lines.contains("lateness|-1.50 to 4.00|in the envelope|2"), lines::toString);
        assertTrue(lines.contains("probe|cannot tell|in the envelope|1"), lines::toString);
    }

    @Test
    void anEmptySheetSaysWhatToDo() {
        assertEquals(
                "Answers so far\n\nNone yet. Fill in a blank, run its cell, and then run this one again.",
                new AnswerSheet(List.of()).text());
    }
}
