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
import java.util.function.Function;
import parchment.logbook.Logbook;
import parchment.virtual.VirtualLogbook;
import parchment.virtual.VirtualRoastery;
import parchment.virtual.chance.Chance;
import parchment.virtual.chance.Seed;

/**
 * Where a lesson's batches come from: a seed, with the truth behind it, or a folder that a teacher handed out, without.
 *
 * @param student the student as the teacher numbered them; empty for work alone
 * @param seed the seed of work alone; empty where it is the teacher's secret
 * @param code what binds answers to the folder that was handed out; blank for work alone
 */
record LessonSource(
        int number,
        LessonPlan plan,
        Logbook logbook,
        Optional<Behind> behind,
        Optional<String> student,
        OptionalLong seed,
        String code) {
    static final String FACTS = "lesson.properties";
    static final String LOGBOOK = "logbook";

    /** Where one in a hundred fails, so many in a row never do. */
    private static final int MOST_FURTHER = 20;

    /** What is behind a lesson's logbook: the roastery, which can roast more, and what it has roasted. */
    record Behind(VirtualRoastery roastery, VirtualLogbook roasted) {}

    /** Opens a lesson for work alone; the same student meets other batches in each lesson. */
    static LessonSource seeded(int number, long seed) {
        LessonPlan plan = Course.lesson(number);
        return firstThatFits("lesson " + number, name -> {
            long draw = Chance.of(seed, name).bits();
            return of(number, plan, plan.roastery(Seed.of(draw), draw), Optional.empty(), OptionalLong.of(seed));
        });
    }

    /** Opens a lesson of a student in a class, on the teacher's machine. */
    static LessonSource ofStudent(int number, Seed secret, String student) {
        LessonPlan plan = Course.lesson(number);
        return firstThatFits(secret.text() + " lesson " + number, name -> {
            String digest = Digest.of(name);
            long draw = Long.parseUnsignedLong(Digest.of("draws " + digest).substring(0, 16), 16);
            VirtualRoastery roastery = plan.roastery(Seed.parse("secret:" + digest), draw);
            return of(number, plan, roastery, Optional.of(student), OptionalLong.empty());
        });
    }

    /**
     * Makes the source of a name. About one in a hundred makes a logbook without the batches that a lesson needs; then the next one that
     * comes of the name is taken, always the same.
     */
    private static LessonSource firstThatFits(String name, Function<String, LessonSource> make) {
        LessonSource source = make.apply(name);
        for (int further = 1; further <= MOST_FURTHER && !source.fits(); further++) {
            source = make.apply(name + " further " + further);
        }
        return source;
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
                number, plan, roasted.opened(), Optional.of(new Behind(roastery, roasted)), student, seed, "");
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
                OptionalLong.empty(),
                properties.getProperty("code", ""));
    }
}
