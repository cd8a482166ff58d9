package parchment.launcher;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.stream.Stream;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.condition.DisabledOnOs;
import org.junit.jupiter.api.condition.OS;
import org.junit.jupiter.api.io.TempDir;
import parchment.lesson.Lesson;
import picocli.CommandLine;

class ClassCommandTest {
    private final StringWriter out = new StringWriter();
    private final StringWriter err = new StringWriter();

    @TempDir
    private Path folder;

    private Path teacher;
    private Path students;
    private Path collected;

    @BeforeEach
    void places() throws IOException {
        System.setProperty("parchment.home", "..");
        teacher = folder.resolve("teacher");
        students = folder.resolve("students");
        collected = Files.createDirectories(folder.resolve("collected"));
    }

    @AfterEach
    void forgetPlaces() {
        System.clearProperty("parchment.home");
    }

    private int run(String... arguments) {
        CommandLine main = Main.commandLine();
        CommandLine group = main.getSubcommands().get("class");
        Stream.concat(Stream.of(main, group), group.getSubcommands().values().stream())
                .forEach(each -> {
                    each.setOut(new PrintWriter(out));
                    each.setErr(new PrintWriter(err));
                });
        return main.execute(
                Stream.concat(Stream.of("class"), Stream.of(arguments)).toArray(String[]::new));
    }

    private Lesson lesson(int number, String student) throws IOException {
        return Lesson.open(
                number, students.resolve(student).resolve("lesson-" + number).toString());
    }

    @Test
    void studentsGetTheirFoldersAndTheTeacherSeesWhoFoundWhat() throws IOException {
        assertEquals(0, run("prepare", "--students", "4", "--teacher", teacher.toString()), err.toString());
        assertEquals(
                0, run("hand-out", "2", "--teacher", teacher.toString(), "--to", students.toString()), err.toString());
        for (int i = 1; i <= 4; i++) {
            String student = String.format("student-%02d", i);
            assertTrue(Files.exists(students.resolve(student).resolve("2-phases-and-marks.ipynb")), student);
        }
        for (String student : new String[] {"student-02", "student-04"}) {
            Lesson lesson = lesson(2, student);
            lesson.check("whose pen", student.equals("student-02") ? "Tomas" : "Maren");
            if (student.equals("student-02")) {
                lesson.cannotTell("lateness");
            } else {
                lesson.claim("lateness", "-90", "-80");
            }
            lesson.handIn(student, collected);
        }
        Path page = folder.resolve("results.html");
        assertEquals(
                0,
                run(
                        "collect",
                        collected.toString(),
                        "--teacher",
                        teacher.toString(),
                        "--page",
                        page.toString(),
                        "--envelopes",
                        folder.resolve("envelopes").toString()),
                err.toString());
        String shown = out.toString();
        String row = "(?s).*%s +2 +%d +1 +2 +1 +%s +%s\\b.*";
        assertTrue(shown.matches(String.format(row, "student-02", 1, "–", "10\\.0")), shown);
        assertTrue(shown.matches(String.format(row, "student-04", 0, "0", "0\\.0")), shown);
        assertTrue(shown.contains("Nothing from: student-01, student-03."), shown);
        assertTrue(Files.readString(page).contains("By question"));
        String envelope = Files.readString(folder.resolve("envelopes/student-04/envelope-lesson-2.html"));
        String seal = Files.readAllLines(students.resolve("seals-lesson-2.csv")).stream()
                .filter(line -> line.startsWith("student-04,"))
                .map(line -> line.substring("student-04,".length()))
                .findFirst()
                .orElseThrow();
        assertTrue(envelope.contains("-90.00 to -80.00"), envelope);
        assertTrue(envelope.contains(">Lesson 2, student-04<"), envelope);
        assertTrue(envelope.contains(seal), envelope);
        assertFalse(Files.exists(folder.resolve("envelopes/student-01")), "nothing was handed in");
    }

    @Test
    void allHandsOutLessonZeroTooWithoutASecretInIt() throws IOException {
        assertEquals(0, run("prepare", "--students", "1", "--teacher", teacher.toString()), err.toString());
        assertEquals(
                0,
                run("hand-out", "all", "--teacher", teacher.toString(), "--to", students.toString()),
                err.toString());
        Path own = students.resolve("student-01");
        try (Stream<Path> entries = Files.list(own)) {
            assertEquals(
                    10,
                    entries.filter(each -> each.toString().endsWith(".ipynb")).count());
        }
        assertTrue(Files.readString(own.resolve("0-start-here.ipynb")).contains("Lesson.open(1, 1)"));
        assertTrue(out.toString().contains("Lesson 0 is in each folder too"), out.toString());
        assertTrue(
                out.toString().contains("Lesson 9: folders for a class of 1 student in " + students + ", seals in"),
                out.toString());
    }

    @Test
    void roastsEveryPlanAndNamesTheOnesThatCannotBeRoasted() throws IOException {
        run("prepare", "--students", "2", "--teacher", teacher.toString());
        Path plans = Files.createDirectories(collected.resolve("plans"));
        Files.writeString(
                plans.resolve("plan-student-01.csv"),
                Lesson.open(9, 1).plan("Cinder Ridge", "204", "198", "210").csv());
        Files.writeString(plans.resolve("plan-student-02.csv"), "lot,drop temperature [°C]\nCinder Ridge,hot\n");
        Files.writeString(plans.resolve("plan-studnt-01.csv"), "lot,drop temperature [°C]\nCinder Ridge,203\n");
        Path back = folder.resolve("back");
        assertEquals(
                1, run("roast-plans", collected.toString(), "--teacher", teacher.toString(), "--to", back.toString()));
        String shown = out.toString();
        assertTrue(Files.exists(back.resolve("student-01").resolve("batches.csv")), shown);
        assertFalse(Files.exists(back.resolve("student-02")), shown);
        assertTrue(shown.contains("Not roasted: plan-student-02.csv"), shown);
        assertTrue(shown.contains("Did you mean 'student-01'?"), shown);
        assertTrue(shown.contains("Plans roasted: 1 of 3. Invented machine: do not roast."), shown);
    }

    /** Each of these ended the command once, or held it up, or was passed over without a word. */
    @Test
    @Timeout(60)
    @DisabledOnOs(value = OS.WINDOWS, disabledReason = "links as Linux and macOS know them")
    void whateverIsWrongWithAPlanTheOthersAreRoasted() throws IOException {
        run("prepare", "--students", "7", "--teacher", teacher.toString());
        String heading = "lot,drop temperature [°C]\n";
        Files.writeString(collected.resolve("plan-student-01.csv"), heading + "\"A,203\n");
        Files.writeString(
                collected.resolve("plan-student-02.csv"), heading + "Cinder Ridge," + "2".repeat(900_000) + "\n");
        Files.writeString(collected.resolve("plan-student-03.csv"), "x".repeat((1 << 20) + 1));
        Files.write(collected.resolve("plan-student-04.csv"), new byte[] {0, 27, (byte) 0xC3, 0x28, '\n', 0});
        Files.writeString(collected.resolve("plan-student-05.csv"), "");
        Path real = Files.writeString(folder.resolve("real.csv"), heading + "Cinder Ridge,203\n");
        Files.createSymbolicLink(collected.resolve("plan-student-06.csv"), real);
        Files.writeString(collected.resolve("plan-student-07.csv"), heading.strip() + ",\nCinder Ridge,203,\n");
        Path back = folder.resolve("back");
        assertEquals(
                1, run("roast-plans", collected.toString(), "--teacher", teacher.toString(), "--to", back.toString()));
        String shown = out.toString();
        for (String expected : new String[] {
            "Not roasted: plan-student-01.csv: the plan breaks off or has a quotation mark too few: write it again.",
            "Not roasted: plan-student-02.csv, line 2: a cell has 900,000 letters; at most 100 are expected.",
            "Not looked into: plan-student-06.csv: it is a link, which is not followed; put the file itself there.",
            "Plans roasted: 1 of 6. Invented machine: do not roast."
        }) {
            assertTrue(shown.lines().anyMatch(expected::equals), expected + "\n" + shown);
        }
        for (int student : new int[] {3, 4, 5}) {
            assertTrue(shown.contains("Not roasted: plan-student-0" + student + ".csv"), shown);
        }
        assertTrue(shown.contains("student-07: "), shown);
        assertTrue(Files.exists(back.resolve("student-07").resolve("batches.csv")), shown);
        assertFalse(shown.contains("Exception") || shown.contains("EOF"), shown);
        assertFalse(shown.contains("\u0000") || shown.contains("\u001b"), "nothing that steers a terminal");
        assertTrue(shown.length() < 10_000, () -> "it printed " + shown.length() + " letters");
        assertEquals("", err.toString());
    }

    @Test
    void saysWhatIsMissingOrThereAlready() {
        assertEquals(1, run("prepare", "--teacher", teacher.toString()));
        assertTrue(err.toString().contains("--students N"), err.toString());
        run("prepare", "--students", "1", "--teacher", teacher.toString());
        assertEquals(1, run("prepare", "--students", "1", "--teacher", teacher.toString()));
        assertTrue(err.toString().contains("has the seeds of a class already"), err.toString());
        assertEquals(1, run("hand-out", "12", "--teacher", teacher.toString(), "--to", students.toString()));
        assertTrue(err.toString().contains("a number from 1 to 9, or is 'all'"), err.toString());
        assertEquals(1, run("collect", folder.resolve("nowhere").toString()));
        assertTrue(err.toString().contains("There is no folder"), err.toString());
    }
}
