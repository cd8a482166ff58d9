package parchment.logbook;

import java.io.IOException;
import java.io.Reader;

/** Finds out which sign stands between the columns. */
final class Delimiter {
    private static final int LONGEST_HEADING = 1 << 15;

    private Delimiter() {}

    /** Looks at the first line that is not blank and leaves the reader where it was. */
    static char ofFirstLine(Reader reader, ProblemLog problems) throws IOException {
        reader.mark(LONGEST_HEADING + 1);
        char[] start = new char[LONGEST_HEADING];
        int filled = 0;
        while (filled < start.length) {
            int read = reader.read(start, filled, start.length - filled);
            if (read < 0) {
                break;
            }
            filled += read;
        }
        reader.reset();
        int from = 0;
        while (from < filled && Character.isWhitespace(start[from]) && start[from] != '\t') {
            from++;
        }
        int to = from;
        while (to < filled && start[to] != '\n' && start[to] != '\r') {
            to++;
        }
        return of(start, from, to, problems);
    }

    static char of(char[] text, int from, int to, ProblemLog problems) {
        int commas = count(text, from, to, ',');
        int semicolons = count(text, from, to, ';');
        int tabs = count(text, from, to, '\t');
        if (commas >= semicolons && commas >= tabs) {
            return ',';
        }
        boolean semicolon = semicolons >= tabs;
        problems.add(
                0,
                "",
                semicolon ? "semicolons between the columns" : "tabs between the columns",
                "commas",
                "read with them, and a comma in a number taken for the decimal comma");
        return semicolon ? ';' : '\t';
    }

    private static int count(char[] text, int from, int to, char sign) {
        boolean quoted = false;
        int count = 0;
        for (int i = from; i < to; i++) {
            if (text[i] == '"') {
                quoted = !quoted;
            } else if (text[i] == sign && !quoted) {
                count++;
            }
        }
        return count;
    }
}
