package parchment.launcher;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.jspecify.annotations.Nullable;
import parchment.file.FileWords;
import parchment.kernel.install.KernelSpec;
import picocli.CommandLine.Option;

/** Where the kernel is installed and removed: for one user, or for everyone who uses a Python environment. */
final class InstallPlace {
    @Option(names = "--user", description = "For you alone, where every Jupyter of yours finds it (the default).")
    private boolean user;

    @Option(
            names = "--prefix",
            paramLabel = "DIR",
            description =
                    "For everyone who uses a Python environment or a machine, in DIR/share/jupyter/kernels. DIR is what"
                            + " python3 -c \"import sys; print(sys.prefix)\" says, or /usr/local.")
    private @Nullable Path prefix;

    @Option(
            names = "--as",
            paramLabel = "NAME",
            description =
                    "Under another name, beside or in place of the usual one: --as java, so that notebooks made for a kernel of"
                            + " that name open with this one.")
    private @Nullable String name;

    /** @throws IllegalArgumentException if both places are named, or the one named is not there, or another kernel has the name */
    KernelSpec kernel() throws IOException {
        return name == null ? usual() : usual().as(name);
    }

    private KernelSpec usual() {
        if (user && prefix != null) {
            throw new IllegalArgumentException("Give either --user or --prefix, not both.");
        }
        if (prefix == null) {
            return KernelSpec.in(JupyterData.ofUser());
        }
        if (!Files.isDirectory(prefix)) {
            throw new IllegalArgumentException("There is no folder " + prefix.toAbsolutePath()
                    + ". --prefix names the folder of a Python environment that is there already: "
                    + "python3 -c \"import sys; print(sys.prefix)\" says which.");
        }
        return KernelSpec.in(OutputPlace.outsideLogbooks(prefix)
                .toAbsolutePath()
                .normalize()
                .resolve("share")
                .resolve("jupyter"));
    }

    boolean isOfUser() {
        return prefix == null;
    }

    /** Returns whether it is under the name that Parchment's own notebooks ask for. */
    boolean isUnderOwnName() {
        return name == null || name.equals(KernelSpec.NAME);
    }

    /** Returns the option that names the place, as it was given. */
    String asOption() {
        return (prefix == null ? "--user" : "--prefix \"" + prefix + "\"") + (name == null ? "" : " --as " + name);
    }

    /** Says why a folder could not be written, and what else there is. */
    IllegalStateException refused(KernelSpec kernel, IOException cause) {
        return new IllegalStateException(
                "The kernel's folder " + kernel.folder() + " could not be written: " + FileWords.reason(cause) + ".\n"
                        + (isOfUser()
                                ? "Set JUPYTER_DATA_DIR to a folder that you may write, or name a Python environment of yours"
                                        + " with --prefix."
                                : "Install it for yourself with --user, or ask whoever looks after this machine to run the"
                                        + " command."),
                cause);
    }
}
