package parchment.sheet;

import java.io.IOException;
import java.io.InputStream;
import java.io.Reader;
import java.nio.charset.Charset;
import java.util.Objects;
import java.util.Optional;

/**
 * Reads bytes as text while they come, without keeping them: UTF-8, and every byte that is no UTF-8 as the old encoding has it that the file is in.
 *
 * <p>A text in which no letter was UTF-8 before the first byte that is none is read in the old encoding from there on; where there was one, that
 * byte alone is. No letter becomes the replacement character, U+FFFD, unless the file itself holds it. Not for use by several threads.
 */
public final class TextReader extends Reader {
    private final InputStream in;
    private final byte[] bytes = new byte[1 << 15];
    private final TextEncoding found;
    private int next;
    private int filled;
    private boolean ended;
    private boolean anyUtf8;
    private boolean old;
    private int line = 1;
    private boolean afterReturn;
    private int firstOldLine;
    private char low;

    TextReader(InputStream in, TextEncoding found) {
        this.in = in;
        this.found = found;
    }

    /** Returns how the text is encoded as far as it was read, and where that was first seen; empty for UTF-8 and for what a mark says. */
    public Optional<Other> other() {
        if (found.isUtf16()) {
            return found.isMarked() ? Optional.empty() : Optional.of(new Other(found.words() + " without a mark", 1));
        }
        return firstOldLine == 0 ? Optional.empty() : Optional.of(new Other(found.words(), firstOldLine));
    }

    /**
     * Is an encoding other than UTF-8 that a text was found in.
     *
     * @param encoding its name
     * @param line the first line that holds such a letter, from 1
     */
    public record Other(String encoding, int line) {}

    @Override
    public int read(char[] to, int from, int length) throws IOException {
        Objects.checkFromIndexSize(from, length, to.length);
        int at = from;
        int end = from + length;
        if (low != 0 && at < end) {
            to[at++] = low;
            low = 0;
        }
        while (at < end) {
            if (next == filled && (at > from || !fill())) {
                break;
            }
            if (found.isUtf16()) {
                to[at++] = utf16();
                continue;
            }
            byte b = bytes[next];
            if (b >= 0) {
                next++;
                count(b);
                to[at++] = (char) b;
            } else {
                at = letter(to, at, end);
            }
        }
        return at == from && length > 0 ? -1 : at - from;
    }

    private void count(byte b) {
        if (b == '\r' || b == '\n' && !afterReturn) {
            line++;
        }
        afterReturn = b == '\r';
    }

    private int letter(char[] to, int at, int end) throws IOException {
        if (!old) {
            int point = utf8();
            if (point >= 0) {
                anyUtf8 = true;
                if (point < 0x10000) {
                    to[at] = (char) point;
                    return at + 1;
                }
                to[at] = Character.highSurrogate(point);
                low = Character.lowSurrogate(point);
                if (at + 1 < end) {
                    to[at + 1] = low;
                    low = 0;
                    return at + 2;
                }
                return at + 1;
            }
            old = !anyUtf8;
        }
        if (firstOldLine == 0) {
            firstOldLine = line;
        }
        to[at] = found.old(bytes[next++]);
        afterReturn = false;
        return at + 1;
    }

    /** Reads one letter of two to four bytes in its shortest form; -1 if the bytes are none. */
    private int utf8() throws IOException {
        int first = bytes[next] & 0xFF;
        int more = first >= 0xC2 && first < 0xE0
                ? 1
                : first >= 0xE0 && first < 0xF0 ? 2 : first >= 0xF0 && first < 0xF5 ? 3 : 0;
        while (more > 0 && filled - next <= more && fill()) {
            // Several readings may be needed where a letter lies on the border of two.
        }
        if (more == 0 || filled - next <= more) {
            return -1;
        }
        int point = first & (more == 1 ? 0x1F : more == 2 ? 0x0F : 0x07);
        for (int i = 1; i <= more; i++) {
            int b = bytes[next + i] & 0xFF;
            if ((b & 0xC0) != 0x80) {
                return -1;
            }
            point = point << 6 | b & 0x3F;
        }
        boolean shortest = more == 1 || point >= (more == 2 ? 0x800 : 0x10000);
        if (!shortest || point > 0x10FFFF || point >= 0xD800 && point < 0xE000) {
            return -1;
        }
        next += more + 1;
        afterReturn = false;
        return point;
    }

    private char utf16() throws IOException {
        if (filled - next < 2 && !fill()) {
            // Half a letter at the end of a file that was cut.
            next = filled;
            return '?';
        }
        int first = bytes[next] & 0xFF;
        int second = bytes[next + 1] & 0xFF;
        next += 2;
        return (char)
                (found == TextEncoding.UTF_16LE || found == TextEncoding.MARKED_UTF_16LE
                        ? second << 8 | first
                        : first << 8 | second);
    }

    /** Reads on behind what is left; returns whether anything came. */
    private boolean fill() throws IOException {
        System.arraycopy(bytes, next, bytes, 0, filled - next);
        filled -= next;
        next = 0;
        if (ended) {
            return false;
        }
        int read = in.read(bytes, filled, bytes.length - filled);
        ended = read < 0;
        filled += Math.max(read, 0);
        return read > 0;
    }

    @Override
    public void close() throws IOException {
        in.close();
    }

    /** Returns the charset of old Macintosh texts, if this Java has it. */
    static Optional<Charset> macRoman() {
        return Charset.isSupported("x-MacRoman") ? Optional.of(Charset.forName("x-MacRoman")) : Optional.empty();
    }
}
