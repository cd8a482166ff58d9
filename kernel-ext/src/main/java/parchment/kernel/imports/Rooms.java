package parchment.kernel.imports;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.lang.reflect.Modifier;
import java.net.URISyntaxException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Set;
import java.util.SortedMap;
import java.util.SortedSet;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.stream.Stream;
import java.util.zip.ZipEntry;
import java.util.zip.ZipFile;
import parchment.display.Showable;
import parchment.virtual.VirtualRoastery;

/** The rooms of the library and their types, read off the library's own jars, so that a new room needs no list to be kept. */
public final class Rooms {
    private static final String LIBRARY = "parchment/";

    /** Of the program's own rooms the one that cells use, and what of it. */
    private static final String JARS = "jars";

    private static final Set<String> OF_JARS = Set.of("Jar", "Jars");

    /**
     * Not imported for cells, which reach them by an import of their own: rooms of the program that share the first name, and the library's back rooms,
     * which only its other rooms use ({@code RoomsTest}, docs/decisions/0024).
     */
    private static final Set<String> NOT_ROOMS =
            Set.of("kernel", "notebook", "rendering", "handbook", "launcher", "file", "sheet", "chart", "period");

    private Rooms() {}

    /** Returns where the library lies: its own jar or folder, and that of the virtual roastery. */
    static List<Path> places() {
        return List.of(placeOf(Showable.class), placeOf(VirtualRoastery.class));
    }

    /** Returns where a class was loaded from: a jar or a folder. */
    static Path placeOf(Class<?> loaded) {
        try {
            return Path.of(
                    loaded.getProtectionDomain().getCodeSource().getLocation().toURI());
        } catch (URISyntaxException e) {
            throw new IllegalStateException("A jar of this program has a place that is not a path.", e);
        }
    }

    /** Returns the simple names of the types that a cell finds imported, by room: all of the library's, and those for a reader's jars. */
    public static SortedMap<String, Set<String>> typesForNotebooks() {
        SortedMap<String, Set<String>> rooms = types();
        rooms.put(JARS, OF_JARS);
        return rooms;
    }

    /** Returns the simple names of the top-level types of each room of the library that cells find imported. */
    public static SortedMap<String, Set<String>> types() {
        SortedMap<String, Set<String>> rooms = new TreeMap<>();
        for (String type : allTypes()) {
            String[] parts = type.split("\\.");
            if (parts.length == 3 && !NOT_ROOMS.contains(parts[1])) {
                rooms.computeIfAbsent(parts[1], r -> new TreeSet<>()).add(parts[2]);
            }
        }
        return rooms;
    }

    /** Returns the full names of all top-level types of the library, with those of its back rooms and workshops, in the order of the alphabet. */
    static SortedSet<String> allTypes() {
        SortedSet<String> found = new TreeSet<>();
        try {
            for (Path place : places()) {
                noteAll(place, found);
            }
        } catch (IOException e) {
            throw new UncheckedIOException("The library's own jars cannot be read.", e);
        }
        return found;
    }

    private static void noteAll(Path place, SortedSet<String> found) throws IOException {
        if (Files.isDirectory(place)) {
            try (Stream<Path> files = Files.walk(place.resolve(LIBRARY))) {
                files.forEach(file -> note(place.relativize(file).toString().replace('\\', '/'), found));
            }
        } else {
            try (ZipFile jar = new ZipFile(place.toFile())) {
                jar.stream().map(ZipEntry::getName).forEach(name -> note(name, found));
            }
        }
    }

    private static void note(String file, SortedSet<String> types) {
        if (file.startsWith(LIBRARY)
                && file.endsWith(".class")
                && !file.contains("$")
                && !file.endsWith("package-info.class")) {
            types.add(file.substring(0, file.length() - ".class".length()).replace('/', '.'));
        }
    }

    /** Returns the line that would make a type of a back room or workshop known, as a sentence after a space; an empty text where there is none. */
    public static String howToImport(String name) {
        return allTypes().stream()
                .filter(type -> type.endsWith("." + name))
                .filter(Rooms::isPublic)
                .map(type -> " It is for those who build on Parchment; write: `import " + type + ";`")
                .findFirst()
                .orElse("");
    }

    private static boolean isPublic(String type) {
        try {
            return Modifier.isPublic(
                    Class.forName(type, false, Rooms.class.getClassLoader()).getModifiers());
        } catch (ClassNotFoundException | LinkageError e) {
            return false;
        }
    }
}
