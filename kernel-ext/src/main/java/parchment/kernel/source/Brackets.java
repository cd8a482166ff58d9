package parchment.kernel.source;

import java.util.ArrayDeque;
import java.util.Deque;
import org.jspecify.annotations.Nullable;

/** Finds the bracket, comment or text that a piece of Java opens and does not close. */
public final class Brackets {
    /** What is open, where, and what would close it. */
    public record Open(String what, int offset, String closing) {}

    private Brackets() {}

    /** Returns the innermost thing left open at the end, or null. */
    public static @Nullable Open lastOpen(String source) {
        return open(source).peek();
    }

    /** Returns how many things are left open at the end. */
    static int depth(String source) {
        return open(source).size();
    }

    /** Returns where the bracket of the innermost call is whose arguments the end is among; -1 if it is among none. */
    public static int innermostCall(String source) {
        for (Open open : open(source)) {
            if (open.closing().equals("}")) {
                return -1;
            }
            String before = source.substring(0, open.offset()).stripTrailing();
            if (open.closing().equals(")")
                    && !before.isEmpty()
                    && (Character.isJavaIdentifierPart(before.charAt(before.length() - 1)) || before.endsWith(">"))) {
                return open.offset();
            }
        }
        return -1;
    }

    private static Deque<Open> open(String source) {
        Deque<Open> open = new ArrayDeque<>();
        int i = 0;
        while (i < source.length()) {
            char c = source.charAt(i);
            if (source.startsWith("//", i)) {
                int end = source.indexOf('\n', i);
                i = end < 0 ? source.length() : end;
            } else if (source.startsWith("/*", i)) {
                int end = source.indexOf("*/", i + 2);
                if (end < 0) {
                    open.push(new Open("comment", i, "*/"));
                    return open;
                }
                i = end + 2;
            } else if (source.startsWith("\"\"\"", i)) {
                int end = source.indexOf("\"\"\"", i + 3);
                if (end < 0) {
                    open.push(new Open("text block", i, "\"\"\""));
                    return open;
                }
                i = end + 3;
            } else if (c == '"' || c == '\'') {
                i = afterQuoted(source, i);
            } else {
                track(open, c, i);
                i++;
            }
        }
        return open;
    }

    private static void track(Deque<Open> open, char c, int at) {
        switch (c) {
            case '(' -> open.push(new Open("bracket (", at, ")"));
            case '[' -> open.push(new Open("bracket [", at, "]"));
            case '{' -> open.push(new Open("block {", at, "}"));
            case ')', ']', '}' -> {
                if (!open.isEmpty() && open.peek().closing().charAt(0) == c) {
                    open.pop();
                }
            }
            default -> {
                // Not a bracket.
            }
        }
    }

    private static int afterQuoted(String source, int start) {
        char quote = source.charAt(start);
        for (int i = start + 1; i < source.length(); i++) {
            char c = source.charAt(i);
            if (c == '\\') {
                i++;
            } else if (c == quote || c == '\n') {
                return i + 1;
            }
        }
        return source.length();
    }
}
