package parchment.kernel.imports;

import java.io.IOException;
import java.net.URI;
import java.nio.file.DirectoryStream;
import java.nio.file.FileSystems;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.HashSet;
import java.util.Map;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;

/**
 * The names of Java's own types, package by package. Asking for each class by its name throws where there is none, which for all names of the
 * library took a tenth of a second of a session's start.
 */
final class JavaTypeNames {
    private static final String CLASS = ".class";
    private static final Map<String, Set<String>> PACKAGES = new ConcurrentHashMap<>();

    private JavaTypeNames() {}

    /** Returns whether Java has a type of that whole name; for a few names. */
    static boolean isOne(String name) {
        try {
            Class.forName(name, false, null);
            return true;
        } catch (ClassNotFoundException e) {
            return false;
        }
    }

    /** Returns whether Java has a type of that whole name that stands in no other; for many names, since it reads all of a package. */
    static boolean isListed(String name) {
        int dot = name.lastIndexOf('.');
        return dot > 0 && in(name.substring(0, dot)).contains(name.substring(dot + 1));
    }

    private static Set<String> in(String place) {
        return PACKAGES.computeIfAbsent(place, JavaTypeNames::read);
    }

    private static Set<String> read(String place) {
        Set<String> names = new HashSet<>();
        Path modules = FileSystems.getFileSystem(URI.create("jrt:/")).getPath("/packages", place);
        if (!Files.isDirectory(modules)) {
            return names;
        }
        try (DirectoryStream<Path> having = Files.newDirectoryStream(modules)) {
            for (Path module : having) {
                addTypes(module.resolve(place.replace('.', '/')), names);
            }
        } catch (IOException e) {
            return names; // Java's own files cannot be read: nothing would run then.
        }
        return names;
    }

    private static void addTypes(Path folder, Set<String> names) throws IOException {
        if (!Files.isDirectory(folder)) {
            return; // A module may have only packages below this one.
        }
        try (DirectoryStream<Path> types = Files.newDirectoryStream(folder, "*" + CLASS)) {
            for (Path type : types) {
                String name = String.valueOf(type.getFileName());
                names.add(name.substring(0, name.length() - CLASS.length()));
            }
        }
    }
}
