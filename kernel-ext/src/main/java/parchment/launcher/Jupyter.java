package parchment.launcher;

import java.io.IOException;
import java.io.PrintWriter;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * A Jupyter that can serve notebooks, found or installed.
 *
 * @param server the start of the command that serves notebooks, such as {@code jupyter notebook}
 * @param kind which of its servers that is
 */
record Jupyter(List<String> server, NotebookServer kind) {
    Jupyter {
        server = List.copyOf(server);
    }

    private static final List<String> DEBIAN =
            List.of("jupyter-notebook", "jupyter-client", "python3-nbclient", "python3-nbconvert", "jupyter-nbconvert");

    /**
     * Returns the first Jupyter that really runs: one that is carried along, then the machine's own. Another Python earlier on the search
     * path often brings a {@code jupyter} without any server.
     */
    static Optional<Jupyter> find() {
        Optional<CarriedPython> carried = Places.here().carriedPython();
        if (carried.isPresent()) {
            Optional<Jupyter> found = asked(carried.get().server(), "notebook");
            if (found.isPresent()) {
                return found;
            }
        }
        List<Path> candidates = new ArrayList<>(Command.onPath("jupyter"));
        candidates.add(Path.of("/usr/bin/jupyter"));
        candidates.add(inPrivateEnvironment("jupyter"));
        for (Path program : candidates.stream().distinct().toList()) {
            for (String server : List.of("notebook", "lab")) {
                Optional<Jupyter> found = asked(List.of(program.toString(), server), server);
                if (found.isPresent()) {
                    return found;
                }
            }
        }
        return Optional.empty();
    }

    /** Returns the server if it runs: it is asked for its version, which says of what kind it is. */
    private static Optional<Jupyter> asked(List<String> server, String name) {
        List<String> command = new ArrayList<>(server);
        command.add("--version");
        return Command.answer(command).map(version -> new Jupyter(server, NotebookServer.of(name, version)));
    }

    /**
     * Returns a Jupyter, installing one where there is none: from the system's own packages where that is permitted, else in a
     * Python environment of our own.
     *
     * @throws IllegalStateException if neither can be done; the message names what to install
     */
    static Jupyter findOrInstall(PrintWriter terminal) throws IOException, InterruptedException {
        Optional<Jupyter> found = find();
        if (found.isPresent()) {
            return found.get();
        }
        if (installFromPackages(DEBIAN, terminal) || installPrivately(terminal)) {
            Optional<Jupyter> installed = find();
            if (installed.isPresent()) {
                return installed.get();
            }
        }
        throw new IllegalStateException("Jupyter is needed to open notebooks, and could not be installed from here.\n"
                + "On Debian or Ubuntu:  sudo apt-get install jupyter-notebook\n"
                + "Elsewhere:  python3 -m pip install notebook\n"
                + "Without Jupyter, './parchment run' runs the notebooks and writes them as pages.");
    }

    /** Installs system packages where apt-get is there and may be used without a password; returns whether that went well. */
    static boolean installFromPackages(List<String> packages, PrintWriter terminal)
            throws IOException, InterruptedException {
        if (Command.onPath("apt-get").isEmpty()) {
            return false;
        }
        List<String> lead;
        if (isRoot()) {
            lead = List.of();
        } else if (Command.succeeds(List.of("sudo", "-n", "true"))) {
            lead = List.of("sudo", "-n");
        } else {
            return false;
        }
        terminal.println("Installing " + String.join(", ", packages) + " with apt-get ...");
        terminal.flush();
        List<String> options = List.of("-o", "DPkg::Lock::Timeout=900", "-qq", "-y");
        List<String> update = new ArrayList<>(lead);
        update.add("apt-get");
        update.addAll(options);
        update.add("update");
        List<String> install = new ArrayList<>(lead);
        install.add("apt-get");
        install.addAll(options);
        install.addAll(List.of("install", "--no-install-recommends"));
        install.addAll(packages);
        return Command.run(new ProcessBuilder(update)) == 0 && Command.run(quiet(install)) == 0;
    }

    private static ProcessBuilder quiet(List<String> command) {
        ProcessBuilder builder = new ProcessBuilder(command);
        builder.environment().put("DEBIAN_FRONTEND", "noninteractive");
        return builder;
    }

    private static boolean installPrivately(PrintWriter terminal) throws IOException, InterruptedException {
        for (String name : List.of("python3", "python")) {
            for (Path python : Command.onPath(name)) {
                Path environment = privateEnvironment();
                terminal.println("Installing Jupyter in an environment of its own, " + environment + " ...");
                terminal.flush();
                boolean made =
                        Command.run(new ProcessBuilder(python.toString(), "-m", "venv", environment.toString())) == 0;
                if (made
                        && Command.run(new ProcessBuilder(
                                        inPrivateEnvironment("python").toString(),
                                        "-m",
                                        "pip",
                                        "--quiet",
                                        "--disable-pip-version-check",
                                        "install",
                                        "notebook"))
                                == 0) {
                    return true;
                }
            }
        }
        return false;
    }

    private static Path privateEnvironment() {
        return privateFolder().resolve("python");
    }

    /** Returns the folder of what is installed for this program alone. */
    static Path privateFolder() {
        return JupyterData.userData().resolve("parchment");
    }

    static Path inPrivateEnvironment(String program) {
        return Command.isWindows()
                ? privateEnvironment().resolve("Scripts").resolve(program + ".exe")
                : privateEnvironment().resolve("bin").resolve(program);
    }

    /** Jupyter refuses to serve for root unless told. */
    static boolean isRoot() {
        return "root".equals(System.getProperty("user.name")) && !Command.isWindows();
    }
}
