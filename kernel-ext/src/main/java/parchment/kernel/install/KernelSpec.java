package parchment.kernel.install;

import com.google.gson.GsonBuilder;
import com.google.gson.JsonArray;
import com.google.gson.JsonObject;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.stream.Stream;
import parchment.file.WholeFile;
import parchment.file.WholeFolder;
import parchment.kernel.cell.StartOfSession;

/**
 * The kernel as Jupyter finds it: a folder with {@code kernel.json}, the jars, and the archive of loaded classes that makes the
 * kernel start sooner. Everything is inside that one folder, so removing it (or {@code jupyter kernelspec remove parchment})
 * leaves nothing behind.
 */
public final class KernelSpec {
    /** The name by which notebooks ask for the kernel. */
    public static final String NAME = "parchment";

    private static final String JAR = "parchment-kernel.jar";
    private static final String JSON = "kernel.json";

    /** Is written when all the jars are there. */
    private static final String COMPLETE = "complete";

    private final Path folder;
    private final Map<String, String> environment;
    private final List<String> ownFlags;

    private KernelSpec(Path folder, Map<String, String> environment, List<String> ownFlags) {
        this.folder = folder;
        this.environment =
                Collections.unmodifiableMap(new TreeMap<>(environment)); // In order, so that the same gives the same.
        this.ownFlags = List.copyOf(ownFlags);
    }

    /** Returns the kernel's place in a folder where Jupyter keeps its data, such as {@code ~/.local/share/jupyter}. */
    public static KernelSpec in(Path jupyterData) {
        return new KernelSpec(jupyterData.resolve("kernels").resolve(NAME), Map.of(), List.of());
    }

    /** @throws IllegalArgumentException if Jupyter would not take the other name, such as java, or another kernel has it */
    public KernelSpec as(String name) throws IOException {
        if (!name.matches("[a-z0-9._-]{1,60}")) {
            throw new IllegalArgumentException(
                    "A kernel's name is of small letters, digits, dots, dashes and underlines, such as"
                            + " java; found '" + name + "'.");
        }
        Path other = folder.resolveSibling(name);
        if (Files.exists(other.resolve(JSON))
                && !Files.readString(other.resolve(JSON)).contains(JAR)) {
            throw new IllegalArgumentException("There is another kernel named '" + name + "' already, in " + other
                    + ", and it is left as it is. Take it away first (jupyter kernelspec remove " + name
                    + "), or choose Parchment for a notebook in Jupyter itself: Kernel, Change kernel.");
        }
        return new KernelSpec(other, environment, ownFlags);
    }

    /** Returns the kernel with a logbook folder that its cells open when they name none, as for a class. */
    public KernelSpec withLogbook(Path logbook) {
        return withVariable("PARCHMENT_LOGBOOK", logbook);
    }

    /** Returns the kernel with a folder whose jars each session loads. */
    public KernelSpec withJars(Path jars) {
        return withVariable(StartOfSession.JARS, jars);
    }

    /**
     * Returns the kernel with a file of cells that each session begins with.
     *
     * @throws IllegalArgumentException if it is not there, or lies in a logbook
     */
    public KernelSpec withStartCells(Path file) {
        StartOfSession.StartCells.read(file);
        return withVariable(StartOfSession.START_CELLS, file);
    }

    private KernelSpec withVariable(String name, Path value) {
        Map<String, String> variables = new TreeMap<>(environment);
        variables.put(name, value.toString());
        return new KernelSpec(folder, variables, ownFlags);
    }

    /**
     * Returns the kernel with a bound on the memory of each session.
     *
     * @param size as Java writes it, such as {@code 512m} or {@code 1g}
     * @throws IllegalArgumentException if that is not a size, or is too small for a session (under 128m)
     */
    public KernelSpec withHeap(String size) {
        if (!size.matches("[1-9][0-9]{0,6}[mMgG]") || size.matches("([0-9]{1,2}|1[01][0-9]|12[0-7])[mM]")) {
            throw new IllegalArgumentException(
                    "The memory of a session is written as 512m or 1g and is 128m or more; found '" + size + "'.");
        }
        return new KernelSpec(folder, environment, List.of("-Xmx" + size));
    }

    public Path folder() {
        return folder;
    }

    /** Returns what a reader chooses in Jupyter. */
    public String shownName() {
        String name = String.valueOf(folder.getFileName());
        return "Parchment (Java)" + (name.equals(NAME) ? "" : ", as " + name);
    }

    /**
     * Installs the kernel, or brings it up to date; does nothing if the same jars are there already.
     *
     * @param kernelJar this program's jar, with the jars it needs in {@code lib} beside it
     * @return true if something was installed
     * @throws IllegalArgumentException if the program does not run from its jar
     */
    public boolean install(Path kernelJar) throws IOException, InterruptedException {
        if (!Files.isRegularFile(kernelJar)) {
            throw new IllegalArgumentException("Only a built kernel can be installed; run it as: ./parchment install");
        }
        List<Path> jars = jars(kernelJar);
        Path java = java();
        Path home = folder.resolve("jars-" + stamp(jars, java, environment + " " + ownFlags));
        checkPath(java);
        checkPath(folder);
        if (isThere(home)) {
            return false;
        }
        FoldersMade.make(folder);
        try (InstallLock lock = InstallLock.take(folder)) {
            if (isThere(home)) {
                return false; // Another install was quicker.
            }
            put(kernelJar, java, home);
        }
        return true;
    }

    private void put(Path kernelJar, Path java, Path home) throws IOException, InterruptedException {
        boolean done = false;
        try {
            delete(home);
            copyJars(kernelJar, home);
            CompilerDirectives.write(home);
            Optional<String> archive = ClassArchive.make(java, home, JAR);
            Logos.write(folder);
            WholeFile.at(home.resolve(COMPLETE)).write("");
            // Written last and in one step: a client that looks meanwhile finds the old kernel or the new one, never
            // half of one.
            WholeFile.at(folder.resolve(JSON)).write(json(java, home, archive));
            done = true;
        } finally {
            if (!done) {
                delete(home); // A full disk gets its room back; a kernel that was there before still is.
            }
        }
        removeOthers(home);
    }

    /** Returns whether the whole of an install is there, and is what Jupyter finds. */
    private boolean isThere(Path home) throws IOException {
        Path json = folder.resolve(JSON);
        return Files.exists(json)
                && Files.exists(home.resolve(COMPLETE))
                && Files.readString(json).contains(String.valueOf(home.getFileName()));
    }

    /** Java finds no classes under a path with a sign beyond the first 65,536 of Unicode, such as a smiling face. */
    private static void checkPath(Path path) {
        if (path.toString().codePoints().anyMatch(Character::isSupplementaryCodePoint)) {
            throw new IllegalArgumentException(
                    "Java cannot start a kernel from '" + path
                            + "', because of a sign in that path that its own file names do not know (an emoji, for example). Set"
                            + " JUPYTER_DATA_DIR to a folder without it, or name a Python environment elsewhere with --prefix.");
        }
    }

    /** Copies this program's jars; returns where its own jar is now. */
    public static Path copyJars(Path kernelJar, Path folder) throws IOException {
        Files.createDirectories(folder.resolve("lib"));
        Path copied = folder.resolve(JAR);
        for (Path jar : jars(kernelJar)) {
            Path target = jar.equals(kernelJar) ? copied : folder.resolve("lib").resolve(jar.getFileName());
            WholeFile.at(target).copy(jar);
        }
        return copied;
    }

    /**
     * Removes the kernel with everything that the install made, folders above it too as far as nothing else is in them.
     *
     * @return true if it was there
     */
    public boolean uninstall() throws IOException {
        if (!Files.exists(folder)) {
            return false;
        }
        FoldersMade.remove(folder);
        return true;
    }

    private String json(Path java, Path home, Optional<String> archive) {
        JsonObject spec = new JsonObject();
        JsonArray command = new JsonArray();
        command.add(java.toString());
        flags(home).forEach(command::add);
        ownFlags.forEach(command::add);
        archive.ifPresent(flag -> {
            command.add(flag);
            command.add("-Xlog:disable"); // An archive that no longer fits is passed over in silence.
        });
        command.add("-jar");
        command.add(home.resolve(JAR).toString());
        command.add("kernel");
        command.add("{connection_file}");
        spec.add("argv", command);
        spec.addProperty("display_name", shownName());
        spec.addProperty("language", "java");
        spec.addProperty("interrupt_mode", "message");
        JsonObject variables = new JsonObject();
        variables.addProperty(
                "MALLOC_ARENA_MAX", "2"); // Linux would set memory aside for each of many threads; others do not look.
        environment.forEach(variables::addProperty);
        spec.add("env", variables);
        JsonObject metadata = new JsonObject();
        metadata.addProperty("debugger", false);
        spec.add("metadata", metadata);
        return new GsonBuilder()
                        .setPrettyPrinting()
                        .disableHtmlEscaping()
                        .create()
                        .toJson(spec)
                + "\n";
    }

    /** Returns the settings of Java that every kernel runs with; the class archive only fits a kernel with the same. */
    static List<String> flags(Path home) {
        List<String> flags = new ArrayList<>(CompilerDirectives.flags(home));
        flags.addAll(List.of(
                "-XX:+UseSerialGC", // Starts sooner and idles smaller; a notebook's heap is small enough for it.
                "-Xms64m", // A sixty-fourth of the machine's memory otherwise, which an idle session would keep.
                "-XX:MinHeapFreeRatio=10",
                "-XX:MaxHeapFreeRatio=25",
                "-XX:+UseCountedLoopSafepoints", // Or a loop over many numbers could not be stopped before its end.
                "-XX:LoopStripMiningIter=1000", // With this they cost nothing that can be measured.
                "-XX:-UsePerfData",
                "-Djava.awt.headless=true",
                "-Dfile.encoding=UTF-8",
                "-Duser.language=en"));
        if (Runtime.version().feature() >= 24) {
            flags.add("--enable-native-access=ALL-UNNAMED");
        }
        return flags;
    }

    private static Path java() {
        boolean windows = System.getProperty("os.name").toLowerCase(Locale.ROOT).startsWith("windows");
        return Path.of(System.getProperty("java.home"), "bin", windows ? "java.exe" : "java");
    }

    private static List<Path> jars(Path kernelJar) throws IOException {
        List<Path> jars = new ArrayList<>(List.of(kernelJar));
        try (Stream<Path> library = Files.list(kernelJar.resolveSibling("lib"))) {
            library.filter(jar -> jar.toString().endsWith(".jar")).sorted().forEach(jars::add);
        }
        return jars;
    }

    /** The same jars for the same Java with the same settings give the same stamp. */
    private static String stamp(List<Path> jars, Path java, String settings) throws IOException {
        StringBuilder all =
                new StringBuilder(java.toString()).append(Runtime.version()).append(settings);
        for (Path jar : jars) {
            all.append(jar.getFileName()).append(Files.size(jar)).append(Files.getLastModifiedTime(jar));
        }
        return String.format(Locale.ROOT, "%08x", all.toString().hashCode());
    }

    private void removeOthers(Path keep) throws IOException {
        List<Path> old;
        try (Stream<Path> entries = Files.list(folder)) {
            old = entries.filter(Files::isDirectory)
                    .filter(entry -> !entry.equals(keep))
                    .toList();
        }
        for (Path entry : old) {
            try {
                delete(entry);
            } catch (IOException e) {
                continue; // A kernel that runs from it keeps it open on some systems; a later install takes it away.
            }
        }
    }

    /** Removes a folder with all that is in it; does nothing if it is not there. */
    public static void delete(Path place) throws IOException {
        WholeFolder.delete(place);
    }
}
