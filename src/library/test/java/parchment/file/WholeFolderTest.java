package parchment.file;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.FileTime;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.CyclicBarrier;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.concurrent.TimeUnit;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class WholeFolderTest {
    @TempDir
    private Path folder;

    private static Path two(Path into) throws IOException {
        WholeFile.at(into.resolve("one")).write("1");
        return WholeFile.at(Files.createDirectory(into.resolve("deep")).resolve("two"))
                .write("2");
    }

    private static Path breaksOff(Path into) throws IOException {
        two(into);
        throw new IOException("No space left on device");
    }

    private static List<String> inside(Path folder) throws IOException {
        try (Stream<Path> files = Files.walk(folder)) {
            return files.filter(file -> !file.equals(folder))
                    .map(file -> folder.relativize(file).toString().replace('\\', '/'))
                    .sorted()
                    .toList();
        }
    }

    @Test
    void isThereWithAllThatBelongsIntoIt() throws IOException {
        WholeFolder.at(folder.resolve("a/b")).fill(WholeFolderTest::two);
        assertEquals(List.of("a", "a/b", "a/b/deep", "a/b/deep/two", "a/b/one"), inside(folder));
    }

    @Test
    void anEmptyFolderIsFilledAndStaysTheSame() throws IOException {
        Path there = Files.createDirectory(folder.resolve("there"));
        WholeFolder.at(there).fill(WholeFolderTest::two);
        assertEquals(List.of("deep", "deep/two", "one"), inside(there));
        assertEquals(List.of("there", "there/deep", "there/deep/two", "there/one"), inside(folder));
    }

    @Test
    void aFillingThatBreaksOffLeavesNothingAndTheNextOneWorks() throws IOException {
        Path there = Files.createDirectory(folder.resolve("there"));
        for (Path place : List.of(there, folder.resolve("new"))) {
            String told = assertThrows(
                            NotWrittenException.class,
                            () -> WholeFolder.at(place).fill(WholeFolderTest::breaksOff))
                    .getMessage();
            assertTrue(told.startsWith("'" + place + "' was not written: the disk is full."), told);
        }
        assertEquals(List.of("there"), inside(folder));
        WholeFolder.at(there).fill(WholeFolderTest::two);
        WholeFolder.at(folder.resolve("new")).fill(WholeFolderTest::two);
    }

    @Test
    void whatAKilledCommandHasLeftCountsAsNothing() throws IOException {
        Path there = Files.createDirectory(folder.resolve("there"));
        two(Aside.make(there, there, Files::createDirectory));
        two(Aside.make(folder, folder.resolve("new"), Files::createDirectory));
        assertTrue(WholeFolder.at(there).isFree());
        WholeFolder.at(there).fill(WholeFolderTest::two);
        WholeFolder.at(folder.resolve("new")).fill(WholeFolderTest::two);
        assertEquals("1", Files.readString(there.resolve("one")));
        assertEquals("1", Files.readString(folder.resolve("new/one")));
    }

    @Test
    void aFolderThatHoldsSomethingAndAFileAreLeftAsTheyAre() throws IOException {
        Path there = Files.createDirectory(folder.resolve("there"));
        Files.writeString(there.resolve("mine"), "mine");
        Path file = Files.writeString(folder.resolve("file"), "mine");
        for (Path place : List.of(there, file)) {
            assertFalse(WholeFolder.at(place).isFree());
            assertEquals(
                    "'" + place
                            + "' holds something already, and was left as it is. Name a folder that does not exist yet.",
                    assertThrows(
                                    NotWrittenException.class,
                                    () -> WholeFolder.at(place).fill(WholeFolderTest::two))
                            .getMessage());
        }
        assertEquals(List.of("file", "there", "there/mine"), inside(folder));
    }

    @Test
    void whatOneIsQuickerToFillIsWholeAndTheOtherSaysWhy() throws IOException {
        Path place = folder.resolve("place");
        assertThrows(
                NotWrittenException.class,
                () -> WholeFolder.at(place).fill(first -> {
                    two(first);
                    WholeFolder.at(place)
                            .fill(second ->
                                    WholeFile.at(second.resolve("other")).write("other"));
                    return first;
                }));
        assertEquals(List.of("place", "place/other"), inside(folder));
    }

    @Test
    void ofSeveralAtOnceOneFillsAndTheOthersLeaveNothing() throws Exception {
        int times = 100;
        CyclicBarrier together = new CyclicBarrier(4);
        ExecutorService threads = Executors.newFixedThreadPool(4);
        List<Future<List<Boolean>>> all = new ArrayList<>();
        for (String text : List.of("a", "b", "c", "d")) {
            all.add(threads.submit(() -> {
                List<Boolean> filled = new ArrayList<>();
                for (int time = 0; time < times; time++) {
                    Path place = folder.resolve("place " + time);
                    together.await(10, TimeUnit.SECONDS);
                    filled.add(filled(place, text));
                    together.await(10, TimeUnit.SECONDS);
                    if (filled.get(time)) {
                        assertEquals(List.of("deep", "deep/two", "one"), inside(place));
                        assertEquals(text, Files.readString(place.resolve("one")));
                        assertEquals(text, Files.readString(place.resolve("deep/two")));
                    }
                }
                return filled;
            }));
        }
        int filled = 0;
        for (Future<List<Boolean>> each : all) {
            filled += (int) each.get().stream().filter(did -> did).count();
        }
        threads.shutdown();
        assertEquals(times, filled);
        assertEquals(times * 4, inside(folder).size(), "each with what one put into it, and nothing else");
    }

    private static boolean filled(Path place, String text) throws IOException {
        try {
            WholeFolder.at(place).fill(into -> {
                Files.writeString(into.resolve("one"), text);
                return Files.writeString(
                        Files.createDirectory(into.resolve("deep")).resolve("two"), text);
            });
            return true;
        } catch (NotWrittenException e) {
            return false;
        }
    }

    @Test
    void whatKilledCommandsHaveLeftInAnEmptyFolderIsTakenAwayLater() throws IOException {
        Path there = Files.createDirectory(folder.resolve("there"));
        for (String name : List.of("there", "another")) {
            Path left = two(Aside.make(there, folder.resolve(name), Files::createDirectory));
            FileTime longAgo = FileTime.from(Instant.now().minus(Duration.ofHours(2)));
            Path waiting = left.getParent().getParent();
            for (String each : inside(waiting)) {
                Files.setLastModifiedTime(waiting.resolve(each), longAgo);
            }
            Files.setLastModifiedTime(waiting, longAgo);
        }
        WholeFolder.at(there).fill(WholeFolderTest::two);
        assertEquals(List.of("deep", "deep/two", "one"), inside(there));
    }

    @Test
    void anEarlierFolderIsReplacedOnlyOnceTheNewOneIsWhole() throws IOException {
        Path place = Files.createDirectory(folder.resolve("place"));
        Files.writeString(place.resolve("old"), "old");
        assertThrows(NotWrittenException.class, () -> WholeFolder.at(place).replace(WholeFolderTest::breaksOff));
        assertEquals(List.of("place", "place/old"), inside(folder));
        WholeFolder.at(place).replace(WholeFolderTest::two);
        assertEquals(List.of("place", "place/deep", "place/deep/two", "place/one"), inside(folder));
    }

    @Test
    void anEarlierFolderIsPutBackWhereTheNewOneCannotTakeItsPlace() throws IOException {
        Path place = Files.createDirectory(folder.resolve("place"));
        Files.writeString(place.resolve("old"), "old");
        // What was to be moved is gone at the last moment, as on a drive that was pulled out.
        assertThrows(
                NotWrittenException.class,
                () -> WholeFolder.at(place).replace(into -> {
                    Files.delete(into);
                    return into;
                }));
        assertEquals(List.of("place", "place/old"), inside(folder));
    }
}
