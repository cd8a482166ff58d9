package parchment.gather.corpus;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Holds that no cell of a list is left out in silence, over random folders; {@link CellsInSilenceStudy} does so for as many as asked. */
class CellsInSilenceTest {
    private static final int FOLDERS = 25;

    @TempDir
    Path folder;

    @Test
    void noCellIsLeftOutInSilence() throws IOException {
        List<String> lost = new ArrayList<>();
        for (long seed = 1; seed <= FOLDERS; seed++) {
            Path from = folder.resolve("from " + seed);
            List<StrewnFolder.Cell> cells = StrewnFolder.write(from, seed);
            for (String cell : CellsInSilence.of(from, cells, folder.resolve("to " + seed))) {
                lost.add("seed " + seed + ": " + cell);
            }
        }
        assertEquals(List.of(), lost);
    }
}
