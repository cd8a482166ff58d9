package parchment.display.answer;

import java.util.Optional;
import parchment.display.Showable;

/**
 * Begins an answer with three sentences that can be read aloud: what was found, how sure that is, and what to do next.
 *
 * <p>It stands first on the page of an answer. Each sentence has at most two clauses and 25 words, and none names a method.
 *
 * @param found what was found, between two readings that the reader knows
 * @param howSure how sure it is, or what stands in the way
 * @param next what to do next
 */
public record InShort(String found, String howSure, String next) implements Showable {
    @Override
    public String text() {
        return found + "\n" + howSure + "\n" + next;
    }

    @Override
    public Optional<String> html() {
        return Optional.of("<p style=\"max-width:36em;font-size:1.2em;margin:.4em 0\">" + WholeNames.inParagraph(found)
                + "</p>\n<p style=\"max-width:50em;margin:.4em 0\">" + WholeNames.inParagraph(howSure + " " + next)
                + "</p>");
    }

    @Override
    public String toString() {
        return found + " " + howSure + " " + next;
    }
}
