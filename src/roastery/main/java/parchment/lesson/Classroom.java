package parchment.lesson;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import parchment.display.Progress;
import parchment.file.Rights;
import parchment.file.WholeFile;
import parchment.lesson.sheet.GivenAnswer;
import parchment.sheet.CsvText;
import parchment.virtual.RoastPlan;
import parchment.virtual.SealedTruth;
import parchment.virtual.VirtualLogbook;
import parchment.virtual.chance.Seed;
import parchment.virtual.classroom.ClassList;
import parchment.virtual.people.OwnersEyes;

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
    /** Letters of a code: 80 bits, which nobody guesses. */
    private static final int CODE_LETTERS = 20;

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
     * @param students their names, as {@link ClassList} allows them; {@code VirtualClass.numbered(30)} makes thirty
     * @throws IOException if the folder has seeds already, or cannot be written
     * @throws IllegalArgumentException if there is no student, or a name is not allowed, comes twice or is one that a spreadsheet
     *     would save as another
     */
    public static Classroom prepare(List<String> students, Path teacher) throws IOException {
        Path file = teacher.resolve(SEEDS);
        if (Files.exists(file)) {
            throw new IOException("The folder " + teacher + " has the seeds of a class already. Open it with"
                    + " Classroom.open(...), or name another folder.");
        }
        Map<String, Seed> seeds = new LinkedHashMap<>();
        new ClassList(students).keptBySpreadsheets().names().forEach(student -> seeds.put(student, Seed.secret()));
        OwnersEyes.makeFolder(teacher);
        List<String> lines = new ArrayList<>();
        lines.add("# The secret seeds of a class: whoever has this file can open every envelope.");
        seeds.forEach((student, seed) -> lines.add(student + "=" + seed.text()));
        WholeFile.at(file).with(Rights.OWNER).ifNew().write(String.join("\n", lines) + "\n");
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
        try {
            return new Classroom(teacher, named(seeds));
        } catch (IllegalArgumentException e) {
            throw new IOException(file + " cannot be used: " + e.getMessage(), e);
        }
    }

    private static Map<String, Seed> named(Map<String, Seed> read) {
        List<String> names = new ClassList(List.copyOf(read.keySet())).names();
        Map<String, Seed> seeds = new LinkedHashMap<>();
        List.copyOf(read.values()).forEach(seed -> seeds.put(names.get(seeds.size()), seed));
        return seeds;
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
     * <p>What is there already from an earlier time, whole, stays as it is; so a hand-out that was stopped half way is finished by
     * doing it again.
     *
     * @param notebooks the folder of the lessons' notebooks
     * @param out where the students' folders are made; the teacher's folder may not lie inside it
     * @return the seals by student
     * @throws IOException if a folder is there already that is not this class's, the teacher's folder holds another truth of that
     *     student and lesson, or something cannot be written
     * @throws IllegalArgumentException if the teacher's folder lies where the students' are to be made
     */
    public Map<String, String> handOut(int lesson, Path notebooks, Path out) throws IOException {
        refuseTeachersFolderIn(out);
        Path notebook = notebook(lesson, notebooks);
        String page = Files.readString(notebook, StandardCharsets.UTF_8);
        Map<String, String> seals = new LinkedHashMap<>();
        for (String student : Progress.over(students(), "making folders for students")) {
            VirtualLogbook roasted = behind(lesson, student).roasted();
            SealedTruth truth = roasted.truth();
            HandOut handOut = new HandOut(lesson, student, truth.seal(), code(lesson, student));
            Path sealed = teacher.resolve(student + "-" + handOut.name() + "-truth.json");
            truth.checkPlace(sealed);
            handOut.make(out.resolve(student), roasted);
            OwnersEyes.write(sealed, truth.sealedText());
            Path copy = out.resolve(student).resolve(notebook.getFileName());
            if (Files.notExists(copy)) { // The student may have written into one that is there.
                WholeFile.at(copy).write(SealedNotebook.of(page, lesson, student, notebook.toString()));
            }
            seals.put(student, truth.seal());
        }
        List<List<String>> rows = new ArrayList<>(List.of(List.of("student", "seal")));
        seals.forEach((student, seal) -> rows.add(List.of(student, seal)));
        WholeFile.at(out.resolve("seals-lesson-" + lesson + ".csv")).write(CsvText.of(rows));
        return seals;
    }

    /** Returns how many students' folders of a lesson lie whole in a folder already. */
    public long handedOut(int lesson, Path out) {
        return students().stream()
                .filter(student -> Files.exists(
                        out.resolve(student).resolve("lesson-" + lesson).resolve(LessonSource.FACTS)))
                .count();
    }

    /**
     * Lays the notebook that starts the course beside a student's lessons, in words for sealed folders; one that is there stays.
     *
     * @throws IOException if it cannot be read or written
     */
    public void handOutStart(Path notebook, Path out) throws IOException {
        String page = SealedNotebook.start(Files.readString(notebook, StandardCharsets.UTF_8));
        for (String student : students()) {
            Path copy = out.resolve(student).resolve(notebook.getFileName());
            if (Files.notExists(copy)) {
                WholeFile.at(copy).write(page);
            }
        }
    }

    private void refuseTeachersFolderIn(Path out) throws IOException {
        Path there = Files.exists(out) ? out.toRealPath() : out.toAbsolutePath().normalize();
        if (teacher.toRealPath().startsWith(there)) {
            throw new IllegalArgumentException(
                    "The teacher's folder " + teacher + " lies inside " + out
                            + ", which is to be handed out: whoever gets it knows every truth. Name another folder for the students.");
        }
    }

    /**
     * Returns what a student's folder of a lesson says of itself, and each sheet of answers that comes from it. It follows from the
     * secret seed and tells nothing about it. It is all letters, from a to p: with digits in it a spreadsheet may take it for a number,
     * and keep no more than that number's beginning.
     */
    private String code(int lesson, String student) {
        return Digest.of("code of lesson " + lesson + " for " + student + " "
                        + seed(student).text())
                .chars()
                .limit(CODE_LETTERS)
                .map(digit -> 'a' + Character.digit(digit, 16))
                .collect(StringBuilder::new, StringBuilder::appendCodePoint, StringBuilder::append)
                .toString();
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
     * @param out a folder that is empty or does not exist yet, or holds what this plan makes, or a part of it
     * @throws IOException if a file cannot be read or written
     */
    public VirtualLogbook roastPlan(String student, Path plan, Path out) throws IOException {
        return roastedPlan(student, plan, out).roasted();
    }

    /**
     * Does the same as {@link #roastPlan}, and says what of the folder was there before: an equal one stays, a half one is finished.
     *
     * @throws IOException if a file cannot be read or written, or the folder holds something else
     */
    public RoastedPlan roastedPlan(String student, Path plan, Path out) throws IOException {
        String known = known(student);
        VirtualLogbook roasted = behind(Course.size(), known)
                .roastery()
                .roast(RoastPlan.of(SheetText.read(plan), String.valueOf(plan.getFileName())));
        RoastedPlan laid = RoastedPlan.laid(known, roasted, out);
        OwnersEyes.write(
                teacher.resolve(known + "-plan-truth.json"), roasted.truth().sealedText());
        return laid;
    }

    /**
     * Reads every sheet of answers in a folder and the folders inside it, marks it anew, and grades its claims.
     *
     * @throws IOException if a file cannot be read
     */
    public ClassResults collect(Path folder) throws IOException {
        return ClassResults.read(
                folder, students(), new CodedSheets(new ClassList(students()), this::code), this::lesson);
    }

    /**
     * Returns the student that a name means, also one as it stands in the name of a file: "Ana-Núñez" for "Ana Núñez".
     *
     * @throws IllegalArgumentException if the class has no such student; the message asks whether the nearest was meant
     */
    public String known(String student) {
        return new ClassList(students())
                .find(student)
                .orElseThrow(() -> new IllegalArgumentException(noSuchStudent(student)));
    }

    private LessonSource.Behind behind(int lesson, String student) {
        return source(lesson, student)
                .behind()
                .orElseThrow(() -> new IllegalStateException("A lesson on the teacher's machine has its truth."));
    }

    /** Opens a student's lesson with its truth, for marking. */
    private Lesson lesson(GivenAnswer answer) {
        return Lesson.of(source(answer.lesson(), known(answer.student())));
    }

    private LessonSource source(int lesson, String student) {
        return LessonSource.ofStudent(lesson, seed(student), student);
    }

    private Seed seed(String student) {
        Seed seed = seeds.get(student);
        if (seed == null) {
            throw new IllegalArgumentException(noSuchStudent(student));
        }
        return seed;
    }

    private String noSuchStudent(String student) {
        return CodedSheets.noSuchStudent(student, students());
    }

    @Override
    public String toString() {
        return "class of " + LessonWords.count(seeds.size(), "student", "students");
    }
}
