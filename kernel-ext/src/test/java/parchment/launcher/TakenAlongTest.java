package parchment.launcher;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicReference;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.condition.DisabledOnOs;
import org.junit.jupiter.api.condition.OS;
import org.junit.jupiter.api.io.TempDir;

/** A program that is run for as long as this one takes no harm from it ends with it. */
@DisabledOnOs(OS.WINDOWS)
class TakenAlongTest {
    @TempDir
    private Path folder;

    /** Runs a program that would last for minutes, and takes a file away at the end. */
    static final class Lasting {
        private Lasting() {}

        public static void main(String[] arguments) throws Exception {
            Command.runTakingAlong(new ProcessBuilder("sleep", "300").inheritIO(), Process::waitFor, () -> {
                try {
                    Files.delete(Path.of(arguments[0]));
                } catch (IOException e) {
                    throw new IllegalStateException(e);
                }
            });
        }
    }

    @Test
    void whereTheLauncherIsAskedToEndItsServerEndsToo() throws Exception {
        Path page = Files.writeString(folder.resolve("page.html"), "page");
        Process launcher = new ProcessBuilder(
                        Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                        "-cp",
                        System.getProperty("java.class.path"),
                        Lasting.class.getName(),
                        page.toString())
                .redirectErrorStream(true)
                .redirectOutput(folder.resolve("said").toFile())
                .start();
        List<ProcessHandle> server = List.of();
        for (int tries = 0; server.isEmpty() && tries < 600; tries++) {
            Thread.sleep(50);
            server = launcher.descendants().toList();
        }
        assertFalse(server.isEmpty(), Files.readString(folder.resolve("said")));
        Thread.sleep(200); // The hook is set in the moment after the start.
        launcher.destroy();
        assertTrue(launcher.waitFor(20, TimeUnit.SECONDS));
        server.get(0).onExit().get(10, TimeUnit.SECONDS);
        assertFalse(server.get(0).isAlive());
        assertFalse(Files.exists(page));
    }

    @Test
    void aProgramThatEndsByItselfGivesItsCodeAndNothingIsTakenAlong() throws Exception {
        Path page = Files.writeString(folder.resolve("page.html"), "page");
        assertEquals(
                3,
                Command.runTakingAlong(
                        new ProcessBuilder("sh", "-c", "exit 3").inheritIO(),
                        Process::waitFor,
                        () -> page.toFile().delete()));
        assertTrue(Files.exists(page));
    }

    @Test
    void waitingThatIsBrokenOffEndsTheProgram() throws Exception {
        AtomicReference<Process> begun = new AtomicReference<>();
        assertThrows(
                InterruptedException.class,
                () -> Command.runTakingAlong(
                        new ProcessBuilder("sleep", "300").inheritIO(),
                        process -> {
                            begun.set(process);
                            throw new InterruptedException();
                        },
                        () -> {}));
        assertFalse(begun.get().isAlive());
    }
}
