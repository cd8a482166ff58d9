package parchment.launcher;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assumptions.assumeFalse;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/** A server in the shell that tells where it was when it is stopped, as one in Python does. */
@Timeout(60)
class StartingServerTest {
    @TempDir
    Path folder;

    private final ByteArrayOutputStream said = new ByteArrayOutputStream();

    @BeforeEach
    void thereIsAShellAndControlCIsHeard() throws IOException {
        assumeFalse(Command.isWindows());
        assumeFalse(Deafness.isDeafToControlC(), "started in the background, where Ctrl-C is not heard");
    }

    private ProcessBuilder server(String script) {
        return new ProcessBuilder(
                "sh",
                "-c",
                "trap 'echo \"Traceback (most recent call last):\" >&2; echo \"  File x\" >&2; exit 1' TERM; " + script,
                "sh",
                folder.resolve("begun").toString(),
                folder.resolve("on").toString());
    }

    private int run(ProcessBuilder server) throws IOException, InterruptedException {
        return StartingServer.run(server, () -> {}, new PrintStream(said, true, StandardCharsets.UTF_8));
    }

    /** Presses Ctrl-C, which by then is taken, as soon as the server says that it has begun. */
    private CompletableFuture<Void> interruptOnceBegun() {
        return CompletableFuture.runAsync(() -> {
            try {
                while (Files.notExists(folder.resolve("begun"))) {
                    Thread.sleep(20);
                }
                new ProcessBuilder(
                                "kill",
                                "-INT",
                                Long.toString(ProcessHandle.current().pid()))
                        .start()
                        .waitFor();
                Thread.sleep(300);
                Files.createFile(folder.resolve("on"));
            } catch (IOException | InterruptedException e) {
                throw new IllegalStateException(e);
            }
        });
    }

    @Test
    void controlCEndsAServerThatIsNotUpYetWithoutAWord() throws Exception {
        CompletableFuture<Void> interrupt = interruptOnceBegun();
        assertEquals(130, run(server("echo '[I] loading' >&2; touch \"$1\"; while :; do sleep 0.05; done")));
        interrupt.get(10, TimeUnit.SECONDS);
        assertTrue(said.toString(StandardCharsets.UTF_8).matches("(\\[I\\] loading\\R)?"), said.toString());
    }

    @Test
    void oneThatIsUpIsAskedByItselfAndItsCodeCounts() throws Exception {
        CompletableFuture<Void> interrupt = interruptOnceBegun();
        assertEquals(
                3,
                run(
                        server(
                                "echo 'Use Control-C to stop this server' >&2; sleep 0.3; touch \"$1\";"
                                        + " while [ ! -e \"$2\" ]; do sleep 0.05; done; echo 'Traceback (most recent call last):' >&2; exit 3")));
        interrupt.get(10, TimeUnit.SECONDS);
        assertEquals(
                "Use Control-C to stop this server\nTraceback (most recent call last):\n",
                said.toString(StandardCharsets.UTF_8).replace("\r", ""));
    }

    @Test
    void oneThatOnlyTellsItsAddressIsUpToo() throws Exception {
        CompletableFuture<Void> interrupt = interruptOnceBegun();
        assertEquals(
                3,
                run(server("echo 'http://127.0.0.1:8888/lab?token=abc' >&2; sleep 0.3; touch \"$1\";"
                        + " while [ ! -e \"$2\" ]; do sleep 0.05; done; exit 3")));
        interrupt.get(10, TimeUnit.SECONDS);
    }

    @Test
    void oneThatNeverSaysThatItIsUpIsLeftToItselfAfterTheLongestStart() throws Exception {
        CompletableFuture<Void> interrupt = interruptOnceBegun();
        assertEquals(
                3,
                StartingServer.run(
                        server("touch \"$1\"; while [ ! -e \"$2\" ]; do sleep 0.05; done; echo 'asked' >&2; exit 3"),
                        () -> {},
                        new PrintStream(said, true, StandardCharsets.UTF_8),
                        Duration.ZERO));
        interrupt.get(10, TimeUnit.SECONDS);
        assertEquals("asked\n", said.toString(StandardCharsets.UTF_8).replace("\r", ""));
    }

    @Test
    void whatGoesWrongByItselfIsToldWhole() throws Exception {
        assertEquals(
                1,
                run(
                        server(
                                "echo '[W] extension' >&2; echo 'Traceback (most recent call last):' >&2; echo '  File a' >&2;"
                                        + " echo '[I] next' >&2; echo 'Traceback (most recent call last):' >&2; echo 'OSError' >&2; exit 1")));
        assertEquals(
                "[W] extension\nTraceback (most recent call last):\n  File a\n[I] next\nTraceback (most recent call last):\nOSError\n",
                said.toString(StandardCharsets.UTF_8).replace("\r", ""));
    }
}
