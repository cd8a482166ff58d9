package parchment.lesson;

import java.io.IOException;
import java.nio.file.AccessDeniedException;
import java.nio.file.FileVisitResult;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.SimpleFileVisitor;
import java.nio.file.attribute.BasicFileAttributes;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import org.jspecify.annotations.Nullable;

/**
 * Lists the files in a folder of what was handed in and in the folders inside it, and goes on past everything that cannot be looked
 * into: a folder without the right to read, a link, a pipe, a device.
 *
 * @param folder where it was looked
 * @param files the plain files, by name; those whose name begins with a full stop, which systems make for themselves, are left out
 * @param refused what was not looked into, each once, with the reason
 */
record CollectedFiles(Path folder, List<Path> files, List<String> refused) {
    /** Folders inside one another that are looked into. */
    static final int DEEPEST = 20;
    /** Files that are looked at; a class of thirty with its logbooks has some sixteen thousand. */
    static final int MOST = 100_000;

    private static final Set<String> FOLDERS_OF_SYSTEMS = Set.of("__MACOSX");

    static CollectedFiles in(Path folder) throws IOException {
        return in(folder, MOST);
    }

    static CollectedFiles in(Path folder, int most) throws IOException {
        Path start = folder.toRealPath();
        Visitor visitor = new Visitor(start, most);
        Files.walkFileTree(start, Set.of(), DEEPEST, visitor);
        visitor.files.sort(null);
        visitor.refused.sort(null);
        return new CollectedFiles(start, List.copyOf(visitor.files), List.copyOf(visitor.refused));
    }

    /** Returns a file as seen from the folder, on one line. */
    String name(Path file) {
        return name(folder, file);
    }

    private static String name(Path start, Path file) {
        String name =
                file.equals(start) ? start.toString() : start.relativize(file).toString();
        return name.replaceAll("\\p{Cntrl}", "?");
    }

    /** Returns why an error kept something from being read, without a word of Java. */
    static String reason(IOException e) {
        return e instanceof AccessDeniedException ? "reading it is not permitted." : "it could not be read.";
    }

    private static boolean isSystems(Path file) {
        Path name = file.getFileName();
        return name != null && (name.toString().startsWith(".") || FOLDERS_OF_SYSTEMS.contains(name.toString()));
    }

    static final class Visitor extends SimpleFileVisitor<Path> {
        private final Path start;
        private final int most;
        private final List<Path> files = new ArrayList<>();
        private final List<String> refused = new ArrayList<>();

        Visitor(Path start, int most) {
            this.start = start;
            this.most = most;
        }

        List<String> refused() {
            return refused;
        }

        @Override
        public FileVisitResult preVisitDirectory(Path folder, BasicFileAttributes attributes) {
            return isSystems(folder) && !folder.equals(start) ? FileVisitResult.SKIP_SUBTREE : FileVisitResult.CONTINUE;
        }

        @Override
        public FileVisitResult visitFile(Path file, BasicFileAttributes attributes) {
            if (isSystems(file)) {
                return FileVisitResult.CONTINUE;
            }
            Optional<String> not = notPlain(file, attributes);
            if (not.isPresent()) {
                refused.add(name(start, file) + ": " + not.get());
            } else if (attributes.isRegularFile()) {
                if (files.size() == most) {
                    refused.add(String.format(
                            Locale.ROOT,
                            "%s: it holds more than %,d files, and the rest was not looked at; put the sheets into a folder of their own.",
                            start,
                            most));
                    return FileVisitResult.TERMINATE;
                }
                files.add(file);
            }
            return FileVisitResult.CONTINUE;
        }

        /** Tells why something that may be meant as an answer is not opened; what cannot be meant so is passed over. */
        private static Optional<String> notPlain(Path file, BasicFileAttributes attributes) {
            if (attributes.isDirectory()) {
                return Optional.of("it lies deeper than " + DEEPEST + " folders and was not looked into.");
            }
            if (attributes.isSymbolicLink() && (isTable(file) || Files.isDirectory(file))) {
                return Optional.of("it is a link, which is not followed; put the file itself there.");
            }
            return attributes.isOther() && isTable(file)
                    ? Optional.of("it is a pipe or a device and no file.")
                    : Optional.empty();
        }

        @Override
        public FileVisitResult visitFileFailed(Path file, IOException e) {
            refused.add(name(start, file) + ": " + reason(e));
            return FileVisitResult.CONTINUE;
        }

        @Override
        public FileVisitResult postVisitDirectory(Path folder, @Nullable IOException e) {
            if (e != null) {
                refused.add(name(start, folder) + ": it could be read in part only.");
            }
            return FileVisitResult.CONTINUE;
        }
    }

    /** Tells whether a file may hold a sheet or a plan, by the end of its name; spreadsheets name their "Unicode text" .txt. */
    static boolean isTable(Path file) {
        String name = file.toString().toLowerCase(Locale.ROOT);
        return name.endsWith(".csv") || name.endsWith(".txt");
    }
}
