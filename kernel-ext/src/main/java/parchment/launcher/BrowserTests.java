package parchment.launcher;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** Runs the tests that drive a browser, where node, its modules and Chromium are there; otherwise says what lacks. */
final class BrowserTests {
    private static final Pattern COUNT = Pattern.compile("^# (pass|fail|cancelled|skipped) (\\d+)$");

    private final Path folder;

    private BrowserTests(Path folder) {
        this.folder = folder;
    }

    /** Counts tests; all that could not be run at all count as one that was skipped. */
    record Outcome(int passed, int failed, int skipped) {}

    static BrowserTests of(Places places) {
        return new BrowserTests(places.home()
                .resolve("kernel-ext")
                .resolve("src")
                .resolve("test")
                .resolve("browser"));
    }

    Outcome run(Consumer<String> eachLine) throws IOException, InterruptedException {
        List<Path> node = Command.onPath("node");
        List<Path> chromium = Command.onPath("chromium");
        Optional<String> lacks = node.isEmpty()
                ? Optional.of("node is not on the search path (Debian: sudo apt-get install nodejs npm)")
                : chromium.isEmpty()
                        ? Optional.of("chromium is not on the search path (Debian: sudo apt-get install chromium)")
                        : !Files.isDirectory(folder.resolve("node_modules").resolve("playwright-core"))
                                        || !Files.isDirectory(
                                                folder.resolve("node_modules").resolve("esbuild"))
                                ? Optional.of(
                                        "its modules are not installed (run npm ci in kernel-ext/src/test/browser)")
                                : Optional.empty();
        if (lacks.isPresent()) {
            eachLine.accept("Skipped: " + lacks.get() + ".");
            return new Outcome(0, 0, 1);
        }
        ProcessBuilder builder = new ProcessBuilder(
                        node.get(0).toString(),
                        "--test",
                        "--test-concurrency=1",
                        "--test-reporter=tap",
                        "accessibility.test.mjs",
                        "controls.test.mjs",
                        "keyboard.test.mjs",
                        "page.test.mjs",
                        "notebook.test.mjs")
                .directory(folder.toFile());
        builder.environment().put("CHROMIUM", chromium.get(0).toString());
        Command.Told told = Command.tell(builder, eachLine);
        int passed = 0;
        int failed = 0;
        int skipped = 0;
        for (String line : told.lines()) {
            Matcher count = COUNT.matcher(line);
            if (count.matches()) {
                int number = Integer.parseInt(count.group(2));
                switch (count.group(1)) {
                    case "pass" -> passed += number;
                    case "skipped" -> skipped += number;
                    default -> failed += number;
                }
            }
        }
        return new Outcome(passed, told.exitCode() != 0 && failed == 0 ? 1 : failed, skipped);
    }
}
