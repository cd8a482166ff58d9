package parchment.jars;

import java.io.File;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import parchment.jars.JarContent.Named;
import parchment.jars.LibraryVersions.Held;

/** What is about to be loaded, and what is left out because another version of it is there: told before anything is loaded. */
final class JarList {
    private final ProgramJars program;
    private final LibraryVersions versions;
    private final Set<Path> loaded;
    private final List<Jar> jars = new ArrayList<>();
    private final Set<Path> listed = new LinkedHashSet<>();
    private final List<String> notes = new ArrayList<>();

    /** What is left out because the program has it in another version: name, and what the program has. */
    private final Map<String, String> ofProgram = new LinkedHashMap<>();

    private boolean holdsClassesOfProgram;

    /**
     * @param before what the session has loaded before
     * @param loaded where that lies
     */
    JarList(ProgramJars program, LibraryVersions before, Set<Path> loaded) {
        this.program = program;
        this.versions = before.copy();
        this.loaded = loaded;
    }

    /** Adds a library that was found. */
    void addLibrary(Library library) {
        Coordinate name = library.coordinate();
        if (!name.extension().equals("jar")) {
            notes.add(name + " is no jar but a file of the kind " + name.extension() + "; it is not loaded.");
            return;
        }
        add(library.file(), name.toString(), library.licence(), Optional.of(Held.of(library)));
    }

    /**
     * Adds a jar, or a folder of classes.
     *
     * @throws IllegalArgumentException if it is not there, or neither
     */
    void addFile(Path written) {
        Path file = written.toAbsolutePath().normalize();
        if (!Files.exists(file)) {
            throw new IllegalArgumentException(
                    "There is no file '" + file + "'. A jar is named by its path, which counts from '"
                            + Path.of("").toAbsolutePath() + "' if it does not begin with a slash or a drive.");
        }
        String name = String.valueOf(file.getFileName());
        if (Files.isDirectory(file)) {
            checkSigns(file);
            if (listed.add(file) && !loaded.contains(file)) {
                jars.add(new Jar(name, file, 0, ""));
            }
            return;
        }
        add(file, name, "", Held.of(file));
    }

    /** Java takes the sign for the end of one path and the beginning of another, whether for a cell's compiler or for what loads its classes. */
    private static void checkSigns(Path file) {
        if (file.toString().contains(File.pathSeparator)) {
            throw new IllegalArgumentException(
                    "'" + file + "' cannot be loaded: Java takes the sign '" + File.pathSeparator
                            + "' in a path for the end of it. Give the file or its folder a name without that sign. Nothing was loaded.");
        }
    }

    private void add(Path file, String name, String licence, Optional<Held> held) {
        checkSigns(file);
        if (loaded.contains(file) || !listed.add(file)) {
            return;
        }
        Optional<Held> before = held.flatMap(versions::sameAs);
        if (before.isPresent() && held.isPresent()) {
            noteIfOther(before.get(), held.get());
            return;
        }
        Optional<Named> named = held.map(each -> new Named(each.artifact(), each.version()));
        JarContent content = JarContent.of(file);
        int there = content.present(program::has);
        Optional<Named> own = named.flatMap(program::sameAs).filter(same -> there > 0);
        if (own.isPresent() && named.isPresent()) {
            String version = own.get().version();
            if (!version.equals(named.get().version())) {
                ofProgram.put(name, own.get().artifact() + " " + version);
            }
            return;
        }
        if (there > 0) {
            String holder = program.holder(content.firstPresent(program::has).orElseThrow());
            notes.add(
                    there == content.size()
                            ? name + " is not loaded: all its classes are there already, in " + holder + "."
                            : String.format(
                                    Locale.ROOT,
                                    "%s has %d of its %d classes in common with %s; those are used, and only the rest comes from it.",
                                    name,
                                    there,
                                    content.size(),
                                    holder));
            if (there == content.size()) {
                return;
            }
            holdsClassesOfProgram = true;
        }
        if (content.size() == 0) {
            notes.add(
                    name
                            + " holds no class that a cell could use. Is it the jar of a library's sources or pages? The library itself is another jar.");
        }
        jars.add(new Jar(name, file, file.toFile().length(), licence));
        held.ifPresent(versions::add);
    }

    /** What is there in the very version that was asked for needs no word. */
    private void noteIfOther(Held before, Held now) {
        if (!before.version().equals(now.version())) {
            notes.add((now.library().isEmpty() ? now.artifact() : now.library()) + " " + now.version()
                    + " is not loaded: this session has " + before.version()
                    + ", and that one is used. To change it, restart the kernel and name " + now.version() + " first.");
        }
    }

    /** Returns what the session has once this is loaded. */
    LibraryVersions versions() {
        return versions.copy();
    }

    List<Jar> jars() {
        return List.copyOf(jars);
    }

    /** Returns what was left out or is shared, and why, in sentences. */
    List<String> notes() {
        List<String> all = new ArrayList<>(notes);
        if (ofProgram.size() == 1) {
            ofProgram.forEach((name, own) ->
                    all.add(name + " is not loaded: Parchment runs on " + own + ", and that one is used here."));
        } else if (ofProgram.size() > 1) {
            all.add(String.format(
                    Locale.ROOT,
                    "%d jars are not loaded: Parchment runs on %s, and those are used here in place of %s.",
                    ofProgram.size(),
                    Jars.row(List.copyOf(ofProgram.values())),
                    Jars.row(List.copyOf(ofProgram.keySet()))));
        }
        return List.copyOf(all);
    }

    /** Returns whether one of the jars has classes that the program has too. */
    boolean holdsClassesOfProgram() {
        return holdsClassesOfProgram;
    }

    /** Returns what a reader is told before the jars are loaded. */
    List<String> lines() {
        List<String> lines = new ArrayList<>();
        if (!jars.isEmpty()) {
            long bytes = jars.stream().mapToLong(Jar::bytes).sum();
            lines.add("Loading " + Jars.count(jars.size()) + " (" + Jar.size(bytes) + "):");
            int widest =
                    jars.stream().mapToInt(jar -> jar.name().length()).max().orElse(1);
            for (Jar jar : jars) {
                String size = Files.isDirectory(jar.path()) ? "folder" : jar.size();
                lines.add(String.format(Locale.ROOT, "  %-" + widest + "s  %9s  %s", jar.name(), size, jar.licence())
                        .stripTrailing());
            }
        }
        lines.addAll(notes());
        return lines;
    }
}
