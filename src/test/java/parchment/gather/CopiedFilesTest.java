package parchment.gather;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class CopiedFilesTest {
    @Test
    void theSameBytesInADeeperFolderOrUnderALongerNameAreACopy(@TempDir Path folder) throws IOException {
        Files.createDirectory(folder.resolve("backup"));
        Path first = Files.writeString(folder.resolve("61.csv"), "a,b\n1,2\n");
        Path numbered = Files.writeString(folder.resolve("61 (1).csv"), "a,b\n1,2\n");
        Path deeper = Files.writeString(folder.resolve("backup").resolve("61.csv"), "a,b\n1,2\n");
        Path other = Files.writeString(folder.resolve("62.csv"), "a,b\n1,3\n");
        assertEquals(
                Map.of(numbered, first, deeper, first),
                CopiedFiles.among(List.of(numbered, first, deeper, other)).originals());
    }

    @Test
    void emptyFilesAreNoCopies(@TempDir Path folder) throws IOException {
        Path one = Files.writeString(folder.resolve("1.csv"), "");
        Path two = Files.writeString(folder.resolve("2.csv"), "");
        assertEquals(Map.of(), CopiedFiles.among(List.of(one, two)).originals());
    }
}
