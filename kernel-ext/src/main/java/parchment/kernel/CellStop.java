package parchment.kernel;

/** Ends the running cell from inside it. An error rather than an exception, so that a cell's own catch of exceptions lets it through. */
final class CellStop extends Error {
    private static final long serialVersionUID = 1L;

    /** Why a cell was ended before its last line. */
    enum Reason {
        INTERRUPTED,
        ASKED_TO_EXIT,
        TOO_MUCH_OUTPUT
    }

    private final Reason reason;

    CellStop(Reason reason) {
        super(reason.name(), null, false, false);
        this.reason = reason;
    }

    Reason reason() {
        return reason;
    }
}
