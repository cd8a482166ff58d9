package parchment.notebook;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;

import com.google.gson.JsonPrimitive;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;
import parchment.kernel.cell.Evaluator;
import parchment.kernel.page.Outcome;

/** Runs whole notebooks over a logbook in which one curve or one score is as wrong as can be: every cell still answers. */
class HorrorNotebooksTest {
    private static final Path DEMO = Path.of("..", "datasets", "harbour");
    private static final Path NOTEBOOKS = Path.of("..", "notebooks");
    private static final int BATCHES = 40;
    private static final String HEAD = "time [s],bean temperature [°C]\n";

    @TempDir
    Path temp;

    private static final List<String> CURVES =
            List.of(HEAD + "0,200\n", HEAD + "0,200\n300,1e155\n5e300,210\n", HEAD + "0,200\n".repeat(300), "");

    /** Returns every notebook with every one of the curves. */
    static Stream<Arguments> horrors() throws IOException {
        try (Stream<Path> files = Files.list(NOTEBOOKS)) {
            return files
                    .map(file -> file.getFileName().toString())
                    .filter(name -> name.endsWith(".ipynb"))
                    .sorted()
                    .map(name -> name.replace(".ipynb", ""))
                    .toList()
                    .stream()
                    .flatMap(name -> CURVES.stream().map(curve -> Arguments.of(name, curve)));
        }
    }

    @ParameterizedTest(name = "{0}")
    @MethodSource("horrors")
    void everyCellOfTheNotebookAnswers(String name, String curve) throws IOException {
        Path folder = write(curve);
        Notebook notebook = Notebook.parse(
                Files.readString(NOTEBOOKS.resolve(name + ".ipynb"))
                        .replace("Logbook.open()", "Logbook.open(" + quoted(folder) + ")"),
                name);
        try (Evaluator evaluator = Evaluator.open()) {
            NotebookRun.Result result = NotebookRun.of(notebook, evaluator).run(SILENT);
            assertEquals(
                    Optional.empty(),
                    result.failedCell(),
                    () -> String.valueOf(result.error().orElse(null)));
            for (Cell cell : result.notebook().cells()) {
                for (CellOutput output : cell.outputs()) {
                    String shown = output.json(1).toString();
                    assertFalse(shown.matches("(?s).*\\bjava\\.[a-z]+\\.\\w+Exception.*"), shown);
                }
            }
        }
    }

    /** Within a notebook's JSON a quotation mark in a cell is escaped once more. */
    private static String quoted(Path folder) {
        String inJava = new JsonPrimitive(folder.toString()).toString();
        String inJson = new JsonPrimitive(inJava).toString();
        return inJson.substring(1, inJson.length() - 1);
    }

    private Path write(String curve) throws IOException {
        Path folder = temp.resolve("logbook");
        Files.createDirectories(folder.resolve("curves"));
        List<String> rows = Files.readAllLines(DEMO.resolve("batches.csv")).subList(0, BATCHES + 1);
        Files.write(folder.resolve("batches.csv"), rows);
        for (String table : List.of("lots.csv", "machines.csv", "upkeep.csv", "cuppings.csv", "logbook.properties")) {
            Files.copy(DEMO.resolve(table), folder.resolve(table));
        }
        for (String row : rows.subList(1, rows.size())) {
            String batch = row.split(",")[0];
            Files.copy(DEMO.resolve("curves/" + batch + ".csv"), folder.resolve("curves/" + batch + ".csv"));
        }
        Files.writeString(folder.resolve("curves/H004.csv"), curve);
        return folder;
    }

    private static final NotebookRun.Progress SILENT = new NotebookRun.Progress() {
        @Override
        public void cellBegins(int number, int of, Cell cell) {}

        @Override
        public void cellEnded(int number, int of, Duration took, Outcome outcome) {}
    };
}
