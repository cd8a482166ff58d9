package parchment.kernel;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.net.URISyntaxException;
import java.nio.file.FileSystem;
import java.nio.file.FileSystems;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.stream.Stream;
import parchment.display.Showable;

/**
 * What a first cell finds imported: the rooms of the library, and of Java what a beginner's cell uses.
 *
 * <p>The rooms are read off the library's own jar, so a new room is there without a list to keep. A library type named as one of
 * Java's (a Clock, say), or as one that it builds on, is imported by its name, which in Java goes before a whole package.
 */
final class Imports {
    private static final List<String> JAVA = List.of(
            "java.util",
            "java.util.stream",
            "java.util.function",
            "java.time",
            "java.nio.file",
            "java.io",
            "java.math");

    /** Rooms whose types a cell does not name, or that are not part of the library. */
    private static final Set<String> NOT_ROOMS = Set.of("kernel", "notebook", "launcher");

    /** Rooms that others build on: where one of the others has a type of the same name, a cell means that one. */
    static final Set<String> FOUNDATIONS = Set.of("quantity", "stats", "chart", "display", "curve");

    /** Classes whose static members read as words in a cell: {@code dropTemperature()}. */
    private static final List<String> WORDS = List.of("parchment.feature.Features");

    private Imports() {}

    /** Returns the import declarations, in an order that JShell accepts. */
    static List<String> declarations() {
        TreeMap<String, Set<String>> rooms = rooms();
        List<String> imports = new ArrayList<>();
        JAVA.forEach(name -> imports.add("import " + name + ".*;"));
        rooms.keySet().forEach(room -> imports.add("import parchment." + room + ".*;"));
        rooms.forEach((room, types) -> types.stream()
                .filter(type -> isAlsoJavas(type) || !FOUNDATIONS.contains(room) && isInFoundations(rooms, type))
                .forEach(type -> imports.add("import parchment." + room + "." + type + ";")));
        for (String words : WORDS) {
            String room = words.substring("parchment.".length(), words.lastIndexOf('.'));
            if (rooms.getOrDefault(room, Set.of()).contains(words.substring(words.lastIndexOf('.') + 1))) {
                imports.add("import static " + words + ".*;");
            }
        }
        return imports;
    }

    private static boolean isInFoundations(TreeMap<String, Set<String>> rooms, String type) {
        return FOUNDATIONS.stream()
                .anyMatch(room -> rooms.getOrDefault(room, Set.of()).contains(type));
    }

    private static boolean isAlsoJavas(String type) {
        if (inBootLayer("java.lang." + type)) {
            return true;
        }
        return JAVA.stream().anyMatch(name -> inBootLayer(name + "." + type));
    }

    private static boolean inBootLayer(String name) {
        try {
            Class.forName(name, false, null);
            return true;
        } catch (ClassNotFoundException e) {
            return false;
        }
    }

    /** Returns the simple names of the top-level types of each room that has any. */
    static TreeMap<String, Set<String>> rooms() {
        TreeMap<String, Set<String>> rooms = new TreeMap<>();
        try {
            Path place = Path.of(Showable.class
                    .getProtectionDomain()
                    .getCodeSource()
                    .getLocation()
                    .toURI());
            if (Files.isDirectory(place)) {
                collect(place.resolve("parchment"), rooms);
            } else {
                try (FileSystem jar = FileSystems.newFileSystem(place)) {
                    collect(jar.getPath("parchment"), rooms);
                }
            }
        } catch (IOException e) {
            throw new UncheckedIOException("The library's own jar cannot be read.", e);
        } catch (URISyntaxException e) {
            throw new IllegalStateException("The library's own jar has a place that is not a path.", e);
        }
        return rooms;
    }

    private static void collect(Path library, TreeMap<String, Set<String>> rooms) throws IOException {
        try (Stream<Path> files = Files.walk(library, 2)) {
            files.filter(file -> file.getNameCount() == library.getNameCount() + 2)
                    .forEach(file -> {
                        String room = file.getName(file.getNameCount() - 2).toString();
                        String name = String.valueOf(file.getFileName());
                        if (name.endsWith(".class")
                                && !name.contains("$")
                                && !name.equals("package-info.class")
                                && !NOT_ROOMS.contains(room)) {
                            rooms.computeIfAbsent(room, r -> new TreeSet<>())
                                    .add(name.substring(0, name.length() - ".class".length()));
                        }
                    });
        }
    }
}
