package parchment.launcher;

import java.io.IOException;
import java.io.PrintWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * A Python with Jupyter in a folder of its own, which may be moved: the system's interpreter and its library copied, and Jupyter
 * installed into the copy. A virtual environment would not do, for it points back to the Python that made it.
 *
 * @param folder holds {@code bin/python3} and {@code lib}
 */
record CarriedPython(Path folder) {
    /** What no notebook server needs of Python's own library. */
    private static final List<String> LEFT_OUT = List.of(
            "test", "idlelib", "tkinter", "turtledemo", "lib2to3", "ensurepip", "site-packages", "dist-packages");

    /** Prints the program that really runs, the number of the version as folders bear it, and the folder of the library. */
    private static final String ASK = "import os, sys, sysconfig;"
            + " print(os.path.realpath(sys.executable)); print('python%d.%d' % sys.version_info[:2]);"
            + " print(sysconfig.get_path('stdlib'))";

    /** Prints the folder in which the Python looks for installed packages. */
    private static final String ASK_PACKAGES = "import site; print(site.getsitepackages()[0])";

    Path program() {
        return Command.isWindows()
                ? folder.resolve("python.exe")
                : folder.resolve("bin").resolve("python3");
    }

    /** Returns the start of the command that serves notebooks; nothing of the machine's own Python settings reaches it. */
    List<String> server() {
        return List.of(program().toString(), "-I", "-m", "notebook");
    }

    /**
     * Makes it from a Python of this machine.
     *
     * @throws IllegalStateException if there is none that can be copied, or Jupyter cannot be fetched; the message says what to do
     */
    void make(PrintWriter terminal) throws IOException, InterruptedException {
        Path original = copyable()
                .orElseThrow(() -> new IllegalStateException(
                        "No Python that can travel was found: it must be a python3 in one piece, with pip.\n"
                                + "On Debian or Ubuntu:  sudo apt-get install python3 python3-pip\n"
                                + "If the laptops have Jupyter already: --without-jupyter"));
        List<String> told = ask(original, ASK);
        Path library = folder.resolve("lib").resolve(told.get(1));
        Files.createDirectories(folder.resolve("bin"));
        Files.copy(Path.of(told.get(0)), program());
        FolderCopy.of(Path.of(told.get(2)), library, LEFT_OUT);
        Path packages = Path.of(ask(program(), ASK_PACKAGES).get(0));
        terminal.println("Fetching Jupyter with pip ...");
        terminal.flush();
        Command.Told fetched = Command.tell(
                new ProcessBuilder(
                        original.toString(),
                        "-m",
                        "pip",
                        "--quiet",
                        "--disable-pip-version-check",
                        "install",
                        "--target",
                        packages.toString(),
                        "--only-binary",
                        ":all:",
                        "notebook"),
                line -> {});
        if (fetched.exitCode() != 0) {
            throw new IllegalStateException("Jupyter could not be fetched, which needs a network: "
                    + (fetched.lines().isEmpty()
                            ? "pip said nothing"
                            : fetched.lines().get(fetched.lines().size() - 1))
                    + "\nBehind a proxy, set https_proxy. If the laptops have Jupyter already: --without-jupyter");
        }
        for (String beside : List.of("share", "etc")) { // Jupyter looks for these two beside Python's own library.
            if (Files.isDirectory(packages.resolve(beside))) {
                Files.move(packages.resolve(beside), folder.resolve(beside));
            }
        }
        List<String> check = new ArrayList<>(server());
        check.add("--version");
        if (!Command.succeeds(check)) {
            throw new IllegalStateException(
                    "The copied Python does not start Jupyter; on the machines of the class it would"
                            + " not either. It was copied from " + told.get(0) + ".");
        }
    }

    /** Returns the first Python with pip that does not lean on a library of its own elsewhere, which a copy would leave behind. */
    private static Optional<Path> copyable() throws IOException, InterruptedException {
        List<Path> candidates = new ArrayList<>(Command.onPath("python3"));
        candidates.add(Path.of("/usr/bin/python3"));
        for (Path python : candidates.stream().distinct().toList()) {
            if (Command.succeeds(List.of(python.toString(), "-m", "pip", "--version"))) {
                String program = ask(python, ASK).get(0);
                List<String> libraries = Command.tell(new ProcessBuilder("ldd", program), line -> {})
                        .lines();
                if (libraries.stream().noneMatch(line -> line.contains("libpython"))) {
                    return Optional.of(python);
                }
            }
        }
        return Optional.empty();
    }

    private static List<String> ask(Path python, String question) throws IOException, InterruptedException {
        Command.Told told = Command.tell(new ProcessBuilder(python.toString(), "-I", "-c", question), line -> {});
        if (told.exitCode() != 0 || told.lines().isEmpty()) {
            throw new IllegalStateException(
                    "The Python " + python + " does not run: " + String.join(" ", told.lines()));
        }
        return told.lines();
    }
}
