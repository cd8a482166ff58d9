package parchment.launcher;

import java.io.File;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.concurrent.TimeUnit;

/** Another program, run from here. */
final class Command {
    private static final long ANSWER_S = 30;

    /** How long a program that is taken along has to end by itself. */
    private static final long TAKING_ALONG_S = 5;

    private static final int MOST_BYTES = 4_096;

    private Command() {}

    /** Runs a program that answers in a moment; returns whether it ended well. What it says is not shown. */
    static boolean succeeds(List<String> command) {
        try {
            Process process = new ProcessBuilder(command)
                    .redirectErrorStream(true)
                    .redirectOutput(nowhere())
                    .redirectInput(ProcessBuilder.Redirect.from(nowhere().file()))
                    .start();
            if (!process.waitFor(ANSWER_S, TimeUnit.SECONDS)) {
                process.destroyForcibly();
                return false;
            }
            return process.exitValue() == 0;
        } catch (IOException e) {
            return false; // Not there.
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            return false;
        }
    }

    /** Runs a program that answers in a moment with a line or a few; returns what it said, or nothing if it did not end well. */
    static Optional<String> answer(List<String> command) {
        try {
            Process process = new ProcessBuilder(command)
                    .redirectError(nowhere())
                    .redirectInput(ProcessBuilder.Redirect.from(nowhere().file()))
                    .start();
            if (!process.waitFor(ANSWER_S, TimeUnit.SECONDS)) {
                process.destroyForcibly();
                return Optional.empty();
            }
            byte[] said = process.getInputStream().readNBytes(MOST_BYTES);
            return process.exitValue() == 0 ? Optional.of(new String(said, StandardCharsets.UTF_8)) : Optional.empty();
        } catch (IOException e) {
            return Optional.empty(); // Not there.
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            return Optional.empty();
        }
    }

    /**
     * Runs a program, and takes it along where this process is asked to end before it: a server left behind would go on for whoever has its token.
     *
     * @param meanwhile waits for its end; where it is broken off, the program is ended
     * @param last what is done when the program was taken along
     * @return its exit code
     */
    static int runTakingAlong(ProcessBuilder builder, Meanwhile meanwhile, Runnable last)
            throws IOException, InterruptedException {
        Process process = builder.start();
        Thread hook = new Thread(() -> {
            end(process);
            last.run();
        });
        Runtime.getRuntime().addShutdownHook(hook);
        try {
            return meanwhile.untilEnd(process);
        } finally {
            if (process.isAlive()) {
                end(process);
            }
            forget(hook);
        }
    }

    private static void forget(Thread hook) {
        try {
            Runtime.getRuntime().removeShutdownHook(hook);
        } catch (IllegalStateException alreadyEnding) {
            return; // The hook is at work and does the rest.
        }
    }

    /** Something done while a program runs. */
    interface Meanwhile {
        /** Waits for the end of the program and returns its exit code. */
        int untilEnd(Process process) throws InterruptedException;
    }

    /** Ends a program with all that it has started; one that does not end by itself in a few seconds is made to. */
    static void end(Process process) {
        List<ProcessHandle> all =
                new java.util.ArrayList<>(process.descendants().toList());
        all.add(process.toHandle());
        all.forEach(ProcessHandle::destroy);
        try {
            if (!process.waitFor(TAKING_ALONG_S, TimeUnit.SECONDS)) {
                all.forEach(ProcessHandle::destroyForcibly);
            }
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
    }

    /** Runs a program whose output goes to the terminal; returns its exit code. */
    static int run(ProcessBuilder builder) throws IOException, InterruptedException {
        return builder.inheritIO().start().waitFor();
    }

    /** Runs a program, shows its output line by line as it comes, and returns the lines with its exit code. */
    static Told tell(ProcessBuilder builder, java.util.function.Consumer<String> eachLine)
            throws IOException, InterruptedException {
        Process process = builder.redirectErrorStream(true).start();
        java.util.ArrayList<String> lines = new java.util.ArrayList<>();
        try (var reader = process.inputReader(StandardCharsets.UTF_8)) {
            for (String line = reader.readLine(); line != null; line = reader.readLine()) {
                lines.add(line);
                eachLine.accept(line);
            }
        }
        return new Told(process.waitFor(), lines);
    }

    /** What a program said, and its exit code. */
    record Told(int exitCode, List<String> lines) {}

    /** Returns every program of that name on the search path, in its order. */
    static List<Path> onPath(String name) {
        String path = System.getenv("PATH");
        String file = isWindows() ? name + ".exe" : name;
        return List.of((path == null ? "" : path).split(File.pathSeparator)).stream()
                .filter(folder -> !folder.isBlank())
                .map(folder -> Path.of(folder).resolve(file))
                .filter(program -> program.toFile().canExecute())
                .distinct()
                .toList();
    }

    static boolean isWindows() {
        return System.getProperty("os.name").toLowerCase(Locale.ROOT).startsWith("windows");
    }

    private static ProcessBuilder.Redirect nowhere() {
        return ProcessBuilder.Redirect.to(new File(isWindows() ? "NUL" : "/dev/null"));
    }
}
