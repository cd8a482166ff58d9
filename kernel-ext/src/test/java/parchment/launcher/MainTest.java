package parchment.launcher;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import parchment.logbook.contents.Cautions;
import picocli.CommandLine;

class MainTest {
    private final StringWriter out = new StringWriter();
    private final StringWriter err = new StringWriter();

    private int run(String... arguments) {
        CommandLine main = Main.commandLine();
        main.setOut(new PrintWriter(out));
        main.setErr(new PrintWriter(err));
        main.getSubcommands().values().forEach(sub -> {
            sub.setOut(new PrintWriter(out));
            sub.setErr(new PrintWriter(err));
        });
        return main.execute(arguments);
    }

    private static Path notebook(Path folder, String code) throws IOException {
        String source = new com.google.gson.JsonPrimitive(code).toString();
        return Files.writeString(
                folder.resolve("made hére.ipynb"),
                "{\"nbformat\":4,\"nbformat_minor\":5,\"metadata\":{},\"cells\":[{\"cell_type\":\"code\",\"metadata\":{},"
                        + "\"outputs\":[],\"source\":" + source + "}]}");
    }

    @ParameterizedTest
    @ValueSource(strings = {"week", "open", "install"})
    void aLogbookWithoutItsOptionIsAskedForInOneLine(String command) {
        assertEquals(CommandLine.ExitCode.USAGE, run(command, "My Roasts"));
        assertEquals(
                "'parchment " + command
                        + "' takes no 'My Roasts' by itself. Did you mean --logbook \"My Roasts\"? All options:"
                        + " parchment " + command + " --help",
                err.toString().strip());
    }

    @Test
    void anotherSlipIsToldAsUsual() {
        assertEquals(CommandLine.ExitCode.USAGE, run("week", "--logbok", "x"));
        assertEquals(
                "Unknown options: '--logbok', 'x'\nPossible solutions: --logbook",
                err.toString().strip().replace("\r", ""));
        assertEquals(CommandLine.ExitCode.USAGE, run("week", "--logbook", "x", "surplus"));
        assertTrue(err.toString().contains("Unmatched argument"), err.toString());
        assertTrue(err.toString().contains("Usage: parchment week"), err.toString());
        assertFalse(err.toString().contains("by itself"), err.toString());
    }

    /** The list of commands shows the first text of each: it has to be whole sentences. */
    @Test
    void noCommandIsDescribedInHalfASentence() {
        Main.commandLine().getSubcommands().forEach((name, command) -> {
            String first =
                    command.getCommandSpec().usageMessage().description()[0].strip();
            assertTrue(name.equals("help") || first.endsWith("."), name + ": " + first);
        });
    }

    @Test
    void runWritesThePageAndTheNotebookAndSaysWhere(@TempDir Path folder) throws IOException {
        Path notebook = notebook(folder, "1 + 1");
        Path target = folder.resolve("out ü");
        assertEquals(0, run("run", notebook.toString(), "--out", target.toString()), err.toString());
        assertTrue(Files.exists(target.resolve("made hére.html")));
        assertTrue(Files.exists(target.resolve("made hére.ipynb")));
        assertTrue(out.toString().contains(target.resolve("made hére.html").toString()), out.toString());
        String page = Files.readString(target.resolve("made hére.html")).replace("&#39;", "'");
        Cautions.forAPage().forEach(caution -> assertTrue(page.contains("<p>" + caution + "</p>"), caution));
    }

    /** The week brings the cautions, and the cell that opens the logbook says that it was invented: neither stands twice. */
    @Test
    void aPageSaysItsCautionsOnceThoughAResultBringsThem(@TempDir Path folder) throws IOException {
        String demo = Path.of("..", "datasets", "hillside")
                .toAbsolutePath()
                .normalize()
                .toString()
                .replace("\\", "/");
        Path notebook = notebook(folder, "Week.of(Logbook.open(\"" + demo + "\"))");
        assertEquals(
                0,
                run("run", notebook.toString(), "--out", folder.resolve("out").toString()),
                err.toString() + out);
        String page = Files.readString(folder.resolve("out").resolve("made hére.html"))
                .replace("&#39;", "'");
        Cautions.forAPage()
                .forEach(caution -> assertEquals(1, page.split(Pattern.quote(caution), -1).length - 1, caution));
        assertEquals(1, page.split("Invented machine: do not roast\\.", -1).length - 1, page);
    }

    @Test
    void runEndsWithOneAndTheCellWhenACellFails(@TempDir Path folder) throws IOException {
        Path notebook = notebook(folder, "int a = 1;\nnoSuchName");
        assertEquals(
                1,
                run("run", notebook.toString(), "--out", folder.resolve("out").toString()));
        assertTrue(out.toString().contains("Cell 1 of"), out.toString());
        assertTrue(out.toString().contains("Line 2:  noSuchName"), out.toString());
        assertTrue(Files.exists(folder.resolve("out").resolve("made hére.html")), "what was done is written");
    }

    /** A page without what keeps a number with its unit. */
    private static String written(Path page) throws IOException {
        return Files.readString(page).replaceAll("<span style=\"white-space:nowrap\">(.*?)</span>", "$1");
    }

    @Test
    void weekWritesAPageWithTheOrderAndTheCautions(@TempDir Path folder) throws IOException {
        Path page = folder.resolve("the wéek.html");
        String hillside = Path.of("..", "datasets", "hillside").toString();
        assertEquals(
                0,
                run("week", "--logbook", hillside, "--order", "Moth Field = 12,5 kg", "--out", page.toString()),
                err.toString());
        String html = written(page);
        assertTrue(html.contains("12.5 kg of roasted Moth Field take"), html);
        String plain = html.replace("&#39;", "'");
        Cautions.forAPage()
                .forEach(caution -> assertEquals(1, plain.split(Pattern.quote(caution), -1).length - 1, caution));
        assertEquals(1, html.split("Invented machine: do not roast\\.", -1).length - 1, html);
        assertTrue(out.toString().startsWith("Invented machine: do not roast."), out.toString());
        assertTrue(html.contains("@media print"), html);
        assertTrue(out.toString().contains(page.toString()), out.toString());
    }

    @Test
    void nextAndBatchWriteACardWithTheCautionsAndSayItsFirstSentences(@TempDir Path folder) throws IOException {
        Path page = folder.resolve("the cárd.html");
        String hillside = Path.of("..", "datasets", "hillside").toString();
        for (List<String> asked : List.of(List.of("next", "Moth Field"), List.of("batch", "K036"))) {
            out.getBuffer().setLength(0);
            assertEquals(
                    0,
                    run(asked.get(0), asked.get(1), "--logbook", hillside, "--out", page.toString()),
                    err.toString());
            String html = written(page).replace("&#39;", "'");
            Cautions.forAPage()
                    .forEach(caution -> assertEquals(1, html.split(Pattern.quote(caution), -1).length - 1, caution));
            assertEquals(1, html.split("Invented machine: do not roast\\.", -1).length - 1, html);
            assertTrue(html.contains("@media print"), html);
            // On paper buttons are gone, but not the headings of a table that sorts.
            assertTrue(html.contains("input,button{display:none}th button{display:inline}}"), html);
            List<String> said = out.toString().lines().toList();
            assertEquals("Invented machine: do not roast.", said.get(0));
            assertTrue(html.contains(said.get(1)), said.get(1));
            assertEquals("Page:      " + page, said.get(4));
        }
    }

    @Test
    void nextAndBatchAnswerAWrongNameWithTheNearest(@TempDir Path folder) {
        String hillside = Path.of("..", "datasets", "hillside").toString();
        String page = folder.resolve("card.html").toString();
        assertEquals(1, run("next", "Moth Fild", "--logbook", hillside, "--out", page));
        assertTrue(err.toString().contains("Did you mean 'Moth Field'?"), err.toString());
        err.getBuffer().setLength(0);
        assertEquals(1, run("batch", "K36", "--logbook", hillside, "--out", page));
        assertTrue(err.toString().contains("Did you mean 'K036'?"), err.toString());
        assertTrue(Files.notExists(Path.of(page)));
        err.getBuffer().setLength(0);
        assertEquals(CommandLine.ExitCode.USAGE, run("next"));
        assertTrue(err.toString().contains("Missing required parameter: 'LOT'"), err.toString());
    }

    @Test
    void weekAnswersAnOrderInItsOwnUnit(@TempDir Path folder) throws IOException {
        String hillside = Path.of("..", "datasets", "hillside").toString();
        Path page = folder.resolve("page.html");
        assertEquals(
                0,
                run("week", "--logbook", hillside, "--order", "Moth Field=20lb", "--out", page.toString()),
                err.toString());
        String order = out.toString()
                .lines()
                .filter(line -> line.contains("of roasted Moth Field"))
                .findFirst()
                .orElseThrow();
        assertTrue(
                order.matches(
                        "20 lb of roasted Moth Field take about [0-9.]+ lb of green coffee, in .* of [0-9.]+ lb.*\\."),
                order);
        assertFalse(order.contains(" kg"), order);
    }

    @Test
    void weekSaysHowAnOrderIsWritten(@TempDir Path folder) {
        String hillside = Path.of("..", "datasets", "hillside").toString();
        int code = run(
                "week",
                "--logbook",
                hillside,
                "--order",
                "Moth Field",
                "--out",
                folder.resolve("w").toString());
        assertEquals(1, code);
        assertTrue(err.toString().contains("--order \"Cinder Ridge=12kg\""), err.toString());
        assertEquals(
                1,
                run(
                        "week",
                        "--logbook",
                        hillside,
                        "--order",
                        "Moth Fild=3kg",
                        "--out",
                        folder.resolve("w").toString()));
        assertTrue(err.toString().contains("Did you mean 'Moth Field'?"), err.toString());
    }

    /** A logbook of two batches of a lot, with a blend of it that is not said when it is blended. */
    private static String smallLogbook(Path folder, String day) throws IOException {
        Path logbook = Files.createDirectories(folder.resolve("small"));
        Files.writeString(
                logbook.resolve("batches.csv"),
                "batch,roasted at,lot,green mass [kg],roasted mass [kg]\nA," + day + ",kela,5,4.25\nB," + day
                        + ",kela,5,4.2\nC," + day + ",kela,5,4.2\nD," + day + ",kela,5,4.25\n");
        Files.writeString(
                logbook.resolve("blends.csv"),
                "blend,lot,share [%],blended\nHouse,kela,100,after roasting\nHalf,kela,,\n");
        return logbook.toString();
    }

    @Test
    void weekTakesABlendApartAndAddsItToTheLotsOwnOrder(@TempDir Path folder) throws IOException {
        Path page = folder.resolve("w.html");
        String logbook = smallLogbook(folder, "2025-02-03 09:00");
        assertEquals(
                0,
                run(
                        "week",
                        "--logbook",
                        logbook,
                        "--order",
                        "House=5KG",
                        "--order",
                        "kela=3.4 kg",
                        "--out",
                        page.toString()),
                err.toString());
        assertTrue(
                out.toString()
                        .contains("8.4 kg of roasted kela take about 9.9 kg of green coffee, in 2 batches of 5 kg."),
                out.toString());
        assertTrue(out.toString().startsWith("4 batches in the week to 2025-02-03: "), out.toString());
        assertTrue(written(page).contains("Shares of the roasted mass: 100 % kela."), out.toString());
        assertEquals(
                1, run("week", "--logbook", logbook, "--order", "Half=5kg", "--out", page.toString()), out.toString());
        assertTrue(err.toString().contains("The blend 'Half' has no share for 'kela' in blends.csv"), err.toString());
        assertFalse(err.toString().contains("Exception"), err.toString());
        assertEquals(
                1, run("week", "--logbook", logbook, "--order", "Huose=5kg", "--out", page.toString()), out.toString());
        assertTrue(err.toString().contains("Did you mean 'House'?"), err.toString());
    }

    @Test
    void weekOfALogbookWithoutDatesIsAPageThatSaysWhatIsMissing(@TempDir Path folder) throws IOException {
        Path page = folder.resolve("w.html");
        assertEquals(0, run("week", "--logbook", smallLogbook(folder, ""), "--out", page.toString()), err.toString());
        assertTrue(
                out.toString()
                        .startsWith(
                                "There is no week to show: no batch has a date.\nNone of the 4 batches has a day that could be read"
                                        + " under 'roasted at' in batches.csv.\nWrite the day and time of each charge there"),
                out.toString());
        assertTrue(Files.readString(page).contains("There is no week to show: no batch has a date."), out.toString());
    }

    @Test
    void runHandsTheLogbookFolderToTheCells(@TempDir Path folder) throws IOException {
        Path notebook = notebook(folder, "System.getProperty(\"parchment.logbook\").endsWith(\"my röasts\")");
        Path logbook = Files.createDirectory(folder.resolve("my röasts"));
        Path target = folder.resolve("out");
        String before = System.getProperty("parchment.logbook");
        try {
            assertEquals(
                    0, run("run", notebook.toString(), "--out", target.toString(), "--logbook", logbook.toString()));
            assertTrue(Files.readString(target.resolve("made hére.html")).contains(">true<"));
        } finally {
            if (before == null) {
                System.clearProperty("parchment.logbook");
            }
        }
    }

    @Test
    void aNotebooksPathsCountFromItsOwnFolderWhereverItIsRunFrom(@TempDir Path folder) throws IOException {
        Path notebook = notebook(
                folder,
                "System.out.println(Files.readString(Path.of(\"besïde.txt\")));\n"
                        + "Files.writeString(Path.of(\"written.txt\"), \"x\");");
        Files.writeString(folder.resolve("besïde.txt"), "what lies besïde");
        Path target = folder.resolve("out");
        assertEquals(0, run("run", notebook.toString(), "--out", target.toString()), out.toString());
        assertTrue(Files.readString(target.resolve("made hére.html")).contains("what lies besïde"), out.toString());
        assertEquals("x", Files.readString(folder.resolve("written.txt")));
        assertTrue(out.toString().contains("Running " + notebook), out.toString());
    }

    @Test
    void runNeverWritesOverItsInput(@TempDir Path folder) throws IOException {
        Path notebook = notebook(folder, "1 + 1");
        String before = Files.readString(notebook);
        assertEquals(1, run("run", notebook.toString(), "--out", folder.toString()));
        assertEquals(before, Files.readString(notebook));
        assertTrue(err.toString().contains("--out"), err.toString());
    }

    @Test
    void saysWhichFileIsMissing() {
        assertEquals(1, run("run", "no such.ipynb", "--out", System.getProperty("java.io.tmpdir")));
        assertTrue(err.toString().contains("There is no file or folder no such.ipynb."), err.toString());
    }

    @Test
    void saysWhichLogbookFolderIsMissing(@TempDir Path folder) throws IOException {
        Path notebook = notebook(folder, "1");
        assertEquals(
                1,
                run(
                        "run",
                        notebook.toString(),
                        "--logbook",
                        folder.resolve("none").toString()));
        assertTrue(err.toString().contains("There is no logbook folder"), err.toString());
    }

    @Test
    void handbookWritesThePagesAndSaysWhereTheContentsAre(@TempDir Path folder) throws IOException {
        System.setProperty("parchment.home", "..");
        try {
            Path target = folder.resolve("bóok");
            assertEquals(0, run("handbook", "--no-browser", "--to", target.toString()), err.toString());
            assertTrue(Files.readString(target.resolve("index.html")).contains("href=\"safety.html\">Safety</a>"));
            assertTrue(out.toString().contains("Contents:  " + target.resolve("index.html")), out.toString());
            Path file = Files.writeString(folder.resolve("file"), "");
            assertEquals(1, run("handbook", "--no-browser", "--to", file.toString()));
            assertTrue(err.toString().contains(file + " is a file. Name another with --to."), err.toString());
            System.setProperty("parchment.home", folder.toString());
            assertEquals(1, run("handbook", "--no-browser", "--to", target.toString()));
            assertTrue(err.toString().contains("The pages of the handbook are not here"), err.toString());
        } finally {
            System.clearProperty("parchment.home");
        }
    }

    @Test
    void aBrowserIsAskedForByTheSystemsOwnCommandAndOnlyWhereThereIsAScreen() {
        Path page = Path.of("/a b/index.html");
        assertEquals(
                Optional.of(List.of("xdg-open", page.toUri().toString())),
                Browser.command("Linux", Map.of("DISPLAY", ":0"), page));
        assertEquals(Optional.empty(), Browser.command("Linux", Map.of("TERM", "xterm"), page));
        assertEquals(
                "open",
                Browser.command("Mac OS X", Map.of(), page).orElseThrow().get(0));
        assertEquals(
                "rundll32",
                Browser.command("Windows 11", Map.of(), page).orElseThrow().get(0));
    }
}
