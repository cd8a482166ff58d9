package parchment.file;

import java.io.IOException;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.FileVisitResult;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.nio.file.SimpleFileVisitor;
import java.nio.file.attribute.BasicFileAttributes;
import java.time.Duration;
import java.time.Instant;
import java.util.Locale;
import java.util.UUID;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;

/** The names under which things wait until they are whole, and what is left of them where a command was killed. */
final class Aside {
    private static final String BEGIN = ".parchment-";
    private static final String END = ".part";

    /** What nobody has touched for so long was left by a command that was killed. */
    private static final Duration LEFT = Duration.ofHours(1);

    private Aside() {}

    /** Makes something under a name of its own. */
    interface Maker {
        void make(Path place) throws IOException;
    }

    /**
     * Makes the place in a folder where something waits, and returns it. The first choice of name is always the same, so that what a
     * killed command has left is found, and taken away, by the next that writes the same; two at once get two names.
     */
    static Path make(Path folder, Path target, Maker maker) throws IOException {
        String mark = String.format(
                Locale.ROOT, "%08x", String.valueOf(target.getFileName()).hashCode());
        Path first = folder.resolve(BEGIN + mark + END);
        if (isLeft(first)) {
            delete(first);
        }
        try {
            maker.make(first);
            return first;
        } catch (FileAlreadyExistsException e) {
            Path own = folder.resolve(BEGIN + mark + "-" + UUID.randomUUID() + END);
            maker.make(own);
            return own;
        }
    }

    /** Returns whether that is a thing that waits, or what was left of one. */
    static boolean is(Path place) {
        String name = String.valueOf(place.getFileName());
        return name.startsWith(BEGIN) && name.endsWith(END);
    }

    private static boolean isLeft(Path place) throws IOException {
        if (!Files.exists(place, LinkOption.NOFOLLOW_LINKS)) {
            return false;
        }
        Instant limit = Instant.now().minus(LEFT);
        try (Stream<Path> all = Files.walk(place)) {
            for (Path each : (Iterable<Path>) all::iterator) {
                if (Files.getLastModifiedTime(each, LinkOption.NOFOLLOW_LINKS)
                        .toInstant()
                        .isAfter(limit)) {
                    return false;
                }
            }
            return true;
        } catch (java.io.UncheckedIOException e) {
            return false; // Somebody is at work there.
        }
    }

    /** Removes it with all that is in it, following no link; nothing happens if it is not there. */
    static void delete(Path place) throws IOException {
        if (!Files.exists(place, LinkOption.NOFOLLOW_LINKS)) {
            return;
        }
        Files.walkFileTree(place, new SimpleFileVisitor<>() {
            @Override
            public FileVisitResult visitFile(Path file, BasicFileAttributes attributes) throws IOException {
                Files.deleteIfExists(file);
                return FileVisitResult.CONTINUE;
            }

            @Override
            public FileVisitResult visitFileFailed(Path file, IOException e) {
                return FileVisitResult.CONTINUE; // Gone meanwhile; if not, its folder says so.
            }

            @Override
            public FileVisitResult postVisitDirectory(Path folder, @Nullable IOException e) throws IOException {
                Files.deleteIfExists(folder);
                return FileVisitResult.CONTINUE;
            }
        });
    }
}
