package parchment.file;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Two commands never hold a folder at once, in whatever order they come and go. */
class FolderLockTest {
    @TempDir
    Path folder;

    @Test
    void theSecondIsKeptOutUntilTheFirstHasEnded() throws IOException {
        FolderLock first = FolderLock.of(folder).orElseThrow();
        assertEquals(Optional.empty(), FolderLock.of(folder));
        first.close();
        try (FolderLock second = FolderLock.of(folder).orElseThrow()) {
            assertTrue(second.toString().length() > 0);
        }
        try (var left = Files.list(folder)) {
            assertEquals(List.of(), left.toList(), "nothing is left behind");
        }
    }

    @Test
    void whoOpenedTheFileOfOneThatHasEndedDoesNotHoldTheFolderBesideAThird() throws IOException {
        FolderLock first = FolderLock.of(folder).orElseThrow();
        List<FolderLock> third = new ArrayList<>();
        Optional<FolderLock> second = FolderLock.of(folder, () -> {
            if (!third.isEmpty()) {
                return;
            }
            try {
                first.close();
                third.add(FolderLock.of(folder).orElseThrow());
            } catch (IOException e) {
                throw new UncheckedIOException(e);
            }
        });
        assertEquals(1, third.size());
        assertEquals(Optional.empty(), second, "the third holds it");
        third.get(0).close();
    }

    @Test
    void whoOpenedTheFileOfOneThatHasEndedGetsTheFolderIfNobodyElseHasIt() throws IOException {
        FolderLock first = FolderLock.of(folder).orElseThrow();
        List<FolderLock> open = new ArrayList<>(List.of(first));
        Optional<FolderLock> second = FolderLock.of(folder, () -> {
            try {
                if (!open.isEmpty()) {
                    open.remove(0).close();
                }
            } catch (IOException e) {
                throw new UncheckedIOException(e);
            }
        });
        assertTrue(second.isPresent());
        assertEquals(Optional.empty(), FolderLock.of(folder), "and holds it alone");
        second.get().close();
    }
}
