package parchment.file;

import java.nio.charset.StandardCharsets;
import java.util.Locale;
import java.util.regex.Pattern;

/** Makes sure that the name of a file or folder is one that any system can hold, and hold beside others. */
public final class FileName {
    /** Longest name, in bytes of UTF-8: that of the usual file systems of Linux; others hold 255 units of UTF-16, which is never less. */
    public static final int MOST_BYTES = 255;

    /** With any ending behind a full stop; the digits may be small raised ones. From memory of the system's own documentation. */
    private static final Pattern KEPT_BY_WINDOWS = Pattern.compile(
            "(?:con|prn|aux|nul|com[0-9\u00B9\u00B2\u00B3]|lpt[0-9\u00B9\u00B2\u00B3]) *(?:\\..*)?",
            Pattern.CASE_INSENSITIVE | Pattern.DOTALL);

    private FileName() {}

    /** Returns whether Windows keeps that word for itself, as "con" or "com1", whatever its ending: no file or folder can be named so there. */
    public static boolean isKeptByWindows(String name) {
        return KEPT_BY_WINDOWS.matcher(name).matches();
    }

    /** Returns whether a name is short enough. */
    public static boolean fits(String name) {
        return name.getBytes(StandardCharsets.UTF_8).length <= MOST_BYTES;
    }

    /** Returns the same text for names that some file system does not tell apart: by upper and lower case, or by Unicode form. */
    public static String alike(String name) {
        return NameForms.composed(
                NameForms.composed(name).toUpperCase(Locale.ROOT).toLowerCase(Locale.ROOT));
    }
}
