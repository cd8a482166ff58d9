package parchment.lesson;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.util.List;
import java.util.Map;
import java.util.NoSuchElementException;
import java.util.Optional;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import parchment.quantity.TemperatureUnit;
import parchment.virtual.SealedTruth;
import parchment.virtual.Seed;
import parchment.virtual.VirtualLogbook;

class ClassroomTest {
    private static final Path NOTEBOOKS = Path.of("..", "notebooks", "lessons");

    @TempDir
    private Path folder;

    @Test
    void handsOutLessonsWithoutTheirTruthAndMarksWhatComesBack() throws IOException {
        Path teacher = folder.resolve("teacher");
        Path out = folder.resolve("students");
        Map<String, String> seals =
                Classroom.prepare(List.of("ann", "ben"), teacher).handOut(2, NOTEBOOKS, out);
        assertNotEquals(seals.get("ann"), seals.get("ben"));

        Lesson ann = Lesson.open(2, out.resolve("ann").resolve("lesson-2").toString());
        assertTrue(assertThrows(IllegalStateException.class, ann::openEnvelope)
                .getMessage()
                .contains("with your teacher"));
        Lesson known = Lesson.of(LessonSource.ofStudent(2, seedOf(teacher, "ann"), "ann"));
        String development = known.questions().get(0).key().replaceFirst(" s.*", "");
        assertEquals(Reply.Kind.RIGHT, ann.check("development", development).kind());
        assertEquals(Reply.Kind.NOT_YET, ann.check("development ratio", "99").kind());
        ann.cannotTell("lateness");
        ann.handIn("somebody else", folder.resolve("collected"));
        Path sheet = folder.resolve("collected").resolve("lesson-2-ann.csv");
        Files.writeString(sheet, Files.readString(sheet).replace(",no,99,", ",yes,99,"), StandardCharsets.UTF_8);

        ClassResults results = Classroom.open(teacher).collect(folder.resolve("collected"));
        assertEquals(3, results.marked().size());
        assertEquals(Reply.Kind.RIGHT, results.marked().get(0).kind());
        assertEquals(Reply.Kind.NOT_YET, results.marked().get(1).kind(), "the file's own mark counts for nothing");
        assertEquals(10, results.marked().get(2).grade().orElseThrow().points());
        assertTrue(results.text().contains("ann"));
    }

    @Test
    void aSecretThatMakesNoFitLessonStillGivesEveryStudentOneAndAlwaysTheSame() throws IOException {
        Seed unlucky = Seed.parse("secret:3d965ece33cac5ad9b8c2d9d25083103f27d52faf6ec49a74d293780f183a17c");
        LessonPlan plan = Course.lesson(3);
        String digest = Digest.of(unlucky.text() + " lesson 3");
        VirtualLogbook first = plan.roastery(Seed.parse("secret:" + digest), 0).run();
        assertThrows(NoSuchElementException.class, () -> plan.material(first.opened(), Optional.of(first)));

        Path teacher = Files.createDirectories(folder.resolve("teacher"));
        Files.writeString(teacher.resolve("seeds.properties"), "ann=" + unlucky.text() + "\n");
        Map<String, String> seals = Classroom.open(teacher).handOut(3, NOTEBOOKS, folder.resolve("students"));
        Lesson ann = Lesson.open(
                3, folder.resolve("students").resolve("ann").resolve("lesson-3").toString());
        LessonSource again = LessonSource.ofStudent(3, unlucky, "ann");
        assertEquals(
                ann.logbook().batches().get(0).name(),
                again.logbook().batches().get(0).name());
        assertEquals(
                seals.get("ann"), again.behind().orElseThrow().roasted().truth().seal());
    }

    /** Seeds 54 and 134 are the two among the first 150 whose first draw makes no lesson 3. */
    @Test
    void aNumberOfOnesOwnThatMakesNoFitLessonTakesTheNextDraw() {
        assertTrue(Lesson.open(3, 54).questions().size() > 3);
        assertEquals(AnswerKey.of(3, 134).text(), AnswerKey.of(3, 134).text());
    }

    @Test
    void nothingHandedOutHoldsTheSeedOrTheTruth() throws IOException {
        Path teacher = folder.resolve("teacher");
        Path out = folder.resolve("students");
        Map<String, String> seals = Classroom.prepare(List.of("ann"), teacher).handOut(2, NOTEBOOKS, out);
        String secret = seedOf(teacher, "ann").text().replace("secret:", "");
        try (Stream<Path> files = Files.walk(out)) {
            for (Path file : files.filter(Files::isRegularFile).toList()) {
                String text = Files.readString(file, StandardCharsets.UTF_8);
                assertFalse(text.contains(secret), file::toString);
                assertFalse(text.contains("\"sealed\""), file::toString);
            }
        }
        Path truth = teacher.resolve("ann-lesson-2-truth.json");
        assertEquals(seals.get("ann"), SealedTruth.open(truth).seal());
        String notebook = Files.readString(out.resolve("ann").resolve("2-phases-and-marks.ipynb"));
        assertTrue(notebook.contains("Lesson.open(2, \\\"lesson-2\\\");"), "opens the folder beside it");
    }

    @Test
    void roastsWhatAStudentHasPlanned() throws IOException {
        Path teacher = folder.resolve("teacher");
        Classroom classroom = Classroom.prepare(List.of("ann"), teacher);
        PlanSheet plan = Lesson.open(9, 1).plan("Cinder Ridge", "204", "198", "210");
        Path file = Files.writeString(folder.resolve("plan-ann.csv"), plan.csv());
        VirtualLogbook roasted = classroom.roastPlan("ann", file, folder.resolve("roasted"));
        assertEquals(
                roasted.truth().seal(),
                SealedTruth.open(teacher.resolve("ann-plan-truth.json")).seal());
        PlanTasted tasted = Lesson.open(9, 1).tasted(folder.resolve("roasted").toString());
        assertEquals(3, tasted.logbook().batches().size());
        assertTrue(tasted.slope().isPresent());
        assertTrue(tasted.text().startsWith("Invented machine: do not roast."), tasted::text);
        assertTrue(tasted.html().orElseThrow().contains("url(#invented-machine)"), "printed across");
    }

    @Test
    void aPlanIsWrittenAndShownOnTheReadersScale() {
        PlanSheet plan =
                Lesson.open(9, 1).in(TemperatureUnit.FAHRENHEIT).plan("Cinder Ridge", "399.2", "388 °F", "210 °C");
        assertTrue(plan.text().contains("°F") && !plan.text().contains("°C"), plan::text);
        assertTrue(plan.html().orElseThrow().contains("°F"));
        assertEquals(204, plan.plan().lines().get(0).dropReading(), 0.01);
        assertEquals(210, plan.plan().lines().get(2).dropReading(), 0.01);
        assertEquals(
                "203",
                String.format(
                        "%.0f",
                        AnswerText.temperature("397.4 °F", TemperatureUnit.CELSIUS)
                                .orElseThrow()));
    }

    @Test
    void marksStudentsWithNumbersOfTheirOwn() throws IOException {
        Lesson lesson = Lesson.open(1, 7).in(TemperatureUnit.FAHRENHEIT);
        NumberQuestion drop = (NumberQuestion) lesson.questions().get(3);
        lesson.check("drop temperature", drop.unit().shown(drop.expected().value(), TemperatureUnit.FAHRENHEIT));
        lesson.claim("true temperature", "-5", "5");
        lesson.handIn("Zoë, third row", folder);
        ClassResults results = ClassResults.read(folder);
        assertEquals(Reply.Kind.RIGHT, results.marked().get(0).kind());
        assertEquals("Zoë, third row", results.marked().get(0).answer().student());
        assertTrue(results.marked().get(1).grade().isPresent());
        assertEquals(List.of(), results.unread());
    }

    @Test
    void namesTheFilesThatCannotBeRead() throws IOException {
        Files.writeString(folder.resolve("lesson-1-x.csv"), "a,b\n1,2\n");
        ClassResults results = ClassResults.read(folder);
        assertTrue(results.unread().get(0).contains("is not a sheet of answers"), results::text);
    }

    @Test
    void findsSheetsUnderAnyNameAndCountsASheetHandedInTwiceOnce() throws IOException {
        Lesson lesson = Lesson.open(1, 7);
        lesson.check("drop temperature", "1");
        lesson.handIn("Zoë", folder.resolve("first"));
        lesson.check("drop temperature", "2");
        lesson.handIn("Zoë", folder.resolve("second"));
        try (Stream<Path> files = Files.list(folder.resolve("second"))) {
            Files.move(files.findFirst().orElseThrow(), folder.resolve("second").resolve("Zoë's answers (1).csv"));
        }
        ClassResults results = ClassResults.read(folder);
        assertEquals(1, results.marked().size());
        assertEquals("2", results.marked().get(0).answer().answer(), "the sheet with more tries is the later one");
        assertEquals(1, results.unread().size());
        assertTrue(results.unread().get(0).contains("the same student and lesson as"), results::text);
    }

    @Test
    void readsASheetThatASpreadsheetHasSavedWithSemicolonsAndDecimalCommas() throws IOException {
        Lesson lesson = Lesson.open(1, 7);
        lesson.claim("true temperature", "-5.5", "4.5");
        lesson.handIn("Zoë", folder);
        Path sheet = folder.resolve("saved.csv");
        try (Stream<Path> files = Files.list(folder)) {
            Path handedIn = files.findFirst().orElseThrow();
            String text = Files.readString(handedIn).replace(',', ';').replace('.', ',');
            Files.writeString(sheet, "\uFEFF" + text, StandardCharsets.UTF_8);
            Files.delete(handedIn);
        }
        StatedClaim claim = AnswerSheet.read(sheet).answers().get(0).claim().orElseThrow();
        assertEquals(-5.5, claim.lower());
        assertEquals(4.5, claim.upper());
    }

    @Test
    void goesOnAfterABrokenFileAndAnEmptyOne() throws IOException {
        Lesson lesson = Lesson.open(1, 7);
        lesson.check("drop temperature", "1");
        lesson.handIn("Zoë", folder);
        String header = lesson.answers().csv().lines().findFirst().orElseThrow();
        Files.writeString(folder.resolve("broken.csv"), header + "\n1,\"Yann,7,celsius\n");
        Files.writeString(folder.resolve("empty.csv"), header + "\n");
        Files.write(folder.resolve("foreign.csv"), new byte[] {(byte) 0xC3, (byte) 0x28, '\n'});
        ClassResults results = ClassResults.read(folder);
        assertEquals(1, results.marked().size());
        String unread = String.join("\n", results.unread());
        assertTrue(unread.contains("broken.csv breaks off"), unread);
        assertTrue(unread.contains("empty.csv: it holds no answer"), unread);
        assertTrue(unread.contains("foreign.csv: it is not text in UTF-8"), unread);
    }

    @Test
    void namesWhoHandedInNothingAndHowTheClassFaredWithEachQuestion() throws IOException {
        Path teacher = folder.resolve("teacher");
        Classroom classroom = Classroom.prepare(List.of("ann", "ben"), teacher);
        classroom.handOut(2, NOTEBOOKS, folder.resolve("students"));
        Lesson ann = Lesson.open(
                2, folder.resolve("students").resolve("ann").resolve("lesson-2").toString());
        ann.check("development ratio", "99");
        ann.cannotTell("lateness");
        ann.handIn("ann", folder.resolve("collected"));
        ClassResults results = classroom.collect(folder.resolve("collected"));
        assertEquals(List.of("ben"), results.missing());
        assertTrue(results.text().contains("Nothing from: ben."), results::text);
        assertTrue(results.text().contains("By question"), results::text);
        assertTrue(results.text().contains("development ratio"), results::text);
    }

    @Test
    void saysWhichNamesAreNotAllowed() {
        assertTrue(assertThrows(
                        IllegalArgumentException.class, () -> Classroom.prepare(List.of("../x"), folder.resolve("t")))
                .getMessage()
                .contains("letters, digits and dashes"));
    }

    private static parchment.virtual.Seed seedOf(Path teacher, String student) throws IOException {
        return Files.readAllLines(teacher.resolve("seeds.properties")).stream()
                .filter(line -> line.startsWith(student + "="))
                .map(line -> parchment.virtual.Seed.parse(line.substring(student.length() + 1)))
                .findFirst()
                .orElseThrow();
    }

    @Test
    void whatIsSecretCanBeReadByTheTeachersAccountOnly(@TempDir Path folder) throws IOException {
        assumeTrue(
                Files.getFileStore(folder).supportsFileAttributeView("posix"), "this system knows no rights of files");
        Path teacher = folder.resolve("class").resolve("teacher");
        Path out = folder.resolve("students");
        Classroom.prepare(List.of("ann"), teacher).handOut(2, NOTEBOOKS, out);
        assertEquals("rwx------", PosixFilePermissions.toString(Files.getPosixFilePermissions(teacher)));
        try (Stream<Path> secrets = Files.list(teacher)) {
            for (Path secret : secrets.toList()) {
                assertEquals(
                        "rw-------",
                        PosixFilePermissions.toString(Files.getPosixFilePermissions(secret)),
                        secret.toString());
            }
        }
        assertTrue(Files.exists(teacher.resolve("ann-lesson-2-truth.json")));
    }
}
