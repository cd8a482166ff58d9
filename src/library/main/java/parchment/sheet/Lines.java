package parchment.sheet;

import java.io.IOException;
import java.io.Reader;
import java.util.Arrays;

/**
 * Hands out a text line by line without keeping it: no line may be longer than {@value #LONGEST} characters, so that a file without
 * line ends cannot fill the memory. Ends of lines may be LF, CR LF or CR.
 */
public final class Lines {
    public static final int LONGEST = 1 << 20;

    /** Says that a line is too long to be a row of a table. */
    public static final class LineTooLong extends IOException {
        private static final long serialVersionUID = 1L;

        public LineTooLong(int line) {
            super("line " + line + " is longer than " + LONGEST + " characters");
        }
    }

    private final Reader reader;
    private char[] buffer = new char[1 << 15];
    private int next;
    private int filled;
    private boolean ended;
    private int from;
    private int to;
    private int number;
    private boolean complete;

    public Lines(Reader reader) {
        this.reader = reader;
    }

    /** Moves to the next line; returns whether there is one. */
    public boolean next() throws IOException {
        if (next == filled && !fill(next)) {
            return false;
        }
        from = next;
        int at = next;
        while (true) {
            if (at == filled) {
                int length = at - from;
                if (length >= LONGEST) {
                    throw new LineTooLong(number + 1);
                }
                boolean more = fill(from);
                from = 0;
                at = length;
                if (!more) {
                    to = at;
                    next = at;
                    complete = false;
                    number++;
                    return true;
                }
            }
            char c = buffer[at];
            if (c == '\n' || c == '\r') {
                break;
            }
            at++;
        }
        to = at;
        next = at + 1;
        if (buffer[at] == '\r') {
            if (next == filled) {
                int length = to - from;
                boolean more = fill(from);
                from = 0;
                to = length;
                next = length + 1;
                if (more && buffer[next] == '\n') {
                    next++;
                }
            } else if (buffer[next] == '\n') {
                next++;
            }
        }
        complete = true;
        number++;
        return true;
    }

    /** Moves what is kept to the front and reads on; returns whether anything more came. */
    private boolean fill(int keepFrom) throws IOException {
        int kept = filled - keepFrom;
        if (kept * 2 > buffer.length) {
            char[] larger = Arrays.copyOf(buffer, buffer.length * 2);
            System.arraycopy(buffer, keepFrom, larger, 0, kept);
            buffer = larger;
        } else {
            System.arraycopy(buffer, keepFrom, buffer, 0, kept);
        }
        filled = kept;
        next = kept;
        if (ended) {
            return false;
        }
        int read = reader.read(buffer, kept, buffer.length - kept);
        if (read <= 0) {
            ended = true;
            return false;
        }
        filled += read;
        return true;
    }

    /** Returns the characters that {@link #from} and {@link #to} point into; valid until the next line is asked for. */
    public char[] buffer() {
        return buffer;
    }

    public int from() {
        return from;
    }

    public int to() {
        return to;
    }

    /** Returns the line's number, counted from 1. */
    public int number() {
        return number;
    }

    /** Returns whether the line had an end, which the last line of a file that was cut has not. */
    public boolean complete() {
        return complete;
    }

    public boolean isBlank() {
        for (int i = from; i < to; i++) {
            if (buffer[i] > ' ') {
                return false;
            }
        }
        return true;
    }

    public String text() {
        return new String(buffer, from, to - from);
    }
}
