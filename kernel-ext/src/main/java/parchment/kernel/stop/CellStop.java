package parchment.kernel.stop;

import java.util.Locale;

/** Ends the running cell from inside it. An error rather than an exception, so that a cell's own catch of exceptions lets it through. */
public final class CellStop extends Error {
    private static final long serialVersionUID = 1L;

    /** Why a cell was ended before its last line. */
    public enum Reason {
        INTERRUPTED("Interrupted", "Interrupted: the cell was stopped before its end."),
        MEMORY(
                "Out of memory",
                String.format(
                        Locale.ROOT,
                        "The cell was stopped, because it needed nearly all the memory that this session has (%d MB). What earlier"
                                + " cells defined is still there; the variables of this one are not.",
                        Runtime.getRuntime().maxMemory() >> 20)),
        ASKED_TO_EXIT(
                "Exit refused",
                "The cell asked Java to exit, which would end the whole session; only the cell was ended."
                        + " To start afresh, restart the kernel from the notebook's menu.");

        private final String words;
        private final String sentence;

        Reason(String words, String sentence) {
            this.words = words;
            this.sentence = sentence;
        }

        public String words() {
            return words;
        }

        public String sentence() {
            return sentence;
        }
    }

    private final Reason reason;

    CellStop(Reason reason) {
        super(reason.name(), null, false, false);
        this.reason = reason;
    }

    public Reason reason() {
        return reason;
    }
}
