package parchment.jars;

import java.nio.file.Path;
import java.util.Locale;

/**
 * One jar, or one folder of classes, that a session loads.
 *
 * @param name the library with its version, or the file's name
 * @param path where it lies
 * @param bytes its size; 0 of a folder
 * @param licence as its makers name it; empty if they do not, or if the file was added by its path
 */
public record Jar(String name, Path path, long bytes, String licence) {
    private static final double KILO = 1e3;
    private static final double MEGA = 1e6;

    /** Returns the size as people read it, such as {@code 2.2 MB}. */
    String size() {
        return size(bytes);
    }

    static String size(long bytes) {
        return bytes >= MEGA / 10
                ? String.format(Locale.ROOT, "%.1f MB", bytes / MEGA)
                : String.format(Locale.ROOT, "%.1f kB", bytes / KILO);
    }
}
