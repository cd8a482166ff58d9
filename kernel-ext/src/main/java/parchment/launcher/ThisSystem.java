package parchment.launcher;

import java.util.Locale;

/** The system this program runs on, as files that are made for it are named. */
final class ThisSystem {
    private ThisSystem() {}

    /** Returns the name, such as {@code linux-amd64}. */
    static String name() {
        return name(System.getProperty("os.name"), System.getProperty("os.arch"));
    }

    /** Returns the name of a system by what Java calls it and its kind of processor. */
    static String name(String system, String processor) {
        String plain = system.toLowerCase(Locale.ROOT);
        String known = plain.startsWith("windows") ? "windows" : plain.startsWith("mac") ? "macos" : plain;
        return known.replace(' ', '-') + "-" + processor.toLowerCase(Locale.ROOT);
    }
}
