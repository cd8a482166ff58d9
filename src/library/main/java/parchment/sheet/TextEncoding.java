package parchment.sheet;

import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import parchment.file.ByteOrderMark;

/**
 * Is how the letters of a text are written, as far as its beginning tells.
 *
 * @see <a href="https://encoding.spec.whatwg.org/#legacy-single-byte-encodings">WHATWG Encoding, windows-1252</a> (the five bytes that Windows-1252
 *     leaves open are the control signs that Latin-1 has there; from memory)
 */
enum TextEncoding {
    /** UTF-8, and Windows-1252 where bytes are no UTF-8. Latin-1 has the same letters. */
    UTF_8("Windows-1252", windows()),
    /** UTF-8, and Mac Roman where bytes are no UTF-8. */
    OLD_MACINTOSH("Mac Roman", macintosh()),
    UTF_16LE("UTF-16", ""),
    UTF_16BE("UTF-16", ""),
    MARKED_UTF_16LE("UTF-16", ""),
    MARKED_UTF_16BE("UTF-16", "");

    private static final int FEWEST_PAIRS = 2;

    private final String words;
    private final String upper;

    TextEncoding(String words, String upper) {
        this.words = words;
        this.upper = upper;
    }

    private static String windows() {
        StringBuilder letters = new StringBuilder(upper("windows-1252"));
        for (int b : new int[] {0x81, 0x8D, 0x8F, 0x90, 0x9D}) {
            letters.setCharAt(b - 0x80, (char) b);
        }
        return letters.toString();
    }

    private static String macintosh() {
        return TextReader.macRoman().isPresent() ? upper("x-MacRoman") : windows();
    }

    private static String upper(String charset) {
        byte[] bytes = new byte[128];
        for (int i = 0; i < bytes.length; i++) {
            bytes[i] = (byte) (0x80 + i);
        }
        return new String(bytes, Charset.forName(charset));
    }

    String words() {
        return words;
    }

    boolean isUtf16() {
        return upper.isEmpty();
    }

    boolean isMarked() {
        return this == MARKED_UTF_16LE || this == MARKED_UTF_16BE;
    }

    /** Returns the letter that a byte above 127 is in the old encoding. */
    char old(byte b) {
        return upper.charAt(b & 0x7F);
    }

    /** Finds out how a text is written by its mark and its first bytes. */
    static TextEncoding of(byte[] start, int length, ByteOrderMark mark) {
        if (mark.charset().equals(StandardCharsets.UTF_16LE)) {
            return MARKED_UTF_16LE;
        }
        if (mark.charset().equals(StandardCharsets.UTF_16BE)) {
            return MARKED_UTF_16BE;
        }
        int pairs = length / 2;
        int firstZeros = 0;
        int secondZeros = 0;
        for (int i = 0; i + 1 < length; i += 2) {
            firstZeros += start[i] == 0 ? 1 : 0;
            secondZeros += start[i + 1] == 0 ? 1 : 0;
        }
        // Digits, commas and Latin letters are one byte and a zero in UTF-16; a text has no other zeros.
        if (pairs >= FEWEST_PAIRS && firstZeros == 0 && secondZeros * 2 > pairs) {
            return UTF_16LE;
        }
        if (pairs >= FEWEST_PAIRS && secondZeros == 0 && firstZeros * 2 > pairs) {
            return UTF_16BE;
        }
        return isOldMacintosh(start, length) && TextReader.macRoman().isPresent() ? OLD_MACINTOSH : UTF_8;
    }

    /**
     * Lines that end in CR alone, and no byte above 127 but those that Mac Roman has for accented letters (80 to 9F, where Windows-1252 has
     * typographer's signs and control signs), the sign of a degree (A1) and the sharp s (A7). Anything else stays Windows-1252.
     */
    private static boolean isOldMacintosh(byte[] start, int length) {
        boolean lines = false;
        boolean letters = false;
        for (int i = 0; i < length; i++) {
            int b = start[i] & 0xFF;
            boolean old = b >= 0x80 && b <= 0x9F || b == 0xA1 || b == 0xA7;
            if (b == '\n' || b >= 0x80 && !old) {
                return false;
            }
            lines |= b == '\r';
            letters |= old;
        }
        return lines && letters;
    }
}
