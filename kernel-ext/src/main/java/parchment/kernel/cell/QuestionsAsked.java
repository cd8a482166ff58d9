package parchment.kernel.cell;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;
import parchment.display.Html;
import parchment.display.live.Asked;
import parchment.kernel.page.Shown;

/**
 * Counts the different questions that were put to the same scores in one session, those of two logbooks apart even if they have one name, and says at the foot of a cell what their number
 * means: whoever asks often finds something.
 *
 * <p>A question counts when it is worked out, whatever becomes of the answer: shown, kept in a variable, or looked through in a loop for
 * those that found something. The same question once more is no new one. Safe for threads.
 */
final class QuestionsAsked {
    private final Map<Asked, Set<String>> asked = new LinkedHashMap<>();
    private final Map<Asked, Integer> before = new LinkedHashMap<>();

    /** Begins a cell: the next foot is about what is asked from here on. */
    synchronized void beginCell() {
        before.clear();
    }

    synchronized void add(Asked question) {
        Asked of = new Asked(question.of(), question.which(), "");
        Set<String> known = asked.computeIfAbsent(of, one -> new LinkedHashSet<>());
        before.putIfAbsent(of, known.size());
        known.add(question.question());
    }

    /** Returns what the running cell's questions mean, a sentence or two for each logbook that it asked; empty if it asked none. */
    synchronized List<String> foot() {
        List<String> words = new ArrayList<>();
        before.forEach((of, earlier) -> words.add(foot(words(of), earlier, count(of))));
        return words;
    }

    /** Returns what all questions of the session mean, a sentence or two for each logbook; empty if none was asked. */
    synchronized List<String> ofSession() {
        return asked.keySet().stream()
                .map(of ->
                        (count(of) == 1 ? "One question was put to " : count(of) + " different questions were put to ")
                                + words(of) + " on this page; every run counts anew. " + LuckWords.sentence(count(of)))
                .toList();
    }

    private int count(Asked of) {
        Set<String> known = asked.get(of);
        return known == null ? 0 : known.size();
    }

    /** Names what was asked; where others were asked before that have the same name, with its place among them. */
    private String words(Asked of) {
        List<Asked> namesakes =
                asked.keySet().stream().filter(one -> one.of().equals(of.of())).toList();
        int place = namesakes.indexOf(of) + 1;
        return place <= 1 ? of.of() : of.of() + " (the " + LuckWords.ordinal(place) + " logbook of that name)";
    }

    private static String foot(String of, int earlier, int now) {
        String which;
        if (now == earlier) {
            which = "Asked before, so not counted again: " + (now == 1 ? "one question has" : now + " questions have")
                    + " been put to " + of + " in this session. ";
        } else {
            which = (now == earlier + 1
                            ? "The " + LuckWords.ordinal(now) + " question"
                            : "Questions " + (earlier + 1) + (now == earlier + 2 ? " and " : " to ") + now)
                    + " put to " + of + " in this session"
                    + (earlier == 0 ? "; after a restart the count begins anew. " : ". ");
        }
        return which + LuckWords.sentence(now);
    }

    /** Returns sentences as what is shown under a cell. */
    static Shown shown(List<String> sentences) {
        Map<String, String> forms = new LinkedHashMap<>();
        forms.put(Shown.TEXT, String.join("\n", sentences));
        forms.put(
                Shown.HTML,
                sentences.stream()
                        .map(sentence -> "<p>" + Html.escape(sentence) + "</p>")
                        .collect(Collectors.joining(
                                "\n",
                                "<div role=\"note\" aria-label=\"How often these scores were asked\""
                                        + " style=\"max-width:50em;font-size:.9em;border-top:1px solid currentColor\">\n",
                                "\n</div>")));
        return new Shown(forms);
    }
}
