package parchment.launcher;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.PrintStream;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import parchment.kernel.ControlC;

/**
 * A server that Ctrl-C ends at once and in silence while it starts. Once it is up it has its own way with Ctrl-C: it asks first.
 *
 * <p>Until then it would print where in its own program it was stopped, which tells a reader nothing.
 */
final class StartingServer {
    /** Jupyter says so when it is up, in each of its kinds, unless it is asked to say less or in another language. */
    private static final String UP = "Use Control-C to stop";

    /** Its address, which it tells once it is up, in any language. */
    private static final String ADDRESS = "://";

    private static final String TOKEN = "token=";

    /** After this it counts as up without a word: then Ctrl-C is its own affair; common experience, no source. */
    private static final Duration LONGEST_START = Duration.ofMinutes(1);

    private static final String TRACE = "Traceback (most recent call last)";

    /** How long what it says last is waited for; what it has started may hold its output open. */
    private static final long LAST_WORDS_MS = 1_000;

    /** How long Ctrl-C may take to be heard here after the server has heard it. */
    private static final long LATER_MS = 300;

    private volatile Optional<Process> server = Optional.empty();
    private final PrintStream terminal;
    private final Duration longestStart;
    private volatile boolean saidUp;
    private final long begunNanos;
    private volatile boolean stopped;

    private StartingServer(PrintStream terminal, Duration longestStart) {
        this.terminal = terminal;
        this.longestStart = longestStart;
        this.begunNanos = System.nanoTime();
    }

    /**
     * Runs the server to its end, with what it says on the terminal.
     *
     * @param last what is done when it was taken along because this process ends
     * @return its exit code, or that of Ctrl-C if it was stopped while it started
     */
    static int run(ProcessBuilder builder, Runnable last, PrintStream terminal)
            throws IOException, InterruptedException {
        return run(builder, last, terminal, LONGEST_START);
    }

    /** Runs the server to its end; after the longest start it counts as up even if it never says so. */
    static int run(ProcessBuilder builder, Runnable last, PrintStream terminal, Duration longestStart)
            throws IOException, InterruptedException {
        StartingServer one = new StartingServer(terminal, longestStart);
        builder.inheritIO().redirectError(ProcessBuilder.Redirect.PIPE);
        // Ctrl-C reaches the server too, which asks before it ends; this process must still be there to wait for it.
        ControlC.Taken taken = ControlC.every(one::interrupted);
        try {
            int code = Command.runTakingAlong(builder, one::listen, last);
            return one.stopped ? RunStop.EXIT_CODE : code;
        } catch (IOException e) {
            // Ctrl-C may end the server in the instant in which it is begun.
            Thread.sleep(LATER_MS);
            if (one.stopped) {
                return RunStop.EXIT_CODE;
            }
            throw e;
        } finally {
            taken.close();
        }
    }

    private boolean isUp() {
        return saidUp || System.nanoTime() - begunNanos > longestStart.toNanos();
    }

    private void interrupted() {
        if (!isUp()) {
            stopped = true;
            server.ifPresent(Command::end);
        }
    }

    private int listen(Process process) throws InterruptedException {
        server = Optional.of(process);
        if (stopped) {
            Command.end(process);
        }
        Thread listening = new Thread(() -> show(process), "what the server says");
        listening.setDaemon(true);
        listening.start();
        int code = process.waitFor();
        listening.join(LAST_WORDS_MS);
        return code;
    }

    /** Shows each line, but holds a trace back until it is known whether Ctrl-C is its cause: it is not if the server goes on, or ends by itself. */
    private void show(Process process) {
        List<String> held = new ArrayList<>();
        try (BufferedReader said = process.errorReader()) {
            for (String line = said.readLine(); line != null; line = said.readLine()) {
                saidUp |= line.contains(UP) || line.contains(ADDRESS) && line.contains(TOKEN);
                boolean goesOn = line.startsWith("[");
                if (!isUp() && !goesOn && (!held.isEmpty() || line.startsWith(TRACE))) {
                    held.add(line);
                } else {
                    tell(held);
                    tell(List.of(line));
                    held.clear();
                }
            }
            if (!held.isEmpty() && !stopped) {
                Thread.sleep(LATER_MS);
            }
            tell(held);
        } catch (IOException e) {
            return; // It has ended, or this process ends.
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
    }

    private void tell(List<String> lines) {
        if (!stopped) {
            lines.forEach(terminal::println);
            terminal.flush();
        }
    }
}
