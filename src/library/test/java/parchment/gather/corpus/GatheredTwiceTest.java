package parchment.gather.corpus;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Optional;
import java.util.Random;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import parchment.gather.Gather;
import parchment.logbook.LogbookOpenTest;

/** The same command twice on a folder in which nothing has changed, while nobody answers what is open: every byte of the logbook stays. */
class GatheredTwiceTest {
    @TempDir
    Path temporary;

    @ParameterizedTest
    @ValueSource(
            strings = {
                "names: day and number",
                "layouts: a wide table each day",
                "sheets: a workbook each day with its roasts side by side",
                "heads: no headings at all",
                "heads: abbreviated by hand"
            })
    void aSecondRunOnAnUnchangedFolderChangesNothing(String name) throws Exception {
        Kind kind = CorpusKinds.named(name);
        Path folder = Files.createDirectories(temporary.resolve("Logger files"));
        kind.write(kind.in(InventedRoastery.of(2)), folder, new Random(2));
        Path logbook = temporary.resolve("My Roasts");
        String first = gather(folder, logbook);
        var before = LogbookOpenTest.state(logbook);
        String second = gather(folder, logbook);
        assertEquals(before, LogbookOpenTest.state(logbook), second);
        assertTrue(second.contains("Added 0 batches"), second);
        assertEquals(
                first.contains("Not answered yet"), second.contains("Not answered yet"), "what is open stays open");
    }

    private static String gather(Path folder, Path logbook) {
        StringBuilder out = new StringBuilder();
        assertEquals(0, Gather.run(folder, logbook, Optional.empty(), Gather.NOBODY, out), out.toString());
        return out.toString();
    }
}
