package parchment.kernel.install;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.awt.image.BufferedImage;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.stream.Stream;
import javax.imageio.ImageIO;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** How installs go that meet, or that were stopped; with jars that hold nothing, so that no rehearsal takes its time. */
class KernelSpecTest {
    @TempDir
    private Path folder;

    private Path jar;

    @BeforeEach
    void jars() throws IOException {
        Path program = Files.createDirectories(folder.resolve("program"));
        jar = Files.writeString(program.resolve("parchment-kernel.jar"), "jar");
        Path library = Files.createDirectory(program.resolve("lib"));
        for (int i = 0; i < 40; i++) {
            Files.writeString(library.resolve("needed-" + i + ".jar"), "jar".repeat(1_000));
        }
    }

    private KernelSpec kernel() {
        return KernelSpec.in(folder.resolve("jupyter"));
    }

    private List<Path> homes() throws IOException {
        try (Stream<Path> all = Files.list(kernel().folder())) {
            return all.filter(Files::isDirectory).toList();
        }
    }

    private void assertWhole() throws IOException {
        assertEquals(1, homes().size(), homes().toString());
        Path home = homes().get(0);
        assertTrue(Files.readString(kernel().folder().resolve("kernel.json")).contains(home.getFileName() + "/"));
        assertTrue(Files.exists(home.resolve("complete")));
        try (Stream<Path> library = Files.list(home.resolve("lib"))) {
            assertEquals(
                    40, library.filter(each -> each.toFile().length() == 3_000).count());
        }
    }

    @Test
    void ofManyInstallsAtOnceOneWorksAndTheOthersFindIt() throws Exception {
        ExecutorService threads = Executors.newFixedThreadPool(4);
        CountDownLatch start = new CountDownLatch(1);
        List<Future<Boolean>> all = new ArrayList<>();
        for (int i = 0; i < 4; i++) {
            all.add(threads.submit(() -> {
                start.await();
                return kernel().install(jar);
            }));
        }
        start.countDown();
        int installed = 0;
        for (Future<Boolean> each : all) {
            installed += each.get() ? 1 : 0;
        }
        threads.shutdown();
        assertEquals(1, installed);
        assertWhole();
        assertTrue(kernel().uninstall());
        assertFalse(Files.exists(folder.resolve("jupyter")), "nothing of it is left");
    }

    @Test
    void startsSmallAndWithLoopsThatCanBeStopped() throws Exception {
        kernel().withLogbook(folder.resolve("class")).install(jar);
        String json = Files.readString(kernel().folder().resolve("kernel.json"));
        for (String setting : List.of(
                "\"-Xms64m\"",
                "\"-XX:MaxHeapFreeRatio=25\"",
                "\"-XX:+UseCountedLoopSafepoints\"",
                "\"-XX:LoopStripMiningIter=1000\"",
                "\"MALLOC_ARENA_MAX\": \"2\"",
                "\"PARCHMENT_LOGBOOK\": ")) {
            assertTrue(json.contains(setting), json);
        }
    }

    @Test
    void clientsFindAPictureInEachSizeTheyAskFor() throws Exception {
        kernel().install(jar);
        for (int size : new int[] {32, 64}) {
            BufferedImage picture = ImageIO.read(kernel().folder()
                    .resolve("logo-" + size + "x" + size + ".png")
                    .toFile());
            assertEquals(List.of(size, size), List.of(picture.getWidth(), picture.getHeight()));
            assertEquals(0, picture.getRGB(0, 0) >>> 24, "its corner is clear");
            assertEquals(255, picture.getRGB(size / 2, size / 2) >>> 24);
        }
        String drawing = Files.readString(kernel().folder().resolve("logo-svg.svg"));
        assertTrue(drawing.startsWith("<svg xmlns=\"http://www.w3.org/2000/svg\""), drawing);
    }

    @Test
    void anInstallThatWasStoppedIsDoneAnewByTheNext() throws Exception {
        kernel().install(jar);
        Path home = homes().get(0);
        Files.delete(home.resolve("complete"));
        Files.delete(home.resolve("lib").resolve("needed-3.jar"));
        assertTrue(kernel().install(jar));
        assertWhole();
        assertFalse(kernel().install(jar), "it is whole");
    }

    @Test
    void anInstallThatJupyterDoesNotFindIsDoneAnew() throws Exception {
        kernel().install(jar);
        Path home = homes().get(0);
        Path json = kernel().folder().resolve("kernel.json");
        Files.writeString(
                json, Files.readString(json).replace(home.getFileName().toString(), "jars-of-another"));
        assertTrue(kernel().install(jar));
        assertWhole();
    }

    @Test
    void anInstallThatFailsLeavesTheKernelThatWasThere() throws Exception {
        kernel().install(jar);
        String before = Files.readString(kernel().folder().resolve("kernel.json"));
        Path unreadable = Files.createDirectory(folder.resolve("program/lib/needed-7a.jar"));
        assertThrows(IOException.class, () -> kernel().install(jar));
        Files.delete(unreadable);
        assertEquals(before, Files.readString(kernel().folder().resolve("kernel.json")));
        assertWhole();
    }

    @Test
    void aPathThatJavaCannotStartFromIsRefusedInWords() {
        Path place = folder.resolve("my \uD83D\uDE42 jupyter");
        String told = assertThrows(
                        IllegalArgumentException.class,
                        () -> KernelSpec.in(place).install(jar))
                .getMessage();
        assertTrue(told.contains("Java cannot start a kernel from '" + place), told);
        assertTrue(told.contains("JUPYTER_DATA_DIR"), told);
        assertFalse(Files.exists(place));
    }
}
