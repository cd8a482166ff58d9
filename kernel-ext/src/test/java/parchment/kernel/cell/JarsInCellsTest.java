package parchment.kernel.cell;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.regex.Matcher;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.objectweb.asm.ClassWriter;
import org.objectweb.asm.Opcodes;
import parchment.jars.MadeRepository;
import parchment.jars.Network;
import parchment.kernel.help.ExamplesTest;
import parchment.kernel.page.Outcome;

/** Jars, libraries and the lines of other Java notebooks as cells use them. */
class JarsInCellsTest {
    private static final String LOCAL = "maven.repo.local";

    @TempDir
    private Path folder;

    /** What the environment of the one session names, in which all but one of the tests run. */
    @TempDir
    private static Path named;

    private static Evaluator shared;
    private static final RecordingPage FIRST = new RecordingPage();

    private RecordingPage page = new RecordingPage();

    @BeforeAll
    static void open() throws IOException {
        Path jar = jar(named, "spoons.jar", "spoons.Says", "a word");
        Path jars = Files.createDirectory(named.resolve("jars"));
        jar(jars, "trays.jar", "trays.Says", "another");
        Path cells = Files.writeString(
                named.resolve("start.jsh"),
                "int begun = 1;\nint half(int x) { return x / 0; }\nString word = trays.Says.word();\nint b = \"x\";");
        shared = Evaluator.open(
                Network.NEVER,
                Map.of(
                        "CLASSPATH",
                        jar.toString(),
                        "PARCHMENT_JARS",
                        jars.toString(),
                        "PARCHMENT_START_CELLS",
                        cells.toString()));
        assertTrue(shared.run("begun++;\nspoons.Says.word()", FIRST).fine(), FIRST::err);
    }

    @AfterAll
    static void close() {
        shared.close();
    }

    @AfterEach
    void forgetRepository() {
        System.clearProperty(LOCAL);
    }

    private Path jar(String name, String type, String word) throws IOException {
        return jar(folder, name, type, word);
    }

    private static Path jar(Path folder, String name, String type, String word) throws IOException {
        return MadeRepository.jar(
                folder.resolve(name),
                type.replace('.', '/') + ".class",
                MadeRepository.says(type.replace('.', '/'), word, Opcodes.V17));
    }

    private String shownBy(String code) {
        page = new RecordingPage();
        Outcome outcome = shared.run(code, page);
        assertTrue(outcome.fine(), () -> outcome.error().orElseThrow().text());
        return page.result();
    }

    private String printed() {
        return page.out() + page.err();
    }

    private String errorOf(String code) {
        page = new RecordingPage();
        Outcome outcome = shared.run(code, page);
        assertFalse(outcome.fine(), "the cell should fail");
        return outcome.error().orElseThrow().text();
    }

    @Test
    void theClassesOfAJarAreThereInTheSameCellAndInLaterOnes() throws IOException {
        Path jar = jar("proofs.jar", "blends.Says", "a word");
        assertEquals("a word", shownBy("Jars.add(Path.of(\"" + jar + "\"))\nimport blends.Says\nSays.word()"));
        assertEquals("a word", shownBy("Says.word()"));
        assertEquals("a word", shownBy("blends.Says.word()"));
        assertEquals("true", shownBy("Thread.currentThread().getContextClassLoader() == Says.class.getClassLoader()"));
        assertEquals(List.of("word()"), shared.complete("blends.Says.wo", 14).matches());
        assertTrue(String.valueOf(shared.inspect("blends.Says.word()", 13)).contains("String"), "Shift-Tab knows it");
    }

    @Test
    void aJarThatWouldStopEveryCellIsRefusedAndTheSessionGoesOn() throws IOException {
        Path odd = MadeRepository.jar(folder.resolve("odd.jar"), "./E.class", new byte[0]);
        assertTrue(
                errorOf("Jars.add(Path.of(\"" + odd + "\"))").contains("something in it is named './E.class'"),
                "it is told");
        assertEquals("42", shownBy("40 + 2"));
    }

    @Test
    void aFileThatLoadsItselfIsToldOnce() throws IOException {
        Path self = folder.resolve("self.jsh");
        Files.writeString(self, "%load " + self);
        assertEquals(
                "In self.jsh:\n%load could not load '" + self
                        + "'. It is being loaded already, by itself or by a file that it loads.",
                errorOf("%load " + self).strip());
    }

    @Test
    void theExampleOfItsPageRunsAnywhere() throws IOException {
        String source = Files.readString(Path.of("src", "main", "java", "parchment", "jars", "Jars.java"));
        Matcher example = ExamplesTest.EXAMPLE.matcher(source);
        assertTrue(example.find(), "there is one");
        System.setProperty(LOCAL, folder.resolve("nothing").toString());
        assertTrue(
                shownBy(example.group(1).replaceAll("(?m)^ \\* ?", "")).startsWith("Nothing new was loaded."),
                page.result());
        assertTrue(
                printed().contains("commons-math3 3.6.1 is part of Parchment, and that one is used here."), printed());
        String words = String.valueOf(shared.inspect("Jars.add", 3));
        assertTrue(words.contains("Loads jars into the running notebook"), words);
    }

    @Test
    void theLibrariesOfAFolderAndOfALineAreThere() throws IOException {
        jar("a.jar", "first.Says", "first");
        jar("b.jar", "second.Says", "second");
        assertEquals("first", shownBy("%jars " + folder + "/a*.jar\nfirst.Says.word()"));
        assertEquals("second", shownBy("Jars.add(Path.of(\"" + folder + "\"));\nsecond.Says.word()"));
        assertTrue(
                shownBy("Jars.all()").endsWith("\n  a.jar  " + folder + "/a.jar\n  b.jar  " + folder + "/b.jar"),
                page.result());
        Path classes = Files.createDirectories(folder.resolve("classes/third"));
        Files.write(classes.resolve("Says.class"), MadeRepository.says("third/Says", "third", Opcodes.V17));
        assertEquals("third", shownBy("%classpath " + classes.getParent() + "\nthird.Says.word()"));
        assertEquals("first", shownBy("List<String> l = %classpath add jar " + folder + "/a.jar\nfirst.Says.word()"));
    }

    @Test
    void aLibraryComesFromTheLocalRepositoryByEveryWayOfNamingIt() throws IOException {
        MadeRepository local = new MadeRepository(Files.createDirectory(folder.resolve("local")));
        local.add("harbour", "scales", "2.1", "");
        local.add("harbour", "papers", "1.0", "");
        local.add("harbour", "mills", "1.0", "");
        local.add(
                "harbour",
                "halves",
                "1.0",
                "<dependencies>" + MadeRepository.needs("harbour", "scales", "2.1", "compile") + "</dependencies>");
        System.setProperty(LOCAL, local.folder().toString());
        assertEquals("2.1", shownBy("%maven harbour:halves:1.0\nscales.Says.word()"));
        assertEquals("1.0", shownBy("%classpath add mvn harbour papers 1.0\npapers.Says.word()"));
        shownBy("""
                %%loadFromPOM
                <dependency>
                  <groupId>harbour</groupId>
                  <artifactId>mills</artifactId>
                  <version>1.0</version>
                </dependency>
                """);
        assertEquals("1.0", shownBy("mills.Says.word()"));
        assertTrue(errorOf("Jars.add(\"harbour:none:1.0\")").contains("nothing is fetched here"), "no network");
    }

    @Test
    void linesOfErrorsStayRightBelowSuchALine() throws IOException {
        Path jar = jar("blends.jar", "blends.Says", "a word");
        String error = errorOf("%jars " + jar + "\n// a remark\nint a = 1 / 0;");
        assertTrue(error.startsWith("Line 3:  int a = 1 / 0;"), error);
        String compile = errorOf("%jars " + jar + "\nint b = \"text\";");
        assertTrue(compile.startsWith("Line 2:  int b = \"text\";\n                 ^"), compile);
        String own = errorOf("int c = 1;\n%jars none.jar");
        assertTrue(own.startsWith("Line 2:  %jars none.jar\nThere is nothing at 'none.jar'"), own);
        String unknown = errorOf("int d = 1;\n%mavn a:b:1");
        assertTrue(unknown.startsWith("Line 2:  %mavn a:b:1\n         ^\n%mavn is no Java"), unknown);
        assertTrue(unknown.contains("Did you mean `%maven`?"), unknown);
    }

    @Test
    void aJarThatNeedsAnotherIsToldWhatBringsIt() throws IOException {
        ClassWriter writer = new ClassWriter(0);
        writer.visit(Opcodes.V17, Opcodes.ACC_PUBLIC, "alone/Child", null, "missing/Parent", null);
        writer.visitEnd();
        Path jar = MadeRepository.jar(folder.resolve("alone.jar"), "alone/Child.class", writer.toByteArray());
        String error = errorOf("Jars.add(Path.of(\"" + jar + "\"));\nClass.forName(\"alone.Child\")");
        assertTrue(
                error.contains("NoClassDefFoundError: missing/Parent\nA jar here needs another that is not here."),
                error);
    }

    @Test
    void aFileIsLoadedAsCellsOfItsOwn() throws IOException {
        Path tools = Files.writeString(
                folder.resolve("tools.jsh"), "int twice(int x) { return 2 * x; }\nint wrong() { return 1 / 0; }");
        Path notebook = Files.writeString(
                folder.resolve("other.ipynb"),
                "{\"cells\":[{\"cell_type\":\"markdown\",\"source\":\"no code\"},{\"cell_type\":\"code\",\"source\":[\"int four = twice(2);\\n\","
                        + "\"four\"]}]}");
        assertEquals("5", shownBy("int one = 1\n%load " + tools + "\n%load " + notebook + "\nfour + one"));
        String error = errorOf("wrong()");
        assertTrue(error.contains("tools.jsh, line 2:  int wrong()"), error);
        Path broken = Files.writeString(folder.resolve("broken.jsh"), "int a = 1;\nint b = \"x\";");
        String inFile = errorOf("%load " + broken);
        assertTrue(inFile.startsWith("In broken.jsh:\nLine 2:  int b"), inFile);
        assertTrue(errorOf("%load none.jsh").contains("%load could not load 'none.jsh'."), "not there");
        Path itself = folder.resolve("itself.jsh");
        Files.writeString(itself, "%load " + itself);
        assertTrue(
                errorOf("%load " + itself)
                        .contains("It is being loaded already, by itself or by a file that it loads."),
                "itself");
    }

    @Test
    void whatTheEnvironmentNamesIsThereBeforeTheFirstCellAndToldOnce() {
        assertEquals("a word", FIRST.result());
        assertTrue(
                FIRST.err().startsWith("CLASSPATH names 1 place with jars or classes; this session uses them.\n"),
                FIRST.err());
        String failed = "In the start-up cells '" + named.resolve("start.jsh") + "':\nLine 4:  int b";
        assertTrue(FIRST.err().contains(failed), "what fails is told, and the cell runs all the same: " + FIRST.err());
        assertEquals("2 another", shownBy("begun + \" \" + word"));
        assertEquals("", printed());
        assertTrue(errorOf("half(2)").contains("Start-up cells, line 2:"), "errors name where it was");
    }

    @Test
    void nothingInALogbookIsEverRun() throws IOException {
        Path logbook = Files.createDirectory(folder.resolve("logbook"));
        Files.writeString(logbook.resolve("batches.csv"), "batch\n1\n");
        Path marker = folder.resolve("was-run");
        String cell = "java.nio.file.Files.createFile(java.nio.file.Path.of(\"" + marker + "\"));";
        Files.createDirectories(logbook.resolve("notes/deep"));
        for (String name : new String[] {
            "start.jsh",
            "startup.jsh",
            "init.java",
            "start.jshell",
            "start-cells.jsh",
            "tools.jar",
            "notes/deep/start.jsh"
        }) {
            Files.writeString(logbook.resolve(name), cell);
        }
        try (Evaluator own = Evaluator.open(
                Network.NEVER,
                Map.of(
                        "PARCHMENT_LOGBOOK",
                        logbook.toString(),
                        "PARCHMENT_START_CELLS",
                        logbook.resolve("notes/deep/start.jsh").toString()))) {
            assertTrue(own.run("Logbook.open(Path.of(\"" + logbook + "\")).toString()", page)
                    .fine());
        }
        assertTrue(page.err().contains("lie in the logbook '" + logbook + "'"), "a file named there is refused");
        assertFalse(Files.exists(marker));
    }
}
