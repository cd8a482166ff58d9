package parchment.notebook;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.google.gson.JsonPrimitive;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;
import parchment.kernel.cell.Evaluator;
import parchment.kernel.page.Outcome;

/** Runs whole notebooks over logbooks of a first day: nothing in them, batches without curves, three batches. Every cell answers in words. */
class FirstDayNotebooksTest {
    private static final Path DEMO = Path.of("..", "datasets", "harbour");
    private static final Path NOTEBOOKS = Path.of("..", "notebooks");

    @TempDir
    Path temp;

    /** One session for all notebooks, as it takes the longest to open; each notebook declares its names anew. */
    private static Evaluator evaluator;

    @BeforeAll
    static void open() {
        evaluator = Evaluator.open();
    }

    @AfterAll
    static void close() {
        evaluator.close();
    }

    private enum Curves {
        NONE,
        ALL
    }

    private enum Kind {
        EMPTY(0, Curves.NONE),
        WITHOUT_CURVES(7, Curves.NONE),
        THREE_BATCHES(3, Curves.ALL);

        private final int batches;
        private final Curves curves;

        Kind(int batches, Curves curves) {
            this.batches = batches;
            this.curves = curves;
        }
    }

    /** Returns every notebook with every kind of logbook. */
    static Stream<Arguments> firstDays() throws IOException {
        try (Stream<Path> files = Files.list(NOTEBOOKS)) {
            return files
                    .map(file -> file.getFileName().toString())
                    .filter(name -> name.endsWith(".ipynb"))
                    .sorted()
                    .map(name -> name.replace(".ipynb", ""))
                    .toList()
                    .stream()
                    .flatMap(name -> Stream.of(Kind.values()).map(kind -> Arguments.of(name, kind)));
        }
    }

    @ParameterizedTest(name = "{0}, {1}")
    @MethodSource("firstDays")
    void everyCellSaysInWordsWhatIsMissing(String name, Kind kind) throws IOException {
        Notebook notebook = Notebook.parse(
                Files.readString(NOTEBOOKS.resolve(name + ".ipynb"))
                        .replace("Logbook.open()", "Logbook.open(" + quoted(write(kind)) + ")"),
                name);
        List<String> red = new ArrayList<>();
        NotebookRun.Result result = NotebookRun.of(notebook, evaluator).run(new NotebookRun.Progress() {
            @Override
            public void cellBegins(int number, int of, Cell cell) {}

            @Override
            public void cellEnded(int number, int of, Duration took, Outcome outcome) {
                outcome.error().ifPresent(error -> red.add(number + ": " + error));
            }
        });
        assertEquals(List.of(), red);
        for (Cell cell : result.notebook().cells()) {
            for (CellOutput output : cell.outputs()) {
                // The letters of a picture's dots spell anything.
                String shown = output.json(1).toString().replaceAll("[A-Za-z0-9+/=]{200,}", "");
                if (shown.contains("parchment-views")) {
                    continue; // The explorer is a page of scripts, which know of NaN.
                }
                for (String not : List.of("NaN", "Exception", "No value present", "out of bounds", "batch null")) {
                    assertFalse(shown.contains(not), not + " in: " + shown);
                }
            }
        }
        if (kind == Kind.EMPTY) {
            assertTrue(
                    result.notebook().cells().stream()
                            .flatMap(cell -> cell.outputs().stream())
                            .anyMatch(output -> output.json(1).toString().contains("batches.csv")),
                    "nobody says where to begin");
        }
    }

    /** Within a notebook's JSON a quotation mark in a cell is escaped once more. */
    private static String quoted(Path folder) {
        String inJava = new JsonPrimitive(folder.toString()).toString();
        String inJson = new JsonPrimitive(inJava).toString();
        return inJson.substring(1, inJson.length() - 1);
    }

    private Path write(Kind kind) throws IOException {
        Path folder = temp.resolve("logbook");
        Files.createDirectories(folder.resolve("curves"));
        List<String> rows = Files.readAllLines(DEMO.resolve("batches.csv")).subList(0, kind.batches + 1);
        Files.write(folder.resolve("batches.csv"), rows);
        for (String row : rows.subList(1, rows.size())) {
            String batch = row.split(",")[0];
            if (kind.curves == Curves.ALL) {
                Files.copy(DEMO.resolve("curves/" + batch + ".csv"), folder.resolve("curves/" + batch + ".csv"));
            }
        }
        return folder;
    }
}
