package parchment.kernel.source;

import java.util.List;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import parchment.kernel.source.CellSplitter.Part;
import parchment.kernel.source.CellSplitter.State;

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

    /** A line for another kernel, or for the system. Java would take {@code !ls} for the opposite of a variable named ls. */
    private static final Pattern NO_JAVA = Pattern.compile("^\\s*!(\\w+)(\\s[^\\n]*)?$");

    /** @param variables names of the session's variables */
    public static Readiness of(List<Part> parts, String code, Set<String> variables) {
        Matcher foreign = NO_JAVA.matcher(code);
        boolean noJava =
                foreign.matches() && !foreign.group(1).matches("true|false") && !variables.contains(foreign.group(1));
        if (noJava || parts.stream().anyMatch(Part::isBroken)) {
            return new Readiness(ReadyState.INVALID, "");
        }
        State last = parts.isEmpty() ? State.WHOLE : parts.get(parts.size() - 1).state();
        return switch (last) {
            case WHOLE -> new Readiness(ReadyState.COMPLETE, "");
            case BROKEN -> new Readiness(ReadyState.INVALID, "");
            case UNFINISHED ->
                Syntax.mayGoOn(parts.get(parts.size() - 1).source())
                        ? new Readiness(ReadyState.INCOMPLETE, " ".repeat(4 * Brackets.depth(code)))
                        : new Readiness(ReadyState.INVALID, "");
        };
    }
}
