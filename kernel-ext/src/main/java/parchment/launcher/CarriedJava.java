package parchment.launcher;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;

/** A Java that travels with the program: cut down to what a session needs, so that it runs where none is installed. */
final class CarriedJava {
    /** Every standard module, so that a cell may use what it likes, and what compiles and runs cells. */
    private static final String MODULES = "java.se,jdk.jshell,jdk.unsupported,jdk.zipfs,jdk.charsets";

    private CarriedJava() {}

    /**
     * Takes along the Java that a release carries already, or makes one.
     *
     * @param release the release's own places
     * @param folder where it goes; must not be there yet
     * @throws IllegalStateException if none is carried and this Java lacks its linker; the message says what to install
     */
    static void along(Places release, Path folder) throws IOException, InterruptedException {
        Path carried = release.home().resolve(Places.JAVA);
        if (Files.isDirectory(carried)) {
            FolderCopy.of(carried, folder, List.of());
        } else {
            make(folder);
        }
    }

    /**
     * Makes it from the Java that runs this program, for the same system.
     *
     * @param folder where it goes; must not be there yet
     * @throws IllegalStateException if this Java lacks its linker; the message says what to install
     */
    static void make(Path folder) throws IOException, InterruptedException {
        Path home = Path.of(System.getProperty("java.home"));
        Path linker = home.resolve("bin").resolve(Command.isWindows() ? "jlink.exe" : "jlink");
        if (!Files.isExecutable(linker)) {
            throw new IllegalStateException("The Java at " + home
                    + " lacks the program jlink, which cuts out the part that travels.\n"
                    + "On Debian or Ubuntu:  sudo apt-get install openjdk-17-jdk-headless\n"
                    + "Elsewhere: take a whole JDK, https://adoptium.net, and set JAVA_HOME to it.");
        }
        Command.Told told = Command.tell(new ProcessBuilder(command(linker, folder)), line -> {});
        if (told.exitCode() != 0) {
            throw new IllegalStateException(
                    "The Java at " + home + " could not be cut down: " + String.join(" ", told.lines()));
        }
        addClassArchive(folder);
    }

    /**
     * Adds the archive of Java's own loaded classes that a JDK brings and its linker leaves out. Without it every start is slower, and the kernel
     * can make no archive of its own, which rests on this one; a Java that cannot make it still runs.
     */
    private static void addClassArchive(Path folder) throws IOException, InterruptedException {
        Command.tell(new ProcessBuilder(program(folder).toString(), "-Xshare:dump"), line -> {});
    }

    /** Returns the program that starts the Java in that folder. */
    static Path program(Path folder) {
        return folder.resolve("bin").resolve(Command.isWindows() ? "java.exe" : "java");
    }

    private static List<String> command(Path linker, Path folder) {
        String compress = Runtime.version().feature() >= 21 ? "--compress=zip-6" : "--compress=2";
        return List.of(
                linker.toString(),
                "--add-modules",
                MODULES,
                compress,
                "--no-header-files",
                "--no-man-pages",
                "--output",
                folder.toString());
    }
}
