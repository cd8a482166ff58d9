package parchment.sheet;

import java.io.FilterReader;
import java.io.IOException;
import java.io.Reader;

/** Stops a table that would fill the memory: one row that never ends (a quotation mark that was never closed), or too many rows. */
public final class BoundedReader extends FilterReader {
    /** Longest row, in characters; a note of a page has some 3,000. */
    public static final long LONGEST_ROW = 1 << 20;

    /** Says why the reading stopped. */
    public static final class TooLong extends IOException {
        private static final long serialVersionUID = 1L;

        public TooLong(String what) {
            super(what);
        }
    }

    private final long longestFile;
    private long total;
    private long sinceRow;

    public BoundedReader(Reader in, long longestFile) {
        super(in);
        this.longestFile = longestFile;
    }

    /** A table is kept as text while it is read, and its rows as objects after: a sixteenth of the memory leaves room for both. */
    public static long mostCharacters() {
        return Math.max(1 << 22, Runtime.getRuntime().maxMemory() / 16);
    }

    public void startRow() {
        sinceRow = 0;
    }

    @Override
    public int read() throws IOException {
        int c = super.read();
        count(c < 0 ? 0 : 1);
        return c;
    }

    @Override
    public int read(char[] buffer, int from, int length) throws IOException {
        int read = super.read(buffer, from, length);
        count(Math.max(read, 0));
        return read;
    }

    private void count(int read) throws IOException {
        total += read;
        sinceRow += read;
        if (sinceRow > LONGEST_ROW) {
            throw new TooLong("a row of more than " + LONGEST_ROW + " characters");
        }
        if (total > longestFile) {
            throw new TooLong("more than " + longestFile / 1_000_000 + " million characters");
        }
    }
}
