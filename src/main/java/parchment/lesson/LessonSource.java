package parchment.lesson;

import java.io.IOException;
import java.io.Reader;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.NoSuchElementException;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.Properties;
import parchment.logbook.Logbook;
import parchment.virtual.Chance;
import parchment.virtual.Seed;
import parchment.virtual.VirtualLogbook;
import parchment.virtual.VirtualRoastery;

/**
 * Holds where a lesson's batches come from: a seed, with the truth behind it, or a folder that a teacher handed out, without.
 *
 * @param student the student as the teacher numbered them; empty for work alone
 * @param seed the seed of work alone; empty where it is the teacher's secret
 */
record LessonSource(
        int number,
        LessonPlan plan,
        Logbook logbook,
        Optional<Behind> behind,
        Optional<String> student,
        OptionalLong seed) {
    static final String FACTS = "lesson.properties";
    static final String LOGBOOK = "logbook";

    /** Where one in a hundred fails, so many in a row never do. */
    private static final int MOST_FURTHER = 20;

    /** What is behind a lesson's logbook: the roastery, which can roast more, and what it has roasted. */
    record Behind(VirtualRoastery roastery, VirtualLogbook roasted) {}

    static LessonSource seeded(int number, long seed) {
        LessonPlan plan = Course.lesson(number);
        // The same student meets other batches in each lesson.
        long draw = Chance.of(seed, "lesson " + number).bits();
        return of(number, plan, plan.roastery(Seed.of(draw), draw), Optional.empty(), OptionalLong.of(seed));
    }

    /**
     * Opens a lesson of a student in a class, on the teacher's machine. About one seed in a hundred makes a logbook without the batches
     * that a lesson needs; nobody chose it, so the next one that comes of the secret is taken, always the same.
     */
    static LessonSource ofStudent(int number, Seed secret, String student) {
        String words = secret.text() + " lesson " + number;
        LessonSource source = ofStudent(number, words, student, 0);
        for (int further = 1; further <= MOST_FURTHER && !source.fits(); further++) {
            source = ofStudent(number, words, student, further);
        }
        return source;
    }

    private static LessonSource ofStudent(int number, String words, String student, int further) {
        LessonPlan plan = Course.lesson(number);
        String digest = Digest.of(further == 0 ? words : words + " further " + further);
        long draw = Long.parseUnsignedLong(Digest.of("draws " + digest).substring(0, 16), 16);
        return of(
                number,
                plan,
                plan.roastery(Seed.parse("secret:" + digest), draw),
                Optional.of(student),
                OptionalLong.empty());
    }

    private boolean fits() {
        try {
            plan.material(logbook, behind.map(Behind::roasted));
            return true;
        } catch (NoSuchElementException e) {
            return false;
        }
    }

    private static LessonSource of(
            int number, LessonPlan plan, VirtualRoastery roastery, Optional<String> student, OptionalLong seed) {
        VirtualLogbook roasted = roastery.run();
        return new LessonSource(
                number, plan, roasted.opened(), Optional.of(new Behind(roastery, roasted)), student, seed);
    }

    static LessonSource handedOut(int number, Path folder) throws IOException {
        Path facts = folder.resolve(FACTS);
        if (!Files.exists(facts)) {
            throw new IOException("The folder " + folder + " holds no lesson: it has no file " + FACTS
                    + ". Name the folder that your teacher gave you, or work alone with Lesson.open(" + number
                    + ", 1).");
        }
        Properties properties = new Properties();
        try (Reader reader = Files.newBufferedReader(facts, StandardCharsets.UTF_8)) {
            properties.load(reader);
        }
        String there = properties.getProperty("lesson", "");
        if (!there.equals(Integer.toString(number))) {
            throw new IOException(
                    "The folder " + folder + " holds lesson " + there + ", but lesson " + number + " was asked for.");
        }
        return new LessonSource(
                number,
                Course.lesson(number),
                Logbook.open(folder.resolve(LOGBOOK)),
                Optional.empty(),
                Optional.ofNullable(properties.getProperty("student")),
                OptionalLong.empty());
    }
}
