package parchment.lesson;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.IOException;
import java.nio.file.AccessDeniedException;
import java.nio.file.FileVisitResult;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.util.List;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.condition.DisabledOnOs;
import org.junit.jupiter.api.condition.OS;
import org.junit.jupiter.api.io.TempDir;

class CollectedFilesTest {
    @TempDir
    private Path folder;

    private void file(String place) throws IOException {
        Path file = folder.resolve(place);
        Files.createDirectories(file.getParent());
        Files.writeString(file, "x\n");
    }

    private List<String> names(CollectedFiles found) {
        return found.files().stream()
                .map(found::name)
                .map(name -> name.replace('\\', '/'))
                .toList();
    }

    @Test
    void listsFilesByNameAndPassesOverWhatSystemsMakeForThemselves() throws IOException {
        for (String place : List.of(
                "b/x.csv",
                "a.csv",
                "b/._x.csv",
                ".ipynb_checkpoints/a.csv",
                "__MACOSX/a.csv",
                "b/.hidden/c.csv",
                "b/page.ipynb")) {
            file(place);
        }
        CollectedFiles found = CollectedFiles.in(folder);
        assertEquals(List.of("a.csv", "b/page.ipynb", "b/x.csv"), names(found));
        assertEquals(List.of(), found.refused());
    }

    @Test
    void looksAtSoManyFilesAndSaysThatThereAreMore() throws IOException {
        for (int i = 0; i < 4; i++) {
            file(i + ".csv");
        }
        assertEquals(List.of(), CollectedFiles.in(folder, 4).refused());
        assertEquals(4, CollectedFiles.in(folder, 4).files().size());
        file("4.csv");
        CollectedFiles cut = CollectedFiles.in(folder, 4);
        assertEquals(4, cut.files().size());
        assertEquals(
                List.of(
                        folder.toRealPath()
                                + ": it holds more than 4 files, and the rest was not looked at; put the sheets into a folder of their own."),
                cut.refused());
    }

    @Test
    void looksSoManyFoldersDeep() throws IOException {
        file("d/".repeat(CollectedFiles.DEEPEST - 1) + "x.csv");
        assertEquals(1, CollectedFiles.in(folder).files().size());
        assertEquals(List.of(), CollectedFiles.in(folder).refused());
        file("d/".repeat(CollectedFiles.DEEPEST) + "x.csv");
        CollectedFiles found = CollectedFiles.in(folder);
        assertEquals(1, found.files().size());
        assertEquals(1, found.refused().size());
        assertTrue(
                found.refused().get(0).endsWith("d: it lies deeper than 20 folders and was not looked into."),
                found.refused().get(0));
    }

    @Test
    @Timeout(20)
    @DisabledOnOs(value = OS.WINDOWS, disabledReason = "links and pipes as Linux and macOS know them")
    void opensNoPipeNoDeviceAndNoLinkAndGoesOn(@TempDir Path elsewhere) throws Exception {
        file("z.csv");
        Files.createSymbolicLink(folder.resolve("endless.csv"), Path.of("/dev/zero"));
        Files.createSymbolicLink(folder.resolve("up"), folder);
        Files.createSymbolicLink(folder.resolve("nowhere"), Path.of("gone"));
        assertTrue(new ProcessBuilder("mkfifo", folder.resolve("pipe.csv").toString())
                        .start()
                        .waitFor(10, TimeUnit.SECONDS)
                && Files.exists(folder.resolve("pipe.csv")));
        CollectedFiles found = CollectedFiles.in(folder);
        assertEquals(List.of("z.csv"), names(found));
        assertEquals(
                List.of(
                        "endless.csv: it is a link, which is not followed; put the file itself there.",
                        "pipe.csv: it is a pipe or a device and no file.",
                        "up: it is a link, which is not followed; put the file itself there."),
                found.refused().stream().sorted().toList());
        Path link = Files.createSymbolicLink(elsewhere.resolve("collected"), folder);
        assertEquals(List.of("z.csv"), names(CollectedFiles.in(link)), "the folder itself may be named by a link");
    }

    @Test
    void goesOnPastAFolderThatMayNotBeRead() throws IOException {
        file("a/lesson-1-x.csv");
        file("b/lesson-1-y.csv");
        assumeTrue(
                Files.getFileStore(folder).supportsFileAttributeView("posix"), "this system knows no rights of files");
        Files.setPosixFilePermissions(folder.resolve("a"), PosixFilePermissions.fromString("---------"));
        try {
            assumeTrue(!Files.isReadable(folder.resolve("a")), "root may read everything");
            CollectedFiles found = CollectedFiles.in(folder);
            assertEquals(List.of("b/lesson-1-y.csv"), names(found));
            assertEquals(List.of("a: reading it is not permitted."), found.refused());
        } finally {
            Files.setPosixFilePermissions(folder.resolve("a"), PosixFilePermissions.fromString("rwx------"));
        }
    }

    /** The same where the tests run as root, whom no right stops. */
    @Test
    void namesAFolderThatCannotBeReadOnceAndGoesOn() {
        CollectedFiles.Visitor visitor = new CollectedFiles.Visitor(folder, 10);
        Path inner = folder.resolve("a");
        assertEquals(
                FileVisitResult.CONTINUE, visitor.visitFileFailed(inner, new AccessDeniedException(inner.toString())));
        assertEquals(FileVisitResult.CONTINUE, visitor.visitFileFailed(folder.resolve("b"), new IOException("x")));
        assertEquals(FileVisitResult.CONTINUE, visitor.postVisitDirectory(folder.resolve("c"), new IOException("x")));
        assertEquals(FileVisitResult.CONTINUE, visitor.postVisitDirectory(folder.resolve("d"), null));
        assertEquals(
                List.of(
                        "a: reading it is not permitted.",
                        "b: it could not be read.",
                        "c: it could be read in part only."),
                visitor.refused());
    }
}
