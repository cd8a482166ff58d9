package parchment.notebook;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.google.gson.JsonArray;
import com.google.gson.JsonObject;
import com.google.gson.JsonPrimitive;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import parchment.kernel.cell.Evaluator;
import parchment.kernel.page.Outcome;
import parchment.kernel.page.Shown;

/** Runs a notebook on a logbook whose names and notes are markup; looks at the page and at the outputs in the notebook file. */
class HostilePageTest {
    private static final String SCRIPT = "<script>alert(1)</script>";
    private static final String IMAGE = "\"><img src=x onerror=alert(1)>";
    private static final Pattern TAG = Pattern.compile("<[a-zA-Z][^<>]*>");

    @TempDir
    static Path temp;

    private static String page;
    private static Notebook executed;

    @BeforeAll
    static void run() throws IOException {
        Path folder = Files.createDirectories(temp.resolve("hostile"));
        Path curves = Files.createDirectories(folder.resolve("curves"));
        StringBuilder batches =
                new StringBuilder("batch,roasted at,lot,machine,operator,note,\"green mass [kg]\",drop [min:s]\n");
        for (int i = 1; i <= 12; i++) {
            String name = "B" + i + " " + IMAGE;
            batches.append(String.join(
                            ",",
                            quoted(name),
                            "2025-03-0" + (1 + i % 9) + "T09:00:00",
                            quoted("lot " + SCRIPT),
                            quoted("drum ]]>" + SCRIPT),
                            quoted("</script>" + SCRIPT),
                            quoted("&lt; " + IMAGE),
                            "2.0",
                            "11:00"))
                    .append('\n');
            Files.copy(
                    Path.of("..", "datasets", "harbour", "curves", String.format("H%03d.csv", i)),
                    curves.resolve(name + ".csv"));
        }
        batches.append(quoted(SCRIPT)).append(',').append(quoted(SCRIPT)).append(",,,,,,\n");
        Files.writeString(folder.resolve("batches.csv"), batches);
        Notebook notebook = notebook(
                "var logbook = Logbook.open(" + new JsonPrimitive(folder.toString()) + ");\nlogbook",
                "logbook.problems()",
                "PhaseTable.of(logbook)",
                "BatchChart.of(logbook.batches().get(0))",
                "OverlayChart.of(logbook, Clock.SINCE_CHARGE)",
                "BatchTable.of(logbook)",
                "logbook.batches()",
                "System.out.println(logbook.batches().get(0).lot());\nDisplay.show(logbook)",
                "logbook.batch(logbook.batches().get(0).name() + \"x\")");
        try (Evaluator evaluator = Evaluator.open()) {
            NotebookRun.Result result = NotebookRun.of(notebook, evaluator).run(SILENT);
            assertEquals(Optional.of(9), result.failedCell(), "only the last cell asks for a batch that is not there");
            executed = result.notebook();
            page = HtmlPage.of(executed, SCRIPT);
        }
    }

    @Test
    void thePageShowsTheNamesAndRunsNoneOfThem() {
        assertTrue(page.contains("&lt;script&gt;alert(1)&lt;/script&gt;"), "the names are shown");
        harmless(page);
    }

    @Test
    void theOutputsInTheNotebookFileRunNoneOfThemEither() {
        int shown = 0;
        for (Cell cell : executed.cells()) {
            for (CellOutput output : cell.outputs()) {
                JsonObject data = output.json(1).getAsJsonObject("data");
                for (String type : List.of(Shown.HTML, Shown.SVG)) {
                    if (data != null && data.has(type)) {
                        harmless(Cell.joined(data.get(type)));
                        shown++;
                    }
                }
            }
        }
        assertTrue(shown >= 8, shown + " outputs with HTML or SVG");
    }

    /** Every tag is looked at as a browser would: a quote inside a value is an entity, so no tag of a name's can begin. */
    private static void harmless(String html) {
        assertFalse(html.contains(SCRIPT), "a name became a script");
        assertFalse(html.contains("]]><"), "a name ended a section");
        Matcher tags = TAG.matcher(html.replaceAll("(?s)<script>\n\\(function.*?</script>", ""));
        while (tags.find()) {
            String names = tags.group().replaceAll("\"[^\"]*\"", "\"\"");
            assertFalse(names.matches("(?is).*\\son[a-z]+\\s*=.*"), tags.group());
            assertFalse(names.matches("(?is)<(script|img|iframe|object|link)\\b.*"), tags.group());
        }
    }

    private static String quoted(String text) {
        return '"' + text.replace("\"", "\"\"") + '"';
    }

    private static Notebook notebook(String... sources) {
        JsonArray cells = new JsonArray();
        for (String source : sources) {
            JsonObject cell = new JsonObject();
            cell.addProperty("cell_type", "code");
            cell.add("metadata", new JsonObject());
            cell.add("outputs", new JsonArray());
            cell.addProperty("source", source);
            cells.add(cell);
        }
        JsonObject json = new JsonObject();
        json.addProperty("nbformat", 4);
        json.addProperty("nbformat_minor", 5);
        json.add("metadata", new JsonObject());
        json.add("cells", cells);
        return Notebook.parse(json.toString(), "hostile");
    }

    private static final NotebookRun.Progress SILENT = new NotebookRun.Progress() {
        @Override
        public void cellBegins(int number, int of, Cell cell) {}

        @Override
        public void cellEnded(int number, int of, Duration took, Outcome outcome) {}
    };
}
