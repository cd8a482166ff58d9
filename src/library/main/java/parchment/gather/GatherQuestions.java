package parchment.gather;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.function.Predicate;
import parchment.logbook.contents.LogbookException;
import parchment.sheet.Words;

/**
 * Answers every question of a gathering: with what a person or a file has answered already, else with the proposal. What cannot be known from the files is
 * kept as an open question; all else is told with its key, so that it can be answered otherwise.
 */
final class GatherQuestions {
    /**
     * Holds a question that the files leave open.
     *
     * @param proposal what stands unless it is answered: never what would lose data
     * @param decides how much it decides
     */
    record Open(
            String key, String question, String proposal, Predicate<String> valid, String choices, Decides decides) {
        /** Returns the question as it is listed: what stands until it is answered is in doubt. */
        String listed() {
            return question + " Not answered yet; until then, in doubt: " + proposal + " (" + key + "; it decides "
                    + Words.count(decides.count(), decides.one(), decides.many()) + ")";
        }
    }

    /** Says how much a question decides: so many batches, or cups. */
    record Decides(int count, String one, String many) {}

    private final Map<String, String> given = new LinkedHashMap<>();
    private final Set<String> unused = new LinkedHashSet<>();
    private final Map<String, String> answered = new LinkedHashMap<>();
    private final List<String> taken = new ArrayList<>();
    private final List<String> leftOut = new ArrayList<>();
    private final List<Open> open = new ArrayList<>();

    GatherQuestions(Map<String, String> given) {
        given.forEach((key, answer) -> this.given.put(key.strip().toLowerCase(Locale.ROOT), answer.strip()));
        unused.addAll(this.given.keySet());
    }

    /** Makes a part of a key of a name: letters, digits and hyphens. */
    static String key(String name) {
        return name.toLowerCase(Locale.ROOT).replaceAll("[^\\p{L}\\p{N}]+", "-");
    }

    /**
     * Returns the answer to what the files tell well enough: it is told, and not asked.
     *
     * @throws LogbookException if what was answered is not one of the choices
     */
    String tell(String key, String statement, String proposal, Predicate<String> valid, String choices) {
        boolean known = given.containsKey(key) && !isAsked(key, choices);
        String answer = known ? given(key, valid, choices) : proposal;
        // What an earlier gathering found by itself comes back as an answer; only what the files do not say was
        // somebody's.
        return told(key, statement, answer, known && !answer.equals(proposal) ? "answered; " : "");
    }

    private String told(String key, String statement, String answer, String by) {
        answered.put(key, answer);
        String sign = statement.endsWith("?") || statement.endsWith(".") ? " " : ": ";
        say("  " + statement + sign + (answer.isEmpty() ? "\"\"" : answer) + " (" + by + key + ")");
        return answer;
    }

    /**
     * Returns the answer to what the files leave open: asked if nobody has answered it.
     *
     * @param batches how many batches it decides
     * @throws LogbookException if what was answered is not one of the choices
     */
    String ask(String key, String question, String proposal, Predicate<String> valid, String choices, int batches) {
        return askOf(key, question, proposal, valid, choices, new Decides(batches, "batch", "batches"));
    }

    /** Returns the answer to what the files leave open, where it decides other things than batches. */
    String askOf(
            String key, String question, String proposal, Predicate<String> valid, String choices, Decides decides) {
        if (given.containsKey(key) && !isAsked(key, choices)) {
            return told(key, question, given(key, valid, choices), "answered; ");
        }
        open.add(new Open(key, question, proposal, valid, choices, decides));
        answered.put(key, proposal);
        return proposal;
    }

    /** Returns whether the answer to what the files tell well enough is yes. */
    boolean tellYes(String key, String statement, String proposal) {
        return isYes(tell(key, statement, proposal, GatherQuestions::isYesOrNo, "yes, no"));
    }

    /** Returns whether the answer to an open question is yes. */
    boolean askYes(String key, String question, String proposal, int batches) {
        return isYes(ask(key, question + " (yes or no)", proposal, GatherQuestions::isYesOrNo, "yes, no", batches));
    }

    private static boolean isYesOrNo(String answer) {
        return List.of("yes", "no", "y", "n").contains(answer.toLowerCase(Locale.ROOT));
    }

    private static boolean isYes(String answer) {
        return answer.toLowerCase(Locale.ROOT).startsWith("y");
    }

    /** Returns whether a question mark stands for the answer, after telling what can be answered. */
    boolean isAsked(String key, String choices) {
        boolean asked = given.getOrDefault(key, "").equals("?");
        if (asked) {
            unused.remove(key);
            say("  " + key + " can be: " + choices + ".");
        }
        return asked;
    }

    private String given(String key, Predicate<String> valid, String choices) {
        String prepared = asChosen(given.getOrDefault(key, ""), valid);
        unused.remove(key);
        if (!valid.test(prepared)) {
            throw new LogbookException(
                    "The answer " + Words.quote(prepared) + " to " + key + " is none of: " + choices + ".");
        }
        return prepared;
    }

    /** Returns an answer as its question takes it: in small letters, where it is none of the choices as it was typed. */
    static String asChosen(String typed, Predicate<String> valid) {
        String small = typed.toLowerCase(Locale.ROOT);
        return !valid.test(typed) && valid.test(small) ? small : typed;
    }

    /** Returns whether somebody has answered the question, whatever it is. */
    boolean has(String key) {
        return given.containsKey(key);
    }

    /** Returns what was answered by key, without telling it; "" if nothing was. */
    String raw(String key) {
        unused.remove(key);
        return given.getOrDefault(key, "");
    }

    /** Lets an answer count under another key, unless that one is answered too. */
    void rename(String key, String other) {
        String answer = raw(key);
        if (!answer.isEmpty() && !given.containsKey(other)) {
            given.put(other, answer);
            unused.add(other);
        }
        given.remove(key);
    }

    /** Returns the keys that were answered and begin so. */
    List<String> keys(String begin) {
        return given.keySet().stream().filter(key -> key.startsWith(begin)).toList();
    }

    /** Keeps something to be found again by a later gathering. */
    void keep(String key, String value) {
        answered.put(key, value);
    }

    /** Returns every answer that was used, by key, in the order asked. */
    Map<String, String> answered() {
        return answered;
    }

    /** Returns the answers that a later gathering goes on from: all but those that nobody gave to open questions. */
    Map<String, String> settled() {
        Map<String, String> settled = new LinkedHashMap<>(answered);
        open.forEach(question -> settled.remove(question.key()));
        return settled;
    }

    /** Returns whether a question was asked and not answered. */
    boolean isOpen(String key) {
        return open.stream().anyMatch(question -> question.key().equals(key));
    }

    /** Returns the keys that were answered and that nothing asked for. */
    Set<String> unused() {
        return unused;
    }

    /** Returns the open questions, the one that decides most first. */
    List<Open> open() {
        List<Open> sorted = new ArrayList<>(open);
        sorted.sort(Comparator.comparing((Open question) -> question.decides().count())
                .reversed());
        return sorted;
    }

    /** Returns what was taken for what, a line each. */
    List<String> taken() {
        return taken;
    }

    /** Returns what was left out, a line each. */
    List<String> leftOut() {
        return leftOut;
    }

    void say(String line) {
        taken.add(line);
    }

    /** Takes back what was said from a place on, and says something shorter instead; answers stay as they are. */
    void takeBack(int from, String instead) {
        taken.subList(from, taken.size()).clear();
        taken.add(instead);
    }

    void leaveOut(String line) {
        leftOut.add(line);
    }
}
