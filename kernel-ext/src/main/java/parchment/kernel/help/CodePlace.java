package parchment.kernel.help;

/**
 * What a place in a cell is in: code, a text between quotes, or a comment.
 *
 * @param kind what it is
 * @param start where the text or comment begins (its quote or first slash); the place itself in code
 */
record CodePlace(Kind kind, int start) {
    enum Kind {
        CODE,
        TEXT,
        COMMENT
    }

    /** Returns what the cursor is in; the cell need not be finished. */
    static CodePlace at(String code, int cursor) {
        int i = 0;
        while (i < cursor) {
            int end = i + 1;
            Kind kind = Kind.CODE;
            if (code.startsWith("//", i)) {
                kind = Kind.COMMENT;
                int line = code.indexOf('\n', i);
                end = line < 0 ? code.length() + 1 : line + 1;
            } else if (code.startsWith("/*", i)) {
                kind = Kind.COMMENT;
                end = after(code, "*/", i + 2);
            } else if (code.startsWith("\"\"\"", i)) {
                kind = Kind.TEXT;
                end = after(code, "\"\"\"", i + 3);
            } else if (code.charAt(i) == '"' || code.charAt(i) == '\'') {
                kind = Kind.TEXT;
                end = afterQuoted(code, i);
            }
            if (kind != Kind.CODE && cursor < end) {
                return new CodePlace(kind, i);
            }
            i = end;
        }
        return new CodePlace(Kind.CODE, cursor);
    }

    private static int after(String code, String closing, int from) {
        int at = code.indexOf(closing, from);
        return at < 0 ? code.length() + 1 : at + closing.length();
    }

    private static int afterQuoted(String code, int start) {
        char quote = code.charAt(start);
        for (int i = start + 1; i < code.length(); i++) {
            char c = code.charAt(i);
            if (c == '\\') {
                i++;
            } else if (c == quote || c == '\n') {
                return i + 1;
            }
        }
        return code.length() + 1;
    }
}
