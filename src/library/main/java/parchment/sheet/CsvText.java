package parchment.sheet;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.List;
import java.util.regex.Pattern;
import org.apache.commons.csv.CSVFormat;

/**
 * Writes rows as CSV that a spreadsheet opens without working anything out, and reads a cell so written as it was.
 *
 * <p>A spreadsheet takes a cell that begins with {@code =}, {@code +}, {@code -} or {@code @} for a formula, which may fetch or start
 * something. Such a cell is written with an apostrophe before it, the sign by which spreadsheets themselves know text; so is one that
 * begins with a tab or the end of a line, and so is what follows a semicolon, a tab or the end of a line within a cell, where a
 * spreadsheet that expects other signs between the columns begins a cell. A cell that is a negative number stays as it is. One that has
 * apostrophes there already gets one more, and {@link #cell} takes one away in the same places only, so that any text comes back
 * unchanged.
 *
 * @see <a href="https://owasp.org/www-community/attacks/CSV_Injection">OWASP, CSV Injection</a> (the signs; from memory)
 */
public final class CsvText {
    private static final String BLANKS = "\\s\\p{Z}\\p{C}";

    private static final String NEGATIVE = "-(?:\\d+[.,]?\\d*|[.,]\\d+)(?:[eE][+-]?\\d+)?[" + BLANKS + "]*";

    /** The signs of formulas, also as East Asian keyboards write them. */
    private static final String SIGN = "[=+\\-@\uFF1D\uFF0B\uFF0D\uFF20]";

    /** What a spreadsheet works out: a sign of a formula, unless the whole cell is a negative number. */
    private static final String FORMULA = "(?!" + NEGATIVE + "\\z)" + SIGN;

    /** The beginning of a cell that is to be taken for nothing but text, with apostrophes before it. */
    private static final String START = "(?=[" + BLANKS + "']*" + FORMULA + "|'*[\\t\\r\\n])";

    /** Where another sign between the columns would begin a cell. */
    private static final String INNER = "([;\\t\\r\\n][\"" + BLANKS + "]*)";

    private static final String INNER_START = "('*)(?=" + SIGN + ")";
    private static final Pattern BARE_START = Pattern.compile("\\A" + START);
    private static final Pattern GUARDED_START = Pattern.compile("\\A'" + START);
    private static final Pattern BARE_INNER = Pattern.compile(INNER + INNER_START);
    private static final Pattern GUARDED_INNER = Pattern.compile(INNER + "'" + INNER_START);
    private static final CSVFormat FORMAT =
            CSVFormat.RFC4180.builder().setRecordSeparator("\n").get();

    private CsvText() {}

    /** Returns rows as the text of a file: commas, quotation marks where they are needed, a line feed at each line's end. */
    public static String of(List<? extends List<String>> rows) {
        StringBuilder text = new StringBuilder();
        try {
            for (List<String> row : rows) {
                append(row, text);
            }
        } catch (IOException e) {
            throw new UncheckedIOException("Text in memory could not be written.", e);
        }
        return text.toString();
    }

    /**
     * Writes one row.
     *
     * @throws IOException if it cannot be written
     */
    public static void append(List<String> row, Appendable to) throws IOException {
        FORMAT.printRecord(to, row.stream().map(CsvText::guarded).toArray());
    }

    /** Returns a cell as it was before it was written, without the apostrophes that were put there. */
    public static String cell(String written) {
        if (written.indexOf('\'') < 0) {
            return written;
        }
        String text = GUARDED_INNER.matcher(written).replaceAll("$1$2");
        return GUARDED_START.matcher(text).replaceFirst("");
    }

    private static String guarded(String cell) {
        if (isPlain(cell)) {
            return cell;
        }
        String text = BARE_START.matcher(cell).replaceFirst("'");
        return BARE_INNER.matcher(text).replaceAll("$1'$2");
    }

    /** Most cells are numbers, dates and words: a letter or digit first, and nothing that could begin another cell. */
    private static boolean isPlain(String cell) {
        if (cell.isEmpty()) {
            return true;
        }
        boolean inner = false;
        for (int i = 0; i < cell.length(); i++) {
            char c = cell.charAt(i);
            inner |= c == ';' || c == '\t' || c == '\r' || c == '\n';
        }
        return !inner && Character.isLetterOrDigit(cell.charAt(0));
    }
}
