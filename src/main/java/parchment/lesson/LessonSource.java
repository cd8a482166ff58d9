package parchment.lesson;

import java.io.IOException;
import java.io.Reader;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Optional;
import java.util.Properties;
import parchment.logbook.Logbook;
import parchment.virtual.Chance;
import parchment.virtual.VirtualLogbook;

/**
 * Holds where a lesson's batches come from: a seed, with the truth behind it, or a folder that a teacher handed out, without.
 *
 * @param student the student as the teacher numbered them; empty for work alone
 */
record LessonSource(
        int number, LessonPlan plan, Logbook logbook, Optional<VirtualLogbook> behind, Optional<String> student) {
    static final String FACTS = "lesson.properties";
    static final String LOGBOOK = "logbook";

    static LessonSource seeded(int number, long seed) {
        LessonPlan plan = Course.lesson(number);
        VirtualLogbook roasted = plan.roast(seedOf(number, seed));
        return new LessonSource(number, plan, roasted.opened(), Optional.of(roasted), Optional.empty());
    }

    /** Returns the roastery's seed: the same student meets other batches in each lesson. */
    static long seedOf(int number, long seed) {
        return Chance.of(seed, "lesson " + number).bits();
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
                Optional.ofNullable(properties.getProperty("student")));
    }
}
