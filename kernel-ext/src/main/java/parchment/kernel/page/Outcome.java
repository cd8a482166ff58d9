package parchment.kernel.page;

import java.util.List;
import java.util.Optional;
import parchment.kernel.stop.CellStop;
import parchment.kernel.words.CellError;

/**
 * How a cell ended.
 *
 * @param error why it failed, or nothing if it ran to its end
 */
public record Outcome(Optional<CellError> error) {
    public static final Outcome FINE = new Outcome(Optional.empty());

    public static Outcome failed(CellError error) {
        return new Outcome(Optional.of(error));
    }

    /** Returns the end of a cell that was stopped before its last line. */
    public static Outcome stopped(CellStop.Reason reason) {
        return failed(new CellError(reason.words(), reason.sentence(), List.of(reason.sentence())));
    }

    /** Returns the end of a cell whose work goes on, because nothing can end it; the method that it is inside of may be empty. */
    public static Outcome leftBehind(String inside) {
        String stopped = CellStop.Reason.INTERRUPTED.sentence();
        String goesOn = inside.isEmpty()
                ? "It has not ended yet: it may go on in the background, and then slows down what runs meanwhile."
                : "What it was doing inside `" + inside
                        + "` cannot be ended from outside: it goes on in the background until it is"
                        + " done, and slows down what runs meanwhile.";
        return failed(new CellError(
                CellStop.Reason.INTERRUPTED.words(),
                stopped,
                List.of(stopped, goesOn + " To be rid of it, restart the kernel from the notebook's menu.")));
    }

    /** Tells whether the cell ran to its end. */
    public boolean fine() {
        return error.isEmpty();
    }
}
