package parchment.launcher;

import java.io.PrintWriter;
import java.nio.file.Path;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import parchment.kernel.KernelSpec;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;

/** Makes the kernel known to Jupyter. */
@Command(
        name = "install",
        description = "Makes the kernel known to Jupyter, for the present user unless a prefix is given.",
        mixinStandardHelpOptions = true)
final class InstallCommand implements Callable<Integer> {
    @Spec
    @SuppressWarnings("NullAway.Init")
    private CommandSpec spec;

    @Option(names = "--user", description = "For the present user (the default).")
    private boolean user;

    @Option(
            names = "--prefix",
            paramLabel = "DIR",
            description = "For a whole Python environment or machine: DIR/share/jupyter/kernels, such as /usr/local.")
    private @Nullable Path prefix;

    @Option(names = "--remove", description = "Removes the kernel instead.")
    private boolean remove;

    @Override
    public Integer call() throws Exception {
        PrintWriter terminal = spec.commandLine().getOut();
        if (user && prefix != null) {
            throw new IllegalArgumentException("Give either --user or --prefix, not both.");
        }
        Path data = prefix == null
                ? JupyterData.ofUser()
                : prefix.toAbsolutePath().resolve("share").resolve("jupyter");
        KernelSpec kernel = KernelSpec.in(data);
        if (remove) {
            kernel.uninstall();
            terminal.println("Removed " + kernel.folder());
            return 0;
        }
        terminal.println("Installing the kernel (a rehearsal makes later starts quick; this takes some seconds) ...");
        terminal.flush();
        boolean changed = kernel.install(Places.kernelJar());
        terminal.println((changed ? "Installed in " : "Already there: ") + kernel.folder());
        return 0;
    }
}
