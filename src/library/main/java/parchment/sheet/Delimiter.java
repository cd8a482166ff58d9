package parchment.sheet;

import java.io.IOException;
import java.io.Reader;

/**
 * Finds out which sign stands between the columns of a table in a logbook's own form: its first line is the heading, and decides. A text of which nobody knows where
 * its table begins is looked at as a whole by {@link DelimiterChoice}.
 */
public final class Delimiter {
    private static final int LONGEST_HEADING = 1 << 15;

    private Delimiter() {}

    /** Looks at the first line that is not blank and leaves the reader where it was. */
    public static char ofFirstLine(Reader reader) throws IOException {
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
        return of(start, from, to);
    }

    public static char of(char[] text, int from, int to) {
        int commas = count(text, from, to, ',');
        int semicolons = count(text, from, to, ';');
        int tabs = count(text, from, to, '\t');
        if (commas >= semicolons && commas >= tabs) {
            return ',';
        }
        return semicolons >= tabs ? ';' : '\t';
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

    /** Returns what a sign between columns is called. */
    public static String nameOf(char delimiter) {
        return switch (delimiter) {
            case ',' -> "comma";
            case ';' -> "semicolon";
            case '\t' -> "tab";
            case ' ' -> "blank";
            default -> String.valueOf(delimiter);
        };
    }
}
