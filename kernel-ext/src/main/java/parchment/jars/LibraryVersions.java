package parchment.jars;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** Which library a session has in which version, whether it was named or added as a file. */
final class LibraryVersions {

    /**
     * A library that is there, or is about to be.
     *
     * @param library group, artifact and classifier; empty of a file, whose name does not tell them
     * @param artifact as a name or a file's name tells it
     * @param file its jar
     */
    record Held(String library, String artifact, String version, Path file) {
        static Held of(Library library) {
            Coordinate name = library.coordinate();
            return new Held(name.library(), name.artifact(), name.version(), library.file());
        }

        static Optional<Held> of(Path file) {
            return JarContent.named(String.valueOf(file.getFileName()))
                    .map(named -> new Held("", named.artifact(), named.version(), file));
        }
    }

    private final List<Held> all;

    private LibraryVersions(List<Held> all) {
        this.all = new ArrayList<>(all);
    }

    static LibraryVersions none() {
        return new LibraryVersions(List.of());
    }

    LibraryVersions copy() {
        return new LibraryVersions(all);
    }

    void add(Held held) {
        all.add(held);
    }

    /** Returns whether a library that was named is there in that version. */
    boolean has(Coordinate coordinate) {
        return all.stream()
                .anyMatch(held -> held.library().equals(coordinate.library())
                        && held.version().equals(coordinate.version()));
    }

    /**
     * Returns the one that is the same library in whatever version: of two names those with the same group, artifact and classifier. A file
     * tells no group, and a common word such as "core" may be anybody's, so there a class has to be in both.
     */
    Optional<Held> sameAs(Held asked) {
        return all.stream().filter(held -> isSame(held, asked)).findFirst();
    }

    private static boolean isSame(Held held, Held asked) {
        if (!held.library().isEmpty() && !asked.library().isEmpty()) {
            return held.library().equals(asked.library());
        }
        return held.artifact().equals(asked.artifact()) && JarContent.shareAClass(held.file(), asked.file());
    }
}
