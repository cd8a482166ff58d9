package parchment.virtual.written;

import java.util.Locale;

/**
 * Is a table as a spreadsheet may have saved it: its text from the heading on.
 *
 * <p>Spreadsheets put an invisible mark before the text, a line such as {@code sep=;} that names the sign between the columns, or
 * lines of bare signs where rows above the heading were blank.
 *
 * @param text the text from the heading on; empty if nothing but blank lines is there
 * @param delimiter the sign between the columns: the one that is named, or else the first of semicolon, tab and comma that the
 *     heading has
 * @param linesBefore how many lines stand above the heading
 */
public record SavedTable(String text, char delimiter, int linesBefore) {
    private static final String NAMED = "sep=";
    private static final String BARE = "[\\s,;\"]*";

    /** Finds the heading in the text of a file. */
    public static SavedTable of(String written) {
        int at = written.startsWith("\uFEFF") ? 1 : 0;
        int lines = 0;
        char named = 0;
        while (at < written.length()) {
            int end = endOfLine(written, at);
            String line = written.substring(at, end);
            String bare = line.replace("\"", "").toLowerCase(Locale.ROOT);
            if (bare.startsWith(NAMED) && bare.length() <= NAMED.length() + 1) {
                named = bare.length() > NAMED.length() ? bare.charAt(NAMED.length()) : named;
            } else if (!line.matches(BARE)) {
                return new SavedTable(written.substring(at), named == 0 ? sign(line) : named, lines);
            }
            at = written.startsWith("\r\n", end) ? end + 2 : end + 1;
            lines++;
        }
        return new SavedTable("", ',', lines);
    }

    private static int endOfLine(String text, int from) {
        int end = from;
        while (end < text.length() && text.charAt(end) != '\n' && text.charAt(end) != '\r') {
            end++;
        }
        return end;
    }

    private static char sign(String heading) {
        return heading.contains(";") ? ';' : heading.contains("\t") ? '\t' : ',';
    }
}
