package parchment.file;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assumptions.assumeFalse;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.FileTime;
import java.nio.file.attribute.PosixFilePermissions;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.Callable;
import java.util.concurrent.CyclicBarrier;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.concurrent.TimeUnit;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class WholeFileTest {
    @TempDir
    private Path folder;

    private List<String> inside() throws IOException {
        try (Stream<Path> files = Files.list(folder)) {
            return files.map(file -> file.getFileName().toString()).sorted().toList();
        }
    }

    private static boolean knowsRights(Path folder) throws IOException {
        return Files.getFileStore(folder).supportsFileAttributeView("posix");
    }

    @Test
    void writesANewFileAndOverAnEarlierOneAndLeavesNothingElse() throws IOException {
        Path file = folder.resolve("page.html");
        assertEquals(file, WholeFile.at(file).write("first, longer"));
        WholeFile.at(file).write("sécond");
        assertEquals("sécond", Files.readString(file));
        assertEquals(List.of("page.html"), inside());
    }

    @Test
    void aWritingThatBreaksOffLeavesWhatWasThereAndNothingElse() throws IOException {
        Path file = Files.writeString(folder.resolve("page.html"), "good");
        NotWrittenException told = assertThrows(
                NotWrittenException.class,
                () -> WholeFile.at(file).write(writer -> {
                    writer.write("half of ".repeat(10_000));
                    throw new IOException("No space left on device");
                }));
        assertEquals(
                "'" + file
                        + "' was not written: the disk is full. Make room on it, or name another folder, and run it again.",
                told.getMessage());
        assertEquals("good", Files.readString(file));
        assertThrows(
                IllegalStateException.class,
                () -> WholeFile.at(file).write(writer -> {
                    throw new IllegalStateException("stopped by hand");
                }));
        assertEquals("good", Files.readString(file));
        assertEquals(List.of("page.html"), inside());
    }

    @Test
    void whoReadsMeanwhileFindsTheOldOrTheNewNeverAPiece() throws Exception {
        Path file = Files.writeString(folder.resolve("page.html"), "a".repeat(200_000));
        ExecutorService threads = Executors.newSingleThreadExecutor();
        Future<?> writing = threads.submit((Callable<Void>) () -> {
            for (int i = 0; i < 100; i++) {
                WholeFile.at(file).write((i % 2 == 0 ? "b" : "a").repeat(200_000));
            }
            return null;
        });
        int read = 0;
        while (!writing.isDone() || read == 0) {
            String text = Files.readString(file);
            assertEquals(200_000, text.length());
            assertTrue(text.matches("a+|b+"), "pieces of two");
            read++;
        }
        writing.get();
        threads.shutdown();
    }

    @Test
    void whoWriteTheSameAtOnceAllWriteItWholeAndWhoReadsFindsOneOfThem() throws Exception {
        Path file = Files.writeString(folder.resolve("page.html"), "o".repeat(2_000));
        ExecutorService threads = Executors.newFixedThreadPool(4);
        List<Future<Void>> writing = new ArrayList<>();
        for (String letter : List.of("a", "b", "c", "d")) {
            writing.add(threads.submit(() -> {
                for (int i = 0; i < 300; i++) {
                    WholeFile.at(file).write(letter.repeat(2_000));
                }
                return null;
            }));
        }
        while (!writing.stream().allMatch(Future::isDone)) {
            String text = Files.readString(file);
            assertTrue(text.length() == 2_000 && text.matches("o+|a+|b+|c+|d+"), () -> "found '" + text + "'");
        }
        for (Future<Void> each : writing) {
            each.get();
        }
        threads.shutdown();
        assertEquals(List.of("page.html"), inside());
    }

    @Test
    void aFullDeviceIsToldInWords() {
        Path full = Path.of("/dev/full"); // What is written to it fails as on a full disk.
        assumeTrue(Files.isWritable(full));
        NotWrittenException told =
                assertThrows(NotWrittenException.class, () -> WholeFile.at(full).write("x"));
        assertTrue(told.getMessage().startsWith("'/dev/full' was not written: the disk is full."), told.getMessage());
    }

    @Test
    void ofManyThatMayOnlyWriteANewFileOneDoesAndTheOthersSayWhy() throws Exception {
        int writers = 4;
        int times = 300;
        ExecutorService threads = Executors.newFixedThreadPool(writers);
        CyclicBarrier together = new CyclicBarrier(writers);
        List<Future<List<Boolean>>> all = new ArrayList<>();
        for (int i = 0; i < writers; i++) {
            String text = "written by " + i;
            all.add(threads.submit(() -> {
                List<Boolean> wrote = new ArrayList<>();
                for (int time = 0; time < times; time++) {
                    Path file = folder.resolve("seeds " + time);
                    together.await(10, TimeUnit.SECONDS);
                    wrote.add(wroteNew(file, text));
                    together.await(10, TimeUnit.SECONDS);
                    assertEquals(wrote.get(time), Files.readString(file).equals(text));
                }
                return wrote;
            }));
        }
        List<List<Boolean>> wrote = new ArrayList<>();
        for (Future<List<Boolean>> each : all) {
            wrote.add(each.get());
        }
        threads.shutdown();
        for (int time = 0; time < times; time++) {
            int which = time;
            assertEquals(1, wrote.stream().filter(each -> each.get(which)).count(), "of time " + time);
        }
        assertEquals(times, inside().size());
    }

    private static boolean wroteNew(Path file, String text) throws IOException {
        try {
            WholeFile.at(file).ifNew().write(text);
            return true;
        } catch (NotWrittenException e) {
            assertEquals("'" + file + "' was not written: something of that name is there already.", e.getMessage());
            return false;
        }
    }

    @Test
    void whatAKilledCommandHasLeftIsInNobodysWayAndIsTakenAwayLater() throws IOException {
        Path file = folder.resolve("page.html");
        Path left = Aside.make(folder, file, Files::createFile);
        Files.writeString(left, "half");
        WholeFile.at(file).write("whole");
        assertEquals("whole", Files.readString(file));
        assertTrue(Files.exists(left), "it may be another's that is at work");
        Files.setLastModifiedTime(left, FileTime.from(Instant.now().minus(Duration.ofHours(2))));
        Path other = Aside.make(folder, folder.resolve("other.html"), Files::createFile);
        Files.setLastModifiedTime(other, FileTime.from(Instant.now().minus(Duration.ofHours(2))));
        WholeFile.at(file).write("whole again");
        assertEquals("whole again", Files.readString(file));
        assertTrue(Files.deleteIfExists(other), "only what the same command left is taken away");
        assertEquals(List.of("page.html"), inside());
    }

    @Test
    void aFileKeepsItsRightsAndANewOneGetsThoseAskedFor() throws IOException {
        assumeTrue(knowsRights(folder));
        Path secret = folder.resolve("secret");
        WholeFile.at(secret).with(Rights.OWNER).write("1");
        assertEquals("rw-------", PosixFilePermissions.toString(Files.getPosixFilePermissions(secret)));
        WholeFile.at(secret).write("2");
        assertEquals("rw-------", PosixFilePermissions.toString(Files.getPosixFilePermissions(secret)));
        Path shared = Files.writeString(folder.resolve("shared"), "1");
        Files.setPosixFilePermissions(shared, PosixFilePermissions.fromString("rw-rw-r--"));
        WholeFile.at(shared).with(Rights.OWNER).write("2");
        assertEquals("rw-rw-r--", PosixFilePermissions.toString(Files.getPosixFilePermissions(shared)));
    }

    @Test
    void whileItIsWrittenItIsOpenToNobodyElseThanBefore() throws IOException {
        assumeTrue(knowsRights(folder));
        Path secret = folder.resolve("secret");
        WholeFile.at(secret).with(Rights.OWNER).write("1");
        List<String> rights = new ArrayList<>();
        WholeFile.at(secret)
                .make(aside -> rights.add(PosixFilePermissions.toString(Files.getPosixFilePermissions(aside))));
        assertEquals(List.of("rw-------"), rights);
    }

    @Test
    void aLinkThatLeadsNowhereIsToldSo() throws IOException {
        Path link = folder.resolve("link");
        try {
            Files.createSymbolicLink(link, folder.resolve("none"));
        } catch (IOException | UnsupportedOperationException e) {
            assumeTrue(false, "this system makes no links");
        }
        assertEquals(
                "'" + link + "' was not written: it is a link that leads nowhere. Remove it, or make what it leads to.",
                assertThrows(NotWrittenException.class, () -> WholeFile.at(link).write("2"))
                        .getMessage());
        assertTrue(Files.isSymbolicLink(link));
    }

    @Test
    void aLinkStaysALink() throws IOException {
        Path file = Files.writeString(folder.resolve("there"), "1");
        Path link = folder.resolve("link");
        try {
            Files.createSymbolicLink(link, file);
        } catch (IOException | UnsupportedOperationException e) {
            assumeTrue(false, "this system makes no links");
        }
        WholeFile.at(link).write("2");
        assertTrue(Files.isSymbolicLink(link));
        assertEquals("2", Files.readString(file));
    }

    @Test
    void saysThatAFolderStandsThereOrThatTheFolderIsMissing() throws IOException {
        Path inTheWay = Files.createDirectory(folder.resolve("page.html"));
        assertEquals(
                "'" + inTheWay + "' was not written: a folder of that name stands there.",
                assertThrows(
                                NotWrittenException.class,
                                () -> WholeFile.at(inTheWay).write("x"))
                        .getMessage());
        Path nowhere = folder.resolve("none").resolve("page.html");
        assertEquals(
                "'" + nowhere + "' was not written: there is no such file or folder.",
                assertThrows(
                                NotWrittenException.class,
                                () -> WholeFile.at(nowhere).write("x"))
                        .getMessage());
    }

    @Test
    void aFolderOrFileThatIsLockedIsLeftAsItIs() throws IOException {
        assumeTrue(knowsRights(folder));
        Path file = Files.writeString(folder.resolve("locked"), "1");
        Files.setPosixFilePermissions(file, PosixFilePermissions.fromString("r--r--r--"));
        assumeFalse(Files.isWritable(file), "the administrator may write everywhere");
        assertEquals(
                "'" + file + "' was not written: that is not permitted to you.",
                assertThrows(NotWrittenException.class, () -> WholeFile.at(file).write("2"))
                        .getMessage());
        assertEquals("1", Files.readString(file));
    }

    @Test
    void copiesAFileWithTheTimeOfItsLastChange() throws IOException {
        Path from = Files.writeString(folder.resolve("from"), "text");
        FileTime changed = FileTime.from(Instant.parse("2020-02-03T04:05:06Z"));
        Files.setLastModifiedTime(from, changed);
        Path to = WholeFile.at(folder.resolve("to")).copy(from);
        assertEquals("text", Files.readString(to));
        assertEquals(changed, Files.getLastModifiedTime(to));
        assertFalse(inside().stream().anyMatch(name -> name.startsWith(".")));
    }
}
