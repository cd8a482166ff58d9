package parchment.launcher;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assumptions.assumeFalse;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.condition.DisabledOnOs;
import org.junit.jupiter.api.condition.OS;
import org.junit.jupiter.api.io.TempDir;
import parchment.kernel.ControlC;

/** Folders that a command made are there afterwards only if something was written in them. */
class MadeFoldersTest {
    private static final LogbookChoice NONE = new LogbookChoice(null);

    @TempDir
    private Path folder;

    @Test
    void whereNothingWasWrittenNoneIsLeftAndWhatWasThereStays() throws IOException {
        Path there = Files.createDirectory(folder.resolve("there"));
        try (MadeFolders made = MadeFolders.begin()) {
            made.folder(there, NONE);
            made.folder(there.resolve("a/b"), NONE);
            made.folder(there.resolve("a/c"), NONE);
            made.page(there.resolve("d/e/week.html"), NONE);
            assertTrue(Files.isDirectory(there.resolve("d/e")));
        }
        assertTrue(Files.isDirectory(there));
        assertEquals(0, there.toFile().list().length);
    }

    @Test
    void whatSomethingWasWrittenInStaysWithThoseAboveIt() throws IOException {
        try (MadeFolders made = MadeFolders.begin()) {
            Path page = made.page(folder.resolve("a/b/week.html"), NONE);
            made.folder(folder.resolve("a/c"), NONE);
            made.write(() -> Files.writeString(page, "page"));
        }
        assertTrue(Files.exists(folder.resolve("a/b/week.html")));
        assertFalse(Files.exists(folder.resolve("a/c")));
    }

    @Test
    void aFolderThatCannotBeMadeTakesThoseMadeBeforeAlong() throws IOException {
        Path file = Files.writeString(folder.resolve("file"), "a file");
        assertThrows(IllegalArgumentException.class, () -> {
            try (MadeFolders made = MadeFolders.begin()) {
                made.folder(folder.resolve("out"), NONE);
                made.folder(file, NONE);
            }
        });
        assertEquals(List.of("file"), List.of(folder.toFile().list()));
    }

    /** Makes folders, gives Ctrl-C to a cell and back, and then does what the second argument says. */
    static final class Working {
        private Working() {}

        public static void main(String[] arguments) throws Exception {
            Path out = Path.of(arguments[0]);
            MadeFolders made = MadeFolders.begin();
            Path page = made.page(out.resolve("deep/week.html"), NONE);
            ControlC.first(() -> {}).close();
            if (arguments[1].equals("reads")) {
                System.out.println("now");
                Thread.sleep(60_000);
            }
            made.write(() -> {
                System.out.println("now");
                try {
                    Thread.sleep(700);
                } catch (InterruptedException e) {
                    throw new IOException(e);
                }
                Files.writeString(page, "whole");
            });
            Thread.sleep(60_000);
        }
    }

    private int interrupted(String at) throws IOException, InterruptedException {
        assumeFalse(Deafness.isDeafToControlC(), "started in the background, where Ctrl-C is not heard");
        Process command = new ProcessBuilder(
                        Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                        "-Xshare:auto",
                        "-XX:TieredStopAtLevel=1",
                        "-cp",
                        System.getProperty("java.class.path"),
                        Working.class.getName(),
                        folder.resolve("new").toString(),
                        at)
                .redirectError(ProcessBuilder.Redirect.INHERIT)
                .start();
        assertEquals("now", command.inputReader().readLine());
        new ProcessBuilder("kill", "-INT", Long.toString(command.pid())).start().waitFor();
        assertTrue(command.waitFor(20, TimeUnit.SECONDS));
        return command.exitValue();
    }

    @Test
    @DisabledOnOs(OS.WINDOWS)
    void controlCBeforeAnythingIsWrittenLeavesNoFolder() throws Exception {
        assertEquals(130, interrupted("reads"));
        assertEquals(0, folder.toFile().list().length);
    }

    @Test
    @DisabledOnOs(OS.WINDOWS)
    void controlCWhileAPageIsWrittenWaitsUntilItIsWhole() throws Exception {
        assertEquals(130, interrupted("writes"));
        assertEquals("whole", Files.readString(folder.resolve("new/deep/week.html")));
    }
}
