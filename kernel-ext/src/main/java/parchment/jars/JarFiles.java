package parchment.jars;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.FileSystems;
import java.nio.file.Files;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.nio.file.PathMatcher;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Objects;
import java.util.stream.Stream;
import parchment.file.FileWords;

/** Finds files by their path, where {@code *} stands for any letters of one name and {@code ?} for any one. */
final class JarFiles {
    private JarFiles() {}

    /** Returns the jars directly in a folder, by name. */
    static List<Path> directlyIn(Path folder) {
        return list(folder, 1, file -> isJar(file) && Files.isRegularFile(file));
    }

    /** Returns whether there is a class file in the folder or up to eight folders below it. */
    static boolean holdsClasses(Path folder) {
        return !list(folder, 8, file -> file.toString().endsWith(".class")).isEmpty();
    }

    /**
     * Returns what a path with {@code *} or {@code ?} stands for, by name; the path itself if it has neither. One that ends in a slash stands for
     * everything in that folder, {@code ~} for the reader's own.
     *
     * @throws IllegalArgumentException if nothing is there
     */
    static List<Path> matching(String written) {
        String path = written.startsWith("~/") ? System.getProperty("user.home") + written.substring(1) : written;
        path = path.endsWith("/") ? path + "*" : path;
        List<Path> found = new ArrayList<>();
        int wild = firstWild(path);
        if (wild < 0) {
            found.add(Path.of(path));
        } else {
            int slash = Math.max(path.lastIndexOf('/', wild), path.lastIndexOf('\\', wild));
            Path folder = Path.of(slash < 0 ? "" : path.substring(0, slash + 1));
            String rest = path.substring(slash + 1).replace('\\', '/');
            int depth = rest.split("/").length;
            PathMatcher matcher =
                    FileSystems.getDefault().getPathMatcher("glob:" + rest.replaceAll("([\\[\\]{}])", "\\\\$1"));
            found.addAll(list(folder, depth, file -> !file.equals(folder) && matcher.matches(folder.relativize(file))));
        }
        if (found.isEmpty() || found.size() == 1 && !Files.exists(found.get(0))) {
            throw new IllegalArgumentException("There is nothing at '" + written + "' (looked for in '"
                    + Path.of("").toAbsolutePath() + "', where this notebook's paths count from).");
        }
        return found;
    }

    /** Returns whether a text names something that is there; an empty one and one that can be no path name nothing. */
    static boolean isThere(String path) {
        try {
            return !path.isBlank() && Files.exists(Path.of(path));
        } catch (InvalidPathException e) {
            return false;
        }
    }

    static boolean isJar(Path file) {
        return file.toString().toLowerCase(Locale.ROOT).endsWith(".jar");
    }

    private static int firstWild(String path) {
        int star = path.indexOf('*');
        int any = path.indexOf('?');
        return star < 0 ? any : any < 0 ? star : Math.min(star, any);
    }

    private static List<Path> list(Path folder, int depth, java.util.function.Predicate<Path> wanted) {
        if (!Files.isDirectory(folder)) {
            return List.of();
        }
        try (Stream<Path> files = Files.walk(folder, depth)) {
            return files.filter(wanted).sorted().toList();
        } catch (UncheckedIOException e) {
            throw new IllegalArgumentException(FileWords.of(Objects.requireNonNull(e.getCause())), e);
        } catch (IOException e) {
            throw new IllegalArgumentException(FileWords.of(e), e);
        }
    }
}
