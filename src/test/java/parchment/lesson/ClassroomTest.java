package parchment.lesson;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import parchment.quantity.TemperatureUnit;
import parchment.virtual.SealedTruth;

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
        classroom.roastPlan("ann", file, folder.resolve("roasted"));
        PlanTasted tasted = Lesson.open(9, 1).tasted(folder.resolve("roasted").toString());
        assertEquals(3, tasted.logbook().batches().size());
        assertTrue(tasted.slope().isPresent());
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
}
