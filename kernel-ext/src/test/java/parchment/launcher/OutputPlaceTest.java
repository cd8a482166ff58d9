package parchment.launcher;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Stream;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;
import picocli.CommandLine;

/** No command writes into a logbook, or over what somebody else wrote, wherever it is told to write. */
class OutputPlaceTest {
    private static final String HILLSIDE = Path.of("..", "datasets", "hillside").toString();

    @TempDir
    private Path folder;

    private final StringWriter said = new StringWriter();

    private int run(List<String> arguments) {
        CommandLine main = Main.commandLine();
        quietly(main);
        return main.execute(arguments.toArray(String[]::new));
    }

    private void quietly(CommandLine command) {
        command.setOut(new PrintWriter(said));
        command.setErr(new PrintWriter(said));
        command.getSubcommands().values().forEach(this::quietly);
    }

    @BeforeEach
    void projectIsAbove() {
        System.setProperty("parchment.home", "..");
    }

    @AfterEach
    void projectIsForgotten() {
        System.clearProperty("parchment.home");
        System.clearProperty("parchment.logbook");
    }

    private Path logbook() throws IOException {
        Path logbook = Files.createDirectories(folder.resolve("My Roasts"));
        Files.writeString(logbook.resolve("batches.csv"), "batch,roasted at\n1,2026-01-05 09:00\n");
        Files.writeString(logbook.resolve("logbook.properties"), "name=Mine\n");
        return logbook;
    }

    private Path notebook(String name, String code) throws IOException {
        String source = new com.google.gson.JsonPrimitive(code).toString();
        return Files.writeString(
                folder.resolve(name),
                "{\"nbformat\":4,\"nbformat_minor\":5,\"metadata\":{},\"cells\":[{\"cell_type\":\"code\",\"metadata\":{},"
                        + "\"outputs\":[],\"source\":" + source + "}]}");
    }

    private static Map<Path, String> texts(Path folder) throws IOException {
        Map<Path, String> texts = new TreeMap<>();
        try (Stream<Path> all = Files.walk(folder)) {
            for (Path each : all.filter(Files::isRegularFile).toList()) {
                texts.put(each, Files.readString(each));
            }
        }
        return texts;
    }

    /** Each command that writes, with LB for the logbook, NB for a notebook, and DIR for a folder elsewhere. */
    static Stream<String> commands() {
        return Stream.of(
                "week --logbook " + HILLSIDE + " --out LB/batches.csv",
                "week --logbook " + HILLSIDE + " --out LB/week.html",
                "week --logbook " + HILLSIDE + " --out LB/pages/week.html",
                "week --logbook LB --out LB/week.html",
                "run NB --logbook LB --out LB",
                "run NB --out LB/out",
                "handbook --no-browser --to LB/handbook",
                "gather " + HILLSIDE + " --to LB/gathered",
                "roastery --batches 3 --out LB/year",
                "roastery class --batches 3 --students 1 --out LB/class",
                "roastery roast --plan DIR/plan.csv --out LB/plan",
                "class prepare --students 1 --teacher LB/teacher",
                "class hand-out 1 --teacher DIR --to LB/students",
                "class roast-plans DIR --teacher DIR --to LB/plans",
                "class collect DIR --page LB/batches.csv",
                "make-datasets --to LB/datasets",
                "install --prefix LB");
    }

    @ParameterizedTest
    @MethodSource("commands")
    void noCommandWritesIntoALogbook(String command) throws IOException {
        Path logbook = logbook();
        Path elsewhere = Files.createDirectories(folder.resolve("elsewhere"));
        Files.writeString(elsewhere.resolve("plan.csv"), "lot,drop temperature [°C]\nCinder Ridge,203\n");
        Files.writeString(elsewhere.resolve("plan-student-01.csv"), "lot,drop temperature [°C]\nCinder Ridge,203\n");
        Files.writeString(elsewhere.resolve("seeds.properties"), "student-01=secret:" + "0".repeat(64) + "\n");
        Path notebook = notebook("note.ipynb", "1 + 1");
        Map<Path, String> before = texts(folder);
        List<String> arguments = Arrays.stream(command.split(" "))
                .map(word -> word.replaceFirst("^LB", logbook.toString())
                        .replaceFirst("^NB", notebook.toString())
                        .replaceFirst("^DIR", elsewhere.toString()))
                .toList();
        assertEquals(1, run(arguments), said.toString());
        assertEquals(before, texts(folder), "nothing was changed or added");
        assertTrue(
                said.toString().contains("is or lies in the logbook '" + logbook.toRealPath() + "'"), said.toString());
        assertTrue(said.toString().contains("Name a place outside it."), said.toString());
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "roastery --batches 3 --out",
                "roastery class --batches 3 --students 1 --out",
                "gather HILLSIDE --to"
            })
    void aLinkToAnEmptyFolderInALogbookIsNotFilled(String command) throws IOException {
        Path logbook = logbook();
        Path link = folder.resolve("new");
        try {
            Files.createSymbolicLink(link, Files.createDirectory(logbook.resolve("empty")));
        } catch (IOException | UnsupportedOperationException e) {
            assumeTrue(false, "this system makes no links");
        }
        Map<Path, String> before = texts(folder);
        List<String> arguments =
                new ArrayList<>(List.of(command.replace("HILLSIDE", HILLSIDE).split(" ")));
        arguments.add(link.toString());
        assertEquals(1, run(arguments), said.toString());
        assertEquals(before, texts(folder), "nothing was changed or added");
        assertTrue(
                said.toString().contains("is or lies in the logbook '" + logbook.toRealPath() + "'"), said.toString());
    }

    @Test
    void gatherSaysThatItsFolderCannotBeMadeBeforeItAsksAnything() throws IOException {
        Path file = Files.writeString(folder.resolve("file"), "mine");
        assertEquals(
                1, run(List.of("gather", HILLSIDE, "--to", file.resolve("new").toString())));
        assertEquals(
                "'" + file.resolve("new") + "' cannot be made: '" + file
                        + "' is a file, where a folder is needed. Name another.",
                said.toString().strip());
    }

    @Test
    void theLogbookThatIsReadIsALogbookEvenIfItHoldsCurvesAlone() throws IOException {
        Path logger = Files.createDirectories(folder.resolve("logger"));
        Files.writeString(logger.resolve("101.csv"), "time [s],bean temperature [°C]\n0,180\n60,95\n120,110\n");
        Path notebook = notebook("note.ipynb", "1 + 1");
        assertEquals(
                1,
                run(List.of("run", notebook.toString(), "--logbook", logger.toString(), "--out", logger.toString())));
        assertTrue(said.toString().contains("is or lies in the logbook"), said.toString());
        assertEquals(1, texts(logger).size());
    }

    @Test
    void aPageTakesThePlaceOfAnEarlierPageButOfNothingElse() throws IOException {
        Path page = folder.resolve("week.html");
        List<String> week = List.of("week", "--logbook", HILLSIDE, "--out", page.toString());
        assertEquals(0, run(week), said.toString());
        Files.writeString(page, Files.readString(page).replace("</body>", "<!-- an earlier week --></body>"));
        assertEquals(0, run(week), said.toString());
        assertFalse(Files.readString(page).contains("an earlier week"));
        Files.writeString(page, "<!DOCTYPE html><title>My own page</title>");
        assertEquals(1, run(week));
        assertTrue(
                said.toString()
                        .contains(
                                "'" + page
                                        + "' is there already and is no page that this program marked as its own (an earlier version may have written it)"),
                said.toString());
        assertEquals("<!DOCTYPE html><title>My own page</title>", Files.readString(page));
    }

    @Test
    void theHandbookLeavesAFolderAloneThatHoldsAPageOfSomebodyElse() throws IOException {
        Path site = Files.createDirectories(folder.resolve("site"));
        Files.writeString(site.resolve("index.html"), "<title>Our shop</title>");
        assertEquals(1, run(List.of("handbook", "--no-browser", "--to", site.toString())));
        assertTrue(said.toString().contains("is no page that this program marked as its own"), said.toString());
        assertEquals(Map.of(site.resolve("index.html"), "<title>Our shop</title>"), texts(site));
    }

    @Test
    void aRunTakesThePlaceOfAnEarlierRunAndOfTheSameCellsButNotOfWhatSomebodyWrote() throws IOException {
        Path notebook = notebook("note.ipynb", "1 + 1");
        Path out = folder.resolve("out");
        List<String> command = List.of("run", notebook.toString(), "--out", out.toString());
        assertEquals(0, run(command), said.toString());
        notebook("note.ipynb", "1 + 2");
        assertEquals(0, run(command), "the notebook was changed, and its earlier run is replaced: " + said);
        Path executed = out.resolve("note.ipynb");
        assertTrue(Files.readString(executed).contains("1 + 2"));

        String edited = Files.readString(executed).replace("1 + 2", "1 + 2 // what I think of it");
        Files.writeString(executed, edited);
        assertEquals(1, run(command));
        assertTrue(
                said.toString()
                        .contains(
                                "'" + executed.toAbsolutePath()
                                        + "' is there already, and is not what a run has left (it is of somebody's own, or was changed"
                                        + " since), so it was left as it is. Name another folder with --out, or move that one away."),
                said.toString());
        assertEquals(edited, Files.readString(executed));

        Files.copy(notebook, executed, java.nio.file.StandardCopyOption.REPLACE_EXISTING);
        assertEquals(0, run(command), "the same cells, without a mark: nothing is lost. " + said);
    }

    @Test
    void twoNotebooksOfOneNameAreNotWrittenOverEachOther() throws IOException {
        Path first = notebook("note.ipynb", "1 + 1");
        Files.createDirectories(folder.resolve("second"));
        Path second = notebook("second/note.ipynb", "2 + 2");
        Path out = folder.resolve("out");
        assertEquals(1, run(List.of("run", first.toString(), second.toString(), "--out", out.toString())));
        assertTrue(said.toString().contains("have the same name"), said.toString());
        assertFalse(Files.exists(out.resolve("note.html")));
    }

    @Test
    void theTruthBesideALogbookIsNotWrittenOverAStrangeFile() throws IOException {
        Path strange = Files.writeString(folder.resolve("year-truth.json"), "{\"mine\": 1}");
        assertEquals(
                1,
                run(List.of(
                        "roastery",
                        "--batches",
                        "3",
                        "--out",
                        folder.resolve("year").toString())));
        assertEquals("{\"mine\": 1}", Files.readString(strange));
        assertFalse(Files.exists(folder.resolve("year")));
    }

    @ParameterizedTest
    @ValueSource(strings = {"/proc/x.html", "/proc/new/deep/x.html"})
    void aFolderThatTakesNoFilesIsNamedBeforeAnythingIsRead(String page) {
        assumeTrue(Files.isDirectory(Path.of("/proc/self")));
        assertEquals(1, run(List.of("week", "--logbook", HILLSIDE, "--out", page)));
        assertTrue(
                said.toString()
                        .matches(
                                "(?s)Nothing can be written in the folder '/proc': (that is not permitted to you\\. Name another\\."
                                        + "|it takes no new files \\(the system keeps it for itself, or the disk is full\\)\\. Name a place in a"
                                        + " folder of your own\\.)\\R"),
                said.toString());
    }

    @Test
    void aFileWhereAFolderIsNeededIsNamed() throws IOException {
        Path file = Files.writeString(folder.resolve("notes"), "mine");
        assertEquals(
                1,
                run(List.of(
                        "next",
                        "Stone Bridge",
                        "--logbook",
                        HILLSIDE,
                        "--out",
                        file.resolve("x.html").toString())));
        assertEquals(
                "'" + file + "' is a file, where a folder is needed. Name another.",
                said.toString().strip());
        assertEquals("mine", Files.readString(file));
    }

    @ParameterizedTest
    @ValueSource(strings = {"week", "next Kela", "batch H1", "run"})
    void anEmptyNameIsToldAsSuch(String command) {
        List<String> arguments = new ArrayList<>(Arrays.asList(command.split(" ")));
        arguments.addAll(List.of("--logbook", HILLSIDE, "--out", ""));
        assertEquals(1, run(arguments));
        assertEquals(
                "--out was given an empty name. Name a place, or leave the option out.",
                said.toString().strip().lines().findFirst().orElse(""));
    }

    @Test
    void aFileInTheWayIsNamedOnce() throws IOException {
        Path file = Files.writeString(folder.resolve("afile"), "a file");
        assertEquals(
                "'" + file + "' is a file, where a folder is needed. Name another.",
                assertThrows(
                                IllegalArgumentException.class,
                                () -> OutputPlace.page(file.resolve("x.html"), new LogbookChoice(null)))
                        .getMessage());
        Path below = file.resolve("deep");
        assertEquals(
                "'" + below + "' cannot be made: '" + file + "' is a file, where a folder is needed. Name another.",
                assertThrows(
                                IllegalArgumentException.class,
                                () -> OutputPlace.page(below.resolve("x.html"), new LogbookChoice(null)))
                        .getMessage());
    }

    @Test
    void aCommandThatIsRefusedLeavesNoFolder() throws IOException {
        Path file = Files.writeString(folder.resolve("afile"), "a file");
        Path notebook = notebook("one.ipynb", "1");
        String page = folder.resolve("new/deep/x.html").toString();
        for (List<String> arguments : List.of(
                List.of(
                        "run",
                        notebook.toString(),
                        "--out",
                        folder.resolve("new").toString(),
                        "--markdown",
                        file.toString()),
                List.of(
                        "run",
                        folder.resolve("none.ipynb").toString(),
                        "--out",
                        folder.resolve("new/out").toString()),
                List.of("week", "--logbook", HILLSIDE, "--order", "Kela", "--out", page),
                List.of("next", "no such lot", "--logbook", HILLSIDE, "--out", page),
                List.of("batch", "no such batch", "--logbook", HILLSIDE, "--out", page))) {
            assertEquals(1, run(arguments), said.toString());
            assertFalse(Files.exists(folder.resolve("new")), arguments.toString());
        }
    }

    @Test
    void aPageToBePublishedIsNotWrittenWhereACellFailedAndThatIsSaid() throws IOException {
        Path notebook = notebook("failing.ipynb", "1 / 0");
        Path pages = folder.resolve("pages");
        String out = folder.resolve("out").toString();
        assertEquals(1, run(List.of("run", notebook.toString(), "--out", out, "--markdown", pages.toString())));
        assertTrue(
                said.toString()
                        .contains("Markdown:  not written, because a cell failed: it is for pages that are published."),
                said.toString());
        assertTrue(Files.exists(folder.resolve("out/failing.html")));
        assertFalse(Files.exists(pages.resolve("failing.md")));
    }
}
