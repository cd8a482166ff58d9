package parchment.kernel.source;

import java.util.ArrayList;
import java.util.List;
import java.util.regex.Pattern;
import jdk.jshell.SourceCodeAnalysis;
import jdk.jshell.SourceCodeAnalysis.Completeness;
import jdk.jshell.SourceCodeAnalysis.CompletionInfo;
import org.jspecify.annotations.Nullable;

/**
 * Cuts a cell into the snippets that JShell takes one at a time, and knows where in the cell each begins.
 *
 * <p>A semicolon may be missing at the end of any line that ends a statement: JShell forgives it at the very end of its input, so
 * the cell is also cut after the first lines that are whole by themselves, unless the next line goes on with them (begins with a
 * dot, an operator, a closing bracket).
 */
public final class CellSplitter {
    /** What the next line begins with when it belongs to the line before. */
    private static final Pattern GOES_ON = Pattern.compile(
            "^\\s*([.+\\-*/%&|^?:=<>)\\]},;{]|instanceof\\b|else\\b|catch\\b|finally\\b|throws\\b|implements\\b"
                    + "|extends\\b|permits\\b)");

    /** What a line ends with when it belongs to the line after: an annotation or a modifier alone. */
    private static final Pattern LEADS_ON =
            Pattern.compile("(^|\\n)\\s*(@\\w+(\\(.*\\))?|public|private|protected|static|final|abstract|sealed)\\s*$");

    private static final Pattern ONLY_A_COMMENT = Pattern.compile("^\\s*(//.*|/\\*.*\\*/\\s*)?$");

    /** How a part stands by itself. */
    public enum State {
        WHOLE,
        UNFINISHED,
        BROKEN
    }

    /**
     * One snippet of a cell.
     *
     * @param source what JShell is given
     * @param offset where in the cell it begins, in characters from 0
     */
    public record Part(String source, int offset, State state) {
        /** Tells whether the part cannot be read as Java; takes a few milliseconds. */
        public boolean isBroken() {
            return state == State.BROKEN || state == State.WHOLE && !Syntax.isJava(source);
        }
    }

    private final SourceCodeAnalysis analysis;

    public CellSplitter(SourceCodeAnalysis analysis) {
        this.analysis = analysis;
    }

    /** Returns the parts in order; a part that is not whole is always the last. */
    public List<Part> split(String cell) {
        List<Part> parts = new ArrayList<>();
        int offset = 0;
        while (offset < cell.length()) {
            String rest = cell.substring(offset);
            CompletionInfo info = analysis.analyzeCompletion(rest);
            Completeness state = info.completeness();
            if (state == Completeness.EMPTY) {
                break;
            }
            int used = state.isComplete() ? rest.length() - info.remaining().length() : rest.length();
            String lines = firstWholeLines(rest.substring(0, used));
            Part part;
            if (lines != null) {
                part = part(analysis.analyzeCompletion(lines).source(), offset, State.WHOLE);
                offset += lines.length();
            } else if (state.isComplete()) {
                part = part(info.source(), offset, State.WHOLE);
                offset += Math.max(1, used);
            } else {
                part = part(rest, offset, state == Completeness.UNKNOWN ? State.BROKEN : State.UNFINISHED);
            }
            parts.add(part);
            if (part.state() != State.WHOLE) {
                break;
            }
        }
        return parts;
    }

    /** JShell counts a snippet's lines from its first character that is not blank, so that is where a part begins. */
    private static Part part(String source, int offset, State state) {
        String code = source.stripLeading();
        return new Part(code, offset + source.length() - code.length(), state);
    }

    /**
     * Returns the leading lines that make a statement by themselves, or null if there is only the whole or none. Lines are added
     * one by one, so that what spans several lines is not torn.
     */
    private @Nullable String firstWholeLines(String text) {
        int end = text.indexOf('\n');
        while (end >= 0 && end < text.length() - 1) {
            String head = text.substring(0, end + 1);
            String next = nextCode(text, end + 1);
            if (next.isEmpty()) {
                return null;
            }
            if (!GOES_ON.matcher(next).find()
                    && Brackets.lastOpen(head) == null
                    && !LEADS_ON.matcher(head).find()
                    && wholeByItself(head)) {
                return head;
            }
            end = text.indexOf('\n', end + 1);
        }
        return null;
    }

    private boolean wholeByItself(String head) {
        CompletionInfo info = analysis.analyzeCompletion(head);
        return info.completeness().isComplete() && info.remaining().isBlank();
    }

    private static String nextCode(String text, int from) {
        int begin = from;
        while (begin < text.length()) {
            int end = text.indexOf('\n', begin);
            String line = text.substring(begin, end < 0 ? text.length() : end);
            if (!ONLY_A_COMMENT.matcher(line).matches()) {
                return line;
            }
            begin += line.length() + 1;
        }
        return "";
    }
}
