package parchment.launcher;

import java.io.File;
import java.io.IOException;
import java.io.PrintWriter;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import parchment.kernel.install.KernelSpec;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;

/** Sets everything up and opens the notebooks in a browser. */
@picocli.CommandLine.Command(
        name = "open",
        description = {
            "Opens the start page and the notebooks in your browser, after setting up what is missing (Jupyter, the kernel).",
            "The server listens on this machine only and asks for its token; Ctrl-C ends it."
        },
        mixinStandardHelpOptions = true)
final class OpenCommand implements Callable<Integer> {
    @Spec
    @SuppressWarnings("NullAway.Init")
    private CommandSpec spec;

    @Option(
            names = "--logbook",
            paramLabel = "DIR",
            description = "The logbook folder to read; the demo logbook if not given.")
    private @Nullable Path logbook;

    @Option(names = "--no-browser", description = "Prints the address instead of opening a browser.")
    private boolean noBrowser;

    @Override
    public Integer call() throws Exception {
        PrintWriter terminal = spec.commandLine().getOut();
        Places places = Places.here();
        LogbookChoice choice = LogbookChoice.of(logbook, places);
        StartPage start = new StartPage(choice.folder(), places.notebooks());
        StartFacts.begin(start, choice, StartFacts.AT_MOST); // The logbook is read while the rest is set up.
        Jupyter jupyter = Jupyter.findOrInstall(terminal);
        KernelSpec kernel = KernelSpec.in(JupyterData.ofUser());
        terminal.println("Setting up the kernel ...");
        terminal.flush();
        try {
            kernel.install(Places.kernelJar());
        } catch (IOException e) {
            throw new InstallPlace().refused(kernel, e);
        }
        List<String> command = serverCommand(jupyter, places.notebooks());
        command.add(jupyter.kind().firstShown(start.openIn(kernel.folder(), jupyter.kind())));
        if (noBrowser) {
            command.add("--no-browser");
        }
        terminal.println("Opening the start page"
                + (choice.folder() == null ? "." : " of the logbook " + choice.folder() + ".")
                + (noBrowser ? " The address that Jupyter prints below leads to it." : ""));
        terminal.flush();
        ProcessBuilder server = new ProcessBuilder(command);
        choice.inEnvironment(server);
        findsKernelFirst(server, kernel);
        try {
            return StartingServer.run(server, () -> removeAsFarAsPossible(start), System.err);
        } finally {
            start.remove();
        }
    }

    private static void removeAsFarAsPossible(StartPage start) {
        try {
            start.remove();
        } catch (IOException e) {
            // The next start takes it away.
        }
    }

    /** The page lies beside the kernel set up here; in a Python environment Jupyter would look for one of the same name there first. */
    private static void findsKernelFirst(ProcessBuilder server, KernelSpec kernel) {
        Path data = kernel.folder().resolveSibling("..").normalize();
        server.environment()
                .merge("JUPYTER_PATH", data.toString(), (others, ours) -> ours + File.pathSeparator + others);
    }

    /** Returns the command of a server that other machines cannot reach; it makes a token of its own, which is left to it. */
    static List<String> serverCommand(Jupyter jupyter, Path notebooks) {
        List<String> command = new ArrayList<>(jupyter.server());
        command.addAll(List.of("--ip=127.0.0.1", "--notebook-dir=" + notebooks));
        if (Jupyter.isRoot()) {
            command.add("--allow-root");
        }
        return command;
    }
}
