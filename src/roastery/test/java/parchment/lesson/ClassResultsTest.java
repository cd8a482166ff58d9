package parchment.lesson;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.charset.Charset;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalLong;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import parchment.lesson.sheet.GivenAnswer;
import parchment.lesson.sheet.GivenAnswer.Right;
import parchment.lesson.sheet.Grade;
import parchment.lesson.sheet.StatedClaim;
import parchment.quantity.TemperatureUnit;

/** Marks sheets whose answers are known to be right or wrong: lesson 2 as the seed 1 makes it. */
class ClassResultsTest {
    private static final int LESSON = 2;
    private static final long SEED = 1;

    @TempDir
    private Path folder;

    private final Lesson lesson = Lesson.open(LESSON, SEED);
    private final ClaimQuestion claim = lesson.questions().stream()
            .filter(ClaimQuestion.class::isInstance)
            .map(ClaimQuestion.class::cast)
            .findFirst()
            .orElseThrow();
    private final double truth = claim.shownTruth().orElseThrow();
    private final String right = lesson.questions().get(0).key().replaceFirst(" s.*", "");

    private static GivenAnswer given(
            String student, String question, int tries, String answer, Optional<StatedClaim> claim) {
        return new GivenAnswer(
                LESSON,
                student,
                OptionalLong.of(SEED),
                "",
                TemperatureUnit.CELSIUS,
                question,
                tries,
                claim.isPresent() ? Optional.empty() : Optional.of(Right.YES),
                answer,
                claim);
    }

    private static GivenAnswer given(String student, String question, int tries, String answer) {
        return given(student, question, tries, answer, Optional.empty());
    }

    private GivenAnswer stated(String student, int tries, StatedClaim stated) {
        return given(student, claim.name(), tries, "", Optional.of(stated));
    }

    /** Ann is right once and states an interval that holds; Ben is wrong, states one that misses, and Cid says that it cannot be told. */
    @BeforeEach
    void handIn() throws IOException {
        new AnswerSheet(List.of(
                        given("ann", "development", 2, right),
                        given("ann", "development ratio", 4, "99"),
                        stated("ann", 1, StatedClaim.between(truth, truth + 1))))
                .writeTo(folder, LESSON, "ann");
        new AnswerSheet(List.of(
                        given("ben", "development", 5, "1"),
                        stated("ben", 1, StatedClaim.between(truth + 0.5, truth + 1.5))))
                .writeTo(folder, LESSON, "ben");
        new AnswerSheet(List.of(stated("cid", 1, StatedClaim.cannotTell()))).writeTo(folder, LESSON, "cid");
        Files.writeString(folder.resolve("shopping.csv"), "milk,eggs\n1,12\n");
    }

    private ClassResults results() throws IOException {
        return ClassResults.read(folder);
    }

    private static List<String> lines(ClassResults results) {
        return results.text()
                .lines()
                .map(line -> line.strip().replaceAll("\\s{2,}", "|"))
                .toList();
    }

    @Test
    void marksEveryAnswerAnewAndGradesEveryClaim() throws IOException {
        List<String> found = new ArrayList<>();
        for (ClassResults.Marked one : results().marked()) {
            found.add(one.answer().student() + " " + one.answer().question() + " " + one.kind() + " "
                    + one.truth().isPresent() + " " + one.unit().isEmpty() + " "
                    + one.grade().isPresent());
        }
        assertEquals(
                List.of(
                        "ann development RIGHT false true false",
                        "ann development ratio NOT_YET false true false",
                        "ann " + claim.name() + " NOTED true " + claim.unit().isEmpty() + " true",
                        "ben development NOT_YET false true false",
                        "ben " + claim.name() + " NOTED true " + claim.unit().isEmpty() + " true",
                        "cid " + claim.name() + " NOTED true " + claim.unit().isEmpty() + " true"),
                found);
    }

    @Test
    void countsWhatHeldAndWhatCouldNotBeMarked() throws IOException {
        assertEquals(
                "6 answers of 3 sheets marked, 0 files not; 1 of 2 stated intervals held the truth. Invented machine: do not roast.",
                results().toString());
    }

    @Test
    void anIntervalHoldsTheTruthAtItsEnds() throws IOException {
        new AnswerSheet(List.of(stated("ben", 1, StatedClaim.between(truth - 1, truth))))
                .writeTo(folder, LESSON, "ben");
        assertTrue(
                results().toString().contains("2 of 2 stated intervals held the truth."),
                results().toString());
        new AnswerSheet(List.of(stated("ben", 1, StatedClaim.between(truth - 1, truth - 0.001))))
                .writeTo(folder, LESSON, "ben");
        assertTrue(
                results().toString().contains("1 of 2 stated intervals held the truth."),
                results().toString());
    }

    @Test
    void countsOneOfEachAsOne() throws IOException {
        for (String other : List.of("ben", "cid")) {
            Files.delete(folder.resolve("lesson-2-" + other + ".csv"));
        }
        Files.delete(folder.resolve("shopping.csv"));
        new AnswerSheet(List.of(stated("ann", 1, StatedClaim.between(truth, truth)))).writeTo(folder, LESSON, "ann");
        assertEquals(
                "1 answer of 1 sheet marked, 0 files not; 1 of 1 stated interval held the truth. Invented machine: do not roast.",
                results().toString());
    }

    @Test
    void aFileThatIsNoSheetIsCountedAndPassedOverWithoutAWordOfItsOwn() throws IOException {
        ClassResults results = results();
        assertEquals(List.of(), results.unread());
        assertEquals(1, results.passedOver());
        assertTrue(results.text().contains("1 other file is no sheet of answers and was passed over."), results.text());
        assertFalse(results.text().contains("shopping"), results.text());
    }

    @Test
    void aFileThatIsNoSheetButNamedAsOneIsNamedWithTheReason() throws IOException {
        Files.move(folder.resolve("shopping.csv"), folder.resolve("lesson-2-dot.csv"));
        ClassResults results = results();
        assertEquals(1, results.unread().size());
        assertTrue(
                results.unread().get(0).startsWith("lesson-2-dot.csv is not a sheet of answers: "),
                results.unread().get(0));
        assertTrue(results.text().contains("Not marked: lesson-2-dot.csv is not a sheet of answers: "), results.text());
        assertEquals(0, results.passedOver());
    }

    @Test
    void aSheetWithoutAByteIsToldToBeEmpty() throws IOException {
        Files.createFile(folder.resolve("lesson-2-dot.csv"));
        assertEquals(
                List.of("lesson-2-dot.csv is empty: ask for it again."),
                results().unread());
    }

    /** What spreadsheets save as "Unicode text": UTF-16 with a mark before it, tabs, the end of name .txt. */
    @ParameterizedTest
    @CsvSource({"UTF-16LE,zoë.txt", "UTF-16BE,zoë.txt", "UTF-16LE,zoë.csv", "UTF-16BE,lesson-2-zoë.csv"})
    void aSheetThatWasSavedAsUnicodeTextIsMarked(String encoding, String name) throws IOException {
        String text = new AnswerSheet(List.of(given("Zoë", "development", 2, right)))
                .csv()
                .replace(',', '\t');
        Files.write(folder.resolve(name), ("\uFEFF" + text).getBytes(Charset.forName(encoding)));
        ClassResults results = results();
        assertEquals(List.of(), results.unread());
        assertEquals(
                List.of("Zoë RIGHT"),
                results.marked().stream()
                        .filter(one -> one.answer().student().startsWith("Z"))
                        .map(one -> one.answer().student() + " " + one.kind())
                        .toList());
    }

    @Test
    void aSheetOfAClassWithSecretSeedsIsNotMarkedAndNothingOfItCounts() throws IOException {
        new AnswerSheet(List.of(new GivenAnswer(
                        LESSON,
                        "dot",
                        OptionalLong.empty(),
                        "",
                        TemperatureUnit.CELSIUS,
                        "development",
                        1,
                        Optional.of(Right.YES),
                        right,
                        Optional.empty())))
                .writeTo(folder, LESSON, "dot");
        ClassResults results = results();
        assertEquals(6, results.marked().size());
        assertTrue(
                results.unread()
                        .contains("lesson-2-dot.csv: The answers of dot come from a class with secret seeds:"
                                + " Classroom.open(...).collect(...)."),
                results.unread()::toString);
    }

    @Test
    void aSheetWithAQuestionThatIsNotInTheLessonIsNotMarkedInPart() throws IOException {
        new AnswerSheet(List.of(given("ben", "development", 1, right), given("ben", "no such question", 1, "1")))
                .writeTo(folder, LESSON, "ben");
        ClassResults results = results();
        assertTrue(results.marked().stream()
                .noneMatch(one -> one.answer().student().equals("ben")));
        assertTrue(results.envelopes().stream().noneMatch(one -> one.student().equals("ben")));
        assertTrue(results.unread().stream().anyMatch(line -> line.startsWith("lesson-2-ben.csv: ")));
    }

    @Test
    void givesBackAnEnvelopeForEachSheet() throws IOException {
        List<ClassResults.Returned> envelopes = results().envelopes();
        assertEquals(
                List.of("ann", "ben", "cid"),
                envelopes.stream().map(ClassResults.Returned::student).toList());
        assertEquals(
                List.of(2, 2, 2),
                envelopes.stream().map(ClassResults.Returned::lesson).toList());
        assertEquals(
                Optional.of(StatedClaim.cannotTell().kind()),
                envelopes.get(2).envelope().claims().get(0).stated().map(StatedClaim::kind));
        assertEquals(
                truth,
                envelopes
                        .get(0)
                        .envelope()
                        .claims()
                        .get(0)
                        .stated()
                        .orElseThrow()
                        .lower());
    }

    @Test
    void namesThoseOfTheClassWhoHandedInNothing() throws IOException {
        ClassResults results = ClassResults.read(
                folder, List.of("ann", "eve", "cid", "fay"), SheetOwner.named(), answer -> Lesson.open(LESSON, SEED));
        assertEquals(List.of("eve", "fay"), results.missing());
        assertTrue(results.text().contains("Nothing handed in: eve, fay."), results.text());
        assertEquals(List.of(), results().missing());
        assertFalse(results().text().contains("Nothing handed in"), results().text());
    }

    @Test
    void namesApartThoseOfWhomSomethingIsThereThatCouldNotBeMarked() throws IOException {
        Files.writeString(folder.resolve("lesson-2-eve.csv"), "milk,eggs\n1,12\n");
        new AnswerSheet(List.of(given("gus", "no such question", 1, "1"))).writeTo(folder, LESSON, "x");
        Files.writeString(folder.resolve("hal.zip"), "");
        new AnswerSheet(List.of(given("ivy", "development", 1, right))).writeTo(folder, LESSON, "ivy");
        SheetOwner notIvy = answers -> {
            if (answers.get(0).student().equals("ivy")) {
                throw new IllegalArgumentException("it is nobody's.");
            }
            return answers.get(0);
        };
        Files.move(folder.resolve("lesson-2-ivy.csv"), folder.resolve("answers.csv"));
        ClassResults results = ClassResults.read(
                folder,
                List.of("ann", "ben", "cid", "eve", "fay", "gus", "hal", "ivy", "jon"),
                notIvy,
                answer -> Lesson.open(LESSON, SEED));
        assertTrue(results.text().lines().anyMatch("Nothing handed in: fay, jon."::equals), results.text());
        assertTrue(
                lines(results)
                        .contains("No sheet marked of eve, gus, hal, ivy, though something is there: lesson-2-eve.csv,"
                                + " lesson-2-x.csv, hal.zip, answers.csv."),
                results.text());
    }

    @Test
    void allTablesHaveTheOrderOfTheListOfNames() throws IOException {
        ClassResults results = ClassResults.read(
                folder, List.of("cid", "ann", "ben"), SheetOwner.named(), answer -> Lesson.open(LESSON, SEED));
        assertEquals(
                List.of("cid", "ann", "ben"),
                results.marked().stream()
                        .map(one -> one.answer().student())
                        .distinct()
                        .toList());
        assertEquals(
                List.of("cid", "ann", "ben"),
                results.envelopes().stream().map(ClassResults.Returned::student).toList());
        assertEquals(
                List.of("cid|2", "ann|2", "ben|2", "cid|lateness", "ann|lateness", "ben|lateness"),
                lines(results).stream()
                        .filter(line -> line.matches("(ann|ben|cid)\\|.*"))
                        .map(line -> line.replaceAll("^(\\w+\\|\\w+).*", "$1"))
                        .toList());
    }

    @Test
    void showsATableByStudent() throws IOException {
        ClassResults results = results();
        double[] points = results.marked().stream()
                .flatMap(one -> one.grade().stream())
                .mapToDouble(Grade::points)
                .toArray();
        List<String> lines = lines(results);
        assertTrue(lines.contains(row("ann|2|1|2|7|1|1|%.1f", points[0])), lines::toString);
        assertTrue(lines.contains(row("ben|2|0|1|6|1|0|%.1f", points[1])), lines::toString);
        assertTrue(lines.contains("– means: no interval was stated."), lines::toString);
        assertTrue(lines.contains(row("cid|2|0|0|1|1|–|%.1f", points[2])), lines::toString);
    }

    @Test
    void showsATableByQuestion() throws IOException {
        List<String> lines = lines(results());
        assertTrue(lines.contains("2|development|2|1|0|–"), lines::toString);
        assertTrue(lines.contains("2|development ratio|1|0|0|–"), lines::toString);
        assertTrue(lines.contains("2|" + claim.name() + "|3|0|3|1"), lines::toString);
    }

    @Test
    void showsEveryClaimBesideItsTruth() throws IOException {
        ClassResults results = results();
        List<String> lines = lines(results);
        Grade cautious = Grade.of(StatedClaim.cannotTell(), truth, 1, Grade.Telling.CANNOT_TELL);
        String in = claim.unit().isEmpty() ? "" : "|" + claim.unit();
        assertTrue(
                lines.stream()
                        .anyMatch(line -> line.startsWith("ann|" + claim.name() + "|"
                                + StatedClaim.between(truth, truth + 1) + row("|%.2f", truth) + in + "|")),
                lines::toString);
        assertTrue(
                lines.contains("cid|" + claim.name() + "|cannot tell" + row("|%.2f", truth) + in
                        + row("|%.1f", cautious.points())),
                lines::toString);
    }

    private static String row(String form, double value) {
        return String.format(java.util.Locale.ROOT, form, value);
    }

    @Test
    void oneClaimForEachQuestionCountsHoweverOftenItIsRepeated() throws IOException {
        List<GivenAnswer> rows = new ArrayList<>();
        rows.add(stated("ben", 1, StatedClaim.between(truth + 0.5, truth + 1.5)));
        for (int i = 0; i < 10; i++) {
            rows.add(stated("ben", 1, StatedClaim.cannotTell()));
        }
        new AnswerSheet(rows).writeTo(folder, LESSON, "ben");
        ClassResults results = results();
        List<ClassResults.Marked> ofBen = results.marked().stream()
                .filter(one -> one.answer().student().equals("ben"))
                .toList();
        assertEquals(1, ofBen.size());
        assertEquals(
                StatedClaim.Kind.INTERVAL,
                ofBen.get(0).answer().claim().orElseThrow().kind(),
                "the first counts");
        assertEquals(10, results.notCounted().size());
        assertEquals(
                "lesson-2-ben.csv, answer 2 ('" + claim.name()
                        + "'): this question was answered before on the sheet; the first answer counts.",
                results.notCounted().get(0));
        assertTrue(results.text().contains("Not counted: lesson-2-ben.csv, answer 11"), results.text());
    }

    @Test
    void aRowForSomebodyElseOnASheetCountsForNobody() throws IOException {
        new AnswerSheet(List.of(
                        stated("ben", 1, StatedClaim.between(truth + 0.5, truth + 1.5)),
                        stated("ann", 9, StatedClaim.between(truth + 50, truth + 51))))
                .writeTo(folder, LESSON, "ben");
        ClassResults results = results();
        assertEquals(
                List.of("ann", "ben", "cid"),
                results.envelopes().stream().map(ClassResults.Returned::student).toList());
        assertEquals(
                truth,
                results.envelopes()
                        .get(0)
                        .envelope()
                        .claims()
                        .get(0)
                        .stated()
                        .orElseThrow()
                        .lower());
        assertEquals(
                List.of("lesson-2-ben.csv, answer 2 ('" + claim.name()
                        + "'): it speaks for 'ann', lesson 2, and the sheet is that of 'ben', lesson 2."
                        + " A sheet speaks for its own student only."),
                results.notCounted());
    }

    @Test
    void everyShowingSaysThatTheMachineIsInvented() throws IOException {
        ClassResults results = results();
        List<parchment.display.Showable> shown =
                List.of(results, results.envelopes().get(0).envelope(), lesson, AnswerKey.of(LESSON, SEED));
        for (parchment.display.Showable each : shown) {
            assertTrue(each.text().contains("Invented machine: do not roast."), each::text);
            assertTrue(each.html().orElseThrow().contains("Invented machine: do not roast."), each::text);
        }
        assertTrue(results.html().orElseThrow().contains("url(#invented-machine)"), "printed across");
        assertTrue(results.envelopes().get(0).envelope().html().orElseThrow().contains("url(#invented-machine)"));
        assertTrue(
                results.envelopes().get(0).envelope().toString().endsWith(" points. Invented machine: do not roast."));
    }
}
