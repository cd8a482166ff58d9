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

/**
 * Walks a class from the list of names to the returned envelopes, with the mistakes that classes make. Seven students make them all;
 * -Dparchment.class.students=30 walks thirty.
 */
class ClassWalkTest {
    private static final int STUDENTS = Integer.getInteger("parchment.class.students", 7);
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
    void aClassGoesFromTheNamesToTheEnvelopesWhateverIsHandedIn() throws IOException {
        Path list = Files.writeString(folder.resolve("names.txt"), "\uFEFF" + String.join("\r\n", names) + "\r\n");
        run("prepare", "--names", list.toString(), "--teacher", teacher.toString());
        handOutLastWeeksLesson("student-06");
        run("hand-out", "2", "--teacher", teacher.toString(), "--to", students.toString());
        Map<String, String> before = logbooks();

        for (String student : names.subList(7, STUDENTS)) {
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
        marked.removeAll(List.of("student-05", "student-06", "student-07"));
        for (String student : marked) {
            String row = switch (student) {
                case "O'Neil" -> "1|4|1|–|" + ALL_POINTS;
                case "student-04" -> "0|1|1|1|0.0";
                default -> "1|2|1|–|" + ALL_POINTS;
            };
            assertTrue(lines.contains(student + "|2|0|" + row), student + said);
        }
        for (String expected : List.of(
                "Not marked: student-05/empty.csv: it holds no answer.",
                "Not counted: student-03/lesson-2-student-03.csv, answer 3 ('lateness'): this question was answered before on the sheet;"
                        + " the first answer counts.",
                "Not counted: student-03/lesson-2-student-03.csv, answer 4 ('lateness'): it speaks for 'Ana Núñez', lesson 2, and the"
                        + " sheet is that of 'student-03', lesson 2. A sheet speaks for its own student only.",
                "Not marked: student-05/lesson-2-student-05.csv, line 3, cannot be read: the upper end of the claim is expected to be a"
                        + " number, but is blank.",
                "Not marked: O'Neil/first try.csv: the same student and lesson as O'Neil/my answers, final (2).csv, which has as many"
                        + " tries or more and was marked.",
                "No sheet of lesson 2 from: student-06 (handed in: lesson 1).",
                "Not marked: student-05/neighbour.csv: it says that it is that of 'student-05', lesson 2, but its code is not"
                        + " that of the folder that was handed to that student. Ask for the sheet as lesson.handIn(...) writes it in that"
                        + " folder.",
                "Nothing from: student-05 (no sheet; there is student-05.zip), student-07"
                        + " (no sheet; there is student-07/2-phases-and-marks.ipynb).")) {
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
        assertTrue(given.remove("student-06"), "that of lesson 1");
        assertEquals(marked, given);
        for (String student : marked) {
            String envelope = Files.readString(envelopes.resolve(student).resolve("envelope-lesson-2.html"));
            assertTrue(envelope.contains(seals.get(student)), student);
            assertTrue(envelope.contains("Invented machine: do not roast."), student);
        }
        assertEquals(before, logbooks(), "nothing that was handed out is changed");
    }

    /** Hands out lesson 1 to the one student who needs it here: that of the whole class takes its time. */
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

    /** The first seven students hand in as people do. */
    private void makeMistakes() throws IOException {
        // Saved by a spreadsheet: semicolons, decimal commas, the encoding of Windows; in folders in folders, in the
        // whole
        // folder with its logbook and notebook, with what a memory stick from another system brings along.
        Path whole = collected.resolve("Ana Núñez");
        Path own = sheet(2, "Ana Núñez");
        String text = Files.readString(own)
                .replace("\"99,5 %\"", "99.5 %")
                .replace(',', ';')
                .replace('.', ',');
        Files.delete(own);
        Path deep = Files.createDirectories(whole.resolve("answers/answers/answers (1)"));
        Files.write(deep.resolve("lesson-2-Ana-Núñez.csv"), text.getBytes(Charset.forName("windows-1252")));
        copy(students.resolve("Ana Núñez"), whole);
        Files.write(whole.resolve("._lesson-2-Ana-Núñez.csv"), new byte[] {0, 5, 22, 7});
        Files.writeString(whole.resolve("notes.csv"), "milk,eggs\n", StandardCharsets.UTF_8);
        // Another name of the file, and two sheets, the later one with more tries.
        Path final2 = collected.resolve("O'Neil/my answers, final (2).csv");
        Files.move(sheet(2, "O'Neil"), final2);
        Files.copy(final2, collected.resolve("O'Neil/first try.csv"));
        change(final2, "development ratio,1,", "development ratio,3,");
        // Two claims for one question, and a row for somebody else.
        Path third = sheet(2, "student-03");
        String orderly = Files.readString(third);
        String claim = orderly.lines().toList().get(2);
        Files.writeString(third, orderly + claim + "\n" + claim.replace("student-03", "Ana Núñez") + "\n");
        // Half of the questions; per cent, a decimal comma and a unit in the sheet.
        Lesson half = lesson(2, "student-04");
        half.cannotTell("lateness");
        half.handIn("student-04", collected.resolve("student-04"));
        change(
                collected.resolve("student-04/lesson-2-student-04.csv"),
                "lateness,1,,,,,yes",
                "lateness,1,,,\"-99999,5 s\",\"99999,5 %\",no");
        // Half a claim, an empty sheet, the neighbour's sheet under one's own name, an archive.
        change(sheet(2, "student-05"), "lateness,1,,,,,yes", "lateness,1,,,-5,,no");
        Files.writeString(
                collected.resolve("student-05/empty.csv"),
                orderly.lines().findFirst().orElseThrow() + "\n");
        Files.writeString(collected.resolve("student-05/neighbour.csv"), orderly.replace("student-03", "student-05"));
        Files.writeString(collected.resolve("student-05.zip"), "PK");
        // The sheet of another lesson.
        sheet(1, "student-06");
        // The notebook in the place of the sheet.
        Files.createDirectories(collected.resolve("student-07"));
        Files.copy(
                students.resolve("student-07/2-phases-and-marks.ipynb"),
                collected.resolve("student-07/2-phases-and-marks.ipynb"));
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
