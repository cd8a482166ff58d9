package parchment.launcher;

import java.io.IOException;
import java.io.PrintWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.concurrent.Callable;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.function.Consumer;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import parchment.kernel.install.KernelSpec;
import picocli.CommandLine;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;

/** Runs everything that must pass. */
@CommandLine.Command(
        name = "test",
        description = {
            "Runs all that must pass: the build with its tests, the kernel under a real Jupyter client, every notebook, the explorer"
                    + " in a browser where node and Chromium are there.",
            "The last line counts what passed and what failed."
        },
        mixinStandardHelpOptions = true)
final class TestCommand implements Callable<Integer> {
    private static final Pattern SUREFIRE =
            Pattern.compile("Tests run: (\\d+), Failures: (\\d+), Errors: (\\d+), Skipped: (\\d+)\\s*$");
    private static final Pattern UNITTEST = Pattern.compile("^Ran (\\d+) tests? in .*");
    private static final Pattern UNITTEST_END = Pattern.compile(
            "^(?:OK|FAILED)(?: \\((?:failures=(\\d+))?(?:, )?(?:errors=(\\d+))?(?:, )?(?:skipped=(\\d+))?.*\\))?$");
    private static final List<String> CLIENT_PACKAGES =
            List.of("python3-jupyter-client", "python3-jupyter-kernel-test");

    @Spec
    @SuppressWarnings("NullAway.Init")
    private CommandSpec spec;

    @Option(names = "--from-copy", hidden = true)
    private boolean fromCopy;

    @Option(names = "--skip-build", description = "Leaves out the build with its unit tests.")
    private boolean skipBuild;

    private int passed;
    private int failed;
    private int skipped;

    @Override
    public Integer call() throws Exception {
        Places places = Places.here();
        if (!Files.exists(places.home().resolve("pom.xml"))) {
            throw new IllegalStateException("The tests need the sources: run ./parchment test in a clone.");
        }
        if (!fromCopy) {
            return FromCopy.run(
                    places,
                    skipBuild ? List.of("test", "--from-copy", "--skip-build") : List.of("test", "--from-copy"));
        }
        if (!skipBuild) {
            title("The build with its tests (mvn verify)");
            build(places);
        }
        besideEachOther(places);
        PrintWriter terminal = terminal();
        terminal.println();
        terminal.println(String.format(
                Locale.ROOT,
                "%d passed, %d failed%s",
                passed,
                failed,
                skipped == 0 ? "" : ", " + skipped + " skipped"));
        terminal.flush();
        return failed == 0 ? 0 : 1;
    }

    /** Each of the two waits much for kernels to start: side by side they take little longer than the longer one. */
    private void besideEachOther(Places places) throws Exception {
        Path python = clientPython();
        List<String> heard = new ArrayList<>();
        ExecutorService beside = Executors.newSingleThreadExecutor();
        try {
            Future<Counted> client = beside.submit(() -> kernel(places, python, heard::add));
            title("Every notebook, run to its end (the kernel is tested under a real Jupyter client meanwhile)");
            notebooks(places);
            title("The explorer in a real browser");
            browser(places);
            Counted counted = client.get();
            title("The kernel under a real Jupyter client");
            heard.forEach(this::tellLine);
            passed += counted.passed();
            failed += counted.failed();
            skipped += counted.skipped();
        } finally {
            beside.shutdownNow();
        }
    }

    private record Counted(int passed, int failed, int skipped) {
        static Counted of(String ran, String failures, String errors, String left) {
            int bad = Integer.parseInt(failures) + Integer.parseInt(errors);
            return new Counted(Integer.parseInt(ran) - bad - Integer.parseInt(left), bad, Integer.parseInt(left));
        }
    }

    private void build(Places places) throws IOException, InterruptedException {
        List<Path> maven = Command.onPath("mvn");
        if (maven.isEmpty()) {
            throw new IllegalStateException(
                    "The build needs Apache Maven (the command mvn), which is not on the search path.");
        }
        ProcessBuilder builder = new ProcessBuilder(maven.get(0).toString(), "-B", "verify")
                .directory(places.home().toFile());
        builder.environment().put("JAVA_HOME", System.getProperty("java.home"));
        Command.Told told = Command.tell(builder, this::tellLine);
        int before = failed;
        for (String line : told.lines()) {
            Matcher summary = SUREFIRE.matcher(line);
            if (summary.find() && !line.contains(" -- in ")) {
                count(summary.group(1), summary.group(2), summary.group(3), summary.group(4));
            }
        }
        if (told.exitCode() != 0 && failed == before) {
            failed++; // It broke before or after the tests.
        }
    }

    private Counted kernel(Places places, Path python, Consumer<String> eachLine)
            throws IOException, InterruptedException {
        Path tests = places.home()
                .resolve("kernel-ext")
                .resolve("src")
                .resolve("test")
                .resolve("python");
        Path data = Files.createTempDirectory("parchment-test");
        KernelSpec kernel = KernelSpec.in(data);
        try {
            kernel.install(Places.kernelJar());
            ProcessBuilder builder = new ProcessBuilder(
                            python.toString(),
                            "-W",
                            "ignore",
                            "-m",
                            "unittest",
                            "discover",
                            "-v",
                            "-s",
                            tests.toString())
                    .directory(places.home().toFile());
            builder.environment().put("JUPYTER_PATH", data.toString());
            builder.environment().put("PYTHONDONTWRITEBYTECODE", "1");
            Command.Told told = Command.tell(builder, eachLine);
            Counted counted = new Counted(0, 0, 0);
            String ran = "0";
            for (String line : told.lines()) {
                Matcher count = UNITTEST.matcher(line);
                if (count.matches()) {
                    ran = count.group(1);
                }
                Matcher end = UNITTEST_END.matcher(line);
                if (end.matches()) {
                    counted = Counted.of(
                            ran, zeroIfNone(end.group(1)), zeroIfNone(end.group(2)), zeroIfNone(end.group(3)));
                }
            }
            return told.exitCode() != 0 && counted.failed() == 0
                    ? new Counted(counted.passed(), 1, counted.skipped())
                    : counted;
        } finally {
            KernelSpec.delete(data);
        }
    }

    private Path clientPython() throws IOException, InterruptedException {
        Optional<Path> found = findClientPython();
        if (found.isEmpty() && Jupyter.installFromPackages(CLIENT_PACKAGES, terminal())) {
            found = findClientPython();
        }
        return found.orElseThrow(() -> new IllegalStateException(
                "Testing the kernel needs Python with jupyter_client and jupyter_kernel_test.\n"
                        + "On Debian or Ubuntu:  sudo apt-get install " + String.join(" ", CLIENT_PACKAGES) + "\n"
                        + "Elsewhere:  python3 -m pip install jupyter_client jupyter_kernel_test"));
    }

    private static Optional<Path> findClientPython() {
        List<Path> candidates = new ArrayList<>(Command.onPath("python3"));
        candidates.add(Path.of("/usr/bin/python3"));
        candidates.add(Jupyter.inPrivateEnvironment("python"));
        return candidates.stream()
                .distinct()
                .filter(python -> Command.succeeds(
                        List.of(python.toString(), "-c", "import jupyter_client, jupyter_kernel_test")))
                .findFirst();
    }

    private void notebooks(Places places) throws IOException {
        List<Path> files = List.of();
        if (Files.isDirectory(places.notebooks())) {
            try (Stream<Path> walk = Files.walk(places.notebooks())) {
                files = walk.filter(file -> file.toString().endsWith(".ipynb"))
                        .filter(file -> !file.toString().contains(".ipynb_checkpoints"))
                        .sorted()
                        .toList();
            }
        }
        if (files.isEmpty()) {
            terminal().println("There are no notebooks yet.");
        }
        for (Path file : files) {
            Path out = places.home().resolve("out").resolve("test");
            int code = Main.commandLine().execute("run", file.toString(), "--out", out.toString());
            passed += code == 0 ? 1 : 0;
            failed += code == 0 ? 0 : 1;
        }
    }

    private void browser(Places places) throws IOException, InterruptedException {
        BrowserTests.Outcome outcome = BrowserTests.of(places).run(this::tellLine);
        passed += outcome.passed();
        failed += outcome.failed();
        skipped += outcome.skipped();
    }

    private void count(String ran, String failures, String errors, String left) {
        Counted counted = Counted.of(ran, failures, errors, left);
        passed += counted.passed();
        failed += counted.failed();
        skipped += counted.skipped();
    }

    private static String zeroIfNone(String number) {
        return number == null ? "0" : number;
    }

    private void title(String text) {
        terminal().println("\n== " + text);
        terminal().flush();
    }

    private void tellLine(String line) {
        terminal().println(line);
        terminal().flush();
    }

    private PrintWriter terminal() {
        return spec.commandLine().getOut();
    }
}
