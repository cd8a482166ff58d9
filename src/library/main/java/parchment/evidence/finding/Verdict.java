package parchment.evidence.finding;

/**
 * What a logbook tells about one question, in one word.
 *
 * <p>The rules are those of {@code VerdictRules}, written out in {@code docs/evidence.md}.
 */
public enum Verdict {
    /** A difference that was drawn by chance beforehand, seen on enough days, the same in every way of looking, and useful on days left out. */
    STRONG("strong"),
    /** The two went together more closely than chance alone explains; what else moved with them may be the cause. */
    SUGGESTIVE("suggestive"),
    /** A difference was seen, and no two places of the tried range differ by as much as matters. */
    TOO_SMALL("too small to matter"),
    /** No difference was seen, and none as large as matters is left over the tried range. */
    NOTHING_SEEN("nothing seen"),
    /** This logbook cannot answer the question, either way. */
    CANNOT_TELL("cannot tell");

    private final String words;

    Verdict(String words) {
        this.words = words;
    }

    /** Returns the verdict as it is printed. */
    public String words() {
        return words;
    }

    /** Returns the verdict one level lower: a finding weakens, and a weakened one can no longer be told. */
    public Verdict lowered() {
        return this == STRONG ? SUGGESTIVE : CANNOT_TELL;
    }

    @Override
    public String toString() {
        return words;
    }
}
