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
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.condition.DisabledOnOs;
import org.junit.jupiter.api.condition.EnabledOnOs;
import org.junit.jupiter.api.condition.OS;
import org.junit.jupiter.api.io.TempDir;
import picocli.CommandLine;

/** What the command says; that a stick works without a network, Java and Python is tried in test_stick.py. */
class StickCommandTest {
    private final StringWriter said = new StringWriter();

    private int run(Path home, String... arguments) {
        CommandLine main = Main.commandLine();
        main.getSubcommands().values().forEach(sub -> sub.setErr(new PrintWriter(said)));
        String before = System.getProperty("parchment.home");
        System.setProperty("parchment.home", home.toString());
        try {
            return main.execute(arguments);
        } finally {
            if (before == null) {
                System.clearProperty("parchment.home");
            } else {
                System.setProperty("parchment.home", before);
            }
        }
    }

    @Test
    @EnabledOnOs(OS.LINUX)
    void saysThatAStickIsPackedFromARelease(@TempDir Path folder) throws IOException {
        assertEquals(1, run(folder, "stick", "--to", folder.toString()));
        assertTrue(said.toString().contains("A stick is packed from a release, and " + folder), said.toString());
        assertTrue(said.toString().contains("mvn verify"), said.toString());
        try (Stream<Path> entries = Files.list(folder)) {
            assertEquals(0, entries.count());
        }
    }

    @Test
    @EnabledOnOs(OS.LINUX)
    void saysThatTheFolderForTheFileIsNotThere(@TempDir Path folder) throws IOException {
        Files.createFile(folder.resolve("parchment-kernel.jar"));
        Path none = folder.resolve("no stick");
        assertEquals(1, run(folder, "stick", "--to", none.toString()));
        assertTrue(said.toString().contains("There is no folder " + none), said.toString());
    }

    @Test
    @DisabledOnOs(value = OS.WINDOWS, disabledReason = "links and rights of files as Linux and macOS know them")
    void aCopiedFolderHoldsNoLinksAndKeepsTheRightToRun(@TempDir Path folder) throws IOException {
        Path from = Files.createDirectories(folder.resolve("from"));
        Path program = Files.writeString(from.resolve("program"), "#!/bin/sh\n");
        assertTrue(program.toFile().setExecutable(true));
        Files.createSymbolicLink(from.resolve("other name"), Path.of("program"));
        Files.createSymbolicLink(from.resolve("leads nowhere"), Path.of("gone"));
        Files.writeString(Files.createDirectories(from.resolve("java")).resolve("old"), "left out");
        Files.writeString(
                Files.createDirectories(from.resolve("docs").resolve("java")).resolve("page"), "kept");
        Path to = folder.resolve("to");
        Files.createDirectories(from.resolve("lessons").resolve("teacher"));
        FolderCopy.of(from, to, List.of("java", "lessons/teacher"));
        assertTrue(Files.exists(to.resolve("lessons")));
        assertFalse(Files.exists(to.resolve("lessons").resolve("teacher")));
        assertTrue(Files.isExecutable(to.resolve("program")));
        assertFalse(Files.isSymbolicLink(to.resolve("other name")));
        assertEquals("#!/bin/sh\n", Files.readString(to.resolve("other name")));
        assertFalse(Files.exists(to.resolve("leads nowhere")));
        assertFalse(Files.exists(to.resolve("java")));
        assertEquals("kept", Files.readString(to.resolve("docs").resolve("java").resolve("page")));
    }
}
