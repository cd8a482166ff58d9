package parchment.launcher;

import java.io.IOException;
import java.io.PrintWriter;
import java.nio.file.Files;
import java.util.concurrent.Callable;
import parchment.kernel.install.KernelSpec;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Spec;

/** Takes away what the install and the first opening of the notebooks made. */
@Command(
        name = "uninstall",
        description =
                "Removes the kernel from Jupyter, with everything the install made; for --user also the Python environment"
                        + " that 'open' makes where there is no Jupyter. Your notebooks and logbooks stay.",
        mixinStandardHelpOptions = true)
final class UninstallCommand implements Callable<Integer> {
    @Spec
    @SuppressWarnings("NullAway.Init")
    private CommandSpec spec;

    @Mixin
    private final InstallPlace place = new InstallPlace();

    @Override
    public Integer call() throws IOException {
        PrintWriter terminal = spec.commandLine().getOut();
        KernelSpec kernel = place.kernel();
        boolean there;
        try {
            there = kernel.uninstall();
        } catch (IOException e) {
            throw place.refused(kernel, e);
        }
        terminal.println(
                there
                        ? "Removed " + kernel.folder() + "; nothing of it is left."
                        : "There is no kernel in " + kernel.folder() + ", so nothing was removed."
                                + " To look elsewhere: jupyter kernelspec list");
        if (place.isOfUser() && place.isUnderOwnName() && Files.exists(Jupyter.privateFolder())) {
            KernelSpec.delete(Jupyter.privateFolder());
            terminal.println("Removed " + Jupyter.privateFolder() + ", the Jupyter that 'open' had set up.");
        }
        return 0;
    }
}
