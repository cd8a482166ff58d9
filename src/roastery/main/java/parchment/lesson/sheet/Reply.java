package parchment.lesson.sheet;

import java.util.Optional;
import parchment.display.Html;
import parchment.display.Showable;

/**
 * What a lesson replies to an answer or a claim.
 *
 * @param kind whether the answer was right
 * @param words why it is right, a hint, or what is missing; never the answer itself
 */
public record Reply(Kind kind, String words) implements Showable {
    /** Says whether an answer was right. */
    public enum Kind {
        /** The answer is right. */
        RIGHT("Right."),
        /** The answer is not right; the words are a hint. */
        NOT_YET("Not yet."),
        /** Nothing was filled in, or it could not be read. */
        NOTHING_YET("Nothing filled in yet."),
        /** A claim was noted; it is graded when the envelope is opened. */
        NOTED("Noted.");

        private final String words;

        Kind(String words) {
            this.words = words;
        }
    }

    @Override
    public Optional<String> html() {
        return Optional.of("<p role=\"status\" style=\"max-width:50em;border-left:4px solid currentColor;"
                + "padding-left:.7em\"><b>" + kind.words + "</b> " + Html.escape(words) + "</p>");
    }

    @Override
    public String toString() {
        return kind.words + " " + words;
    }
}
