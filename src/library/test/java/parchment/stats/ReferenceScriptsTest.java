package parchment.stats;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Runs the scripts behind the committed fits again, where the programs are installed; skips with the reason elsewhere. */
@Tag("agrees-with")
class ReferenceScriptsTest {
    /** Optimisers on another machine stop elsewhere in the last digits. */
    private static final double TOLERANCE = 1e-3;

    private static final long MOST_SECONDS = 120;

    @TempDir
    Path folder;

    @ParameterizedTest
    @CsvSource({
        "mixed-models, lme4 lmerTest",
        "ordinal, ordinal",
        "food-logbooks, lme4 nlme ordinal",
    })
    void printsTheCommittedNumbers(String script, String packages) throws IOException, InterruptedException {
        for (String name : packages.split(" ")) {
            String ask = "quit(status = if (requireNamespace('" + name + "', quietly = TRUE)) 0 else 1)";
            assumeTrue(
                    succeeds("Rscript", "-e", ask), "Skipped: Rscript with the package " + name + " is not installed.");
        }
        check(script, "Rscript", Path.of("library", "test", "r", script + ".R").toString());
    }

    @ParameterizedTest
    @CsvSource({"gaussian-process"})
    void printsTheCommittedNumbersOfThePythonScript(String script) throws IOException, InterruptedException {
        assumeTrue(succeeds("python3", "-c", "import sklearn"), "Skipped: python3 with scikit-learn is not installed.");
        check(
                script,
                "python3",
                Path.of("library", "test", "python", script.replace('-', '_') + ".py")
                        .toString());
    }

    private void check(String script, String program, String file) throws IOException, InterruptedException {
        List<String> lines = output(
                program,
                file,
                Path.of("library", "test", "resources", "reference").toString());
        ReferenceFits committed = ReferenceFits.of(script);
        assertEquals("case,quantity,value", lines.get(0));
        assertTrue(lines.size() > 4, script + " printed " + lines.size() + " lines");
        for (String line : lines.subList(1, lines.size())) {
            String[] parts = line.split(",");
            double expected = committed.value(parts[0], parts[1]);
            assertEquals(
                    expected,
                    Double.parseDouble(parts[2]),
                    TOLERANCE * Math.max(1e-2, Math.abs(expected)),
                    script + ": " + parts[0] + ", " + parts[1]);
        }
    }

    private static boolean succeeds(String... command) throws InterruptedException {
        try {
            Process process = new ProcessBuilder(command)
                    .redirectErrorStream(true)
                    .redirectOutput(ProcessBuilder.Redirect.DISCARD)
                    .start();
            return process.waitFor(MOST_SECONDS, TimeUnit.SECONDS) && process.exitValue() == 0;
        } catch (IOException e) {
            return false;
        }
    }

    private List<String> output(String... command) throws IOException, InterruptedException {
        Path out = folder.resolve("out.csv");
        Path errors = folder.resolve("errors.txt");
        ProcessBuilder builder =
                new ProcessBuilder(command).redirectOutput(out.toFile()).redirectError(errors.toFile());
        // One thread: these fits are small, and threads that wait for a busy processor cost more than they bring.
        builder.environment().put("OPENBLAS_NUM_THREADS", "1");
        Process process = builder.start();
        boolean ended = process.waitFor(MOST_SECONDS, TimeUnit.SECONDS);
        if (!ended) {
            process.destroyForcibly();
        }
        assertTrue(
                ended && process.exitValue() == 0, Arrays.toString(command) + " failed: " + Files.readString(errors));
        return Files.readAllLines(out);
    }
}
