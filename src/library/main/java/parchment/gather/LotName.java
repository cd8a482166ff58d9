package parchment.gather;

import java.util.Locale;
import parchment.file.NameForms;

/** Decides when two writings are one name of a lot. */
final class LotName {
    private LotName() {}

    /** Returns a name with accented letters as one sign (Unicode form NFC), without blanks at its ends, and one blank between words. */
    static String plain(String written) {
        return NameForms.composed(written).replaceAll("[\\s\\p{Z}]+", " ").strip();
    }

    /** Returns what names have in common that differ in upper and lower case only. */
    static String anyCase(String written) {
        return plain(written).toLowerCase(Locale.ROOT);
    }
}
