package parchment.gather;

import java.io.IOException;
import java.nio.file.FileVisitOption;
import java.nio.file.FileVisitResult;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.SimpleFileVisitor;
import java.nio.file.attribute.BasicFileAttributes;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.EnumSet;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * Lists what lies in a folder and in those within it, in the order of the names; links are listed and not followed, but for the folder itself. A folder that may not be looked into stops
 * nothing.
 *
 * @param paths the folder itself and all that was found, folders too
 * @param shut what could not be looked into
 */
record FilesWithin(List<Path> paths, List<Path> shut) {
    /**
     * Lists them.
     *
     * @throws IOException if the folder itself cannot be looked into
     */
    static FilesWithin of(Path folder, int deepest) throws IOException {
        List<Path> paths = new ArrayList<>();
        List<Path> shut = new ArrayList<>();
        if (Files.isSymbolicLink(folder)) {
            Path real = folder.toRealPath();
            FilesWithin within = of(real, deepest);
            return new FilesWithin(under(folder, real, within.paths()), under(folder, real, within.shut()));
        }
        Files.walkFileTree(folder, EnumSet.noneOf(FileVisitOption.class), deepest, new SimpleFileVisitor<>() {
            @Override
            public FileVisitResult preVisitDirectory(Path within, BasicFileAttributes facts) {
                paths.add(within);
                return FileVisitResult.CONTINUE;
            }

            @Override
            public FileVisitResult visitFile(Path file, BasicFileAttributes facts) {
                paths.add(file);
                return FileVisitResult.CONTINUE;
            }

            @Override
            public FileVisitResult visitFileFailed(Path file, IOException failure) throws IOException {
                if (file.equals(folder)) {
                    throw failure;
                }
                shut.add(file);
                return FileVisitResult.CONTINUE;
            }

            @Override
            public FileVisitResult postVisitDirectory(Path within, @Nullable IOException failure) {
                if (failure != null) {
                    shut.add(within);
                }
                return FileVisitResult.CONTINUE;
            }
        });
        paths.sort(Comparator.naturalOrder());
        return new FilesWithin(List.copyOf(paths), List.copyOf(shut));
    }

    private static List<Path> under(Path link, Path real, List<Path> paths) {
        return paths.stream().map(path -> link.resolve(real.relativize(path))).toList();
    }
}
