package parchment.launcher;

import java.io.IOException;
import java.io.PrintWriter;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import parchment.kernel.ControlC;
import parchment.kernel.KernelSpec;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;

/** Sets everything up and opens the notebooks in a browser. */
@picocli.CommandLine.Command(
        name = "open",
        description = {
            "Opens the notebooks in your browser, after setting up what is missing (Jupyter, the kernel).",
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
        if (noBrowser) {
            command.add("--no-browser");
        }
        terminal.println(
                "Opening the notebooks" + (choice.folder() == null ? "." : " on the logbook " + choice.folder() + "."));
        terminal.flush();
        ProcessBuilder server = new ProcessBuilder(command);
        choice.inEnvironment(server);
        // Ctrl-C reaches the server too, which asks before it ends; this process must still be there to wait for it.
        try (ControlC.Taken taken = ControlC.every(() -> {})) {
            return Command.run(server);
        }
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
