package parchment.pipeline;

import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;

/**
 * Holds one named condition: how a logbook of it is drawn, and what is counted in the answers.
 *
 * @param name as in the command
 * @param words for the table
 * @param counts what is counted, the decisive one first
 * @param question draws, opens, asks, and returns each count's value by name: 1 or 0, a number, or NaN where it was not asked
 */
record Cell(String name, String words, List<Count> counts, Question question) {
    /** Draws the logbook of a seed into an empty folder, and asks. */
    interface Question {
        Map<String, Double> ask(long seed, Path folder) throws IOException;
    }

    /** What is counted. */
    record Count(String name, Kind kind, String words, String wanted) {
        static Count share(String name, String words, String wanted) {
            return new Count(name, Kind.SHARE, words, wanted);
        }

        static Count mean(String name, String words) {
            return new Count(name, Kind.MEAN, words, "");
        }
    }

    /** How the values of many logbooks are put together. */
    enum Kind {
        SHARE,
        MEAN
    }
}
