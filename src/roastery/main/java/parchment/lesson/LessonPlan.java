package parchment.lesson;

import java.util.Optional;
import parchment.logbook.Logbook;
import parchment.virtual.VirtualLogbook;
import parchment.virtual.VirtualRoastery;
import parchment.virtual.chance.Seed;

/** Is what one lesson of the course is made of: which batches, and what is asked of them. */
interface LessonPlan {
    /** Returns the lesson's title. */
    String title();

    /** Returns what the student can do afterwards, in one sentence. */
    String goal();

    /**
     * Returns the roastery whose batches the lesson is about.
     *
     * @param draw what the lesson itself draws starts from this number
     */
    VirtualRoastery roastery(Seed seed, long draw);

    /**
     * Prepares what is asked.
     *
     * @param logbook the lesson's logbook, in the reader's unit
     * @param behind what is behind it; empty where that stays with the teacher
     */
    LessonMaterial material(Logbook logbook, Optional<VirtualLogbook> behind);
}
