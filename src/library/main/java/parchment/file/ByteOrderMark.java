package parchment.file;

import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;

/**
 * Is the mark that some programs put before a text, so that a reader knows how its letters are written: as UTF-8, or as UTF-16 as in the
 * "Unicode text" of spreadsheets.
 *
 * @param charset what the mark says; UTF-8 where there is none
 * @param bytes how many bytes the mark takes; 0 where there is none
 * @see <a href="https://www.unicode.org/faq/utf_bom.html">Unicode, byte order mark</a>
 */
public record ByteOrderMark(Charset charset, int bytes) {
    /** Finds the mark at the beginning of a file; three bytes are enough. */
    public static ByteOrderMark of(byte[] beginning) {
        if (startsWith(beginning, 0xEF, 0xBB, 0xBF)) {
            return new ByteOrderMark(StandardCharsets.UTF_8, 3);
        }
        if (startsWith(beginning, 0xFF, 0xFE)) {
            return new ByteOrderMark(StandardCharsets.UTF_16LE, 2);
        }
        if (startsWith(beginning, 0xFE, 0xFF)) {
            return new ByteOrderMark(StandardCharsets.UTF_16BE, 2);
        }
        return new ByteOrderMark(StandardCharsets.UTF_8, 0);
    }

    private static boolean startsWith(byte[] bytes, int... mark) {
        if (bytes.length < mark.length) {
            return false;
        }
        for (int i = 0; i < mark.length; i++) {
            if ((bytes[i] & 0xFF) != mark[i]) {
                return false;
            }
        }
        return true;
    }
}
