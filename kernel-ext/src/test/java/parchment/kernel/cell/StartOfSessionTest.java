package parchment.kernel.cell;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assumptions.assumeFalse;

import java.io.File;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.objectweb.asm.Opcodes;
import parchment.jars.MadeRepository;
import parchment.jars.Network;
import parchment.jars.SessionJars;

/** What the environment names, and what is said of what is not there. */
class StartOfSessionTest {
    @TempDir
    private Path folder;

    private final RecordingPage page = new RecordingPage();
    private final List<Path> added = new ArrayList<>();

    private void load(Map<String, String> environment) {
        StartOfSession start = new StartOfSession(environment);
        assertTrue(start.namesJars());
        start.loadJars(
                SessionJars.of(
                        new SessionJars.ClassPath() {
                            @Override
                            public void add(Path entry) {
                                added.add(entry);
                            }

                            @Override
                            public void programFirst() {}

                            @Override
                            public void say(String line) {}
                        },
                        Network.NEVER),
                page);
    }

    private Path jar(String name) throws IOException {
        String type = name.replace(".jar", "") + "/Says";
        return MadeRepository.jar(
                folder.resolve(name), type + ".class", MadeRepository.says(type, "a word", Opcodes.V17));
    }

    @Test
    void theClassPathIsReadAsJavaReadsIt() throws IOException {
        Path first = jar("first.jar");
        Path second = jar("second.jar");
        Path classes = Files.createDirectory(folder.resolve("classes"));
        String separator = File.pathSeparator;
        load(Map.of(
                "CLASSPATH", classes + separator + separator + folder.resolve("none.jar") + separator + folder + "/*"));
        assertEquals(List.of(classes, first, second), added);
        assertEquals(
                "Left out of what CLASSPATH names: '" + folder.resolve("none.jar") + "' (not there).\n"
                        + "CLASSPATH names 3 places with jars or classes; this session uses them.\n",
                page.err());
    }

    @Test
    void whatTheClassPathNamesFromTheNotebooksFolderIsLeftOutAndTold() {
        assertTrue(Files.isDirectory(Path.of("src")), "it is there, seen from here");
        load(Map.of("CLASSPATH", String.join(File.pathSeparator, ".", "src", "src/*", "*")));
        assertEquals(List.of(), added);
        String whole = "(name the whole path, from the root of the disk)";
        assertEquals(
                "Left out of what CLASSPATH names: '.' " + whole + ", 'src' " + whole + ", 'src/*' " + whole + ", '*' "
                        + whole + ".\n",
                page.err());
    }

    @ParameterizedTest
    @ValueSource(strings = {"PARCHMENT_JARS", "CLASSPATH"})
    void aFolderThatCannotBeReadIsTold(String variable) throws IOException {
        Path closed = Files.createDirectory(folder.resolve("closed"));
        jar("closed/one.jar");
        closed.toFile().setReadable(false);
        assumeFalse(Files.isReadable(closed), "whoever runs this may read everything");
        load(Map.of(variable, variable.equals(StartOfSession.JARS) ? closed.toString() : closed + "/*"));
        closed.toFile().setReadable(true);
        assertEquals(List.of(), added);
        assertTrue(page.err().startsWith("The jars of '" + closed + "' are not loaded: "), page.err());
    }

    @Test
    void oneJarThatIsTornKeepsNoOtherAway() throws IOException {
        Files.writeString(folder.resolve("a-torn.jar"), "torn");
        Path whole = jar("whole.jar");
        load(Map.of("PARCHMENT_JARS", folder.toString()));
        assertEquals(List.of(whole), added);
        assertTrue(page.err().startsWith("'" + folder.resolve("a-torn.jar") + "' is no jar"), page.err());
    }

    @Test
    void oneJarThatWouldStopEveryCellKeepsNoOtherAway() throws IOException {
        Path odd = MadeRepository.jar(folder.resolve("a-odd.jar"), "../E.class", new byte[0]);
        Path whole = jar("whole.jar");
        String words =
                "'a-odd.jar' cannot be used: something in it is named '../E.class', and Java opens no jar where . or .. is"
                        + " a part of a name. It was not loaded, because no later cell could run with it. Ask its makers for a whole"
                        + " one.\n";
        load(Map.of("PARCHMENT_JARS", folder.toString()));
        assertEquals(words, page.err());
        load(Map.of("CLASSPATH", odd + File.pathSeparator + whole));
        assertEquals(
                words + "CLASSPATH names 2 places with jars or classes; this session uses them.\n" + words, page.err());
        assertEquals(List.of(whole, whole), added);
    }

    @Test
    void aFolderThatIsGoneIsTold() {
        load(Map.of("PARCHMENT_JARS", folder.resolve("gone").toString()));
        assertEquals(
                "The folder of jars '" + folder.resolve("gone")
                        + "' that this kernel was installed with is not there, so this session has none of them. Put it back, or"
                        + " install again: ./parchment install --jars DIR.\n",
                page.err());
    }

    @Test
    void nothingIsDoneWhereNothingIsNamed() {
        StartOfSession start = new StartOfSession(Map.of("CLASSPATH", "", "PARCHMENT_START_CELLS", " "));
        assertFalse(start.namesJars());
        assertTrue(start.cells(page).isEmpty());
        assertEquals("", page.err());
    }

    @Test
    void startCellsThatAreNotThereOrInALogbookAreTold() throws IOException {
        Path none = folder.resolve("none.jsh");
        assertTrue(new StartOfSession(Map.of("PARCHMENT_START_CELLS", none.toString()))
                .cells(page)
                .isEmpty());
        assertTrue(page.err().startsWith("The start-up cells cannot be read: "), page.err());
        Path file = Files.writeString(folder.resolve("start.jsh"), "int a = 1;\r\nint b = 2;");
        StartOfSession start = new StartOfSession(Map.of("PARCHMENT_START_CELLS", file.toString()));
        assertEquals("int a = 1;\nint b = 2;", start.cells(page).orElseThrow().code());
        Files.writeString(folder.resolve("batches.csv"), "batch\n1\n");
        assertTrue(start.cells(page).isEmpty());
        assertTrue(
                page.err()
                        .endsWith("The start-up cells '" + file + "' lie in the logbook '" + folder
                                + "' (a folder with batches.csv, logbook.properties or curves). A logbook may come from"
                                + " somebody else, so nothing in one is ever run. Keep them elsewhere.\n"),
                page.err());
    }

    @ParameterizedTest
    @CsvSource({
        "batches.csv, notes/s.jsh",
        "batches.csv, notes/deep/s.jsh",
        "curves/1.csv, notes/deep/s.jsh",
        "logbook.properties, notes/deep/s.jsh",
    })
    void startCellsAnywhereBelowALogbookAreRefused(String makesALogbook, String cells) throws IOException {
        Path logbook = Files.createDirectory(folder.resolve("lb"));
        Path mark = logbook.resolve(makesALogbook);
        Files.createDirectories(mark.getParent());
        Files.writeString(mark, "batch\n1\n");
        Path file = logbook.resolve(cells);
        Files.createDirectories(file.getParent());
        Files.writeString(file, "int a = 1;");
        assertTrue(new StartOfSession(Map.of("PARCHMENT_START_CELLS", file.toString()))
                .cells(page)
                .isEmpty());
        assertTrue(
                page.err().startsWith("The start-up cells '" + file + "' lie in the logbook '" + logbook + "'"),
                page.err());
    }
}
