package parchment.lesson;

import java.util.Optional;
import parchment.logbook.Logbook;
import parchment.virtual.VirtualLogbook;

/** Is what one lesson of the course is made of: which batches, and what is asked of them. */
interface LessonPlan {
    /** Returns the lesson's title. */
    String title();

    /** Returns what the student can do afterwards, in one sentence. */
    String goal();

    /** Roasts and cups the lesson's batches. */
    VirtualLogbook roast(long seed);

    /**
     * Prepares what is asked.
     *
     * @param logbook the lesson's logbook, in the reader's unit
     * @param behind what is behind it; empty where that stays with the teacher
     */
    LessonMaterial material(Logbook logbook, Optional<VirtualLogbook> behind);
}
