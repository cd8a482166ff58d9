package parchment.launcher;

import java.io.File;
import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.TimeUnit;

/** The person's own browser, asked to show a page. */
final class Browser {
    /** What cannot open a page says so at once; what can may stay until the browser is closed. */
    private static final long SAYS_NO_S = 2;

    private Browser() {}

    /** Asks the system to show the page; returns false where there is no screen or nothing that shows pages. */
    static boolean open(Path page) {
        Optional<List<String>> command = command(System.getProperty("os.name"), System.getenv(), page);
        if (command.isEmpty()) {
            return false;
        }
        try {
            ProcessBuilder.Redirect nowhere =
                    ProcessBuilder.Redirect.to(new File(Command.isWindows() ? "NUL" : "/dev/null"));
            Process process = new ProcessBuilder(command.get())
                    .redirectErrorStream(true)
                    .redirectOutput(nowhere)
                    .start();
            return !process.waitFor(SAYS_NO_S, TimeUnit.SECONDS) || process.exitValue() == 0;
        } catch (IOException e) {
            return false; // Not there.
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            return true;
        }
    }

    /** Returns the command that shows a page on such a system, if it has a screen. */
    static Optional<List<String>> command(String system, Map<String, String> environment, Path page) {
        String address = page.toUri().toString();
        if (system.startsWith("Windows")) {
            return Optional.of(List.of("rundll32", "url.dll,FileProtocolHandler", address));
        }
        if (system.startsWith("Mac")) {
            return Optional.of(List.of("open", address));
        }
        // Without a screen some systems would start a browser for the terminal, which nobody could see or leave.
        boolean screen = environment.containsKey("DISPLAY") || environment.containsKey("WAYLAND_DISPLAY");
        return screen ? Optional.of(List.of("xdg-open", address)) : Optional.empty();
    }
}
