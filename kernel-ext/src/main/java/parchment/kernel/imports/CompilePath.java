package parchment.kernel.imports;

import java.io.File;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.FileSystem;
import java.nio.file.FileSystems;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import javax.tools.StandardJavaFileManager;
import javax.tools.StandardLocation;
import jdk.jshell.Diag;
import jdk.jshell.JShell;
import org.jspecify.annotations.Nullable;
import parchment.jars.Jars;

/**
 * The class path that cells are compiled against. The first compilation reads the list of every jar on it, and some of the
 * libraries behind the tables are very large, so it begins with the library and the table classes alone; the rest is added when a
 * cell turns out to need it.
 *
 * <p>JShell itself would begin with the class path of the program. That is one jar, which leads to all others, and the compiler follows; so
 * the place where the compiler looks is set here. The jars to begin with are handed to it opened, as folders: it asks a folder for the packages
 * that a cell names, where it would go through the whole of a jar, and follow where its manifest leads.
 */
public final class CompilePath implements AutoCloseable {
    private static final String TABLE = "tech.tablesaw.api.Table";

    private final Set<Path> readers = new LinkedHashSet<>();
    private final List<FileSystem> opened = new ArrayList<>();
    private final List<Path> first = new ArrayList<>();
    private @Nullable StandardJavaFileManager files;
    private boolean whole;

    /** Takes over what the compiler of a shell reads classes with, and returns it. */
    public StandardJavaFileManager govern(StandardJavaFileManager ofShell) {
        files = ofShell;
        try {
            for (Path place : first()) {
                first.add(Files.isDirectory(place) ? place : opened(place));
            }
        } catch (IOException e) {
            throw new UncheckedIOException("A jar of this program cannot be read.", e);
        }
        set();
        return ofShell;
    }

    private Path opened(Path jar) throws IOException {
        FileSystem inside = FileSystems.newFileSystem(jar, (ClassLoader) null);
        opened.add(inside);
        return inside.getPath("/");
    }

    /** Returns the places to begin with. */
    private static Set<Path> first() {
        Set<Path> jars = new LinkedHashSet<>(Rooms.places());
        jars.add(Rooms.placeOf(Jars.class));
        try {
            jars.add(Rooms.placeOf(Class.forName(TABLE, false, CompilePath.class.getClassLoader())));
        } catch (ClassNotFoundException | LinkageError e) {
            return jars; // A build without tables has none to show either.
        }
        return jars;
    }

    private void set() {
        StandardJavaFileManager ofShell = files;
        if (whole || ofShell == null) {
            return; // The shell's own path has it all.
        }
        List<Path> places = new ArrayList<>(first);
        places.addAll(readers);
        try {
            ofShell.setLocationFromPaths(StandardLocation.CLASS_PATH, places);
            // It would look for extensions of the compiler along the class path, which it cannot in an opened jar.
            // Cells have none.
            ofShell.setLocationFromPaths(StandardLocation.ANNOTATION_PROCESSOR_PATH, List.of());
        } catch (IOException e) {
            throw new UncheckedIOException("The compiler does not take the jars of this program.", e);
        }
    }

    /** Returns what cells are compiled against now. */
    public String now() {
        List<String> all = new ArrayList<>();
        if (whole) {
            all.add(System.getProperty("java.class.path"));
        } else {
            first().forEach(place -> all.add(place.toString()));
        }
        readers.forEach(entry -> all.add(entry.toString()));
        return String.join(File.pathSeparator, all);
    }

    /** Adds what a reader brings along, for compiling and for running. */
    public void add(Path entry, JShell shell) {
        if (readers.add(entry)) {
            shell.addToClasspath(entry.toString());
            set();
        }
    }

    /** Adds the rest of what the program has, so that a jar added later stands behind it here as it does when classes are loaded. */
    public void widen(JShell shell) {
        if (!whole) {
            whole = true;
            shell.addToClasspath(System.getProperty("java.class.path"));
        }
    }

    /** Adds the rest if the errors can come of its lack; returns whether compiling again may help. */
    public boolean widenFor(List<Diag> errors, JShell shell) {
        if (whole || errors.stream().noneMatch(CompilePath::isLack)) {
            return false;
        }
        widen(shell);
        return true;
    }

    private static boolean isLack(Diag error) {
        String code = String.valueOf(error.getCode());
        return code.equals("compiler.err.doesnt.exist") || code.startsWith("compiler.err.cant.access");
    }

    @Override
    public void close() {
        for (FileSystem jar : opened) {
            try {
                jar.close();
            } catch (IOException e) {
                continue; // It was only read.
            }
        }
    }
}
