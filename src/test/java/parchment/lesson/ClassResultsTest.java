package parchment.lesson;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalLong;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import parchment.lesson.GivenAnswer.Right;
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
                "6 answers of 3 sheets marked, 1 file not; 1 of 2 stated intervals held the truth.",
                results().toString());
    }

    @Test
    void anIntervalHoldsTheTruthAtItsEnds() throws IOException {
        new AnswerSheet(List.of(stated("ben", 1, StatedClaim.between(truth - 1, truth))))
                .writeTo(folder, LESSON, "ben");
        assertTrue(
                results().toString().endsWith("2 of 2 stated intervals held the truth."),
                results().toString());
        new AnswerSheet(List.of(stated("ben", 1, StatedClaim.between(truth - 1, truth - 0.001))))
                .writeTo(folder, LESSON, "ben");
        assertTrue(
                results().toString().endsWith("1 of 2 stated intervals held the truth."),
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
                "1 answer of 1 sheet marked, 0 files not; 1 of 1 stated interval held the truth.",
                results().toString());
    }

    @Test
    void aFileThatIsNoSheetIsNamedWithTheReason() throws IOException {
        List<String> unread = results().unread();
        assertEquals(1, unread.size());
        assertTrue(unread.get(0).startsWith("shopping.csv: "), unread.get(0));
        assertTrue(
                results().text().contains("Not marked: shopping.csv: "),
                results().text());
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
        ClassResults results =
                ClassResults.read(
                        folder,
                        List.of("ann", "eve", "cid", "fay"),
                        SheetOwner.named(),
                        answer -> Lesson.open(LESSON, SEED));
        assertEquals(List.of("eve", "fay"), results.missing());
        assertTrue(results.text().contains("Nothing from: eve, fay."), results.text());
        assertEquals(List.of(), results().missing());
        assertFalse(results().text().contains("Nothing from"), results().text());
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
        assertTrue(lines.contains(row("cid|2|0|0|1|1|0|%.1f", points[2])), lines::toString);
    }

    @Test
    void showsATableByQuestion() throws IOException {
        List<String> lines = lines(results());
        assertTrue(lines.contains("2|development|2|1|0|0"), lines::toString);
        assertTrue(lines.contains("2|development ratio|1|0|0|0"), lines::toString);
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
}
