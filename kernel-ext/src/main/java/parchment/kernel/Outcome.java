package parchment.kernel;

import java.util.List;
import java.util.Optional;

/**
 * How a cell ended.
 *
 * @param error why it failed, or nothing if it ran to its end
 */
public record Outcome(Optional<CellError> error) {
    static final Outcome FINE = new Outcome(Optional.empty());

    static Outcome failed(CellError error) {
        return new Outcome(Optional.of(error));
    }

    /** Returns the end of a cell that was stopped before its last line. */
    static Outcome stopped(CellStop.Reason reason) {
        return failed(new CellError(reason.words(), reason.sentence(), List.of(reason.sentence())));
    }

    /** Tells whether the cell ran to its end. */
    public boolean fine() {
        return error.isEmpty();
    }
}
