package parchment.phase.found;

/** Where a mark comes from, which decides what it may be used for. */
public enum Source {
    /** The roaster wrote it down. */
    WRITTEN("written by the roaster"),
    /** The logger's clock gives it: its time zero is charge. */
    LOGGED("the logger's time zero"),
    /** It shows on the curve. */
    FOUND("found on the curve"),
    /** Nobody wrote it; it stands where this roaster usually writes it. */
    PREDICTED("predicted from this roaster's habit"),
    /** Nothing shows it; it is taken to be there. */
    ASSUMED("assumed");

    private final String words;

    Source(String words) {
        this.words = words;
    }

    /** Returns the source in words, as in "written by the roaster". */
    public String words() {
        return words;
    }

    @Override
    public String toString() {
        return words;
    }
}
