package parchment.lesson;

import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * Holds what a lesson asks of one logbook.
 *
 * @param roles the names of the batches that the lesson speaks of, by what it calls them
 * @param questions the questions, in the order of the page
 */
record LessonMaterial(Map<String, String> roles, List<LessonQuestion> questions) {
    LessonMaterial {
        roles = Collections.unmodifiableMap(new LinkedHashMap<>(roles));
        questions = List.copyOf(questions);
    }
}
