package parchment.kernel.cell;

import java.io.File;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Pattern;
import parchment.file.FileWords;
import parchment.jars.SessionJars;
import parchment.kernel.page.CellPage;
import parchment.logbook.contents.LogbookPlace;

/**
 * What a session does before its first cell, as its environment says: jars of {@value #JARS} (a folder, as an install names it) and of {@value
 * #CLASSPATH}, then the cells of the file that {@value #START_CELLS} names. Each is told once; what cannot be done is told and left out.
 *
 * <p>No file is ever looked for: what lies in a logbook or beside a notebook is not run, and a file named in a logbook is refused.
 */
public final class StartOfSession {
    public static final String JARS = "PARCHMENT_JARS";
    static final String CLASSPATH = "CLASSPATH";
    public static final String START_CELLS = "PARCHMENT_START_CELLS";

    private final Map<String, String> environment;

    StartOfSession(Map<String, String> environment) {
        this.environment = Map.copyOf(environment);
    }

    /** Returns whether the environment names any place with jars. */
    boolean namesJars() {
        return value(JARS).isPresent() || value(CLASSPATH).isPresent();
    }

    /** Loads the jars; {@code page} is told what was loaded, and what is not there. */
    void loadJars(SessionJars jars, CellPage page) {
        folder().ifPresent(folder -> {
            if (Files.isDirectory(folder)) {
                load(jarsIn(folder, page), jars, page);
            } else {
                say(
                        page,
                        "The folder of jars '" + folder
                                + "' that this kernel was installed with is not there, so this session has"
                                + " none of them. Put it back, or install again: ./parchment install --jars DIR.");
            }
        });
        List<Path> classPath = classPath(page);
        if (!classPath.isEmpty()) {
            say(
                    page,
                    CLASSPATH + " names " + (classPath.size() == 1 ? "1 place" : classPath.size() + " places")
                            + " with jars or classes; this session uses them.");
            load(classPath, jars, page);
        }
    }

    private static void load(List<Path> entries, SessionJars jars, CellPage page) {
        try {
            jars.addFiles(entries);
        } catch (IllegalArgumentException e) {
            loadOneByOne(entries, jars, page); // One that is broken must not keep the others away.
        }
    }

    private static void loadOneByOne(List<Path> entries, SessionJars jars, CellPage page) {
        for (Path entry : entries) {
            try {
                jars.addFiles(List.of(entry));
            } catch (IllegalArgumentException e) {
                say(page, String.valueOf(e.getMessage()));
            }
        }
    }

    private Optional<Path> folder() {
        return value(JARS).map(Path::of);
    }

    /**
     * Returns what the class path names and is there; one that ends in a star stands for the jars of a folder, as with Java itself. What is left
     * out is told: also each path that is no whole one, since it would count from the notebook's folder, of which nothing is ever loaded unasked.
     */
    private List<Path> classPath(CellPage page) {
        List<Path> entries = new ArrayList<>();
        List<String> leftOut = new ArrayList<>();
        for (String entry : value(CLASSPATH).orElse("").split(Pattern.quote(File.pathSeparator))) {
            boolean jarsOfFolder = entry.endsWith("*");
            Optional<Path> place = path(jarsOfFolder ? entry.substring(0, entry.length() - 1) : entry);
            if (entry.isBlank()) {
                continue;
            }
            if (place.isEmpty()) {
                leftOut.add("'" + entry + "' (no path)");
            } else if (!place.get().isAbsolute()) {
                leftOut.add("'" + entry + "' (name the whole path, from the root of the disk)");
            } else if (!Files.exists(place.get())) {
                leftOut.add("'" + entry + "' (not there)");
            } else if (jarsOfFolder) {
                entries.addAll(jarsIn(place.get(), page));
            } else {
                entries.add(place.get());
            }
        }
        if (!leftOut.isEmpty()) {
            say(page, "Left out of what " + CLASSPATH + " names: " + String.join(", ", leftOut) + ".");
        }
        return entries;
    }

    private static Optional<Path> path(String written) {
        try {
            return Optional.of(Path.of(written));
        } catch (InvalidPathException e) {
            return Optional.empty();
        }
    }

    private static List<Path> jarsIn(Path folder, CellPage page) {
        try {
            return SessionJars.directlyIn(folder);
        } catch (IllegalArgumentException e) {
            say(page, "The jars of '" + folder + "' are not loaded: " + e.getMessage());
            return List.of();
        }
    }

    /** Returns the text of the cells to begin with; nothing if none are named, or if they cannot be read, which {@code page} is told. */
    Optional<StartCells> cells(CellPage page) {
        Optional<Path> file = value(START_CELLS).map(Path::of);
        if (file.isEmpty()) {
            return Optional.empty();
        }
        try {
            return Optional.of(StartCells.read(file.get()));
        } catch (IllegalArgumentException e) {
            say(page, String.valueOf(e.getMessage()));
            return Optional.empty();
        }
    }

    /**
     * Cells that a reader wants in every session.
     *
     * @param file where they are written
     * @param code their Java
     */
    public record StartCells(Path file, String code) {
        /** @throws IllegalArgumentException if the file cannot be read, or lies in a logbook */
        public static StartCells read(Path file) {
            checkPlace(file);
            try {
                return new StartCells(file, Files.readString(file).replace("\r\n", "\n"));
            } catch (IOException e) {
                throw new IllegalArgumentException(
                        "The start-up cells cannot be read: " + FileWords.of(e) + " The session begins without them.",
                        e);
            }
        }
    }

    /** @throws IllegalArgumentException if the file lies in a logbook */
    static void checkPlace(Path file) {
        LogbookPlace.anyAround(file).ifPresent(logbook -> {
            throw new IllegalArgumentException("The start-up cells '" + file + "' lie in the logbook '" + logbook
                    + "' (a folder with batches.csv, logbook.properties or curves). A logbook may come from somebody else,"
                    + " so nothing in one is ever run. Keep them elsewhere.");
        });
    }

    private Optional<String> value(String name) {
        return Optional.ofNullable(environment.get(name)).filter(value -> !value.isBlank());
    }

    private static void say(CellPage page, String line) {
        page.print(CellPage.Stream.STDERR, line + "\n");
    }
}
