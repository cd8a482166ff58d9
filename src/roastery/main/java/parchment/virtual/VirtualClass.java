package parchment.virtual;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVParser;
import org.apache.commons.csv.CSVRecord;
import parchment.display.Progress;
import parchment.display.answer.Spelling;
import parchment.file.WholeFile;
import parchment.file.WholeFolder;
import parchment.sheet.CsvText;
import parchment.virtual.chance.Seed;
import parchment.virtual.classroom.ClassList;
import parchment.virtual.people.OwnersEyes;

/**
 * Gives each student of a class a year of their own in one scenario, and keeps the truths and secret seeds with the teacher.
 *
 * <p>{@code VirtualClass.write(Scenario.named("one-cause"), names, 80, folder)} makes two folders: {@code students} with a logbook for
 * each and {@code seals.csv}, to be handed out, and {@code teacher} with the sealed truths and {@code seeds.csv}, to be kept. A seal is
 * the SHA-256 of the truth file with the secret seed in it. It tells nothing, and it holds the teacher to the file. Later
 * {@code VirtualClass.open(folder.resolve("teacher"))} roasts what a student has planned.
 *
 * <p>Sealed is what comes from the seed: days, beans, cuppers, and surfaces that the scenario lets draw. What the scenario's text sets
 * is known to whoever reads the text; {@link #openInTheText} lists it.
 */
public final class VirtualClass {
    private static final String SEEDS = "seeds.csv";
    private static final String SCENARIO = "class.scenario";

    private final Path folder;
    private final Scenario scenario;
    private final Map<String, Row> rows;

    /** A student's row in the teacher's book. */
    private record Row(Seed seed, int batches) {}

    private VirtualClass(Path folder, Scenario scenario, Map<String, Row> rows) {
        this.folder = folder;
        this.scenario = scenario;
        this.rows = rows;
    }

    /** Returns the names student-01, student-02 and so on. */
    public static List<String> numbered(int students) {
        return ClassList.numbered(students).names();
    }

    /**
     * Makes a class with a fresh secret seed for each student.
     *
     * @param students their names, as {@link ClassList} allows them
     * @param batches batches in each logbook
     * @param folder an empty folder, or one that does not exist yet
     * @throws IOException if the folder holds something already, or cannot be written
     * @throws IllegalArgumentException if a name is not allowed or comes twice
     */
    public static VirtualClass write(Scenario scenario, List<String> students, int batches, Path folder)
            throws IOException {
        List<String> names = new ClassList(students).names();
        LogbookFolder.checkEmpty(folder);
        return WholeFolder.at(folder).fill(aside -> {
            Map<String, Row> rows = writeAside(scenario, names, batches, aside);
            return new VirtualClass(folder.resolve("teacher"), scenario, rows);
        });
    }

    private static Map<String, Row> writeAside(Scenario scenario, List<String> names, int batches, Path folder)
            throws IOException {
        Path teacher = folder.resolve("teacher");
        Map<String, Row> rows = new LinkedHashMap<>();
        List<List<String>> seals = new ArrayList<>();
        List<List<String>> seeds = new ArrayList<>();
        OwnersEyes.makeFolder(teacher);
        for (String student : Progress.over(names, "making logbooks for students")) {
            Seed seed = Seed.secret();
            VirtualLogbook logbook = VirtualRoastery.of(scenario)
                    .withSeed(seed)
                    .withBatches(batches)
                    .write(folder.resolve("students").resolve(student));
            SealedTruth truth = logbook.truth();
            OwnersEyes.write(teacher.resolve(student + "-truth.json"), truth.sealedText());
            rows.put(student, new Row(seed, batches));
            seals.add(List.of(student, truth.seal()));
            seeds.add(List.of(student, truth.seal(), Integer.toString(batches), seed.text()));
        }
        WholeFile.at(teacher.resolve(SCENARIO)).write(scenario.text());
        Path secret = teacher.resolve(SEEDS);
        OwnersEyes.write(secret, table(secret, List.of("student", "seal", "batches", "seed"), seeds));
        Path open = folder.resolve("students").resolve("seals.csv");
        WholeFile.at(open).write(table(open, List.of("student", "seal"), seals));
        return rows;
    }

    private static String table(Path file, List<String> headers, List<List<String>> rows) {
        return new WrittenTable(
                        file.toString(),
                        headers.stream().map(WrittenTable::string).toList(),
                        rows)
                .text();
    }

    /**
     * Opens a class by the teacher's folder.
     *
     * @throws IOException if the folder cannot be read
     * @throws IllegalArgumentException if it is not a teacher's folder
     */
    public static VirtualClass open(Path teacher) throws IOException {
        if (!Files.exists(teacher.resolve(SEEDS)) || !Files.exists(teacher.resolve(SCENARIO))) {
            throw new IllegalArgumentException(teacher + " is not the teacher's folder of a class: expected " + SEEDS
                    + " and " + SCENARIO + " in it.");
        }
        Map<String, Row> rows = new LinkedHashMap<>();
        CSVFormat format = CSVFormat.RFC4180
                .builder()
                .setHeader()
                .setSkipHeaderRecord(true)
                .get();
        try (CSVParser parser =
                CSVParser.parse(Files.readString(teacher.resolve(SEEDS), StandardCharsets.UTF_8), format)) {
            for (CSVRecord record : parser) {
                rows.put(
                        CsvText.cell(record.get("student")),
                        new Row(Seed.parse(record.get("seed")), Integer.parseInt(record.get("batches"))));
            }
        }
        return new VirtualClass(teacher, Scenario.read(teacher.resolve(SCENARIO)), rows);
    }

    /** Returns the students' names. */
    public List<String> students() {
        return List.copyOf(rows.keySet());
    }

    /**
     * Returns a student's roastery, which roasts what the student has planned.
     *
     * @throws IllegalArgumentException if there is no such student
     */
    public VirtualRoastery roastery(String student) {
        Row row = new ClassList(students()).find(student).map(rows::get).orElse(null);
        if (row == null) {
            throw new IllegalArgumentException(
                    "The class has no student '" + student + "'." + Spelling.question(student, rows.keySet())
                            + " Students: " + String.join(", ", rows.keySet()) + ".");
        }
        return VirtualRoastery.of(scenario).withSeed(row.seed()).withBatches(row.batches());
    }

    /** Returns where the sealed truth of a student's logbook lies. */
    public Path truth(String student) {
        return folder.resolve(student + "-truth.json");
    }

    /** Returns the attributes whose surface stands in the scenario's text, where no seal hides it. */
    public List<String> openInTheText() {
        return scenario.story().attributes().stream()
                .filter(attribute -> !scenario.story().shapes().containsKey(attribute))
                .toList();
    }

    @Override
    public String toString() {
        return "class of " + rows.size() + (rows.size() == 1 ? " student" : " students") + " in the " + scenario;
    }
}
