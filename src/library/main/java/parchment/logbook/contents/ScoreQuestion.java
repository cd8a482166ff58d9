package parchment.logbook.contents;

import java.util.Arrays;
import java.util.HashSet;
import java.util.List;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import parchment.display.Display;
import parchment.display.live.Asked;
import parchment.logbook.Logbook;

/**
 * Tells the session that a question was put to the scores of a logbook. The library's results do so themselves; a cell that works
 * something out of the scores by its own code can.
 *
 * <pre>{@code
 * var mean = logbook.cups().stream().mapToDouble(cup -> cup.score("sweetness")).average();
 * ScoreQuestion.answered(mean, logbook, "mean sweetness")
 * }</pre>
 *
 * <p>A question is the kind of its answer, what was asked (attribute, feature, settings) and the cups that were asked. Batches left out
 * by a filter that were never scored make no other question, and neither do the reader's unit, the order of rows or opening the same
 * folder again. Logbooks are told apart by their folders, and by what their cups hold where there is no folder: two of one name are two, and what a
 * filter leaves of a logbook are the same scores.
 */
public final class ScoreQuestion {
    private ScoreQuestion() {}

    /**
     * Returns the answer as it is, having told the session that it was asked for.
     *
     * @param answer what was found; its class is part of the question
     * @param logbook whose scores were asked
     * @param what the choices, each by its text; of a list the order does not count
     */
    public static <T> T answered(T answer, Logbook logbook, Object... what) {
        String choices = Stream.concat(Stream.of(answer.getClass().getSimpleName()), Arrays.stream(what))
                .map(ScoreQuestion::words)
                .collect(Collectors.joining("; "));
        // What is in the cups, not which objects they are or in what order: the sum of a set's hashes.
        String cups = "cups " + Integer.toHexString(new HashSet<>(logbook.cups()).hashCode());
        Display.asked(new Asked("the scores of " + logbook.name(), logbook.identity(), choices + "; " + cups));
        return answer;
    }

    private static String words(Object choice) {
        return choice instanceof List<?> list
                ? list.stream().map(String::valueOf).distinct().sorted().collect(Collectors.joining(", "))
                : choice.toString();
    }
}
