package parchment.launcher;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import parchment.kernel.install.KernelSpec;

/** Runs a command from a copy of the jars: a build writes the jars anew that this very process runs from. */
final class FromCopy {
    private FromCopy() {}

    /** Runs the command with its arguments in a process of its own and returns its exit code. */
    static int run(Places places, List<String> arguments) throws IOException, InterruptedException {
        Path copy = Files.createTempDirectory("parchment-jars");
        try {
            Path copied = KernelSpec.copyJars(Places.kernelJar(), copy);
            List<String> command = new ArrayList<>(List.of(
                    Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                    "-Djava.awt.headless=true",
                    "-Dfile.encoding=UTF-8",
                    "-Dparchment.home=" + places.home(),
                    "-jar",
                    copied.toString()));
            command.addAll(arguments);
            return Command.run(new ProcessBuilder(command));
        } finally {
            KernelSpec.delete(copy);
        }
    }
}
