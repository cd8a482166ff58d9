package parchment.kernel;

import java.io.File;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import jdk.jshell.Diag;
import jdk.jshell.JShell;
import parchment.display.Showable;
import parchment.jars.Jars;

/**
 * The class path that cells are compiled against. The first compilation reads the list of every jar on it, and some of the
 * libraries behind the tables are very large, so it begins with the library and the table classes alone; the rest is added when a
 * cell turns out to need it.
 */
final class CompilePath {
    private static final String TABLE = "tech.tablesaw.api.Table";

    private final Set<Path> readers = new LinkedHashSet<>();
    private boolean whole;

    /** Returns the path to begin with. */
    String first() {
        Set<Path> jars = new LinkedHashSet<>(List.of(Rooms.placeOf(Showable.class), Rooms.placeOf(Jars.class)));
        try {
            jars.add(Rooms.placeOf(Class.forName(TABLE, false, CompilePath.class.getClassLoader())));
        } catch (ClassNotFoundException | LinkageError e) {
            whole = true; // A build without tables has no large jars either.
            return System.getProperty("java.class.path");
        }
        return jars.stream().map(Path::toString).collect(Collectors.joining(File.pathSeparator));
    }

    /** Returns what cells are compiled against now. */
    String now() {
        List<String> all = new ArrayList<>(List.of(whole ? System.getProperty("java.class.path") : first()));
        readers.forEach(entry -> all.add(entry.toString()));
        return String.join(File.pathSeparator, all);
    }

    /** Adds what a reader brings along, for compiling and for running. */
    void add(Path entry, JShell shell) {
        if (readers.add(entry)) {
            shell.addToClasspath(entry.toString());
        }
    }

    /** Adds the rest of what the program has, so that a jar added later stands behind it here as it does when classes are loaded. */
    void widen(JShell shell) {
        if (!whole) {
            whole = true;
            shell.addToClasspath(System.getProperty("java.class.path"));
        }
    }

    /** Adds the rest if the errors can come of its lack; returns whether compiling again may help. */
    boolean widenFor(List<Diag> errors, JShell shell) {
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
}
