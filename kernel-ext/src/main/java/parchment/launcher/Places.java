package parchment.launcher;

import java.net.URISyntaxException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Optional;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;

/**
 * Where things are: the project's own folders when run from a clone, the jars of this very process.
 *
 * @param home the project's folder (that of the launcher script), or the working folder
 */
record Places(Path home) {
    /** Names the folder of a Java carried along in a release; the launcher scripts look into it too. */
    static final String JAVA = "java";

    /** Names the folder of a Python with Jupyter carried along in a release. */
    static final String PYTHON = "python";

    /** Returns the places for this process; the launcher script says where it lies in a system property. */
    static Places here() {
        String home = System.getProperty("parchment.home");
        return new Places(Path.of(home == null ? "" : home).toAbsolutePath().normalize());
    }

    Path notebooks() {
        return home.resolve("notebooks");
    }

    /** Returns the notebook that runs when none is named. */
    Path tour() {
        return notebooks().resolve("tour.ipynb");
    }

    /** Returns the Python with Jupyter that is carried along, if there is one. */
    Optional<CarriedPython> carriedPython() {
        CarriedPython python = new CarriedPython(home.resolve(PYTHON));
        return Files.exists(python.program()) ? Optional.of(python) : Optional.empty();
    }

    /** Returns the demo logbook, or null where there is none. */
    @Nullable
    Path demoLogbook() {
        Path demo = home.resolve("datasets").resolve("harbour");
        return Files.isDirectory(demo) ? demo : null;
    }

    /** Returns the first of the pages of every public class, if they are there: in a release, or in a clone after {@code mvn verify}. */
    Optional<Path> classPages() {
        return Stream.of("classes", "src/roastery/target/reports/apidocs")
                .map(folder -> home.resolve(folder).resolve("index.html"))
                .filter(Files::isRegularFile)
                .findFirst();
    }

    /** Returns the beginning of a line for the terminal that starts this program as it was started: by the launcher script, or from its jar. */
    String startedBy() {
        Path script = home.resolve(Command.isWindows() ? "parchment.cmd" : "parchment");
        return System.getProperty("parchment.home") != null && Files.isRegularFile(script)
                ? "\"" + script + "\""
                : "java -jar \"" + kernelJar() + "\"";
    }

    /** Tells whether this process runs on the Java that its release carries along. */
    boolean runOnCarriedJava() {
        return Path.of(System.getProperty("java.home"))
                .toAbsolutePath()
                .normalize()
                .startsWith(home.resolve(JAVA));
    }

    /** Returns the kernel's jar, with the jars it needs in {@code lib} beside it. */
    static Path kernelJar() {
        try {
            return Path.of(Main.class
                    .getProtectionDomain()
                    .getCodeSource()
                    .getLocation()
                    .toURI());
        } catch (URISyntaxException e) {
            throw new IllegalStateException("The program's own jar has a place that is not a path.", e);
        }
    }
}
