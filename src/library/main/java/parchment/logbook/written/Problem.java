package parchment.logbook.written;

import java.util.Locale;

/**
 * One thing that could not be read as written, with where it stands and what was done about it, so that nothing is dropped in silence.
 *
 * @param file the file, relative to the logbook folder
 * @param line the line, counted from 1; 0 if the problem is not on one line
 * @param column the column's header, or empty if the problem is not in one column
 * @param found what stood there
 * @param expected what was expected
 * @param done what was done about it, as in "row skipped" or "value treated as missing"
 * @param batch the batch whose row or curve it is about, or empty if it is not about one batch
 */
public record Problem(String file, int line, String column, String found, String expected, String done, String batch) {
    /** Makes a problem that is not about one batch. */
    public Problem(String file, int line, String column, String found, String expected, String done) {
        this(file, line, column, found, expected, done, "");
    }

    /** Returns the same problem as one of a batch. */
    public Problem of(String name) {
        return new Problem(file, line, column, found, expected, done, name);
    }

    /** What is done about a file of which nothing can be used. */
    public static final String FILE_LEFT_OUT = "file left out";

    /** What was expected where a reading is one of the numbers that mean "no reading". */
    public static final String NO_SIGN_FOR_NONE = "a reading, not a sign for none";

    /** Tells whether it is only of readings that say themselves that there was none: nothing of that was misread. */
    public boolean isOfNoReadings() {
        return expected.equals(NO_SIGN_FOR_NONE);
    }

    /** Tells whether the whole file was left out. */
    public boolean leavesOutItsFile() {
        return done.equals(FILE_LEFT_OUT);
    }

    /** Prints the problem as one sentence, the words that a strict opening stops with. */
    @Override
    public String toString() {
        String place = line > 0 ? String.format(Locale.ROOT, "%s, line %d", file, line) : file;
        String inColumn = column.isEmpty() ? "" : ", column '" + column + "'";
        // An expectation may end in a sentence of its own; its full stop would stand before the semicolon.
        String wanted = expected.endsWith(".") ? expected.substring(0, expected.length() - 1) : expected;
        return place + inColumn + ": found " + found + "; expected " + wanted + "; " + done + ".";
    }
}
