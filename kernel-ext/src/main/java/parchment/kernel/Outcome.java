package parchment.kernel;

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

    /** Tells whether the cell ran to its end. */
    public boolean fine() {
        return error.isEmpty();
    }
}
