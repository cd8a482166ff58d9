package parchment.drift.found;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import parchment.display.Showable;
import parchment.display.answer.Sentence;

/**
 * Lets a page tell one thing that made batches of a week differ only once, however many signs it gave.
 *
 * @param kind what it is
 * @param sure whether it is clear or may be luck or something else
 * @param what what is different, as in "the mass loss of lot Cinder Ridge lies above what was usual"
 * @param since the first day on which it shows; of one batch its roast day
 * @param size by how much, in the reader's unit and with its interval, as in "0.9 percentage points (0.4 to 1.4)"
 * @param howSure how sure it is, in a sentence
 * @param next what to do next, in a sentence
 * @param explains the signs that it accounts for, in words
 */
public record WeekCause(
        Kind kind,
        Sure sure,
        String what,
        LocalDate since,
        String size,
        String howSure,
        String next,
        List<String> explains)
        implements Showable {

    /** Says what kind of cause it is; the first stand first on the page. */
    public enum Kind {
        /** The bean probe reads differently, or may. */
        PROBE,
        /** A number moved and stayed, in one lot or several. */
        DRIFT,
        /** One batch went otherwise. */
        BATCH
    }

    /** Says whether a cause stands or only may. */
    public enum Sure {
        /** It stands. */
        CLEAR,
        /** It may be luck, or something else. */
        PERHAPS,
        /** It may be nothing: the interval of its size holds zero. It is told after all others, and not in the three first sentences. */
        WEAK
    }

    /** Copies the list. */
    public WeekCause {
        explains = List.copyOf(explains);
    }

    /** Returns the same cause with other signs that it accounts for. */
    public WeekCause explaining(List<String> others) {
        return new WeekCause(kind, sure, what, since, size, howSure, next, others);
    }

    /** Returns what is different, by how much and since when, as one sentence. */
    public String sentence() {
        return Sentence.of(what) + (kind == Kind.BATCH ? " on " : " since ") + since
                + Optional.of(size)
                        .filter(words -> !words.isEmpty())
                        .map(words -> ": " + words)
                        .orElse("") + ".";
    }

    @Override
    public String toString() {
        return (sure == Sure.WEAK ? "A weak sign, which may be nothing. " : "") + sentence() + " " + next;
    }
}
