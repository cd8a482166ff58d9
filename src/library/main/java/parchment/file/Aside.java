package parchment.file;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.DirectoryIteratorException;
import java.nio.file.DirectoryStream;
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
     * Makes the place in a folder where something waits, under a name that nobody had before or gets again, and returns it. What killed
     * commands that wrote the same have left there is taken away first.
     */
    static Path make(Path folder, Path target, Maker maker) throws IOException {
        String mark = String.format(
                Locale.ROOT, "%08x", String.valueOf(target.getFileName()).hashCode());
        sweep(folder, BEGIN + mark);
        Path own = folder.resolve(BEGIN + mark + "-" + UUID.randomUUID() + END);
        maker.make(own);
        return own;
    }

    /** Takes away all that killed commands have left in a folder. */
    static void sweep(Path folder) {
        sweep(folder, BEGIN);
    }

    private static void sweep(Path folder, String begin) {
        if (waitsItself(folder)) {
            return; // It is new, so nothing is left in it; a logbook's curves would each list all that are there.
        }
        try (DirectoryStream<Path> all = Files.newDirectoryStream(folder, begin + "*" + END)) {
            for (Path each : all) {
                if (isLeft(each)) {
                    delete(each);
                }
            }
        } catch (IOException | DirectoryIteratorException e) {
            return; // What cannot be taken away is in nobody's way.
        }
    }

    private static boolean waitsItself(Path folder) {
        for (Path part : folder) {
            if (is(part)) {
                return true;
            }
        }
        return false;
    }

    /** Returns whether that is a thing that waits, or what was left of one. */
    static boolean is(Path place) {
        String name = String.valueOf(place.getFileName());
        return name.startsWith(BEGIN) && name.endsWith(END);
    }

    private static boolean isLeft(Path place) throws IOException {
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
        } catch (UncheckedIOException e) {
            return false; // Somebody is at work there.
        }
    }

    /** Removes what did not become whole; if that cannot be done, it waits to be swept, and why it did not become whole is told. */
    static void discard(Path place) {
        try {
            delete(place);
        } catch (IOException e) {
            return;
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
