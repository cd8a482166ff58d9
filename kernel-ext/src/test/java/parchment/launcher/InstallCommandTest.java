package parchment.launcher;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import parchment.kernel.install.KernelSpec;
import picocli.CommandLine;

/** What the install says; that it works, and that nothing is left of it, is tried on the release itself in test_release.py. */
class InstallCommandTest {
    private final StringWriter said = new StringWriter();

    private int run(String... arguments) {
        CommandLine main = Main.commandLine();
        main.setOut(new PrintWriter(said));
        main.setErr(new PrintWriter(said));
        main.getSubcommands().values().forEach(sub -> {
            sub.setOut(new PrintWriter(said));
            sub.setErr(new PrintWriter(said));
        });
        return main.execute(arguments);
    }

    @Test
    void saysThatThePrefixIsNotThere(@TempDir Path folder) {
        Path none = folder.resolve("none");
        assertEquals(1, run("install", "--prefix", none.toString()));
        assertTrue(said.toString().contains("There is no folder " + none), said.toString());
        assertTrue(said.toString().contains("sys.prefix"), said.toString());
        assertFalse(Files.exists(none));
    }

    @Test
    void saysThatOnePlaceIsEnough(@TempDir Path folder) {
        assertEquals(1, run("install", "--user", "--prefix", folder.toString()));
        assertTrue(said.toString().contains("Give either --user or --prefix, not both."), said.toString());
    }

    @Test
    void saysWhichLogbookIsNotThere(@TempDir Path folder) {
        assertEquals(
                1,
                run(
                        "install",
                        "--prefix",
                        folder.toString(),
                        "--logbook",
                        folder.resolve("no such").toString()));
        assertTrue(said.toString().contains("There is no logbook folder"), said.toString());
    }

    @Test
    void saysHowTheMemoryIsWritten(@TempDir Path folder) {
        for (String wrong : List.of("lots", "512", "0m", "64m", "-1g")) {
            var failure = assertThrows(
                    IllegalArgumentException.class, () -> KernelSpec.in(folder).withHeap(wrong), wrong);
            assertTrue(failure.getMessage().contains("512m or 1g"), failure.getMessage());
        }
        KernelSpec.in(folder).withHeap("128m");
        KernelSpec.in(folder).withHeap("1g");
    }

    @Test
    void saysWhichFolderOfJarsIsNotThere(@TempDir Path folder) {
        Path none = folder.resolve("none");
        assertEquals(1, run("install", "--prefix", folder.toString(), "--jars", none.toString()));
        assertTrue(
                said.toString().contains("There is no folder " + none + ". --jars names a folder with jars in it."),
                said.toString());
    }

    /** From classes nothing can be installed; the jars are looked at before that is found out. */
    @Test
    void namesABrokenJarOfTheFolderAtTheInstall(@TempDir Path folder) throws IOException {
        Path tools = Files.createDirectory(folder.resolve("tools"));
        Path half = Files.writeString(tools.resolve("half.jar"), "not found");
        run("install", "--prefix", folder.toString(), "--jars", tools.toString());
        assertTrue(
                said.toString().contains("  Jars  '" + half) || said.toString().contains("  Jars  'half.jar'"),
                said.toString());
        assertTrue(
                said.toString()
                        .contains(
                                "Every session will go on without; put a whole one in its place, no new install is needed."),
                said.toString());
    }

    @Test
    void startCellsComeFromAFileOutsideEveryLogbook(@TempDir Path folder) throws IOException {
        Path logbook = Files.createDirectory(folder.resolve("logbook"));
        Files.writeString(logbook.resolve("batches.csv"), "batch\n1\n");
        Path file = Files.writeString(logbook.resolve("start.jsh"), "int a = 1;");
        assertEquals(1, run("install", "--prefix", folder.toString(), "--start-cells", file.toString()));
        assertTrue(said.toString().contains("lie in the logbook '" + logbook + "'"), said.toString());
        Path none = folder.resolve("none.jsh");
        assertEquals(1, run("install", "--prefix", folder.toString(), "--start-cells", none.toString()));
        assertTrue(said.toString().contains("The start-up cells cannot be read: "), said.toString());
        assertFalse(Files.exists(folder.resolve("share")), "nothing was installed");
    }

    @Test
    void jarsAndStartCellsAreKeptInTheKernel(@TempDir Path folder) throws Exception {
        Path jar = Files.writeString(folder.resolve("parchment-kernel.jar"), "jar");
        Files.createDirectory(folder.resolve("lib"));
        Path cells = Files.writeString(folder.resolve("start.jsh"), "int a = 1;");
        KernelSpec kernel = KernelSpec.in(folder.resolve("jupyter"))
                .withLogbook(folder.resolve("logbook"))
                .withJars(folder.resolve("tools"))
                .withStartCells(cells)
                .withHeap("512m");
        kernel.install(jar);
        String json = Files.readString(kernel.folder().resolve("kernel.json"));
        for (String line : List.of(
                "\"PARCHMENT_LOGBOOK\": \"" + folder.resolve("logbook") + "\"",
                "\"PARCHMENT_JARS\": \"" + folder.resolve("tools") + "\"",
                "\"PARCHMENT_START_CELLS\": \"" + cells + "\"",
                "\"-Xmx512m\"")) {
            assertTrue(json.contains(line), json);
        }
    }

    @Test
    void takesAnotherNameOnlyWhereNoOtherKernelHasIt(@TempDir Path folder) throws Exception {
        Path jar = Files.writeString(folder.resolve("parchment-kernel.jar"), "jar");
        Files.createDirectory(folder.resolve("lib"));
        Path kernels = folder.resolve("share/jupyter/kernels");
        KernelSpec own = KernelSpec.in(folder.resolve("share/jupyter")).as("java");
        own.install(jar);
        assertEquals(kernels.resolve("java"), own.folder());
        String json = Files.readString(own.folder().resolve("kernel.json"));
        assertTrue(json.contains("\"display_name\": \"Parchment (Java), as java\""), json);
        assertFalse(own.as("java").install(jar), "ours is brought up to date");
        assertEquals(0, run("uninstall", "--prefix", folder.toString(), "--as", "java"), said.toString());
        assertFalse(Files.exists(kernels.resolve("java")));
        Path other = Files.createDirectories(kernels.resolve("java"));
        Files.writeString(other.resolve("kernel.json"), "{\"argv\": [\"another\"]}");
        assertEquals(1, run("install", "--prefix", folder.toString(), "--as", "java"));
        assertTrue(
                said.toString()
                        .contains("There is another kernel named 'java' already, in " + other
                                + ", and it is left as it is."),
                said.toString());
        assertEquals(1, run("uninstall", "--prefix", folder.toString(), "--as", "java"));
        assertTrue(Files.exists(other.resolve("kernel.json")), "and is not taken away either");
        assertEquals(1, run("install", "--prefix", folder.toString(), "--as", "Java 17"));
        assertTrue(said.toString().contains("small letters, digits"), said.toString());
    }

    @Test
    void saysThatAFileStandsWhereTheFolderShouldBe(@TempDir Path folder) throws IOException {
        Files.writeString(folder.resolve("share"), "not a folder");
        Path jar = Files.writeString(folder.resolve("parchment-kernel.jar"), "");
        Files.createDirectory(folder.resolve("lib"));
        var failure = assertThrows(
                java.nio.file.FileSystemException.class,
                () -> KernelSpec.in(folder.resolve("share").resolve("jupyter")).install(jar));
        String words = new InstallPlace()
                .refused(KernelSpec.in(folder.resolve("share")), failure)
                .getMessage();
        assertTrue(words.contains("could not be written"), words);
    }

    @Test
    void saysThatAJavaWithoutItsCompilerIsNotEnough() {
        Jdk.check(); // The tests run on a development kit.
        var failure = assertThrows(IllegalStateException.class, () -> Jdk.check(Jdk.Compiler.MISSING));
        assertTrue(failure.getMessage().contains("development kit (JDK), version 17 or later"), failure.getMessage());
        assertTrue(failure.getMessage().contains(System.getProperty("java.home")), failure.getMessage());
    }

    @Test
    void uninstallSaysThatThereWasNothing(@TempDir Path folder) {
        assertEquals(0, run("uninstall", "--prefix", folder.toString()), said.toString());
        assertTrue(said.toString().contains("nothing was removed"), said.toString());
    }

    @Test
    void theServerListensOnThisMachineOnlyAndKeepsItsToken() {
        List<String> command = OpenCommand.serverCommand(
                new Jupyter(List.of("jupyter", "notebook"), NotebookServer.CLASSIC), Path.of("n"));
        assertTrue(command.contains("--ip=127.0.0.1"), command.toString());
        assertTrue(command.stream().noneMatch(word -> word.contains("token") || word.contains("password")));
    }
}
