package parchment.kernel;

import java.util.List;
import parchment.kernel.CellSplitter.Part;
import parchment.kernel.CellSplitter.State;

/**
 * Whether a cell could run as it stands.
 *
 * @param state whole, unfinished or broken
 * @param indent blanks to begin the next line with; empty unless unfinished
 */
public record Readiness(ReadyState state, String indent) {

    /** The three answers. */
    public enum ReadyState {
        COMPLETE,
        INCOMPLETE,
        INVALID
    }

    static Readiness of(List<Part> parts, String code) {
        if (parts.stream().anyMatch(Part::isBroken)) {
            return new Readiness(ReadyState.INVALID, "");
        }
        State last = parts.isEmpty() ? State.WHOLE : parts.get(parts.size() - 1).state();
        return switch (last) {
            case WHOLE -> new Readiness(ReadyState.COMPLETE, "");
            case BROKEN -> new Readiness(ReadyState.INVALID, "");
            case UNFINISHED -> new Readiness(ReadyState.INCOMPLETE, " ".repeat(4 * Brackets.depth(code)));
        };
    }
}
