package parchment.launcher;

import java.io.IOException;
import java.io.PrintWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.concurrent.Callable;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import parchment.jars.SessionJars;
import parchment.kernel.install.KernelSpec;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;

/** Makes the kernel known to Jupyter. */
@Command(
        name = "install",
        description =
                "Makes the kernel known to Jupyter: copies the program into Jupyter's folder of kernels, with an archive that"
                        + " makes it start sooner. Needs no network. Running it again brings an older kernel up to date.",
        footer = {
            "",
            "For you alone:",
            "  ./parchment install",
            "For a class:",
            "  ./parchment install --prefix /usr/local --logbook /srv/logbook --heap 512m",
            "To take it away:",
            "  ./parchment uninstall",
            "With a JDK of your own, java -jar parchment-kernel.jar does the same as ./parchment."
        },
        mixinStandardHelpOptions = true)
final class InstallCommand implements Callable<Integer> {
    @Spec
    @SuppressWarnings("NullAway.Init")
    private CommandSpec spec;

    @Mixin
    private final InstallPlace place = new InstallPlace();

    @Option(
            names = "--logbook",
            paramLabel = "DIR",
            description = "The logbook that Logbook.open() opens in every notebook, such as one shared by a class.")
    private @Nullable Path logbook;

    @Option(
            names = "--heap",
            paramLabel = "SIZE",
            description = "The most memory one session's data may take, such as 512m; Java's own choice if not given.")
    private @Nullable String heap;

    @Option(
            names = "--jars",
            paramLabel = "DIR",
            description = "A folder whose jars every session loads, such as tools of your own.")
    private @Nullable Path jars;

    @Option(
            names = "--start-cells",
            paramLabel = "FILE",
            description = "A file of Java that every session runs before its first cell. It may not lie in a logbook.")
    private @Nullable Path startCells;

    @Override
    public Integer call() throws IOException, InterruptedException {
        PrintWriter terminal = spec.commandLine().getOut();
        Jdk.check();
        Places places = Places.here();
        KernelSpec kernel = withOptions(place.kernel());
        terminal.println("Installing the kernel " + (place.isOfUser() ? "for you alone:" : "for everyone here:"));
        terminal.println("  into  " + kernel.folder());
        terminal.println("  Java  " + Runtime.version().feature() + ", " + System.getProperty("java.home"));
        tellOfJars(terminal);
        terminal.println("A rehearsal makes later starts quick; this takes some seconds ...");
        terminal.flush();
        boolean changed;
        try {
            changed = kernel.install(Places.kernelJar());
        } catch (IOException e) {
            throw place.refused(kernel, e);
        }
        terminal.println(
                changed ? "Done; it takes " + megabytes(kernel.folder()) + " MB." : "It was there already, unchanged.");
        terminal.println();
        terminal.println("Next: start Jupyter (jupyter notebook, or jupyter lab), make a new notebook and choose");
        terminal.println("\"" + kernel.shownName() + "\". In the first cell, and then Shift-Enter:");
        terminal.println(
                logbook == null
                        ? "  var logbook = Logbook.open(\"the folder of your logbook\")"
                        : "  var logbook = Logbook.open()");
        terminal.println("To take it away again: " + places.startedBy() + " uninstall " + place.asOption());
        if (places.runOnCarriedJava()) {
            terminal.println("The kernel runs on the Java in " + places.home().resolve(Places.JAVA)
                    + ": leave that folder where it is, or install again after moving it.");
        }
        return 0;
    }

    /** Each session leaves such a jar out and says so; whoever installs can still mend it. */
    private void tellOfJars(PrintWriter terminal) {
        if (jars != null) {
            List<String> troubles = SessionJars.troublesIn(jars.toAbsolutePath().normalize());
            troubles.forEach(trouble -> terminal.println("  Jars  " + trouble));
            if (!troubles.isEmpty()) {
                terminal.println(
                        "        Every session will go on without; put a whole one in its place, no new install is needed.");
            }
        }
    }

    private KernelSpec withOptions(KernelSpec kernel) {
        KernelSpec chosen = kernel;
        if (logbook != null) {
            chosen = chosen.withLogbook(LogbookChoice.existing(logbook));
        }
        if (jars != null) {
            if (!Files.isDirectory(jars)) {
                throw new IllegalArgumentException(
                        "There is no folder " + jars.toAbsolutePath() + ". --jars names a folder with jars in it.");
            }
            chosen = chosen.withJars(jars.toAbsolutePath().normalize());
        }
        if (startCells != null) {
            chosen = chosen.withStartCells(startCells.toAbsolutePath().normalize());
        }
        return heap == null ? chosen : chosen.withHeap(heap);
    }

    private static String megabytes(Path folder) throws IOException {
        try (Stream<Path> walk = Files.walk(folder)) {
            long bytes = walk.filter(Files::isRegularFile)
                    .mapToLong(file -> file.toFile().length())
                    .sum();
            return String.format(Locale.ROOT, "%.0f", bytes / 1e6);
        }
    }
}
