package parchment.evidence.finding;

/** Says in words what a finished trial tells. Its rules are the trial's own, not those of {@link Verdict}. */
public enum TrialVerdict {
    /** The control that chance chose did change the score. */
    DID("did"),
    /** Whatever it did is smaller than the smallest difference that was stated beforehand. */
    NOTHING_LARGER("did nothing larger than"),
    /** The trial cannot answer its question, either way; the same words as of any other answer. */
    CANNOT_TELL(Verdict.CANNOT_TELL.words());

    private final String words;

    TrialVerdict(String words) {
        this.words = words;
    }

    /** Returns the verdict as it is printed; of {@link #NOTHING_LARGER} the difference still has to follow. */
    public String words() {
        return words;
    }

    @Override
    public String toString() {
        return words;
    }
}
