package parchment.jars;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.concurrent.CancellationException;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.FutureTask;
import java.util.function.Supplier;

/** What a session has loaded beside the program itself, in which order, and where it may look for more. For the kernel, not for cells. */
public final class SessionJars {

    /** The session's side: what cells are compiled against and load from. */
    public interface ClassPath {
        /** Adds a jar or a folder of classes; where a class is in several, the first added is used. */
        void add(Path entry);

        /**
         * Makes sure that whatever the program itself has is found before any jar added from now on, also by the compiler, which otherwise
         * reads it only when needed.
         */
        void programFirst();

        /** Tells the reader a line, now. */
        void say(String line);
    }

    private final ClassPath classPath;
    private final Network network;
    private final Supplier<MavenSettings> settings;
    private LibraryVersions versions = LibraryVersions.none();
    private final Map<Path, Jar> loaded = new LinkedHashMap<>();
    private final Map<Coordinate, List<Path>> brought = new HashMap<>();
    private final List<Repository> repositories;

    /** Returns a session that has loaded nothing yet. */
    public static SessionJars of(ClassPath classPath, Network network) {
        return new SessionJars(classPath, network, MavenSettings::ofReader, List.of(Repository.CENTRAL));
    }

    SessionJars(ClassPath classPath, Network network, Supplier<MavenSettings> settings, List<Repository> repositories) {
        this.classPath = classPath;
        this.network = network;
        this.settings = settings;
        this.repositories = new ArrayList<>(repositories);
    }

    void addRepository(Repository repository) {
        repositories.removeIf(known -> known.id().equals(repository.id()));
        repositories.add(repository);
    }

    /** Returns everything loaded so far, in order. */
    List<Jar> loaded() {
        return List.copyOf(loaded.values());
    }

    /** Finds libraries with all that they need, says what they are, and loads them. */
    Jars addLibraries(List<Coordinate> wanted) {
        ProgramJars program = ProgramJars.ofThisProgram();
        List<Coordinate> own = wanted.stream().filter(program::isOne).toList();
        List<String> ofProgram =
                own.stream().map(each -> ownInWords(each, program)).toList();
        ofProgram.forEach(classPath::say);
        List<Coordinate> lacking = wanted.stream()
                .filter(each -> !versions.has(each) && !own.contains(each))
                .toList();
        if (lacking.isEmpty()) {
            List<Coordinate> before =
                    wanted.stream().filter(each -> !own.contains(each)).toList();
            List<String> notes = new ArrayList<>(ofProgram);
            if (!before.isEmpty()) {
                notes.add(Jars.row(before) + " is loaded already.");
            }
            return new Jars(List.of(), notes, loaded()).withThere(broughtBy(wanted));
        }
        List<Library> found;
        try {
            found = interruptible(lacking);
        } catch (IllegalArgumentException notToBeHad) {
            if (!lacking.stream()
                    .allMatch(each -> program.version(each.artifact()).isPresent())) {
                throw notToBeHad;
            }
            return ofProgram(lacking, program, String.valueOf(notToBeHad.getMessage()));
        }
        JarList list = new JarList(program, versions, loaded.keySet());
        found.forEach(list::addLibrary);
        List<Path> there = broughtBy(wanted);
        Jars jars = load(list).withThere(there);
        List<Path> paths = jars.paths().stream().map(Path::of).toList();
        lacking.forEach(each -> brought.put(each, paths));
        return jars;
    }

    /** Before anything is looked for: what the program has itself is used, in whichever version it was asked for. */
    private static String ownInWords(Coordinate asked, ProgramJars program) {
        String version = program.version(asked.artifact()).orElse("");
        return version.equals(asked.version())
                ? asked.artifact() + " " + version + " is part of Parchment, and that one is used here."
                : asked + " is not loaded: Parchment runs on " + asked.artifact() + " " + version
                        + ", and that one is used here.";
    }

    /** Returns where the jars lie that came with libraries when these were first asked for. */
    private List<Path> broughtBy(List<Coordinate> wanted) {
        return wanted.stream()
                .flatMap(each -> brought.getOrDefault(each, pathsOf(each)).stream())
                .distinct()
                .toList();
    }

    /** One that came along with another was never asked for by itself. */
    private List<Path> pathsOf(Coordinate name) {
        return loaded.values().stream()
                .filter(jar -> jar.name().equals(name.toString()))
                .map(Jar::path)
                .toList();
    }

    /** Says that what Parchment brings itself is there, though the libraries asked for are not to be had. */
    private Jars ofProgram(List<Coordinate> asked, ProgramJars program, String why) {
        List<String> notes = new ArrayList<>(List.of(why));
        asked.forEach(each -> notes.add(each.artifact() + " "
                + program.version(each.artifact()).orElse("") + " is part of Parchment, and that one is used here."));
        notes.forEach(classPath::say);
        return new Jars(List.of(), notes, loaded());
    }

    /** Says what files there are, and loads them: jars, or folders of classes. */
    public Jars addFiles(List<Path> files) {
        JarList list = new JarList(ProgramJars.ofThisProgram(), versions, loaded.keySet());
        files.forEach(list::addFile);
        List<Path> there = files.stream()
                .map(file -> file.toAbsolutePath().normalize())
                .filter(loaded::containsKey)
                .toList();
        return load(list).withThere(there);
    }

    private Jars load(JarList list) {
        if (list.holdsClassesOfProgram()) {
            classPath.programFirst();
        }
        list.lines().forEach(classPath::say);
        for (Jar jar : list.jars()) {
            classPath.add(jar.path());
            loaded.put(jar.path(), jar);
        }
        versions = list.versions();
        return new Jars(list.jars(), list.notes(), loaded());
    }

    /** Looks for libraries on a thread of its own, so that a cell can be stopped while a network does not answer. */
    private List<Library> interruptible(List<Coordinate> wanted) {
        MavenSettings where = settings.get();
        List<Repository> places = List.copyOf(repositories);
        FutureTask<List<Library>> search =
                new FutureTask<>(() -> new Resolver(where, network, classPath::say).find(wanted, places));
        Thread thread = new Thread(search, "jars");
        thread.setDaemon(true);
        thread.start();
        try {
            return search.get();
        } catch (InterruptedException e) {
            search.cancel(true);
            Thread.currentThread().interrupt();
            throw new CancellationException("Stopped before the libraries were there; nothing was loaded.");
        } catch (ExecutionException e) {
            if (e.getCause() instanceof IllegalArgumentException refusal) {
                throw refusal;
            }
            throw new IllegalStateException(
                    "The search for " + Jars.row(wanted) + " broke off; nothing was loaded.", e.getCause());
        }
    }

    /**
     * Returns the jars directly in a folder, by name.
     *
     * @throws IllegalArgumentException if it cannot be read
     */
    public static List<Path> directlyIn(Path folder) {
        return JarFiles.directlyIn(folder);
    }

    /**
     * Looks at the jars directly in a folder as each session will that loads them.
     *
     * @return what is wrong with those that no session could load, in sentences; that there are none, if so
     */
    public static List<String> troublesIn(Path folder) {
        List<Path> jars = JarFiles.directlyIn(folder);
        List<String> troubles = new ArrayList<>();
        for (Path jar : jars) {
            JarList alone = new JarList(ProgramJars.ofThisProgram(), LibraryVersions.none(), Set.of());
            try {
                alone.addFile(jar);
            } catch (IllegalArgumentException e) {
                troubles.add(String.valueOf(e.getMessage()));
            }
        }
        return jars.isEmpty() ? List.of("There is no jar directly in '" + folder + "'.") : troubles;
    }

    /** Returns the jars directly in a folder, by name; the folder itself if it has classes and no jars. */
    static List<Path> jarsIn(Path folder) {
        List<Path> jars = JarFiles.directlyIn(folder);
        if (jars.isEmpty() && !JarFiles.holdsClasses(folder)) {
            throw new IllegalArgumentException(
                    "The folder '" + folder.toAbsolutePath().normalize()
                            + "' has neither jars nor classes in it, so there is nothing to load.");
        }
        return jars.isEmpty() && Files.isDirectory(folder) ? List.of(folder) : jars;
    }
}
