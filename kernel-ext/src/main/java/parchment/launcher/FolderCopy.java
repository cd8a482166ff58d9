package parchment.launcher;

import java.io.IOException;
import java.nio.file.FileVisitResult;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.SimpleFileVisitor;
import java.nio.file.StandardCopyOption;
import java.nio.file.attribute.BasicFileAttributes;
import java.util.List;
import java.util.function.Predicate;

/** A folder copied with all that is in it; a link becomes what it points to, and the right to run a file stays. */
final class FolderCopy {
    private FolderCopy() {}

    /**
     * Copies.
     *
     * @param leftOut folders inside {@code from} that stay behind, with slashes, such as "docs/old"
     */
    static void of(Path from, Path to, List<String> leftOut) throws IOException {
        Files.walkFileTree(from, new SimpleFileVisitor<>() {
            @Override
            public FileVisitResult preVisitDirectory(Path folder, BasicFileAttributes attributes) throws IOException {
                String place = from.relativize(folder).toString().replace('\\', '/');
                if (folder.endsWith("__pycache__") || leftOut.contains(place)) {
                    return FileVisitResult.SKIP_SUBTREE;
                }
                Files.createDirectories(to.resolve(from.relativize(folder)));
                return FileVisitResult.CONTINUE;
            }

            @Override
            public FileVisitResult visitFile(Path file, BasicFileAttributes attributes) throws IOException {
                if (Files.exists(file) && !Files.isDirectory(file)) { // A link that leads nowhere is no loss.
                    Files.copy(file, to.resolve(from.relativize(file)), StandardCopyOption.COPY_ATTRIBUTES);
                }
                return FileVisitResult.CONTINUE;
            }
        });
    }

    /**
     * Copies the files that are wanted, and no folder that none of them lies in.
     *
     * @param wanted tells by a file's place inside {@code from}, written with slashes, such as "docs/class.md"
     */
    static void only(Path from, Path to, Predicate<String> wanted) throws IOException {
        Files.walkFileTree(from, new SimpleFileVisitor<>() {
            @Override
            public FileVisitResult visitFile(Path file, BasicFileAttributes attributes) throws IOException {
                Path place = from.relativize(file);
                if (Files.isRegularFile(file) && wanted.test(place.toString().replace('\\', '/'))) {
                    Path copy = to.resolve(place);
                    Files.createDirectories(copy.toAbsolutePath().getParent());
                    Files.copy(file, copy, StandardCopyOption.COPY_ATTRIBUTES);
                }
                return FileVisitResult.CONTINUE;
            }
        });
    }
}
