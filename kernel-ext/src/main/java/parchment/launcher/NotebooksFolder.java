package parchment.launcher;

import java.io.File;
import java.io.IOException;
import java.io.PrintWriter;
import java.io.Reader;
import java.lang.management.ManagementFactory;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import parchment.kernel.ControlC;

/**
 * Runs a notebook where it lies. A Java cannot change the folder that its paths count from, so a notebook in another folder is run by a
 * Java of its own, started there as Jupyter starts a kernel.
 */
final class NotebooksFolder {
    private NotebooksFolder() {}

    /** Tells whether a notebook lies in the folder that this process's paths count from; a file that is not there counts as if. */
    static boolean isWorkingFolder(Path notebook) throws IOException {
        Path folder = notebook.toAbsolutePath().normalize().getParent();
        return Files.notExists(notebook)
                || folder == null
                || Files.isSameFile(folder, Path.of("").toAbsolutePath());
    }

    /** Runs a notebook in its own folder with these options, shows on the terminal what is said there, and returns the exit code. */
    static int run(Path notebook, List<String> options, Places places, PrintWriter terminal)
            throws IOException, InterruptedException {
        Path file = notebook.toAbsolutePath().normalize();
        List<String> command = new ArrayList<>();
        command.add(Path.of(System.getProperty("java.home"), "bin", Command.isWindows() ? "java.exe" : "java")
                .toString());
        ManagementFactory.getRuntimeMXBean().getInputArguments().stream()
                .filter(option -> option.startsWith("-X") || option.startsWith("-D") || option.startsWith("--"))
                .forEach(command::add);
        command.addAll(List.of(
                "-Dparchment.home=" + places.home(),
                "-Dstdout.encoding=UTF-8",
                "-Dsun.stdout.encoding=UTF-8",
                "-cp",
                absoluteClassPath(),
                Main.class.getName(),
                "run"));
        command.addAll(options);
        command.add(file.toString());
        ProcessBuilder builder = new ProcessBuilder(command)
                .directory(file.resolveSibling("").toFile())
                .redirectError(ProcessBuilder.Redirect.INHERIT)
                .redirectInput(ProcessBuilder.Redirect.INHERIT);
        // Ctrl-C reaches the other Java too, which stops its cell first; this one must be there to wait for it.
        try (ControlC.Taken taken = ControlC.every(() -> {})) {
            Process process = builder.start();
            try (Reader said = process.inputReader(StandardCharsets.UTF_8)) {
                char[] some = new char[1024];
                for (int read = said.read(some); read >= 0; read = said.read(some)) {
                    terminal.write(some, 0, read);
                    terminal.flush();
                }
            }
            return process.waitFor();
        }
    }

    private static String absoluteClassPath() {
        return Stream.of(System.getProperty("java.class.path").split(Pattern.quote(File.pathSeparator)))
                .map(entry -> Path.of(entry).toAbsolutePath().toString())
                .collect(Collectors.joining(File.pathSeparator));
    }
}
