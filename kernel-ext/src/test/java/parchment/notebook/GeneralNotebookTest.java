package parchment.notebook;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.IOException;
import java.net.InetSocketAddress;
import java.net.Socket;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import parchment.jars.Network;
import parchment.kernel.cell.Evaluator;
import parchment.kernel.page.Outcome;

/** A notebook that somebody made for another Java kernel, with dependency lines and a chart, runs unchanged. */
class GeneralNotebookTest {
    private static final NotebookRun.Progress SILENT = new NotebookRun.Progress() {
        @Override
        public void cellBegins(int number, int of, Cell cell) {}

        @Override
        public void cellEnded(int number, int of, Duration took, Outcome outcome) {}
    };

    private static NotebookRun.Result run(Notebook notebook, Network network) {
        try (Evaluator evaluator = Evaluator.open(network)) {
            return NotebookRun.of(notebook, evaluator).run(SILENT);
        }
    }

    private static String printed(NotebookRun.Result result, int cell) {
        List<Cell> code = result.notebook().cells().stream()
                .filter(each -> each.kind() == Cell.Kind.CODE)
                .toList();
        return code.get(cell - 1).outputs().stream()
                .filter(CellOutput.Printed.class::isInstance)
                .map(output -> ((CellOutput.Printed) output).text())
                .collect(Collectors.joining());
    }

    @Test
    void runsUnchangedWithoutANetwork() throws IOException {
        NotebookRun.Result result =
                run(Notebook.read(Path.of("src", "test", "resources", "general-java.ipynb")), Network.NEVER);
        assertEquals("", result.error().map(error -> error.text()).orElse(""));
        // The mean of a Rayleigh distribution of scale s is s sqrt(pi / 2); here s = 1.4 / sqrt(2), so 1.24, and the
        // sample has 2,000.
        assertTrue(printed(result, 3).startsWith("mean 1.2"), printed(result, 3));
        assertEquals(
                1,
                result.notebook().cells().get(4).outputs().stream()
                        .filter(CellOutput.Result.class::isInstance)
                        .count());
    }

    @Test
    void fetchesALibraryFromTheRegistryWhereThatCanBeReached(@TempDir Path local) throws IOException {
        try (Socket socket = new Socket()) {
            socket.connect(new InetSocketAddress("repo.maven.apache.org", 443), 3_000);
        } catch (IOException e) {
            assumeTrue(
                    false,
                    "Maven Central cannot be reached from here, so fetching from it is not tried: " + e.getMessage());
        }
        Path file = local.resolve("fetch.ipynb");
        Files.writeString(
                file,
                "{\"cells\":[{\"cell_type\":\"code\",\"metadata\":{},\"outputs\":[],\"execution_count\":null,\"source\":["
                        + "\"%maven org.apache.commons:commons-numbers-gamma:1.2\\n\","
                        + "\"System.out.println(org.apache.commons.numbers.gamma.Erf.value(1))\"]}],\"metadata\":{},"
                        + "\"nbformat\":4,\"nbformat_minor\":4}");
        System.setProperty("maven.repo.local", local.resolve("repository").toString());
        try {
            NotebookRun.Result result = run(Notebook.read(file), Network.WHEN_ASKED);
            assertEquals("", result.error().map(error -> error.text()).orElse(""));
            // The error function of 1 is 0.8427007929 (Abramowitz and Stegun, table 7.1).
            assertTrue(printed(result, 1).contains("0.8427007929"), printed(result, 1));
            assertTrue(
                    printed(result, 1).contains("  org.apache.commons:commons-numbers-gamma:1.2"), printed(result, 1));
        } finally {
            System.clearProperty("maven.repo.local");
        }
    }
}
