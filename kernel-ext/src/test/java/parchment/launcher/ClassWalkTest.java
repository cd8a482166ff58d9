package parchment.launcher;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import parchment.lesson.Lesson;
import picocli.CommandLine;

/** Walks a class of thirty from the list of names to the returned envelopes, with the mistakes that classes make. */
class ClassWalkTest {
    private static final int STUDENTS = 30;
    /** What saying "cannot tell" earns in lesson 2, where no column of the logbook holds the truth. */
    private static final String ALL_POINTS = "10.0";

    @TempDir
    private Path folder;

    private Path teacher;
    private Path students;
    private Path collected;
    private final List<String> names = new ArrayList<>(List.of("Ana Núñez", "O'Neil"));

    @BeforeEach
    void places() throws IOException {
        System.setProperty("parchment.home", "..");
        folder = folder.toRealPath();
        teacher = folder.resolve("my class/teacher");
        students = folder.resolve("my class/students");
        collected = Files.createDirectories(folder.resolve("my class/collected"));
        for (int i = names.size() + 1; i <= STUDENTS; i++) {
            names.add(String.format("student-%02d", i));
        }
    }

    @AfterEach
    void forgetPlaces() {
        System.clearProperty("parchment.home");
    }

    private String run(String... arguments) {
        StringWriter said = new StringWriter();
        CommandLine main = Main.commandLine();
        main.setOut(new PrintWriter(said));
        main.setErr(new PrintWriter(said));
        int code = main.execute(
                Stream.concat(Stream.of("class"), Stream.of(arguments)).toArray(String[]::new));
        assertEquals(0, code, said.toString());
        return said.toString();
    }

    private Lesson lesson(int number, String student) throws IOException {
        return Lesson.open(
                number, students.resolve(student).resolve("lesson-" + number).toString());
    }

    /** Hands in what an orderly student hands in: one claim and one wrong answer, in a folder of their own. */
    private Path sheet(int number, String student) throws IOException {
        Lesson lesson = lesson(number, student);
        lesson.check(number == 2 ? "development ratio" : "drop temperature", "99,5 %");
        lesson.cannotTell(number == 2 ? "lateness" : "true temperature");
        Path own = collected.resolve(student);
        lesson.handIn(student, own);
        try (Stream<Path> files = Files.list(own)) {
            return files.findFirst().orElseThrow();
        }
    }

    private static void change(Path sheet, String from, String to) throws IOException {
        String text = Files.readString(sheet);
        assertTrue(text.contains(from), text);
        Files.writeString(sheet, text.replace(from, to));
    }

    private static void copy(Path from, Path to) throws IOException {
        try (Stream<Path> files = Files.walk(from)) {
            for (Path file : files.filter(Files::isRegularFile).toList()) {
                Path target = to.resolve(from.relativize(file).toString());
                Files.createDirectories(target.getParent());
                Files.copy(file, target);
            }
        }
    }

    @Test
    void aClassOfThirtyGoesFromTheNamesToTheEnvelopesWhateverIsHandedIn() throws IOException {
        Path list = Files.writeString(folder.resolve("names.txt"), "\uFEFF" + String.join("\r\n", names) + "\r\n");
        run("prepare", "--names", list.toString(), "--teacher", teacher.toString());
        handOutLastWeeksLesson("student-20");
        run("hand-out", "2", "--teacher", teacher.toString(), "--to", students.toString());
        Map<String, String> before = logbooks();

        for (String student : names.subList(0, 18)) {
            sheet(2, student);
        }
        makeMistakes();

        Path page = folder.resolve("my class/results.html");
        Path envelopes = folder.resolve("my class/envelopes");
        String said = run(
                "collect",
                collected.toString(),
                "--teacher",
                teacher.toString(),
                "--page",
                page.toString(),
                "--envelopes",
                envelopes.toString());
        List<String> lines = said.lines()
                .map(line -> line.strip().replaceAll("\\s{2,}", "|"))
                .toList();

        // Whoever's sheet can be marked is marked: all points for the claim, nothing for the wrong answer.
        TreeSet<String> marked = new TreeSet<>(names);
        marked.removeAll(List.of("student-13", "student-19", "student-23", "student-24", "student-25"));
        marked.remove("student-20");
        for (String student : marked) {
            String answered = switch (student) {
                case "student-22" -> "0|1";
                case "student-29" -> "1|4";
                default -> "1|2";
            };
            assertTrue(
                    lines.contains(student + "|2|0|" + answered + "|1|0|" + ALL_POINTS)
                            || student.equals("student-21") && lines.contains(student + "|2|0|1|2|1|1|0.0"),
                    student + said);
        }
        for (String expected : List.of(
                "Not marked: student-13/lesson-2-student-13.csv: it holds no answer.",
                "Not counted: student-16/lesson-2-student-16.csv, answer 3 ('lateness'): this question was answered before on the sheet;"
                        + " the first answer counts.",
                "Not counted: student-17/lesson-2-student-17.csv, answer 3 ('lateness'): it speaks for 'Ana Núñez', lesson 2, and the"
                        + " sheet is that of 'student-17', lesson 2. A sheet speaks for its own student only.",
                "Not marked: student-19/lesson-2-student-19.csv, line 3, cannot be read: the upper end of the claim is expected to be a"
                        + " number, but is blank.",
                "Not marked: student-29/first try.csv: the same student and lesson as student-29/lesson-2-student-29.csv, which has as many"
                        + " tries or more and was marked.",
                "No sheet of lesson 2 from: student-20 (handed in: lesson 1).",
                "Not marked: student-25/lesson-2-student-18.csv: it says that it is that of 'student-25', lesson 2, but its code is not"
                        + " that of the folder that was handed to that student. Ask for the sheet as lesson.handIn(...) writes it in that"
                        + " folder.",
                "Nothing from: student-13, student-19, student-23 (no sheet; there is student-23/2-phases-and-marks.ipynb), student-24"
                        + " (no sheet; there is student-24.zip), student-25.")) {
            assertTrue(
                    lines.contains(expected.replace('/', java.io.File.separatorChar)) || lines.contains(expected),
                    expected + "\n" + said);
        }
        assertTrue(
                said.lines()
                        .anyMatch(line ->
                                line.matches("[0-9]+ other files are no sheets of answers and were passed over\\.")),
                said);
        assertEquals(4 + 2, said.lines().filter(line -> line.startsWith("Not ")).count(), "each once: " + said);
        assertTrue(said.startsWith("Invented machine: do not roast."), said);
        assertFalse(said.contains("Exception"), said);

        String html = Files.readString(page);
        assertTrue(html.contains("Ana Núñez") && html.contains("O&#39;Neil"), html);
        assertTrue(html.contains("Invented machine: do not roast."));

        // Everybody who was marked gets an envelope, with the seal that was on the list, and nobody else gets one.
        Map<String, String> seals = Files.readAllLines(students.resolve("seals-lesson-2.csv")).stream()
                .skip(1)
                .collect(Collectors.toMap(line -> line.split(",")[0], line -> line.split(",")[1]));
        assertEquals(STUDENTS, seals.size());
        TreeSet<String> given = new TreeSet<>();
        try (Stream<Path> folders = Files.list(envelopes)) {
            folders.forEach(each -> given.add(each.getFileName().toString()));
        }
        assertTrue(given.remove("student-20"), "that of lesson 1");
        assertEquals(marked, given);
        for (String student : marked) {
            String envelope = Files.readString(envelopes.resolve(student).resolve("envelope-lesson-2.html"));
            assertTrue(envelope.contains(seals.get(student)), student);
            assertTrue(envelope.contains("Invented machine: do not roast."), student);
        }
        assertEquals(before, logbooks(), "nothing that was handed out is changed");
    }

    /** Hands out lesson 1 to the one student who needs it here: that of all thirty takes its time. */
    private void handOutLastWeeksLesson(String student) throws IOException {
        Path seeds = teacher.resolve("seeds.properties");
        Path ofOne = Files.createDirectories(folder.resolve("teacher of one"));
        Files.write(
                ofOne.resolve("seeds.properties"),
                Files.readAllLines(seeds).stream()
                        .filter(line -> line.startsWith(student + "="))
                        .toList());
        run("hand-out", "1", "--teacher", ofOne.toString(), "--to", students.toString());
    }

    /** Students 19 to 30 hand in as people do; 13, 16, 17 and others have done something to their sheets. */
    private void makeMistakes() throws IOException {
        // 1. An empty sheet.
        Path empty = collected.resolve("student-13/lesson-2-student-13.csv");
        Files.writeString(empty, Files.readString(empty).lines().findFirst().orElseThrow() + "\n");
        // 2. Saved by a spreadsheet: semicolons, decimal commas, the encoding of Windows.
        Path saved = collected.resolve("Ana Núñez/lesson-2-Ana-Núñez.csv");
        String text = Files.readString(saved)
                .replace("\"99,5 %\"", "99.5 %")
                .replace(',', ';')
                .replace('.', ',');
        Files.write(saved, text.getBytes(Charset.forName("windows-1252")));
        // 3. Another name of the file.
        Files.move(
                collected.resolve("O'Neil/lesson-2-O-Neil.csv"), collected.resolve("O'Neil/my answers, final (2).csv"));
        // 4. Two claims for one question.
        Path twice = collected.resolve("student-16/lesson-2-student-16.csv");
        String claim = Files.readString(twice).lines().toList().get(2);
        Files.writeString(twice, Files.readString(twice) + claim + "\n");
        // 5. A row for somebody else.
        Path strange = collected.resolve("student-17/lesson-2-student-17.csv");
        Files.writeString(
                strange,
                Files.readString(strange)
                        + Files.readString(strange).lines().toList().get(2).replace("student-17", "Ana Núñez") + "\n");
        // 6. Half a claim, typed into the sheet.
        change(sheet(2, "student-19"), "lateness,1,,,,,yes", "lateness,1,,,-5,,no");
        // 7. The sheet of another lesson.
        sheet(1, "student-20");
        // 8. Per cent, a decimal comma and a unit in the sheet.
        change(sheet(2, "student-21"), "lateness,1,,,,,yes", "lateness,1,,,\"-99999,5 s\",\"99999,5 %\",no");
        // 9. Half of the questions.
        Lesson half = lesson(2, "student-22");
        half.cannotTell("lateness");
        half.handIn("student-22", collected.resolve("student-22"));
        // 10. The notebook in the place of the sheet, and an archive.
        Files.createDirectories(collected.resolve("student-23"));
        Files.copy(
                students.resolve("student-23/2-phases-and-marks.ipynb"),
                collected.resolve("student-23/2-phases-and-marks.ipynb"));
        Files.writeString(collected.resolve("student-24.zip"), "PK");
        // 11. The neighbour's sheet under one's own name.
        Path copied = collected.resolve("student-25/lesson-2-student-18.csv");
        Files.createDirectories(copied.getParent());
        Files.copy(collected.resolve("student-18/lesson-2-student-18.csv"), copied);
        change(copied, "student-18", "student-25");
        // 12. Folders in folders.
        Path deep = sheet(2, "student-26");
        Files.createDirectories(collected.resolve("student-26/answers/answers/answers (1)"));
        Files.move(deep, collected.resolve("student-26/answers/answers/answers (1)/lesson-2-student-26.csv"));
        // 13. The whole folder, with its logbooks and notebooks.
        for (String student : List.of("student-27", "student-28")) {
            sheet(2, student);
            copy(students.resolve(student), collected.resolve(student));
        }
        // 14. Two sheets, the later one with more tries.
        Path later = sheet(2, "student-29");
        Files.copy(later, collected.resolve("student-29/first try.csv"));
        change(later, "development ratio,1,", "development ratio,3,");
        // 15. What a memory stick from another system brings along.
        sheet(2, "student-30");
        Files.write(collected.resolve("student-30/._lesson-2-student-30.csv"), new byte[] {0, 5, 22, 7});
        Files.writeString(collected.resolve("student-30/notes.csv"), "milk,eggs\n", StandardCharsets.UTF_8);
    }

    private Map<String, String> logbooks() throws IOException {
        Map<String, String> texts = new TreeMap<>();
        try (Stream<Path> files = Files.walk(students)) {
            for (Path file : files.filter(Files::isRegularFile).toList()) {
                texts.put(students.relativize(file).toString(), Files.readString(file));
            }
        }
        return texts;
    }
}
