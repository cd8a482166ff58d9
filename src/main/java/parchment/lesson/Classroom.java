package parchment.lesson;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import parchment.display.Progress;
import parchment.logbook.CsvText;
import parchment.virtual.OwnersEyes;
import parchment.virtual.RoastPlan;
import parchment.virtual.SealedTruth;
import parchment.virtual.Seed;
import parchment.virtual.VirtualClass;
import parchment.virtual.VirtualLogbook;

/**
 * Is the teacher's side of the lessons: a secret seed for each student, folders to hand out, plans to roast, answers to collect.
 *
 * <pre>{@code
 * var folder = Files.createTempDirectory("class").resolve("teacher");
 * Classroom.prepare(List.of("student-01", "student-02"), folder).students()
 * }</pre>
 *
 * <p>The teacher's folder holds the seeds and the sealed truths, and stays with the teacher: whoever has it can open every envelope.
 * What is handed out holds no truth. Beside it lies a list of seals, the SHA-256 of each truth, which binds the teacher as well.
 */
public final class Classroom {
    private static final String SEEDS = "seeds.properties";

    private final Path teacher;
    private final Map<String, Seed> seeds;

    private Classroom(Path teacher, Map<String, Seed> seeds) {
        this.teacher = teacher;
        this.seeds = seeds;
    }

    /**
     * Draws a secret seed for each student and writes them into the teacher's folder. Where the system knows file rights, only the
     * owner can read what is secret there, so that students with accounts on the same server cannot.
     *
     * @param students names of letters, digits and dashes; {@code VirtualClass.numbered(30)} makes thirty
     * @throws IOException if the folder has seeds already, or cannot be written
     * @throws IllegalArgumentException if there is no student, or a name is not allowed or comes twice
     */
    public static Classroom prepare(List<String> students, Path teacher) throws IOException {
        Path file = teacher.resolve(SEEDS);
        if (Files.exists(file)) {
            throw new IOException("The folder " + teacher + " has the seeds of a class already. Open it with"
                    + " Classroom.open(...), or name another folder.");
        }
        VirtualClass.checkNames(students);
        Map<String, Seed> seeds = new LinkedHashMap<>();
        students.forEach(student -> seeds.put(student, Seed.secret()));
        OwnersEyes.makeFolder(teacher);
        List<String> lines = new ArrayList<>();
        lines.add("# The secret seeds of a class: whoever has this file can open every envelope.");
        seeds.forEach((student, seed) -> lines.add(student + "=" + seed.text()));
        OwnersEyes.write(file, String.join("\n", lines) + "\n");
        return new Classroom(teacher, seeds);
    }

    /**
     * Opens a class by the teacher's folder.
     *
     * @throws IOException if the folder has no seeds of a class, or cannot be read
     */
    public static Classroom open(Path teacher) throws IOException {
        Path file = teacher.resolve(SEEDS);
        if (Files.notExists(file)) { // A folder that others may not look into is neither there nor not there.
            throw new IOException(teacher + " is not the teacher's folder of a class: it has no file " + SEEDS + ".");
        }
        Map<String, Seed> seeds = new LinkedHashMap<>();
        for (String line : Files.readAllLines(file, StandardCharsets.UTF_8)) {
            int sign = line.indexOf('=');
            if (!line.startsWith("#") && sign > 0) {
                seeds.put(line.substring(0, sign), Seed.parse(line.substring(sign + 1)));
            }
        }
        return new Classroom(teacher, seeds);
    }

    /** Returns the students' names. */
    public List<String> students() {
        return List.copyOf(seeds.keySet());
    }

    /** Returns the numbers of the lessons that can be handed out. */
    public static List<Integer> lessons() {
        return IntStream.rangeClosed(1, Course.size()).boxed().toList();
    }

    /**
     * Makes a lesson's folder for every student: a logbook of their own, and the notebook that opens it. The sealed truths go into
     * the teacher's folder.
     *
     * @param notebooks the folder of the lessons' notebooks
     * @param out where the students' folders are made
     * @return the seals by student
     * @throws IOException if a folder is there already, or cannot be written
     */
    public Map<String, String> handOut(int lesson, Path notebooks, Path out) throws IOException {
        Path notebook = notebook(lesson, notebooks);
        Map<String, String> seals = new LinkedHashMap<>();
        for (String student : Progress.over(students(), "making folders for students")) {
            VirtualLogbook roasted = behind(lesson, student).roasted();
            String name = "lesson-" + lesson;
            Path folder = out.resolve(student).resolve(name);
            roasted.writeTo(folder.resolve(LessonSource.LOGBOOK));
            SealedTruth truth = roasted.truth();
            Files.writeString(
                    folder.resolve(LessonSource.FACTS),
                    "lesson=" + lesson + "\nstudent=" + student + "\nseal=" + truth.seal() + "\n",
                    StandardCharsets.UTF_8);
            Files.writeString(
                    out.resolve(student).resolve(notebook.getFileName()),
                    Files.readString(notebook, StandardCharsets.UTF_8)
                            .replace(
                                    "Lesson.open(" + lesson
                                            + ", 1);      // put your own number in the place of the second 1",
                                    "Lesson.open(" + lesson + ", \\\"" + name + "\\\");"),
                    StandardCharsets.UTF_8);
            OwnersEyes.write(teacher.resolve(student + "-" + name + "-truth.json"), truth.sealedText());
            seals.put(student, truth.seal());
        }
        List<List<String>> rows = new ArrayList<>(List.of(List.of("student", "seal")));
        seals.forEach((student, seal) -> rows.add(List.of(student, seal)));
        Files.writeString(out.resolve("seals-lesson-" + lesson + ".csv"), CsvText.of(rows), StandardCharsets.UTF_8);
        return seals;
    }

    private static Path notebook(int lesson, Path notebooks) throws IOException {
        try (Stream<Path> files = Files.list(notebooks)) {
            return files.filter(file -> file.getFileName().toString().matches(lesson + "-.*\\.ipynb"))
                    .findFirst()
                    .orElseThrow(() -> new IOException("The folder " + notebooks + " has no notebook of lesson "
                            + lesson + ": expected a name such as " + lesson + "-....ipynb."));
        }
    }

    /**
     * Roasts and cups what a student has planned in the last lesson, and writes it as a logbook folder to be given back. Its sealed truth
     * goes into the teacher's folder, that of the student's latest plan.
     *
     * @param plan the file that the student handed in
     * @param out a folder that is empty or does not exist yet
     * @throws IOException if a file cannot be read or written
     */
    public VirtualLogbook roastPlan(String student, Path plan, Path out) throws IOException {
        VirtualLogbook roasted = behind(Course.size(), student).roastery().roast(RoastPlan.read(plan));
        roasted.writeTo(out);
        OwnersEyes.write(
                teacher.resolve(student + "-plan-truth.json"), roasted.truth().sealedText());
        return roasted;
    }

    /**
     * Reads every sheet of answers in a folder and the folders inside it, marks it anew, and grades its claims.
     *
     * @throws IOException if a file cannot be read
     */
    public ClassResults collect(Path folder) throws IOException {
        return ClassResults.read(folder, students(), this::lesson);
    }

    private LessonSource.Behind behind(int lesson, String student) {
        return source(lesson, student)
                .behind()
                .orElseThrow(() -> new IllegalStateException("A lesson on the teacher's machine has its truth."));
    }

    /** Opens a student's lesson with its truth, for marking. */
    private Lesson lesson(GivenAnswer answer) {
        return Lesson.of(source(answer.lesson(), answer.student()));
    }

    private LessonSource source(int lesson, String student) {
        Seed seed = seeds.get(student);
        if (seed == null) {
            throw new IllegalArgumentException(String.format(
                    Locale.ROOT,
                    "The class has no student '%s'.%s Students: %s.",
                    student,
                    Checks.closest(student, seeds.keySet())
                            .map(near -> " Did you mean '" + near + "'?")
                            .orElse(""),
                    String.join(", ", seeds.keySet())));
        }
        return LessonSource.ofStudent(lesson, seed, student);
    }

    @Override
    public String toString() {
        return "class of " + seeds.size() + (seeds.size() == 1 ? " student" : " students");
    }
}
