package parchment.gather;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.function.Predicate;
import parchment.logbook.LogbookException;
import parchment.sheet.Words;

/** Asks what cannot be known from the files: first a file of answers, then a person; keeps what was answered so that it can be used again. */
final class GatherQuestions {
    private static final int TIMES_ASKED = 3;

    private final Map<String, String> given = new LinkedHashMap<>();
    private final Set<String> unused = new LinkedHashSet<>();
    private final Gather.Console console;
    private final Appendable out;
    private final StringBuilder report = new StringBuilder();
    private final Map<String, String> answered = new LinkedHashMap<>();
    private boolean explained;

    GatherQuestions(Map<String, String> given, Gather.Console console, Appendable out) {
        given.forEach((key, answer) -> this.given.put(key.toLowerCase(Locale.ROOT), answer));
        unused.addAll(this.given.keySet());
        this.console = console;
        this.out = out;
    }

    /** Makes a part of a key of a name: letters, digits and hyphens. */
    static String key(String name) {
        return name.toLowerCase(Locale.ROOT).replaceAll("[^\\p{L}\\p{N}]+", "-");
    }

    /**
     * Returns the answer to a question.
     *
     * @param proposal what an empty answer, or nobody to answer, stands for; "" if nothing can be proposed
     * @throws LogbookException if the file of answers has an answer that is not one of the choices
     */
    String ask(String key, String question, String proposal, Predicate<String> valid, String choices) {
        String prepared = given.get(key);
        if (prepared != null) {
            unused.remove(key);
            if (!valid.test(prepared)) {
                throw new LogbookException(
                        "The answer " + Words.quote(prepared) + " to " + key + " is none of: " + choices + ".");
            }
            return keep(key, question, prepared, "answered in the file");
        }
        int asked = 0;
        while (asked < TIMES_ASKED) {
            String shown = question + (proposal.isEmpty() ? " " : " [" + proposal + "] ");
            String line = console.ask(explanation() + shown).map(String::strip).orElse(null);
            if (line == null) {
                break;
            }
            String answer = line.isEmpty() ? proposal : line;
            if (valid.test(answer)) {
                answered.put(key, answer);
                report.append("  ")
                        .append(question)
                        .append(' ')
                        .append(answer)
                        .append(" (answered; ")
                        .append(key)
                        .append(")\n");
                return answer;
            }
            say((line.equals("?") ? "It can be: " : "That is none of: ") + choices + ".");
            asked += line.equals("?") ? 0 : 1;
        }
        return keep(key, question, proposal, proposal.isEmpty() ? "not answered" : "taken as proposed");
    }

    private String explanation() {
        String text =
                explained ? "" : "(Press Enter to take what stands in brackets; type ? to see what can be answered.)\n";
        explained = true;
        return text;
    }

    boolean yes(String key, String question, String proposal) {
        List<String> choices = List.of("yes", "no", "y", "n");
        return ask(
                        key,
                        question + " (yes or no)",
                        proposal,
                        a -> choices.contains(a.toLowerCase(Locale.ROOT)),
                        "yes, no")
                .toLowerCase(Locale.ROOT)
                .startsWith("y");
    }

    private String keep(String key, String question, String answer, String how) {
        answered.put(key, answer);
        say("  " + question + " " + (answer.isEmpty() ? "" : answer + " ") + "(" + how + "; " + key + ")");
        return answer;
    }

    /** Returns every answer that was used, by key, in the order asked. */
    Map<String, String> answered() {
        return answered;
    }

    /** Returns the keys of the file of answers that no question asked for. */
    Set<String> unused() {
        return unused;
    }

    /** Returns all that was said, asked and answered so far. */
    String report() {
        return report.toString();
    }

    void say(String line) {
        report.append(line).append('\n');
        try {
            out.append(line).append('\n');
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
